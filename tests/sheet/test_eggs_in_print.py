"""Eggs in every edition: counted or weighed, whole or in parts, they are the same thing."""

import pytest

from sitegen.kitchen.amounts import NOWHERE
from sitegen.kitchen.method import Reference
from sitegen.kitchen.recipe import BatchAsk, BatchKind, Component, IngredientLine
from sitegen.kitchen.scaling import batch_of
from sitegen.sheet.build import build_sheet
from sitegen.sheet.egg_note import egg_note
from sitegen.sheet.lines import printed_lines
from sitegen.sheet.values import SheetLine
from sitegen.source.context import Context
from sitegen.source.lines import read_line
from sitegen.source.prose import read_prose
from tests.sheet.pantry import Fraction, recipe, says, setting, tables

EDITIONS = ("british-metric", "us-cups", "us-weights", "australian")
CONTEXT = Context(tables())
WHITES = ("3 egg whites", "102 g egg white", "102 g egg whites", "whites of 3 eggs", "3 eggs, whites only")


def read(text: str) -> IngredientLine:
    found = read_line(text, NOWHERE, CONTEXT)
    assert isinstance(found, IngredientLine)
    return found


def printed(text: str, edition: str, times: str = "1") -> SheetLine:
    one = Component("Meringue", (read(text),), ())
    return printed_lines(one, Fraction(times), (None,), setting(edition)).lines[0]


def words(line: SheetLine) -> str:
    """'3 large | 102 g | egg whites | plus ...'"""
    return " | ".join((line.amount, line.beside, line.name, line.extra)).replace("\u00a0", " ")


@pytest.mark.parametrize("edition", EDITIONS)
@pytest.mark.parametrize("text", WHITES)
def test_whites_by_the_count_or_by_weight_weigh_the_same(text: str, edition: str) -> None:
    """Three whites of UK medium eggs, 34 g each."""
    assert printed(text, edition).exact_g == 102


@pytest.mark.parametrize("edition", EDITIONS)
@pytest.mark.parametrize("text", WHITES)
def test_whites_are_printed_with_a_count_a_weight_and_what_they_are(text: str, edition: str) -> None:
    said = words(printed(text, edition))
    assert "3 " in said
    assert "102 g" in said or "3½ oz" in said
    assert "white" in said


@pytest.mark.parametrize(
    ("text", "edition", "said"),
    [
        ("3 egg whites", "british-metric", "3 medium | 102 g | egg whites | "),
        ("102 g egg white", "british-metric", "102 g |  | egg white | from 3 medium eggs"),
        ("3 egg whites", "us-cups", "3 large | 102 g | egg whites | "),
        ("102 g egg white", "us-cups", "3 large | 102 g | egg whites | "),
        ("90 g egg white", "us-cups", "2 large | 90 g | egg whites | plus 24 g of another, beaten"),
        ("90 g egg white", "british-metric", "90 g |  | egg white | from 3 medium eggs"),
        ("70 g egg white", "british-metric", "70 g |  | egg white | from 2 medium eggs"),
        ("100 g egg, beaten", "us-cups", "2 large | 100 g | eggs | beaten"),
        ("30 g egg", "us-cups", "30 g | 1 oz | egg | from 1 large egg, beaten"),
        ("1 egg, white only", "british-metric", "1 medium | 34 g | egg | white only"),
        ("whites of 3 eggs", "british-metric", "3 medium | 102 g | eggs | whites only"),
        ("yolks of 2 eggs", "us-cups", "2 large | 34 g | eggs | yolks only"),
    ],
)
def test_an_egg_line_in_full(text: str, edition: str, said: str) -> None:
    assert words(printed(text, edition)) == said


@pytest.mark.parametrize("edition", EDITIONS)
@pytest.mark.parametrize("times", ["1/2", "1", "3/2", "7/3", "5"])
@pytest.mark.parametrize("text", ["3 egg whites", "102 g egg white", "2 eggs", "5 egg yolks"])
def test_no_edition_and_no_batch_prints_a_fraction_of_an_egg(text: str, times: str, edition: str) -> None:
    line = printed(text, edition, times)
    assert not set(line.amount.removesuffix("oz")) & set("½⅓¼⅔¾") or line.amount.endswith("oz")
    assert line.printed_g is not None
    assert line.exact_g is not None
    assert abs(line.printed_g - line.exact_g) <= Fraction(5, 100) * line.exact_g


