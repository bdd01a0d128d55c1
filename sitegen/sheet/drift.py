"""How far rounding has moved a printed recipe from the tested one: the drift of each line's share."""

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction

from sitegen.kitchen.balance import balance_base, drift
from sitegen.sheet.amounts import joined
from sitegen.sheet.values import Sheet, SheetComponent, SheetLine

NOTHING = Fraction(0)
DRIFT_LIMIT = Fraction(4)
"""In % of the flour. Source: common practice, the balance of a formula is kept to about that."""


@dataclass(frozen=True)
class LineDrift:
    """One line's share before and after rounding.

    before, after: % of the base, exact. points: after less before. at_line: in the file, 0 unknown.
    exact_g, printed_g: the weight that is meant, and that of what is printed; None unknown.
    """

    name: str
    amount: str
    before: Fraction
    after: Fraction
    points: Fraction
    at_line: int
    exact_g: Fraction | None = None
    printed_g: Fraction | None = None

    @property
    def is_too_far(self) -> bool:
        return abs(self.points) > DRIFT_LIMIT


@dataclass(frozen=True)
class ComponentDrift:
    """base: what the shares are of, 'plain flour'; lines: those whose weight is known.

    from_base: made by a base recipe, whose file its line numbers are of.
    """

    title: str
    base: str
    lines: tuple[LineDrift, ...]
    from_base: bool = False


@dataclass(frozen=True)
class SheetDrift:
    """The drift of one recipe in one edition at one batch.

    recipe: its slug. edition: its key. batch: as readers call it.
    """

    recipe: str
    edition: str
    batch: str
    components: tuple[ComponentDrift, ...]

    @property
    def lines(self) -> tuple[LineDrift, ...]:
        return tuple(line for part in self.components for line in part.lines)

    @property
    def worst(self) -> LineDrift | None:
        """The line that drifted furthest; None where nothing has a weight."""
        return max(self.lines, key=lambda line: abs(line.points), default=None)

    @property
    def is_too_far(self) -> bool:
        return any(line.is_too_far for line in self.lines)


def base_lines(lines: Sequence[SheetLine]) -> tuple[int, ...]:
    """Which lines the shares are of: all flour, else the heaviest; none where nothing has a weight."""
    weighed = [i for i, line in enumerate(lines) if line.exact_g and line.printed_g is not None]
    if not weighed:
        return ()
    base = balance_base([lines[i].exact_g or NOTHING for i in weighed], [lines[i].is_flour for i in weighed])
    return tuple(weighed[i] for i in base)


def drift_points(lines: Sequence[SheetLine]) -> tuple[Fraction | None, ...]:
    """How far each line has drifted, in % of the flour (or of the heaviest line); None without a weight."""
    weighed = [i for i, line in enumerate(lines) if line.exact_g is not None and line.printed_g is not None]
    points = drift(
        [lines[i].exact_g or NOTHING for i in weighed],
        [lines[i].printed_g or NOTHING for i in weighed],
        [lines[i].is_flour for i in weighed],
    )
    found = dict(zip(weighed, points, strict=True))
    return tuple(found.get(i) for i in range(len(lines)))


def sheet_drift(sheet: Sheet) -> SheetDrift:
    """The drift of every component of a sheet that has at least two weighed lines."""
    head = sheet.head
    parts = tuple(part for part in map(_component_drift, sheet.components) if len(part.lines) > 1)
    return SheetDrift(head.slug, head.edition.key, head.batch.title, parts)


def _component_drift(component: SheetComponent) -> ComponentDrift:
    lines = component.lines
    base = [lines[i] for i in base_lines(lines)]
    base_g = sum((line.exact_g or NOTHING for line in base), NOTHING)
    drifted = tuple(
        _line_drift(line, line.exact_g / base_g * 100, points)
        for line, points in zip(lines, drift_points(lines), strict=True)
        if line.exact_g and points is not None
    )
    names = joined(tuple(line.name for line in base))
    return ComponentDrift(component.title, names, drifted, from_base=bool(component.base_slug))


def _line_drift(line: SheetLine, before: Fraction, points: Fraction) -> LineDrift:
    return LineDrift(
        line.name,
        line.amount,
        before,
        before + points,
        points,
        line.at_line,
        line.exact_g,
        line.printed_g,
    )
