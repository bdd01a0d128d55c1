"""Words of a step that stand for several ingredients at once: 'everything', 'the dry ingredients'."""

import re
from collections.abc import Sequence
from functools import cache

from sitegen.kitchen.larder import Larder
from sitegen.kitchen.recipe import IngredientLine, Line
from sitegen.notes.line_names import LineNames, NamedLine
from sitegen.notes.linking import Linked
from sitegen.notes.word_table import any_of, note_words

_MAKING = "make|prepare|rub|mix|whisk|whip|blitz"
_FOLLOWED = {
    "all": r"(?= (?:(?:in(?:to)?|for) (?:a|the|one|your)|together)\b)",
    "the rest": r"(?= of the |[.,;]|$)",
    "all in": r"(?=\s*(?:$|[.,;:!(]))",
}
"""What follows words that stand for all ingredients here and for something else elsewhere."""
_EXCEPT_END = re.compile(r"[,.;(]| until | till | and (?=mix|then)", re.IGNORECASE)


def name_groups(
    title: str, linked: Sequence[Linked], known: Sequence[NamedLine], called: LineNames, larder: Larder
) -> None:
    """In brackets behind such words: what no other step names, of the words' roles; each is then taken.

    title: of the component, so that 'make the pastry' names what stands in it.
    """
    open_lines = set(range(len(known))) - {index for one in linked for index in one.taken}
    for one in linked:
        start = 0
        while open_lines and (found := group_in(one.text, start) or _own_in(title, one.text, start)):
            words, start = found
            roles = set(note_words().groups.get(words, ()))
            excepted = excepted_in(one.text, start).casefold()
            fitting = (
                index for index in sorted(open_lines) if _fits(known[index].line, roles, excepted, larder)
            )
            chosen = {index: name for index in fitting if (name := called.name_of(index))}
            names = ", ".join(f"{{{name}}}" for name in chosen.values())
            bracket = f" ({names})" if names else ""
            one.text = f"{one.text[:start]}{bracket}{one.text[start:]}"
            one.taken.update(chosen)
            open_lines -= set(chosen)
            start += len(bracket)


def _fits(line: Line, roles: set[str], excepted: str, larder: Larder) -> bool:
    if not isinstance(line, IngredientLine):
        return not roles
    last = line.chosen.name.casefold().split()[-1]
    row = larder.find(line.chosen.ingredient)
    return last not in excepted and (not roles or bool(row and roles & row.roles))


def _own_in(title: str, text: str, start: int) -> tuple[str, int] | None:
    making = making_of(title, text) if start == 0 else None
    return (title, making.end()) if making else None


def group_in(text: str, start: int = 0) -> tuple[str, int] | None:
    """The first such words of the table behind an index, in small letters, and the index behind them."""
    found = _groups().search(text, start)
    return (found[0].casefold(), found.end()) if found else None


@cache
def _groups() -> re.Pattern[str]:
    words = sorted(note_words().groups, key=len, reverse=True)
    either = "|".join(f"{re.escape(one)}{_FOLLOWED.get(one, '')}" for one in words)
    return re.compile(rf"(?<![{{\w])(?:{either})(?![}}\w])", re.IGNORECASE)


def making_of(title: str, text: str) -> re.Match[str] | None:
    """'Make the custard.', 'Rub the topping to crumbs': and not 'mix the custard into the cream'."""
    one = re.escape(title.removesuffix("s"))
    ends = r"(?=(?: to| until| together)\b|[.,;:]|$)"
    return re.match(rf"(?:{_MAKING}) (?:up )?(?:the )?{one}s?{ends}", text, re.IGNORECASE)


def excepted_in(text: str, start: int) -> str:
    """The words behind 'except' in what follows an index; '' where nothing is excepted."""
    found = re.search(rf"\b(?:{any_of(note_words().excepted)})\b", text[start:], re.IGNORECASE)
    if not found:
        return ""
    rest = text[start + found.end() :]
    end = _EXCEPT_END.search(rest)
    return rest[: end.start()] if end else rest
