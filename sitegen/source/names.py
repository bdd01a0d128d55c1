"""Names of ingredients and parts: looked up, or a fault that says what was probably meant."""

import re
from dataclasses import dataclass
from difflib import get_close_matches

from sitegen.faults import FaultCode, Severity
from sitegen.kitchen.larder import Ingredient, Larder
from sitegen.source.context import Context
from sitegen.source.misread import Misread
from sitegen.source.stretches import Stretch

UNKNOWN_INGREDIENT = FaultCode(
    "unknown-ingredient",
    Severity.ERROR,
    "An ingredient that the larder lacks: nobody could weigh it, translate it or tell its allergens.",
    "Use the larder's name, or declare it with what you know: in content/larder.yaml for all recipes, or "
    "under `larder` in the recipe's own file.",
    good="caster sugar",
    bad="castor sugarr",
)
UNKNOWN_PART = FaultCode(
    "unknown-part",
    Severity.ERROR,
    "A line takes a part of something that is neither a component of this recipe nor another recipe.",
    "Write the title as it stands above that component, or in that recipe's file.",
    good="of Base buttercream",
    bad="of Bass buttercreme",
)
CODES = (UNKNOWN_INGREDIENT, UNKNOWN_PART)

_LAST_ADJECTIVE = 2
_ADJECTIVE = re.compile(r"[^\W\d]+(?:[-'][^\W\d]+)*")
_AND = re.compile(r" and | & ")
_NO_ADJECTIVES = frozenset({"a", "an", "and", "few", "of", "or", "plus", "some", "the", "to", "with"})
NEAR_TITLE = 0.6


@dataclass(frozen=True)
class Title:
    """title: as it is written where it belongs. is_base: another recipe's, not a component's."""

    title: str
    is_base: bool


def known(name: Stretch, context: Context) -> Ingredient | None:
    """The larder's row of a name, however many blanks are between its words; None where it has none."""
    return context.tables.larder.find(name.words)


def ingredient_named(name: Stretch, context: Context) -> Ingredient:
    """The larder's row of a name. Raises Misread."""
    row = known(name, context)
    if row is not None:
        return row
    sentence = f"'{name.words}' is not in the larder"
    way_out = _meant(name.words, context.tables.larder)
    raise Misread(UNKNOWN_INGREDIENT, sentence, way_out, name.start, name.end)


_DECLARE = "declare it with what you know of it: in content/larder.yaml, or under `larder` in this file"
_SLIP = 0.9
"""How alike two names are where only a letter has slipped: 'plan flour' is no flour that is plan."""


def _meant(name: str, larder: Larder) -> str:
    """What was probably meant: two ingredients, a name behind an adjective, else the nearest name."""
    halves = _AND.split(name)
    if len(halves) == 2 and any(larder.find(half) for half in halves):
        return "write each on a line of its own, with its own amount"
    slip = get_close_matches(name.casefold(), larder.by_name, n=1, cutoff=_SLIP)
    if slip:
        return f"did you mean '{slip[0]}'?"
    words = name.split()
    for count in range(1, min(len(words) - 1, _LAST_ADJECTIVE) + 1):
        rest = " ".join(words[count:])
        if larder.find(rest) and all(_is_adjective(word) for word in words[:count]):
            return f"write the adjective after a comma: '{rest}, {' '.join(words[:count])}'"
    near = larder.near(name)
    return f"did you mean '{near[0]}'?" if near else _DECLARE


def _is_adjective(word: str) -> bool:
    return bool(_ADJECTIVE.fullmatch(word)) and word.casefold() not in _NO_ADJECTIVES


def title_named(name: str, context: Context) -> Title | None:
    """The component or other recipe of that title, whatever its capitals; None for neither."""
    wanted = " ".join(name.casefold().split())
    for titles, is_base in ((context.components, False), (context.recipes, True)):
        for title in titles:
            if title.casefold() == wanted:
                return Title(title, is_base)
    return None


def unknown_part(name: Stretch, context: Context) -> Misread:
    """The fault of a part of nothing known."""
    titles = (*context.components, *context.recipes)
    folded = {title.casefold(): title for title in titles}
    near = get_close_matches(name.words.casefold(), folded, n=1, cutoff=NEAR_TITLE)
    way_out = "write the title of a component or of another recipe"
    if near:
        way_out = f"did you mean '{folded[near[0]]}'?"
    sentence = f"'{name.words}' is no component of this recipe, and no other recipe"
    return Misread(UNKNOWN_PART, sentence, way_out, name.start, name.end)