@pytest.mark.parametrize("edition", EDITIONS)
@pytest.mark.parametrize("text", ["3 egg whites", "102 g egg white"])
def test_a_step_takes_all_of_it_by_either_name(text: str, edition: str) -> None:
    """One and a half times three whites is no whole number of eggs: the step says the rest too."""
    lines = (read(text),)
    prose = read_prose("Whisk the {egg whites}.", NOWHERE, lines, CONTEXT)
    assert isinstance(prose[1], Reference)
    made = recipe(Component("Meringue", lines, (says(*_parts(prose)),)))
    ask = BatchAsk(BatchKind.TIMES, times=Fraction(3, 2))
    editions = tables().editions
    sheet = build_sheet(made, {}, tables(), editions[edition], editions["british-metric"], ask)
    (use,) = sheet.components[0].steps[0].uses
    line = sheet.components[0].lines[0]
    assert use.amount.startswith(line.amount)
    assert ("+" in use.amount) == ("plus" in line.extra)


def _parts(prose: tuple[object, ...]) -> list[str | Reference]:
    return [part if isinstance(part, Reference) else str(getattr(part, "text", "")) for part in prose]


@pytest.mark.parametrize("written", ["3 egg whites", "102 g egg white", "whites of 3 eggs"])
@pytest.mark.parametrize("in_hand", ["6 egg whites", "204 g egg white", "whites of 6 eggs"])
def test_whites_in_hand_decide_the_batch_however_they_are_written(written: str, in_hand: str) -> None:
    meringue = recipe(Component("Meringue", (read(written), read("200 g caster sugar")), ()))
    ask = BatchAsk(BatchKind.USING, using=read(in_hand))
    assert batch_of(ask, meringue, {}, tables(), tables().editions["british-metric"]).factor == 2


@pytest.mark.parametrize(
    ("text", "edition", "said"),
    [
        (
            "2 medium eggs",
            "british-metric",
            "Eggs are UK medium (53–63 g in the shell): about 51 g without it, white 34 g, yolk 17 g.",
        ),
        (
            "100 g egg",
            "us-cups",
            "Eggs are US large (57–64 g in the shell): about 50 g without it, white 33 g, yolk 17 g.",
        ),
        (
            "1 extra large egg",
            "british-metric",
            "Eggs are UK extra large (73 g or more in the shell): "
            "about 67 g without it, white 45 g, yolk 22 g.",
        ),
        (
            "1 small egg",
            "british-metric",
            "Eggs are UK small (under 53 g in the shell): about 44 g without it, white 29 g, yolk 15 g.",
        ),
        ("1 tbsp beaten egg", "british-metric", ""),
        ("2 lemons", "british-metric", ""),
    ],
)
def test_the_small_print_says_what_an_egg_weighs(text: str, edition: str, said: str) -> None:
    note = egg_note((Component("Sponge", (read(text),), ()),), setting(edition))
    assert note.replace("\u00a0", " ") == said


def test_every_size_of_a_recipe_stands_in_the_small_print_once() -> None:
    lines = tuple(map(read, ("2 medium eggs", "1 large egg", "3 medium eggs")))
    note = egg_note((Component("Sponge", lines, ()),), setting())
    assert note.count("UK medium") == note.count("UK large") == 1


@pytest.mark.parametrize(
    ("text", "edition", "times", "said"),
    [
        ("2-3 medium eggs", "british-metric", "1", "2–3 medium | 102–153 g | eggs | "),
        ("2-3 medium eggs", "us-cups", "1", "2–3 large | 102–153 g | eggs | "),
        ("1-2 egg yolks", "australian", "3", "3–6 extra-large | 51–102 g | egg yolks | "),
        # 2.4 to 3.6 of the other region's eggs are no eggs to count.
        ("2-3 large eggs", "us-cups", "1", "120–180 g | 4¼–6¼ oz | eggs | from 4 large eggs"),
        ("150-200 g egg white", "us-cups", "1", "150–200 g | 5¼–7 oz | egg white | from 6 large eggs"),
    ],
)
def test_a_range_of_eggs_stays_a_range(text: str, edition: str, times: str, said: str) -> None:
    assert words(printed(text, edition, times)) == said
