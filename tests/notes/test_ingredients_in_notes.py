"""Untidy ingredient lines -> the lines that our format reads."""

import pytest

from sitegen.kitchen.amounts import NOWHERE
from sitegen.notes.ingredients import ingredient_of
from sitegen.notes.values import Lore
from sitegen.source.lines import read_line

LINES = {
    "150g plain flour": "150 g plain flour",
    "plain flour – 150g": "150 g plain flour",
    "Caster sugar 160 g": "160 g caster sugar",
    "strong white flour 500g": "500 g strong white flour",
    "Milk: 200 ml": "200 ml milk",
    "eggs x 2": "2 eggs",
    "Eggs 3 medium": "3 medium eggs",
    "2 lge eggs": "2 large eggs",
    "4oz soft butter": "4 oz butter, soft",
    "1½ tsp baking powder": "1½ tsp baking powder",
    "1 1/2 cups (180g) all-purpose flour": "180 g plain flour",
    "2 T bourbon (optional)": "2 tbsp bourbon (optional)",
    "1 t. vanilla": "1 tsp vanilla",
    "3 tbsp. marmalade": "3 tbsp marmalade",
    "1 cup packed light brown sugar": "1 cup soft light brown sugar, packed",
    "1 stick butter, melted": "1 stick butter, melted",
    "2 x 400 g tins condensed milk": "800 g condensed milk",
    "1 x 400 g tin coconut milk": "400 g coconut milk",
    "1 (14 oz) can sweetened condensed milk": "14 oz condensed milk",
    "instant yeast 7g sachet x 1": "7 g instant yeast",
    "2 sachets (7g each) instant yeast": "14 g instant yeast",
    "200 g/7 oz dark chocolate, chopped": "200 g dark chocolate, chopped",
    "1,5 kg flour": "1.5 kg flour",
    "a good pinch of salt": "1 pinch salt, good",
    "a pinch of salt": "a pinch of salt",
    "handful of walnuts - optional": "walnuts, handful, optional",
    "1 tin condensed milk": "condensed milk, 1 tin",
    "salt to taste": "salt to taste",
    "juice of ½ lemon": "juice of ½ lemon",
    "juice 1 lemon": "juice of 1 lemon",
    "zest and juice of 1 lemon": "1 lemon, zest and juice",
    "cardamom 2 heaped tsp ground": "2 tsp ground cardamom, heaped",
    "about 150 ml milk, plus extra for brushing": "150 ml milk (about), with extra for brushing",
    "sunflower oil or vegetable oil 50 ml": "50 ml sunflower oil or vegetable oil",
    "12-15 walnut halves": "12-15 walnut halves",
    "500 g of Base buttercream": "500 g of Base buttercream",
}


@pytest.mark.parametrize("written", LINES)
def test_a_line_is_put_into_our_words(written: str, lore: Lore) -> None:
    found = ingredient_of(written, lore)
    assert found is not None
    assert (found.line, found.known) == (LINES[written], True)


@pytest.mark.parametrize("written", LINES)
def test_the_reader_of_lines_takes_it(written: str, lore: Lore) -> None:
    found = ingredient_of(written, lore)
    assert found is not None
    assert read_line(found.line, NOWHERE, lore.context).text == found.line


@pytest.mark.parametrize(
    "written",
    ["Sift the flour into a bowl", "Bake for 20 minutes", "My mum's favourite", "", "350", "x" * 400],
)
def test_what_is_no_ingredient_is_none(written: str, lore: Lore) -> None:
    found = ingredient_of(written, lore)
    assert found is None or not found.has_amount


def test_a_sum_of_measures_is_one_amount_in_the_smaller(lore: Lore) -> None:
    """A metric cup is 250 ml and a tablespoon 15 ml: 16 2/3 spoons and 2 more (data/measures.txt)."""
    found = ingredient_of("1 cup plus 2 tbsp sugar", lore)
    assert found is not None
    assert found.line == "18 2/3 tbsp sugar"


def test_what_the_larder_lacks_keeps_its_amount_and_is_told(lore: Lore) -> None:
    found = ingredient_of("1 tbsp pomegranate molasses", lore)
    assert found is not None
    assert (found.line, found.known, found.name) == (
        "1 tbsp pomegranate molasses", False, "pomegranate molasses",
    )  # fmt: skip


@pytest.mark.parametrize("word", ["peanut", "almond", "dried", "smoked"])
def test_a_word_that_makes_another_ingredient_of_it_is_never_taken_for_a_preparation(
    word: str, lore: Lore
) -> None:
    """'150 g peanut flour' is no flour that is peanut."""
    found = ingredient_of(f"150 g {word} flour", lore)
    assert found is None or not found.known or word in found.name


def test_an_amount_in_brackets_that_would_follow_no_batch_is_left_out_of_the_line(lore: Lore) -> None:
    found = ingredient_of("whole milk 280ml (warm it to about 35C)", lore)
    assert found is not None
    assert found.line == "280 ml whole milk"


SUMS_AND_WORDS = {
    "1 lb 2 oz flour": "18 oz flour",
    "1-1/2 cups sugar": "1 1/2 cups sugar",
    "a 400g tin of condensed milk": "400 g condensed milk",
    "60g walnuts/pecans": "60 g walnuts or pecans",
    "Water 680": "680 g water",
    "8oz s.r. flour": "8 oz self-raising flour",
    "5 medium free-range egg whites": "5 medium egg whites, free-range",
    "3 balls stem ginger, finely chopped": "3 stem ginger, balls, finely chopped",
    "80gplain flour": "80 g plain flour",
    "Peel of 1 lemon": "zest of 1 lemon",
    "5 each apples, peeled": "5 apples, each, peeled",
    "flour, plain - 175g": "175 g plain flour",
    "raspberry jam - 5 heaped tbsp": "5 tbsp raspberry jam, heaped",
    "cold water, about 1 tbsp": "1 tbsp cold water (about)",
    "3 x 100g bars dark chocolate 70%": "300 g dark chocolate (70%)",
    "15g/½oz demerara sugar to finish": "15 g demerara sugar, to finish",
    "2 t gr. ginger": "2 tsp ground ginger",
    "6 eggs (lge)": "6 large eggs",
    "dozen eggs": "12 eggs",
    "3 fl oz milk": "3 fl oz milk",
    "½ nutmeg": "½ nutmeg",
}


@pytest.mark.parametrize("written", SUMS_AND_WORDS)
def test_what_bakers_leave_out_and_run_together_is_told(written: str, lore: Lore) -> None:
    found = ingredient_of(written, lore)
    assert found is not None
    assert (found.line, found.known) == (SUMS_AND_WORDS[written], True)


def test_a_bare_figure_that_is_read_as_grams_is_told(lore: Lore) -> None:
    found = ingredient_of("Salt 20", lore)
    assert found is not None
    assert (found.line, found.remark) == ("20 g salt", "the notes have no unit here: read as grams")


def test_what_is_counted_stays_a_count(lore: Lore) -> None:
    for written in ("24 blackcurrants", "12 pecans", "10 bay leaves"):
        found = ingredient_of(written, lore)
        assert found is not None
        assert (found.line, found.remark) == (written, "")
