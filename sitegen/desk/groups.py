"""The recipes of the desk in the order of what needs doing, each once, under the most urgent of it."""

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass

from sitegen.desk.values import Desk, DeskRow, ReleaseRow, ShownFault, Stands

_FIRST_FAULTS = 4
"""That are shown at once; more stand behind a summary."""


@dataclass(frozen=True)
class Matter:
    """One kind of thing to look at. title: '3 pieces of advice'. faults: each with its line."""

    key: str
    title: str
    faults: tuple[ShownFault, ...]


@dataclass(frozen=True)
class Work:
    """A recipe with what it asks for.

    first, more: its errors, and how many more there are is told by more_told. matters: advice and findings.
    days: of its release, where they tell all of how it stands.
    """

    row: DeskRow
    first: tuple[ShownFault, ...]
    more: tuple[ShownFault, ...]
    more_told: str
    matters: tuple[Matter, ...]
    days: tuple[ReleaseRow, ...]


@dataclass(frozen=True)
class Group:
    """Recipes that ask for the same.

    key: for ids. told: why they stand here, or ''. is_list: a line a recipe will do.
    """

    key: str
    title: str
    told: str
    works: tuple[Work, ...]
    is_list: bool


@dataclass(frozen=True)
class Found:
    """told: how many of all recipes were found, '' where all are shown."""

    groups: tuple[Group, ...]
    told: str


def grouped(desk: Desk, find: str) -> Found:
    """The rows that have all words of `find`, in groups; no group is empty."""
    words = find.casefold().split()
    rows = [row for row in desk.rows if all(word in _said_of(row) for word in words)]
    groups = tuple(_groups(rows))
    if not words:
        return Found(groups, "")
    return Found(groups, f"{len(rows)} of {len(desk.rows)} recipes have '{find}'.")


def _said_of(row: DeskRow) -> str:
    """All that a search looks in."""
    faults = (*row.errors, *row.advice, *row.film)
    told = (f"{fault.code} {fault.sentence} {fault.before}{fault.marked}{fault.after}" for fault in faults)
    days = (f"{release.day} {release.to}" for release in row.releases)
    return "\n".join((row.title, row.slug, row.told, *row.lacks, *days, *told)).casefold()


def _groups(rows: Sequence[DeskRow]) -> Iterator[Group]:
    left = list(rows)
    for key, title, told, belongs, is_list in _KINDS:
        own = [row for row in left if belongs(row)]
        left = [row for row in left if not belongs(row)]
        if key == "coming":
            own.sort(key=lambda row: min((each.iso for each in row.releases if not each.is_past), default=""))
        if own:
            yield Group(key, title, told, tuple(map(_work, own)), is_list)


_Kind = tuple[str, str, str, Callable[[DeskRow], bool], bool]
_KINDS: tuple[_Kind, ...] = (
    ("mend", "To mend", "An error holds the whole publish back.",
     lambda row: bool(row.errors), False),
    ("held", "Held up", "They wait for what is to mend: a recipe that they draw on, or the school’s files.",
     lambda row: row.stands is Stands.FAULTY, True),
    ("reading", "Still to be read", "", lambda row: row.stands is Stands.READING, True),
    ("coming", "Going out", "The nearest day first.", lambda row: row.stands is Stands.COMING, False),
    ("look", "To look at", "They are out, and nothing here holds them back.",
     lambda row: row.stands is Stands.OUT and bool(row.film or row.advice), False),
    ("drafts", "Drafts", "They have no day yet.", lambda row: row.stands is Stands.DRAFT, False),
    ("changed", "For the next publish", "New, or changed since the last one.",
     lambda row: row.is_changed, True),
    ("out", "Out, and in order", "", lambda _row: True, True),
)  # fmt: skip
"""Key, title, why, what belongs there, and whether a line a recipe will do; the first that fits is taken."""


def _work(row: DeskRow) -> Work:
    first, more = row.errors[:_FIRST_FAULTS], row.errors[_FIRST_FAULTS:]
    return Work(
        row=row,
        first=first,
        more=more,
        more_told=_counted(len(more), "more error", "more errors") if more else "",
        matters=tuple(_matters(row)),
        days=row.releases if row.stands in (Stands.OUT, Stands.COMING) else (),
    )


def _matters(row: DeskRow) -> Iterator[Matter]:
    if row.film:
        title = _counted(len(row.film), "thing said otherwise on film", "things said otherwise on film")
        yield Matter("film", title, row.film)
    if row.advice:
        yield Matter("advice", _counted(len(row.advice), "piece of advice", "pieces of advice"), row.advice)


def _counted(count: int, one: str, many: str) -> str:
    return f"{count} {one if count == 1 else many}"
