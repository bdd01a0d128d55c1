"""Drifts as tables of texts, for a terminal or for a file."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from sitegen.sheet.drift import ComponentDrift, LineDrift, SheetDrift
from sitegen.sheet.drift_words import percent_text, points_text

_WORST, _TOO_FAR = "worst", "too far"


@dataclass(frozen=True)
class DriftTable:
    """title: '' for none. rows: as many texts as headings. numbers: which columns stand to the right."""

    title: str
    headings: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]
    numbers: frozenset[int]

    def plain(self) -> str:
        """Columns two blanks apart, under a title where there is one."""
        texts = (self.headings, *self.rows)
        widths = [max(len(row[i]) for row in texts) for i in range(len(self.headings))]
        lines = [
            "  ".join(
                cell.rjust(width) if i in self.numbers else cell.ljust(width)
                for i, (cell, width) in enumerate(zip(row, widths, strict=True))
            ).rstrip()
            for row in texts
        ]
        return "\n".join([self.title, *lines] if self.title else lines)


def worst_lines(drifts: Sequence[SheetDrift]) -> DriftTable:
    """The line that drifted furthest, a row a recipe, edition and batch."""
    rows = tuple(
        (each.recipe, each.edition, each.batch, *_most(worst), _TOO_FAR * worst.is_too_far)
        for each in drifts
        if (worst := each.worst) is not None
    )
    headings = ("recipe", "edition", "batch", "moves most", "tested", "printed", "points", "")
    return DriftTable("", headings, rows, frozenset({4, 5, 6}))


def every_line(drifts: Sequence[SheetDrift]) -> Iterator[DriftTable]:
    """Every weighed line, a table a recipe, edition and batch, the line that drifted furthest marked."""
    headings = ("ingredient", "prints", "tested", "printed", "points", "")
    for each in drifts:
        rows = tuple(row for part in each.components for row in _rows(part, each.worst))
        title = f"{each.recipe}, {each.edition}, {each.batch}"
        yield DriftTable(title, headings, rows, frozenset({2, 3, 4}))


def _rows(part: ComponentDrift, worst: LineDrift | None) -> Iterator[tuple[str, ...]]:
    yield (f"{part.title}: % of {part.base}", "", "", "", "", "")
    for line in part.lines:
        mark = _TOO_FAR if line.is_too_far else _WORST if line is worst and line.points else ""
        yield (f"  {line.name}", line.amount.replace("\N{NO-BREAK SPACE}", " "), *_shares(line), mark)


def _most(worst: LineDrift) -> tuple[str, ...]:
    """The line that moves most; 'nothing' where each keeps its share."""
    return (worst.name, *_shares(worst)) if worst.points else ("nothing", "", "", "")


def _shares(line: LineDrift) -> tuple[str, str, str]:
    return percent_text(line.before), percent_text(line.after), points_text(line.points)
