"""The fields of a what-if page as its form shows them: labels, what can be chosen, what stands in them."""

from collections.abc import Iterator
from dataclasses import dataclass

from sitegen.desk.what_if import MOST_COOKS, MOST_TINS, Answer, Told
from sitegen.desk.what_if_words import name_of
from sitegen.kitchen.recipe import IngredientLine, Recipe
from sitegen.source.school import Content, School


@dataclass(frozen=True)
class Option:
    """A choice of a list. value: what the address says; title: what is read; is_chosen: whether it stands."""

    value: str
    title: str
    is_chosen: bool


@dataclass(frozen=True)
class Field:
    """One field.

    hint: what may stand in it, '' for what needs none. kind: 'text', 'number', 'hour' or 'list'.
    most: of a number, 0 else. options: of a list. fault: why it is not followed, or None.
    """

    name: str
    label: str
    hint: str
    kind: str
    words: str
    fault: Told | None
    most: int = 0
    options: tuple[Option, ...] = ()


@dataclass(frozen=True)
class Form:
    """batch: the ways to ask for a batch, of which one is followed. work: who works where and until when."""

    batch: tuple[Field, ...]
    work: tuple[Field, ...]


def form_of(answer: Answer, content: Content, school: School) -> Form:
    """The form with what was asked in it."""
    recipe = answer.recipe
    text = "text"
    ingredients = tuple(_in_recipe(recipe, answer.words.of))
    editions = tuple(_editions(answer, content, school))
    return Form(
        batch=(
            _field(answer, "batch", "How much", _batch_hint(recipe), text),
            _field(answer, "tin", "In the tin", "23 cm square; two 18 cm round", text),
            _field(answer, "in_hand", "In hand", "200 g; or 3, where pieces count", text),
            _field(answer, "of", "Of which ingredient", "", "list", options=ingredients),
        ),
        work=(
            _field(answer, "edition", "Edition", "", "list", options=editions),
            _field(answer, "cooks", "Cooks", "", "number", most=MOST_COOKS),
            _field(answer, "oven_tins", "Tins in the oven", "at one time", "number", most=MOST_TINS),
            _field(answer, "ready_by", "Ready by", "", "hour"),
        ),
    )


def _field(
    answer: Answer,
    attribute: str,
    label: str,
    hint: str,
    kind: str,
    most: int = 0,
    options: tuple[Option, ...] = (),
) -> Field:
    name = name_of(attribute)
    words: str = getattr(answer.words, attribute)
    return Field(name, label, hint, kind, words, answer.faults.get(name), most, options)


def _batch_hint(recipe: Recipe) -> str:
    amount = f"24 {recipe.makes.noun}" if recipe.makes.noun else "900 g"
    return f"{amount}; double; times 3/2"


def _in_recipe(recipe: Recipe, chosen: str) -> Iterator[Option]:
    """The ingredients that have an amount, each once, as the recipe names them."""
    lines = (line for part in recipe.components for line in part.lines)
    names = [
        line.chosen.name for line in lines if isinstance(line, IngredientLine) and line.amount is not None
    ]
    yield Option("", "", not chosen)
    if chosen and chosen not in names:
        yield Option(chosen, chosen, is_chosen=True)
    for name in dict.fromkeys(names):
        yield Option(name, name, name == chosen)


def _editions(answer: Answer, content: Content, school: School) -> Iterator[Option]:
    chosen = answer.sheet.head.edition.key
    for key in school.editions:
        yield Option(key, content.tables.editions[key].title, key == chosen)
