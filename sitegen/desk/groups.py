"""The recipes of the desk in the order of what needs doing, each once, under the most urgent of it."""

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass

from sitegen.desk.values import Desk, DeskRow, ShownFault, Stands
from sitegen.release.tally import counted

_FIRST_FAULTS = 4
"""That are shown at once; more stand behind a summary."""
_AT_LAST = "9999"
"""After any day to come."""


@dataclass(frozen=True)
class Matter:
    """One kind of thing to look at. title: '3 pieces of advice'. faults: each with its line."""

    key: str
    title: str
    faults: tuple[ShownFault, ...]


@dataclass(frozen=True)
class Work:
    """A recipe with what it asks for.

    told: how it stands, '' where its days and its group tell all of that. first, more: its errors, and how
    many more there are is told by more_told. matters: advice and findings.
    """

    row: DeskRow
    told: str
    first: tuple[ShownFault, ...]
    more: tuple[ShownFault, ...]
    more_told: str
    matters: tuple[Matter, ...]


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
    """The rows that have all words of `find`, in groups; no group is empty.

    In each the recipes with a day to come stand first, the nearest before the others.
    """
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
    for kind in _KINDS:
        own = [row for row in left if kind.takes(row)]
        left = [row for row in left if not kind.takes(row)]
        if own:
            by_day = sorted(own, key=lambda row: _next_day(row) or _AT_LAST)
            works = tuple(map(_work, by_day))
            yield Group(kind.key, kind.title, kind.told, works, kind.is_list)


def _next_day(row: DeskRow) -> str:
    """The nearest day on which somebody gets it, '' for none."""
    return min((each.iso for each in row.releases if not each.is_past), default="")


@dataclass(frozen=True)
class _Kind:
    """A group before its recipes are known. takes: whether it has a recipe that none before it took."""

    key: str
    title: str
    told: str
    takes: Callable[[DeskRow], bool]
    is_list: bool = False


_KINDS = (
    _Kind("mend", "To mend", "An error holds the whole publish back.", lambda row: bool(row.errors)),
    _Kind(
        "held",
        "Held up",
        "They wait for what is to mend: a recipe that they draw on, or the school’s files.",
        lambda row: row.stands is Stands.FAULTY,
        is_list=True,
    ),
    _Kind(
        "reading",
        "Still to be read",
        "They wait for their turn, or for content/site.yaml to be mended.",
        lambda row: row.stands is Stands.READING,
        is_list=True,
    ),
    _Kind("coming", "Going out", "The nearest day first.", lambda row: bool(_next_day(row))),
    _Kind(
        "look",
        "To look at",
        "They are out, and nothing here holds them back.",
        lambda row: row.stands is Stands.OUT and bool(row.film or row.advice),
    ),
    _Kind("drafts", "Drafts", "They have no day yet.", lambda row: row.stands is Stands.DRAFT),
    _Kind(
        "changed",
        "For the next publish",
        "New, or changed since the last one.",
        lambda row: row.is_changed,
        is_list=True,
    ),
    _Kind("out", "Out, and in order", "", lambda _row: True, is_list=True),
)
"""In the order of what needs doing; the first that takes a recipe has it."""


def _work(row: DeskRow) -> Work:
    first, more = row.errors[:_FIRST_FAULTS], row.errors[_FIRST_FAULTS:]
    return Work(
        row=row,
        told=row.told if row.errors else "",
        first=first,
        more=more,
        more_told=counted(len(more), "more error") if more else "",
        matters=tuple(_matters(row)),
    )


def _matters(row: DeskRow) -> Iterator[Matter]:
    if row.film:
        title = counted(len(row.film), "thing said otherwise on film", "things said otherwise on film")
        yield Matter("film", title, row.film)
    if row.advice:
        yield Matter("advice", counted(len(row.advice), "piece of advice", "pieces of advice"), row.advice)
