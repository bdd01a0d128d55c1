"""Names of ingredients and parts: looked up, or a fault that says what was probably meant."""

import re
from difflib import get_close_matches

from sitegen.faults import FaultCode, Severity
from sitegen.kitchen.larder import Ingredient
from sitegen.source.context import Context
from sitegen.source.misread import Misread

UNKNOWN_INGREDIENT = FaultCode(
    "unknown-ingredient",
    Severity.ERROR,
    "An ingredient that the larder lacks: nobody could weigh it, translate it or tell its allergens.",
    "Use the larder's name, or add a row with what you know and its source to content/larder.yaml.",
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

ADJECTIVES = re.compile(r"[\w'-]+ ")
NEAR_TITLE = 0.6


def ingredient_named(name: str, start: int, context: Context) -> Ingredient:
    """The larder's row of a name. start: where the name stands in the line. Raises Misread."""
    row = context.tables.larder.find(name)
    if row is not None:
        return row
    sentence = f"'{name}' is not in the larder"
    raise Misread(UNKNOWN_INGREDIENT, sentence, _meant(name, context), start, start + len(name))


def _meant(name: str, context: Context) -> str:
    """What was probably meant: a name hidden behind an adjective, else the nearest name."""
    larder = context.tables.larder
    rest = name
    while word := ADJECTIVES.match(rest):
        before, rest = name[: len(name) - len(rest) + word.end()].strip(), rest[word.end() :]
        if larder.find(rest):
            return f"write the adjective after a comma: '{rest}, {before}'"
    near = larder.near(name)
    if near:
        return f"did you mean '{near[0]}'?"
    return "add it to content/larder.yaml with what you know of it"


def title_named(name: str, context: Context) -> tuple[str, bool] | None:
    """The title of a component (False) or another recipe (True), whatever its capitals; None for neither."""
    wanted = name.casefold()
    for titles, is_base in ((context.components, False), (context.recipes, True)):
        for title in titles:
            if title.casefold() == wanted:
                return title, is_base
    return None


def unknown_part(name: str, start: int, context: Context) -> Misread:
    """The fault of a part of nothing known."""
    titles = (*context.components, *context.recipes)
    near = get_close_matches(name.casefold(), [title.casefold() for title in titles], n=1, cutoff=NEAR_TITLE)
    meant = next((title for title in titles if near and title.casefold() == near[0]), "")
    way_out = f"did you mean '{meant}'?" if meant else "write the title of a component or of another recipe"
    sentence = f"'{name}' is no component of this recipe, and no other recipe"
    return Misread(UNKNOWN_PART, sentence, way_out, start, start + len(name))
