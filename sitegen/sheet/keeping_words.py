"""How long things keep, in words: each part as the baker says, the assembled piece by its strictest part."""

from collections.abc import Iterator, Sequence

from sitegen.kitchen.amounts import Span
from sitegen.kitchen.keeping import (
    FREEZER,
    FRIDGE,
    NOT_THERE,
    ROOM,
    Limit,
    has_to_chill,
    kept_part,
    whole_keeping,
)
from sitegen.kitchen.method import RefKind
from sitegen.kitchen.recipe import Component, Keeps, PartLine
from sitegen.kitchen.shares import MadeComponent
from sitegen.sheet.amounts import NO_BREAK, fraction_text, span_text
from sitegen.sheet.linked import linked
from sitegen.sheet.setting import Setting

ASSEMBLED = "Assembled"
IN_PLACE = {ROOM: "at room temperature", FRIDGE: "in the fridge", FREEZER: "in the freezer"}
UNITS = (("year", 365 * 24), ("month", 30 * 24), ("week", 7 * 24), ("day", 24), ("hour", 1))
"""Unit and its hours, the longest first."""

Row = tuple[str, str]


def keeping_rows(made: Sequence[MadeComponent], setting: Setting) -> tuple[Row, ...]:
    """(what, how long) for each part of which the baker says it, then for the assembled piece.

    The piece takes the place of the last component's own row. There is no row for it where that component
    gives words only, which nobody can hold against the parts, nor where under two parts are known; what must
    be chilled then says in its own row how long it may stand out.
    """
    rows = {one.title: keeps_text(one.component) for one in made}
    whole, last = _whole(made, setting), made[-1]
    if whole:
        rows.pop(last.title)
        rows[ASSEMBLED] = whole
    elif has_to_chill(last.component.keeping):
        rows[last.title] += f"; {_out_text(setting)}"
    return tuple((setting.respelled(title), setting.respelled(text)) for title, text in rows.items() if text)


def keeps_text(component: Component) -> str:
    """'3 days at room temperature or 10 days in the fridge (not in the freezer), covered'; '' for nothing."""
    times = _times(component.keeping)
    return ", ".join(part for part in (times, component.keeps) if part)


def _times(keeping: Sequence[Keeps]) -> str:
    allowed = [f"{hours_text(one.hours)} {IN_PLACE[one.place]}" for one in keeping if one.hours != NOT_THERE]
    forbidden = [f"not {IN_PLACE[one.place]}" for one in keeping if one.hours == NOT_THERE]
    times = ", ".join(allowed[:-1]) + " or " + allowed[-1] if len(allowed) > 1 else "".join(allowed)
    if times and forbidden:
        return f"{times} ({', '.join(forbidden)})"
    return times or ", ".join(forbidden)


def hours_text(hours: Span) -> str:
    """'4 hours', '1 day', '2–3 days', '1 week', '2 months': in the longest unit that divides it."""
    unit, size = next(
        (unit, size)
        for unit, size in UNITS
        if size == 1 or (hours.low % size == 0 and hours.high % size == 0)
    )
    text = span_text(fraction_text(hours.low / size), fraction_text(hours.high / size))
    return f"{text}{NO_BREAK}{unit}{'s' if hours.high > size else ''}"


def _whole(made: Sequence[MadeComponent], setting: Setting) -> str:
    """The line for the assembled piece, '' for none."""
    last = made[-1].component
    if last.keeps and not last.keeping:
        return ""
    components = [linked(one) for one in made]
    parts = [kept_part(one, setting.row, _users(one.title, components)) for one in components]
    limits = whole_keeping(parts, setting.tables.keeping)
    if not limits:
        return ""
    must_chill = any(limit.place == ROOM and limit.hours == NOT_THERE for limit in limits)
    told = [limit for limit in limits if limit.place != ROOM or not must_chill]
    texts = [_limit_text(limit, made[-1].title) for limit in told]
    out = [_out_text(setting)] if must_chill else []
    return "estimate: " + "; ".join([*texts, *out, *([last.keeps] if last.keeps else [])])


def _users(title: str, components: Sequence[Component]) -> tuple[str, ...]:
    """Titles of the components that take of a component, or whose steps name it or wait for it."""
    return tuple(one.title for one in components if one.title != title and title in set(_named(one)))


def _named(component: Component) -> Iterator[str]:
    yield from (line.source for line in component.lines if isinstance(line, PartLine))
    for step in component.steps:
        yield from step.after
        yield from (part.target for part in step.references if part.kind is RefKind.COMPONENT)


def _limit_text(limit: Limit, last: str) -> str:
    if limit.hours == NOT_THERE:
        return f"not {IN_PLACE[limit.place]}"
    text = f"{hours_text(limit.hours)} {IN_PLACE[limit.place]}"
    if limit.usual_for:
        return f"{text} ({limit.decided_by} decides, by what is usual for {limit.usual_for})"
    return text if limit.decided_by == last else f"{text} ({limit.decided_by} decides)"


def _out_text(setting: Setting) -> str:
    hours = setting.tables.keeping.out[setting.edition.region].hours
    return f"no more than {hours_text(Span(hours, hours))} in all out of the fridge"
