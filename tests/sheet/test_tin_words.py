"""Tins as a reader can buy them."""

from dataclasses import replace

import pytest

from sitegen.faults import Place
from sitegen.kitchen.recipe import BatchAsk, BatchKind
from sitegen.kitchen.scaling import Batch
from sitegen.sheet.tin_words import batch_tin_text, tin_text
from sitegen.source.context import Context
from sitegen.source.vessels import read_tin
from tests.sheet.pantry import Fraction, recipe, setting, tables


@pytest.mark.parametrize(
    ("written", "british", "american"),
    [
        ("20 cm round", "a 20 cm round cake tin", "an 8 in round cake pan"),
        ("ring 22 cm", "a 22 cm ring tin", "an 8¾ or 9 in ring pan"),  # no 8¾ in ring is sold
        ("24 cm springform", "a 24 cm springform tin", "a 9½ in springform pan"),
        ("26 cm tart", "a 26 cm loose-bottomed tart tin", "a 10¼ or 10 in removable-bottom tart pan"),
        ("8 1/2 in square", "a 21.5 or 22 cm square tin", "an 8½ in square pan"),
        ("17 cm round", "a 17 cm round cake tin", "a 6¾ or 7 in round cake pan"),
        ("12 cm fluted tart", "a 12 cm fluted tart tin", "a 4¾ or 4½ in fluted tart pan"),
        ("900 g loaf", "a 21.5 × 11.5 cm loaf tin", "an 8½ × 4½ in loaf pan"),
        ("1 pint pudding basin", "a 550 ml pudding basin", "a 2½-cup deep heatproof bowl"),
        ("2 pint pudding basin", "a 1.1 litre pudding basin", "a 5-cup deep heatproof bowl"),
        ("four mini pudding basins", "four 150 ml pudding basins", "four ½-cup deep heatproof bowls"),
        (
            "6-hole 7 cm hemisphere",
            "a 6-hole 7 cm silicone hemisphere mould",
            "a 6-cavity 2¾ in silicone half-sphere mold",
        ),
        (
            "two 6-hole 7 cm hemispheres",
            "two 6-hole 7 cm silicone hemisphere moulds",
            "two 6-cavity 2¾ in silicone half-sphere molds",
        ),
        ("16 cm hemisphere", "a 16 cm silicone hemisphere mould", "a 6¼ or 6 in silicone half-sphere mold"),
        ("40 x 30 cm deep tray", "a 40 × 30 cm rimmed baking tray", "a 15¾ × 12 in rimmed baking sheet"),
        ("two trays", "two baking trays", "two baking sheets"),
    ],
)
def test_a_tin_is_named_as_the_region_sells_it(written: str, british: str, american: str) -> None:
    tin = read_tin(written, Place("recipe.yaml", 1, 1, 1), Context(tables()))
    assert tin_text(tin, setting("british-metric")).replace("\u00a0", " ") == british
    assert tin_text(tin, setting("us-cups")).replace("\u00a0", " ") == american


@pytest.mark.parametrize(
    ("written", "australian"),
    [
        ("20 cm round", "a 20 cm round cake pan"),
        ("two 20 cm sandwich tins", "two 20 cm sandwich pans"),
        ("muffin 12", "a 12-hole muffin pan"),
        ("bun 12", "a 12-hole patty pan"),
        ("23 cm tart", "a 23 cm loose-based flan pan"),
        ("30 x 20 cm rectangle", "a 30 × 20 cm rectangular slice pan"),
        ("two trays", "two oven trays"),
        ("1 pint pudding basin", "a 550 ml pudding basin"),
    ],
)
def test_an_australian_has_pans_and_oven_trays(written: str, australian: str) -> None:
    tin = read_tin(written, Place("recipe.yaml", 1, 1, 1), Context(tables()))
    assert tin_text(tin, setting("australian")).replace("\u00a0", " ") == australian


@pytest.mark.parametrize(
    ("times", "text"),
    [
        (Fraction(7, 5), "three baking trays"),
        (Fraction(1, 4), "a baking tray"),
        (Fraction(2), "four baking trays"),
    ],
)
def test_flat_trays_are_counted_whole_at_any_batch(times: Fraction, text: str) -> None:
    """They hold pieces, no measure of batter."""
    trays = read_tin("two trays", Place("recipe.yaml", 1, 1, 1), Context(tables()))
    buns = replace(recipe(), tin=trays)
    ask = BatchAsk(BatchKind.TIMES, times=times)
    batch = Batch(ask, times, 12 * times, None, Fraction(1))
    assert batch_tin_text(buns, batch, setting()) == text


@pytest.mark.parametrize("edition", ["british-metric", "australian"])
@pytest.mark.parametrize(
    "written",
    [
        "20 cm round",
        "two 20 cm sandwich tins",
        "20 cm square",
        "30 x 20 cm rectangle",
        "muffin 12",
        "mini-muffin 24",
        "22 cm ring",
        "23 cm tart",
        "23 cm fluted tart",
        "25 cm springform",
        "6-hole 7 cm hemisphere",
    ],
)
def test_a_tin_may_be_written_as_it_is_printed(written: str, edition: str) -> None:
    """A baker copies what she reads."""
    at, context = Place("recipe.yaml", 1, 1, 1), Context(tables())
    tin = read_tin(written, at, context)
    text = tin_text(tin, setting(edition)).replace("\u00a0", " ").replace("\u00d7", "x")
    again = read_tin(text.removeprefix("a ").removeprefix("an "), at, context)
    assert (again.width_cm, again.length_cm, again.holes, again.number) == (
        tin.width_cm,
        tin.length_cm,
        tin.holes,
        tin.number,
    )
