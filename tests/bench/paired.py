"""Ratios that can be believed on a machine with other work to do.

Every round does each piece of work once, beginning with another one each time, and compares it with the first
piece of the same round. What is told is the median of those ratios, and between what bounds half of them lie.
"""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from statistics import median, quantiles
from time import perf_counter, process_time

Clock = Callable[[], float]


@dataclass(frozen=True)
class Work:
    """One row. do: the work of a round. cpu: seconds of processor that its processes have used so far."""

    name: str
    do: Callable[[int], object]
    cpu: Clock = process_time


@dataclass(frozen=True)
class Spent:
    """Seconds of processor and of the wall, one of each a round."""

    cpu: tuple[float, ...]
    wall: tuple[float, ...]


def in_rounds(works: Sequence[Work], rounds: int) -> Mapping[str, Spent]:
    """Each work in each round, once beforehand to be warm. A work is handed the round's number."""
    for work in works:
        work.do(0)
    spent: dict[str, tuple[list[float], list[float]]] = {work.name: ([], []) for work in works}
    for number in range(rounds):
        first = number % len(works)
        for work in (*works[first:], *works[:first]):
            cpu, wall = work.cpu(), perf_counter()
            work.do(number)
            spent[work.name][1].append(perf_counter() - wall)
            spent[work.name][0].append(work.cpu() - cpu)
    return {name: Spent(tuple(cpu), tuple(wall)) for name, (cpu, wall) in spent.items()}


def ratios(of: Sequence[float], to: Sequence[float]) -> tuple[float, float, float]:
    """Median of the paired ratios, and the bounds of their middle half."""
    paired = [one / base for one, base in zip(of, to, strict=True)]
    low, _, high = quantiles(paired, n=4)
    return median(paired), low, high


def table(spent: Mapping[str, Spent], base: str) -> str:
    """A row a work: processor, its ratio to the base, the bounds of the middle half, wall and its ratio."""
    lines = [f"{'':44}{'CPU ms':>8}{'ratio':>8}{'half lie in':>14}{'wall ms':>9}{'ratio':>8}"]
    for name, row in spent.items():
        cpu, low, high = ratios(row.cpu, spent[base].cpu)
        wall, _, _ = ratios(row.wall, spent[base].wall)
        lines.append(
            f"{name:44}{median(row.cpu) * 1000:8.0f}{cpu:8.2f}{f'{low:.2f}-{high:.2f}':>14}"
            f"{median(row.wall) * 1000:9.0f}{wall:8.2f}"
        )
    return "\n".join(lines)
