"""How long things keep: what is usual for each kind, and the strictest part of an assembled piece."""

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from fractions import Fraction

from sitegen.kitchen.amounts import Span
from sitegen.kitchen.larder import Ingredient
from sitegen.kitchen.recipe import Choice, Component, IngredientLine, Keeps
from sitegen.kitchen.word_marks import has_word

ROOM, FRIDGE, FREEZER = "room", "fridge", "freezer"
PLACES = (ROOM, FRIDGE, FREEZER)
CHILLED = "chilled"
NOT_THERE = Span(Fraction(0), Fraction(0))
"""Hours in a place where a thing must not stand."""


@dataclass(frozen=True)
class KeepingRow:
    """A row of `data/keeping.yaml`: how long one kind of thing keeps at most.

    kinds: of `Component.kind`; words: of its title, which count where its ingredients have all `roles` and
    none of `lacks`, and it is `baked` or not (None: either). source: a key of `data/sources.yaml`.
    """

    key: str
    keeping: tuple[Keeps, ...]
    source: str
    kinds: tuple[str, ...] = ()
    words: tuple[str, ...] = ()
    roles: frozenset[str] = frozenset()
    lacks: frozenset[str] = frozenset()
    baked: bool | None = None


@dataclass(frozen=True)
class OutLimit:
    """How long what is kept in the fridge may stand out of it, in all, hours."""

    hours: Fraction
    source: str


@dataclass(frozen=True)
class KeepingTable:
    """rows: the first that fits counts. out: region -> limit."""

    rows: tuple[KeepingRow, ...] = ()
    out: Mapping[str, OutLimit] = field(default_factory=dict, hash=False)


@dataclass(frozen=True)
class KeptPart:
    """What keeping hangs on.

    kind: as `Component.kind`. roles: of its ingredients. baked: whether a step of its own needs the oven.
    keeping: as the baker says. users: titles of the parts that take of it or wait for it.
    """

    title: str
    kind: str
    roles: frozenset[str]
    baked: bool
    keeping: tuple[Keeps, ...] = ()
    users: tuple[str, ...] = ()


def kept_part(
    component: Component, row_of: Callable[[Choice], Ingredient | None], users: tuple[str, ...] = ()
) -> KeptPart:
    """What keeping hangs on of a component. row_of: an ingredient -> its row in the larder."""
    chosen = [line.chosen for line in component.lines if isinstance(line, IngredientLine) and line.amount]
    rows = [row for row in map(row_of, chosen) if row is not None]
    return KeptPart(
        title=component.title,
        kind=component.kind,
        roles=frozenset(role for row in rows for role in row.roles),
        baked=any(step.oven for step in component.steps),
        keeping=component.keeping,
        users=users,
    )


@dataclass(frozen=True)
class Limit:
    """How long a whole piece keeps in one place.

    hours: (0, 0) where it must not stand. decided_by: the strictest part's title.
    usual_for: the table's row where the part itself says nothing, so that it is an estimate of ours; '' else.
    """

    place: str
    hours: Span
    decided_by: str
    usual_for: str = ""


def usual_keeping(part: KeptPart, table: KeepingTable) -> KeepingRow | None:
    """The row that a part fits by its kind, else by its title and ingredients; None where none is sure."""
    by_kind = (row for row in table.rows if part.kind and part.kind in row.kinds)
    by_words = (row for row in table.rows if not part.kind and _fits(row, part))
    return next(by_kind, None) or next(by_words, None)


def _fits(row: KeepingRow, part: KeptPart) -> bool:
    is_so_baked = row.baked is None or row.baked == part.baked
    return (
        is_so_baked
        and row.roles <= part.roles
        and not row.lacks & part.roles
        and has_word(part.title, row.words)
    )


def has_to_chill(keeping: Sequence[Keeps]) -> bool:
    """Whether a thing must stand in the fridge: it keeps there, and not in the room."""
    hours = {keeps.place: keeps.hours for keeps in keeping}
    return hours.get(FRIDGE, NOT_THERE) != NOT_THERE and hours.get(ROOM, NOT_THERE) == NOT_THERE


def longer_than_usual(part: KeptPart, row: KeepingRow) -> tuple[tuple[Keeps, Keeps], ...]:
    """Each place where the baker's figure is longer than the row's: (what she says, what is usual)."""
    usual = {keeps.place: keeps for keeps in row.keeping}
    return tuple(
        (said, usual[said.place])
        for said in part.keeping
        if said.place in usual and said.hours.high > usual[said.place].hours.high
    )


def whole_keeping(parts: Sequence[KeptPart], table: KeepingTable) -> tuple[Limit, ...]:
    """How long the piece keeps that all parts end up in: in each place as long as the strictest part.

    parts: of the whole batch. One that is baked inside another no longer counts. A part that says nothing
    counts by the table's row, where one fits. What says nothing of the room must be chilled; what says
    nothing of the fridge keeps there as long as in the room; a place that any part forbids is forbidden; of
    the freezer nothing is said unless every part with figures says it. Nothing where under two parts count.
    Source: common practice, the shortest part decides.
    """
    told = [_Told.of(part, table) for part in _unbaked_inside(parts)]
    told = [one for one in told if one.hours or one.is_chilled]
    if len(told) < 2:
        return ()
    return tuple(_limits(told))


@dataclass(frozen=True)
class _Told:
    """What is known of one part. hours: place -> how long."""

    title: str
    hours: Mapping[str, Span]
    usual_for: str
    is_chilled: bool

    @classmethod
    def of(cls, part: KeptPart, table: KeepingTable) -> "_Told":
        row = None if part.keeping else usual_keeping(part, table)
        keeping = row.keeping if row else part.keeping
        hours = {keeps.place: keeps.hours for keeps in keeping}
        is_fresh = CHILLED in part.roles and not part.baked and ROOM not in hours
        return cls(part.title, hours, row.key if row else "", has_to_chill(keeping) or is_fresh)

    def limit(self, place: str, hours: Span) -> Limit:
        return Limit(place, hours, self.title, self.usual_for)


def _limits(told: Sequence[_Told]) -> Iterator[Limit]:
    chilled = next((one for one in told if one.is_chilled), None)
    if chilled is not None:
        yield chilled.limit(ROOM, NOT_THERE)
    else:
        yield from _strictest([one.limit(ROOM, one.hours[ROOM]) for one in told if ROOM in one.hours])
    if any(FRIDGE in one.hours for one in told):
        yield from _strictest([one.limit(FRIDGE, hours) for one in told if (hours := _cold(one))])
    frozen = [one.limit(FREEZER, one.hours[FREEZER]) for one in told if FREEZER in one.hours]
    if len(frozen) == len(told) or any(one.hours == NOT_THERE for one in frozen):
        yield from _strictest(frozen)


def _cold(one: _Told) -> Span | None:
    return one.hours.get(FRIDGE) or one.hours.get(ROOM)


def _strictest(limits: Sequence[Limit]) -> Iterator[Limit]:
    if limits:
        # Of equals the last decides: the piece itself, where it is as short as its parts.
        yield min(reversed(limits), key=lambda limit: (limit.hours.high, limit.hours.low))


def _unbaked_inside(parts: Sequence[KeptPart]) -> Iterator[KeptPart]:
    """The parts that reach the piece as they are: none that they go into, directly or not, is baked."""
    by_title = {part.title: part for part in parts}
    for part in parts:
        waiting, seen = list(part.users), set[str]()
        while waiting:
            user = by_title.get(waiting.pop())
            if user is not None and user.title not in seen:
                seen.add(user.title)
                waiting += user.users
        if not any(by_title[title].baked for title in seen):
            yield part
