"""A component of the draft: its ingredient lines and its steps, with what could not be told between them."""

import re
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace

from sitegen.kitchen.amounts import NOWHERE
from sitegen.kitchen.larder import Larder
from sitegen.kitchen.recipe import Choice, IngredientLine, Line
from sitegen.notes.book import Said
from sitegen.notes.ingredients import STAND_IN, Ingredient
from sitegen.notes.linking import Linked, Linker, Named
from sitegen.notes.note_lines import NoteLine
from sitegen.notes.placing import Placed
from sitegen.notes.prose_marks import excepted_in, group_in
from sitegen.notes.rows import Register, Row
from sitegen.notes.steps import NotedStep
from sitegen.notes.untidy_lines import untidy_line
from sitegen.notes.values import Desk
from sitegen.notes.word_table import note_words
from sitegen.source.context import Context
from sitegen.source.lines import read_line
from sitegen.source.misread import Misread

_PURPOSE = re.compile(r" (?:to|for) ")
_KEYS = ("hands-on", "oven", "wait", "until", "heat")


@dataclass(frozen=True)
class StepSaid:
    """A step with the line of the notes that says it."""

    step: NotedStep
    said: Said


class Names:
    """Which components name which, so that no two wait for each other."""

    def __init__(self) -> None:
        self._named: dict[str, set[str]] = {}

    def may(self, one: str, other: str) -> bool:
        """Whether one component may name another without a circle."""
        return not self._reaches(other.casefold(), one.casefold(), set())

    def add(self, one: str, others: Iterable[str]) -> None:
        self._named.setdefault(one.casefold(), set()).update(other.casefold() for other in others)

    def _reaches(self, begin: str, end: str, seen: set[str]) -> bool:
        if begin == end:
            return True
        seen.add(begin)
        return any(self._reaches(one, end, seen) for one in self._named.get(begin, set()) - seen)


def component_row(
    part: Placed, steps: Sequence[StepSaid], desk: Desk, context: Context, register: Register, names: Names
) -> Row:
    """The component as it is written. context: with the titles of all components of the draft."""
    listed, known = _listed(part, desk, context, register)
    linker = Linker(part.title, known, desk, context, lambda other: names.may(part.title, other))
    linked = [linker.linked(step.step.text) for step in steps]
    method = Row([], "method", is_list=True)
    for found, step in zip(linked, steps, strict=True):
        names.add(part.title, found.components)
        for line in found.new:
            _append(listed, Row(line, lines=(step.said.line,)))
    _expand(linked, known, context.tables.larder)
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


def _listed(part: Placed, desk: Desk, context: Context, register: Register) -> tuple[Row, list[Named]]:
    """The ingredient lines, with comments for what could not be told; and the lines as they are read."""
    listed = Row([], "ingredients", is_list=True)
    known: list[Named] = []
    pending: list[str] = []
    for one in part.group.said if part.group else ():
        if one.ingredient is None:
            pending.append(register.lose(one.line, one.text))
            continue
        reason = "" if one.ingredient.known else f"'{one.ingredient.name}' is not in the larder"
        register.take(one.line, reason)
        pending += [one.ingredient.remark] if one.ingredient.remark else []
        _append(listed, Row(one.ingredient.line, lines=(one.line,), above=pending))
        pending = []
        known.append(_named(one.ingredient, one.text, desk, context))
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


def _named(ingredient: Ingredient, text: str, desk: Desk, context: Context) -> Named:
    """The line with the other names by which the notes may call it."""
    words = _PURPOSE.split(untidy_line(text, desk).name.casefold())[0].split()
    others = {" ".join(words[begin:]) for begin in range(len(words))}
    return Named(_line_of(ingredient, context), tuple(sorted(others)))


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


def _expand(linked: Sequence[Linked], known: Sequence[Named], larder: Larder) -> None:
    """'Mix everything' names what no other step does, 'the dry ingredients' those of its roles."""
    open_lines = set(range(len(known))) - {index for one in linked for index in one.taken}
    for one in linked:
        found = group_in(one.text)
        if found is None or not open_lines:
            continue
        words, _, end = found
        roles = set(note_words().groups[words])
        excepted = excepted_in(one.text, end).casefold()
        chosen = [index for index in sorted(open_lines) if _fits(known[index].line, roles, excepted, larder)]
        if chosen:
            names = ", ".join(f"{{{_name(known[index].line)}}}" for index in chosen)
            one.text = f"{one.text[:end]} ({names}){one.text[end:]}"
            one.taken.update(chosen)
            open_lines -= set(chosen)


def _fits(line: Line, roles: set[str], excepted: str, larder: Larder) -> bool:
    if not isinstance(line, IngredientLine):
        return not roles
    last = line.chosen.name.casefold().split()[-1]
    row = larder.find(line.chosen.ingredient)
    return last not in excepted and (not roles or bool(row and roles & row.roles))


def _name(line: Line) -> str:
    return line.chosen.name if isinstance(line, IngredientLine) else line.source


def titles_of(parts: Sequence[Placed], title: str) -> Iterator[str]:
    """A title for each component: its own, else the last word of the recipe's; none twice."""
    taken: set[str] = set()
    last = next(
        (word for word in reversed(re.findall(r"[^\W\d_]{3,}", re.sub(r"\([^()]*\)", "", title)))), ""
    )
    fallback = (last[:1].upper() + last[1:].lower()) or "Recipe"
    for part in parts:
        wanted = (part.title or fallback)[:100]
        name, count = wanted, 2
        while name.casefold() in taken:
            name, count = f"{wanted} {count}", count + 1
        taken.add(name.casefold())
        yield name
