"""Dietary words, and the ingredients that give them the lie."""

from dataclasses import dataclass

from sitegen.kitchen.larder import Ingredient
from sitegen.kitchen.word_marks import has_word


@dataclass(frozen=True)
class Diet:
    """A row of `data/diets.yaml`.

    words: those that claim it (see `word_marks.has_word`). allergens: EU/UK names that disagree with it;
    roles and ingredients (keys of the larder): so do these. unless_line_words: a line with any of these
    words agrees all the same. promises: it is a 'free from' claim.
    """

    key: str
    words: tuple[str, ...]
    allergens: frozenset[str] = frozenset()
    roles: frozenset[str] = frozenset()
    ingredients: frozenset[str] = frozenset()
    unless_line_words: tuple[str, ...] = ()
    promises: bool = False


def claimed_by(text: str, diets: tuple[Diet, ...]) -> tuple[Diet, ...]:
    """The diets that a title or tag claims."""
    return tuple(diet for diet in diets if has_word(text, diet.words))


def disagrees(diet: Diet, line_text: str, row: Ingredient) -> bool:
    """Whether an ingredient is none that the diet allows.

    line_text: the line as the baker wrote it, which may say that it is another kind ('gluten-free oats').
    """
    if has_word(line_text, diet.unless_line_words):
        return False
    return bool(
        diet.allergens.intersection(row.allergens_eu) or diet.roles & row.roles or row.key in diet.ingredients
    )
