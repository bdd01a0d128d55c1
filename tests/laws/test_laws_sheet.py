"""What holds for every demo recipe, in every edition, at every batch that its page offers and some others."""

from fractions import Fraction
from functools import cache
from pathlib import Path

import pytest

from sitegen.kitchen.recipe import BatchAsk, BatchKind, Recipe
from sitegen.sheet.batches import offered
from sitegen.sheet.build import build_sheet
from sitegen.sheet.drift import drift_points
from sitegen.sheet.values import Sheet, SheetLine
from sitegen.source.library import read_content
from sitegen.source.school import Content

PROJECT = Path(__file__).parents[2]
SCALE_LIMIT = Fraction(25, 1000)
SCOOP_LIMIT = Fraction(3, 100)
SCANT_LIMIT = Fraction(5, 100)
EGG_LIMIT = Fraction(5, 100)
SCOOPS = ("cup", "tbsp", "tsp", "stick")
DRIFT_LIMIT = 4
ODD_FACTORS = [Fraction(1, 3), Fraction(7, 5), Fraction(29, 12), Fraction(6)]


@cache
def content() -> Content:
    return read_content(PROJECT)


def sheet(recipe: Recipe, edition: str, ask: BatchAsk | None) -> Sheet:
    tables = content().tables
    bases = {one.title: one for one in content().recipes}
    written = tables.editions["british-metric"]
    return build_sheet(recipe, bases, tables, tables.editions[edition], written, ask)


def asks(recipe: Recipe) -> list[BatchAsk | None]:
    return [*offered(recipe), *(BatchAsk(BatchKind.TIMES, times=factor) for factor in ODD_FACTORS)]


def test_the_editions_are_two_by_weight_and_two_by_cups() -> None:
    """Each is run over the whole demo below."""
    by_measuring = [edition.measuring for edition in content().tables.editions.values()]
    assert sorted(by_measuring) == ["cups", "cups", "ounces", "weight"]


RECIPES = pytest.mark.parametrize("recipe", content().recipes, ids=lambda recipe: recipe.slug)
IN_EDITIONS = pytest.mark.parametrize("edition", content().tables.editions)


def limit(line: SheetLine) -> Fraction:
    """How far a printed weight may be off: by scale, by scoop, or by the egg that nobody weighs out."""
    if "egg" in line.name:
        return EGG_LIMIT
    if "scant" in line.amount or "generous" in line.amount:
        return SCANT_LIMIT
    return SCOOP_LIMIT if any(word in line.amount for word in SCOOPS) else SCALE_LIMIT


@IN_EDITIONS
@RECIPES
def test_what_is_printed_weighs_what_is_meant(recipe: Recipe, edition: str) -> None:
    """Scales, of ounces too, within 2.5 %; scoops within 3 %, to 5 % where they say so."""
    seen = 0
    for ask in asks(recipe):
        for component in sheet(recipe, edition, ask).components:
            for line in component.lines:
                if line.exact_g is None or line.printed_g is None:
                    continue
                seen += 1
                off = abs(line.printed_g - line.exact_g) / line.exact_g
                assert off <= limit(line), (
                    f"{component.title}: {line.amount} {line.name} is {float(off):.3f} off"
                )
    assert seen


@IN_EDITIONS
@RECIPES
def test_the_balance_holds(recipe: Recipe, edition: str) -> None:
    """No ingredient moves by over 4 % of the flour (common practice)."""
    for ask in asks(recipe):
        for component in sheet(recipe, edition, ask).components:
            for line, points in zip(component.lines, drift_points(component.lines), strict=True):
                assert points is None or abs(points) <= DRIFT_LIMIT, f"{component.title}: {line.name}"


@IN_EDITIONS
@RECIPES
def test_no_line_is_lost_or_printed_as_nothing(recipe: Recipe, edition: str) -> None:
    for ask in asks(recipe):
        made = sheet(recipe, edition, ask)
        own = [one for one in made.components if not one.base_slug]
        assert [len(one.lines) for one in own] == [len(one.lines) for one in recipe.components]
        for component in made.components:
            for line in component.lines:
                assert line.name
                assert not line.amount.startswith("0\u00a0"), f"{component.title}: {line.amount} {line.name}"


@RECIPES
def test_scaling_twice_is_scaling_once_by_the_product(recipe: Recipe) -> None:
    once = sheet(recipe, "british-metric", BatchAsk(BatchKind.TIMES, times=Fraction(6)))
    base = sheet(recipe, "british-metric", BatchAsk(BatchKind.TIMES, times=Fraction(2)))
    for thrice, single in zip(once.components, base.components, strict=True):
        for big, small in zip(thrice.lines, single.lines, strict=True):
            if big.exact_g is not None and small.exact_g is not None:
                assert big.exact_g == 3 * small.exact_g


@IN_EDITIONS
@RECIPES
def test_every_step_keeps_its_time_cue_and_photo_in_every_edition(recipe: Recipe, edition: str) -> None:
    british = sheet(recipe, "british-metric", None)
    other = sheet(recipe, edition, None)
    for one, same in zip(british.components, other.components, strict=True):
        for step, alike in zip(one.steps, same.steps, strict=True):
            assert (step.hands_on, step.wait) == (alike.hands_on, alike.wait)
            assert bool(step.until) == bool(alike.until)
            assert (step.photo is None) == (alike.photo is None)
            assert "{" not in alike.text
