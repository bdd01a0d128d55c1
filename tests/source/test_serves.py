"""How many a recipe serves, and what its components lose in the oven."""

from fractions import Fraction
from pathlib import Path

import pytest

from sitegen.kitchen.amounts import Span
from sitegen.source.library import read_content
from sitegen.source.misread import Misread
from sitegen.source.serves import read_serves


@pytest.mark.parametrize(("text", "low", "high"), [("8", 8, 8), ("8-10", 8, 10), ("8 to 10", 8, 10)])
def test_portions_are_a_number_or_two(text: str, low: int, high: int) -> None:
    assert read_serves(text) == Span(Fraction(low), Fraction(high))


@pytest.mark.parametrize("text", ["a crowd", "8 people", "0", "2 1/2", "8-10.5", "1000000"])
def test_anything_else_is_misread(text: str) -> None:
    with pytest.raises(Misread):
        read_serves(text)


def test_a_recipe_file_says_both() -> None:
    content = read_content(Path(__file__).parent / "sample_school")
    (cupcakes,) = [recipe for recipe in content.recipes if recipe.slug == "blackcurrant-and-bay-cupcakes"]
    assert cupcakes.serves == Span(Fraction(12), Fraction(12))
    sponge = cupcakes.component("Bay sponge")
    assert sponge is not None
    assert sponge.bake_loss == Fraction(1, 10)
