"""What a publish says when it is done: what the output holds, what changed and why, how long it took."""

from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass, replace

from sitegen.cli.change_words import change_lines
from sitegen.cli.figures import duration, size
from sitegen.cli.step_log import StepRow
from sitegen.release.causes import FIRST_BUILD
from sitegen.release.kinds import KINDS, kind_of
from sitegen.release.report import Change, Report
from sitegen.release.tally import counted

_NARROW = 72
"""Columns below which a table leaves out how the files of each kind changed."""

_NONE = "-"

Paint = Callable[[str], str]
"""Makes a heading stand out."""


@dataclass(frozen=True)
class _Row:
    """One line of the table of files."""

    title: str
    files: int = 0
    bytes: int = 0
    new: int = 0
    changed: int = 0
    gone: int = 0

    @property
    def same(self) -> int:
        return self.files - self.new - self.changed


def closing_table(place: str, report: Report, steps: Sequence[StepRow], width: int, heading: Paint) -> str:
    """All of it, with its last line end. place: of the output. width: columns of the terminal."""
    is_first = any(change.why == (FIRST_BUILD,) for change in report.changes.added)
    if not report.changes.count:
        parts = [[f"Nothing has changed: {_files(report)} as before."]]
    elif is_first:
        parts = [_table(report, heading, detailed=False)]
    else:
        words = change_lines(report.changes, report.same, width)
        table = _table(report, heading, detailed=width >= _NARROW)
        parts = [table, [heading("What changed, and why"), *words]]
    parts.append(_times(steps, heading))
    held = f"{_files(report)}, {size(sum(file.size for file in report.files.values()))}"
    first = f"{place}: {held}, for {report.on}" + (" (first build)" if is_first else "")
    return "\n\n".join("\n".join(lines) for lines in ([first], *parts)) + "\n"


def _files(report: Report) -> str:
    return counted(len(report.files), "file")


def _table(report: Report, heading: Paint, detailed: bool) -> list[str]:
    """A line for each tree and each kind in it. detailed: with what became of them since the last build."""
    titles = ["files", "size", *(["new", "changed", "gone", "as before"] if detailed else [])]
    lines = [heading(_line("", titles))]
    for tree, kinds in _rows(report).items():
        lines.append(_line(tree, _cells(_total(tree, kinds.values()), detailed)))
        if len(kinds) > 1:
            lines += [_line(f"  {kind}", _cells(kinds[kind], detailed)) for kind in KINDS if kind in kinds]
    return lines


def _rows(report: Report) -> dict[str, dict[str, _Row]]:
    """Tree -> kind -> its row, of what is there and of what has gone."""
    rows = {
        tree: {kind: _Row(kind, held.files, held.bytes) for kind, held in kinds.items()}
        for tree, kinds in report.sizes.items()
    }
    changes = report.changes
    for change in changes.added:
        _count(rows, change, new=1)
    for change in changes.changed:
        _count(rows, change, changed=1)
    for change in changes.removed:
        _count(rows, change, gone=1)
    return rows


def _count(
    rows: dict[str, dict[str, _Row]], change: Change, new: int = 0, changed: int = 0, gone: int = 0
) -> None:
    tree, kind = change.path.partition("/")[0], kind_of(change.path)
    kinds = rows.setdefault(tree, {})
    row = kinds.get(kind, _Row(kind))
    kinds[kind] = replace(row, new=row.new + new, changed=row.changed + changed, gone=row.gone + gone)


def _total(title: str, rows: Iterable[_Row]) -> _Row:
    listed = list(rows)
    return _Row(
        title,
        files=sum(row.files for row in listed),
        bytes=sum(row.bytes for row in listed),
        new=sum(row.new for row in listed),
        changed=sum(row.changed for row in listed),
        gone=sum(row.gone for row in listed),
    )


def _cells(row: _Row, detailed: bool) -> list[str]:
    changes = [f"{count:,}" if count else _NONE for count in (row.new, row.changed, row.gone, row.same)]
    return [f"{row.files:,}", size(row.bytes), *(changes if detailed else [])]


def _line(title: str, cells: Iterable[str]) -> str:
    return f"{title:<16}" + "".join(f"{cell:>{_WIDTHS[at]}}" for at, cell in enumerate(cells))


_WIDTHS = (8, 11, 8, 9, 8, 11)
"""Of the columns behind the title, which takes 16: 71 in all."""


def _times(steps: Sequence[StepRow], heading: Paint) -> list[str]:
    """How long each step took, what it made and what it found in kept work."""
    titles = [f"{row.step.value} {row.step.title}" for row in steps]
    widest = max(map(len, [*titles, ""])) + 2
    lines = [heading(f"{'Steps':<{widest}}{'time':>11}{'made':>8}{'reused':>8}")]
    for title, row in zip(titles, steps, strict=True):
        counts = [f"{count:,}" if count else _NONE for count in (row.made, row.reused)]
        shown = counts if row.made or row.reused else []
        lines.append(f"{title:<{widest}}{duration(row.seconds):>11}" + "".join(f"{one:>8}" for one in shown))
    in_all = sum(row.seconds for row in steps)
    return [*lines, f"{'in all':<{widest}}{duration(in_all):>11}"]
