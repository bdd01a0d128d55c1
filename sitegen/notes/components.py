"""A component of the draft: its ingredient lines and its steps, with what could not be told between them."""

import re
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace

from sitegen.kitchen.amounts import NOWHERE
from sitegen.kitchen.recipe import Choice, IngredientLine, Line
from sitegen.notes.book import Said
from sitegen.notes.group_words import name_groups
from sitegen.notes.ingredients import STAND_IN, Ingredient
from sitegen.notes.line_names import LineNames, NamedLine
from sitegen.notes.linking import Linker
from sitegen.notes.note_lines import NoteLine
from sitegen.notes.placing import Placed
from sitegen.notes.rows import Register, Row
from sitegen.notes.steps import NotedStep
from sitegen.notes.untidy_amounts import is_known
from sitegen.notes.untidy_lines import untidy_line
from sitegen.notes.values import Lore
from sitegen.source.context import Context
from sitegen.source.lines import read_line
from sitegen.source.misread import Misread

_NAME_END = re.compile(r",| (?:for|with|from|in|of|to|that)\b", re.IGNORECASE)
"""Where the name of what is made ends in a title: 'Focaccia for the market stall'."""
_HOW_MUCH = "write how much of it, or what it is for"
_KEYS = ("hands-on", "oven", "wait", "until", "heat")


@dataclass(frozen=True)
class StepSaid:
    """A step with the line of the notes that says it."""

    step: NotedStep
    said: Said


class ComponentLinks:
    """Which components name which by their titles, so that no two wait for each other."""

    def __init__(self) -> None:
        self._named: dict[str, set[str]] = {}

    def may_name(self, one: str, other: str) -> bool:
        """Whether one component may name another without a circle."""
        return not self._reaches(other.casefold(), one.casefold(), set())

    def add(self, one: str, others: Iterable[str]) -> None:
        """One component names others: their titles."""
        self._named.setdefault(one.casefold(), set()).update(other.casefold() for other in others)

    def _reaches(self, begin: str, end: str, seen: set[str]) -> bool:
        if begin == end:
            return True
        seen.add(begin)
        return any(self._reaches(one, end, seen) for one in self._named.get(begin, set()) - seen)


def component_row(
    part: Placed,
    steps: Sequence[StepSaid],
    lore: Lore,
    context: Context,
    register: Register,
    links: ComponentLinks,
) -> Row:
    """The component as it is written. context: with the titles of all components of the draft."""
    listed, known = _listed(part, lore, context, register)
    called = LineNames(part.title, known, lore, context, lambda other: links.may_name(part.title, other))
    linker = Linker(called, lore)
    linked = [linker.linked(step.step.text) for step in steps]
    method = Row([], "method", is_list=True)
    for found, step in zip(linked, steps, strict=True):
        links.add(part.title, found.components)
        for line in found.new:
            _append(listed, Row(line, lines=(step.said.line,)))
    name_groups(part.title, linked, known, called, context.tables.larder)
    for number, (found, step) in enumerate(zip(linked, steps, strict=True), start=1):
        register.take(step.said.line)
        row = _step_row(found.text, step)
        row.above += register.moments.comment(part.title, number, step.said.line)
        _append(method, row)
    heads = _heads(part)
    for head in heads:
        register.take(head)
    rows = [row for row in (listed, method) if row.value or row.below]
    return Row(list(rows), part.title, lines=heads)


def _listed(part: Placed, lore: Lore, context: Context, register: Register) -> tuple[Row, list[NamedLine]]:
    """The ingredient lines, with comments for what could not be told; and the lines as they are read."""
    listed = Row([], "ingredients", is_list=True)
    known: list[NamedLine] = []
    pending: list[str] = []
    for one in part.group.said if part.group else ():
        if one.ingredient is None:
            reason = _HOW_MUCH if is_known(one.text, lore) else ""
            pending.append(register.lose(one.line, one.text, reason))
            continue
        reason = "" if one.ingredient.known else f"'{one.ingredient.name}' is not in the larder"
        register.take(one.line, reason)
        pending += [one.ingredient.remark] if one.ingredient.remark else []
        _append(listed, Row(one.ingredient.line, lines=(one.line,), above=pending))
        pending = []
        known.append(_named(one.ingredient, one.text, lore, context))
    listed.below += pending
    return listed, known


def _heads(part: Placed) -> tuple[NoteLine, ...]:
    """The headings over its ingredients and its steps."""
    own = part.group.heading if part.group else None
    blocks = (block.heading for block in part.headings)
    return tuple(heading for heading in (own, *blocks) if heading is not None)


def _append(listed: Row, row: Row) -> None:
    if isinstance(listed.value, list):
        listed.value.append(row)


def _step_row(text: str, one: StepSaid) -> Row:
    step, lines = one.step, (one.said.line,)
    values = (step.hands_on, step.oven, step.wait, step.until, step.heat)
    keys = [Row(value, key, lines) for key, value in zip(_KEYS, values, strict=True) if value]
    return Row([Row(text, "text", lines), *keys], lines=lines)


def _named(ingredient: Ingredient, text: str, lore: Lore, context: Context) -> NamedLine:
    """The line with the other names by which the notes may call it."""
    words = untidy_line(text, lore).name.casefold().split()
    others = {" ".join(words[begin:]) for begin in range(len(words))}
    return NamedLine(_line_of(ingredient, context), tuple(sorted(others)))


def _line_of(ingredient: Ingredient, context: Context) -> Line:
    """The line as it is read; of what the larder lacks, one with its own name."""
    try:
        return read_line(ingredient.line, NOWHERE, context)
    except Misread:
        line = read_line(f"1 {STAND_IN}", NOWHERE, context)
        return (
            replace(line, text=ingredient.line, amount=None, choices=(Choice(ingredient.name, ""),))
            if isinstance(line, IngredientLine)
            else line
        )


def titles_of(parts: Sequence[Placed], title: str) -> Iterator[str]:
    """A title for each component: its own, else the last word of the recipe's; none twice."""
    taken: set[str] = set()
    last = next(reversed(re.findall(r"[^\W\d_]{3,}", _NAME_END.split(title)[0])), "")
    fallback = (last[:1].upper() + last[1:].lower()) or "Recipe"
    for part in parts:
        wanted = (part.title or fallback)[:100]
        name, count = wanted, 2
        while name.casefold() in taken:
            name, count = f"{wanted} {count}", count + 1
        taken.add(name.casefold())
        yield name
