"""The notes of `written/` against what a baker would write; `tests/bench/notes.py` prints the figures."""

import pytest

from sitegen.notes.book import book_of
from sitegen.notes.note_lines import note_lines
from sitegen.notes.number_words import with_figures
from sitegen.notes.placing import placed
from sitegen.notes.values import Lore
from tests.notes.measured import TRUTH, WRITTEN, measured

SEEN_BEFORE = [name for name, truth in TRUTH.items() if truth["since"] in ("before", "after", "later")]


@pytest.mark.parametrize("name", SEEN_BEFORE)
def test_every_ingredient_is_told_in_its_component(name: str) -> None:
    found = measured(name)
    assert found.ingredients[0] == found.ingredients[1]
    assert found.placed[0] == found.placed[1]
    assert found.invented == 0


@pytest.mark.parametrize("name", SEEN_BEFORE)
def test_every_oven_and_every_wait_is_told(name: str) -> None:
    found = measured(name)
    assert found.times[0] == found.times[1]


def test_no_notes_are_without_a_truth() -> None:
    assert {path.name for path in WRITTEN.iterdir()} == TRUTH.keys()


WORDED = {
    "two hundred grams of butter and a pinch of salt": "200 g of butter and a pinch of salt",
    "bake it at one fifty fan for twenty five minutes": "bake it at 150 C fan for 25 min",
    "two large eggs, ten of them": "two large eggs, ten of them",
    "a hundred, or two": "a hundred, or two",
    "no number at all": "no number at all",
}


@pytest.mark.parametrize("said", WORDED)
def test_measures_in_words_become_figures(said: str, lore: Lore) -> None:
    assert with_figures(said, lore) == WORDED[said]


BROKEN = """Walnut cake

225 g butter, softened and cut into
   small cubes
2 tbsp instant coffee, dissolved in
   1 tbsp boiling water
- 75 g walnuts, toasted and
chopped
What goes in
4 eggs
Topping
  icing sugar 100 g

Beat the butter and sugar in a large bowl until they are
pale, then add the coffee. Bake in the oven for 25
minutes, then cool."""


def test_lines_that_a_program_broke_are_put_together_and_lists_stay_lists() -> None:
    lines = [(line.number, line.text) for line in note_lines(BROKEN)]
    assert lines == [
        (1, "Walnut cake"),
        (3, "225 g butter, softened and cut into small cubes"),
        (5, "2 tbsp instant coffee, dissolved in 1 tbsp boiling water"),
        (7, "75 g walnuts, toasted and chopped"),
        (9, "What goes in"),
        (10, "4 eggs"),
        (11, "Topping"),
        (12, "icing sugar 100 g"),
        (14, BROKEN.rpartition("\n\n")[2].replace("\n", " ")),
    ]


TABLE = """Muffins

| | metric | cups |
|---|---|---|
| plain flour | 250 g | 2 cups |
| eggs | 2 | |
| butter, melted | 90 g | 6 tbsp |

| Ingredient | % | g |
| Strong flour | 100 | 500 |
| Salt | 2 % | 10 |
"""


def test_the_heads_of_a_table_say_what_stands_below_them(lore: Lore) -> None:
    (group, *_) = book_of(note_lines(TABLE), lore).groups
    lines = [said.ingredient.line for said in group.said if said.ingredient]
    assert lines == ["250 g plain flour", "2 eggs", "90 g butter, melted", "500 g strong flour", "10 g salt"]


METHOD = """Lemon squares

Sponge
100 g butter
100 g caster sugar

Icing
200 g icing sugar
1 lemon

Cream the butter and caster sugar.
Bake at 160C fan for 20 minutes.
Mix the icing sugar with the juice of the lemon.
Spread on top.
"""


def test_a_step_goes_to_the_component_whose_ingredients_it_names(lore: Lore) -> None:
    """A step that names none stays where its neighbours are."""
    parts = placed(book_of(note_lines(METHOD), lore))
    assert [(part.title, [one.text.split()[0] for one in part.said]) for part in parts] == [
        ("Sponge", ["Cream", "Bake"]),
        ("Icing", ["Mix", "Spread"]),
    ]


def test_steps_under_a_heading_go_where_it_says(lore: Lore) -> None:
    text = METHOD.replace("Cream the", "For the icing\nCream the")
    parts = placed(book_of(note_lines(text), lore))
    assert [len(part.said) for part in parts] == [0, 4]


@pytest.mark.parametrize(
    "said", ["sixteen100g not at 50C", "twenty ²³ grams", "ten ٣ grams", "1/2twelve", "fifty½ grams"]
)
def test_figures_run_together_with_number_words_do_no_harm(said: str, lore: Lore) -> None:
    kept = with_figures(said, lore)
    assert [letter for letter in said if letter.isdigit() or letter in "½"] == [
        letter for letter in kept if letter.isdigit() or letter in "½"
    ]
