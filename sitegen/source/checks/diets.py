"""Dietary words in titles and tags, against what goes into the bowl."""

from collections.abc import Iterator, Mapping

from sitegen.faults import Fault, FaultCode, Severity
from sitegen.kitchen.declared import tables_of, with_bases
from sitegen.kitchen.diets import Diet, claimed_by, disagrees
from sitegen.kitchen.recipe import IngredientLine, Recipe
from sitegen.kitchen.tables import Tables
from sitegen.source.school import Content

DIETARY_WORD = FaultCode(
    "dietary-word",
    Severity.ERROR,
    "The title or a tag says what the ingredients deny: a reader who trusts the word could fall ill.",
    "Take the word out, or change the ingredient.",
    good="tags: [cupcakes, soft fruit]",
    bad="tags: [cupcakes, vegan]",
)
FREE_FROM = FaultCode(
    "free-from",
    Severity.ADVICE,
    "'Free from' promises more than a recipe can keep: it takes clean tools, and packets that are tested.",
    "Say what it is made without, such as 'made without nuts', or write under `settled` why it may stand.",
    good="tags: [cupcakes, soft fruit]",
    bad="tags: [cupcakes, nut-free]",
)
CODES = (DIETARY_WORD, FREE_FROM)


def dietary_words_are_true(content: Content) -> Iterator[Fault]:
    """What a title or tag claims is borne out by every ingredient, those of base recipes too.

    Alternatives may disagree, since the reader has the choice; optional lines may not.
    """
    recipes = {recipe.title: recipe for recipe in content.recipes}
    for recipe in content.recipes:
        tables = tables_of(recipe, recipes, content.tables)
        for text in (recipe.title, *recipe.tags):
            for diet in claimed_by(text, tables.diets):
                denials = tuple(_denials(recipe, text, diet, recipes, tables))
                yield from denials
                if diet.promises and not denials:
                    yield FREE_FROM.fault(recipe.at, f"'{text}' is more than a recipe can promise")


def _denials(
    recipe: Recipe, text: str, diet: Diet, recipes: Mapping[str, Recipe], tables: Tables
) -> Iterator[Fault]:
    """A fault for each line that gives a claim the lie: at the line, or at the title where a base has it."""
    for each in with_bases(recipe, recipes):
        of = "" if each is recipe else f" of {each.title}"
        for line in (line for component in each.components for line in component.lines):
            row = tables.larder.find(line.chosen.ingredient) if isinstance(line, IngredientLine) else None
            if row is not None and disagrees(diet, line.text, row):
                sentence = f"'{text}' is said of this recipe, and '{row.key}'{of} is in it"
                yield DIETARY_WORD.fault(recipe.at if of else line.at, sentence)


SCHOOL_CHECKS = (dietary_words_are_true,)
