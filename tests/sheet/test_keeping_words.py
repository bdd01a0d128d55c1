"""How long things keep, as a sheet says it."""

from dataclasses import replace
from fractions import Fraction

import pytest

from sitegen.kitchen.amounts import Span
from sitegen.kitchen.recipe import Component, Keeps, Makes, Recipe
from sitegen.sheet.build import build_sheet
from sitegen.sheet.keeping_words import hours_text, keeps_text
from tests.sheet.pantry import line, part, recipe, says, tables

DAY = 24
NEVER = Span(Fraction(0), Fraction(0))


def hours(low: int, high: int | None = None) -> Span:
    return Span(Fraction(low), Fraction(high or low))


def kept(title: str, note: str = "", **places: Span) -> Component:
    keeping = tuple(Keeps(place, span) for place, span in places.items())
    return Component(title, (line(100, "g", "caster sugar"),), (says("Stir."),), keeps=note, keeping=keeping)


@pytest.mark.parametrize(
    ("span", "text"),
    [
        (hours(4), "4 hours"),
        (hours(1), "1 hour"),
        (hours(12), "12 hours"),
        (hours(24), "1 day"),
        (hours(48, 72), "2–3 days"),
        (hours(36), "36 hours"),
        (hours(7 * 24), "1 week"),
        (hours(10 * 24), "10 days"),
        (hours(14 * 24), "2 weeks"),
        (hours(60 * 24), "2 months"),
        (hours(365 * 24), "1 year"),
    ],
)
def test_hours_are_said_in_the_longest_unit_that_fits(span: Span, text: str) -> None:
    assert hours_text(span) == text.replace(" ", "\u00a0")


@pytest.mark.parametrize(
    ("component", "text"),
    [
        (kept("A", "2 days, covered"), "2 days, covered"),
        (kept("A", room=hours(48)), "2 days at room temperature"),
        (
            kept("A", "covered", fridge=hours(48), freezer=NEVER),
            "2 days in the fridge (not in the freezer), covered",
        ),
        (
            kept("A", room=hours(24), fridge=hours(72), freezer=hours(720)),
            "1 day at room temperature, 3 days in the fridge or 1 month in the freezer",
        ),
        (kept("A", room=NEVER), "not at room temperature"),
        (kept("A"), ""),
    ],
)
def test_a_part_says_its_places_then_its_note(component: Component, text: str) -> None:
    assert keeps_text(component).replace("\u00a0", " ") == text


def keeping(edition: str, *components: Component) -> list[tuple[str, str]]:
    own = tables()
    made = recipe(*components)
    sheet = build_sheet(made, {made.title: made}, own, own.editions[edition], own.editions["british-metric"])
    return [(what, how_long.replace("\u00a0", " ")) for what, how_long in sheet.keeping]


SPONGE = kept("Sponge", room=hours(3 * DAY))
CUSTARD = kept("Custard", fridge=hours(2 * DAY), freezer=NEVER)
ASSEMBLY = Component("Assembly", (part("Sponge", 1), part("Custard", 1)), (says("Fill."),))


def test_the_piece_says_which_part_decides_and_how_long_it_may_stand_out() -> None:
    assert keeping("british-metric", SPONGE, CUSTARD, ASSEMBLY)[-1] == (
        "Assembled",
        "estimate: 2 days in the fridge (Custard decides); not in the freezer; no more than 4 hours in all "
        "out of the fridge",
    )


def test_in_the_united_states_it_stands_out_half_as_long() -> None:
    assert "no more than 2 hours" in keeping("us-cups", SPONGE, CUSTARD, ASSEMBLY)[-1][1]


def test_the_last_component_gives_its_note_to_the_piece() -> None:
    last = replace(ASSEMBLY, keeps="covered", keeping=(Keeps("fridge", hours(DAY)),))
    rows = keeping("british-metric", SPONGE, CUSTARD, last)
    assert [what for what, _ in rows] == ["Sponge", "Custard", "Assembled"]
    assert rows[-1][1].startswith("estimate: 1 day in the fridge; ")
    assert rows[-1][1].endswith("; covered")


def test_where_the_baker_speaks_of_the_piece_in_words_they_stand() -> None:
    last = replace(ASSEMBLY, keeps="eat the same day")
    assert keeping("british-metric", SPONGE, CUSTARD, last)[-1] == ("Assembly", "eat the same day")


def test_a_single_part_is_no_assembled_piece() -> None:
    assert keeping("british-metric", SPONGE) == [("Sponge", "3 days at room temperature")]


@pytest.mark.parametrize(("edition", "out"), [("british-metric", "4 hours"), ("us-cups", "2 hours")])
def test_a_single_part_that_must_be_chilled_says_how_long_it_may_stand_out(edition: str, out: str) -> None:
    assert keeping(edition, CUSTARD) == [
        (
            "Custard",
            f"2 days in the fridge (not in the freezer); no more than {out} in all out of the fridge",
        )
    ]


def test_what_is_usual_for_a_thing_is_said_to_be_that() -> None:
    custard = Component(
        "Vanilla custard",
        (line(300, "g", "whole milk"), line(4, "", "egg yolks"), line(20, "g", "cornflour")),
        (says("Boil."),),
    )
    last = Component("Assembly", (part("Sponge", 1), part("Vanilla custard", 1)), (says("Fill."),))
    (_, text) = keeping("british-metric", SPONGE, custard, last)[-1]
    assert "2 days in the fridge (Vanilla custard decides, by what is usual for pastry cream)" in text


def test_the_words_are_respelled_for_the_region() -> None:
    tin = kept("Biscuits", "in an airtight tin", room=hours(DAY))
    assert keeping("us-cups", tin)[0][1].endswith("in an airtight container")


def test_a_base_recipe_counts_as_a_part() -> None:
    base = Recipe("b", "Base custard", "", Makes(Fraction(1), "bowl"), (CUSTARD,))
    cake = recipe(SPONGE, Component("Assembly", (part("Base custard", 1, base=True),), (says("Fill."),)))
    own = tables()
    written = own.editions["british-metric"]
    sheet = build_sheet(cake, {base.title: base, cake.title: cake}, own, written, written)
    assert "Base custard decides" in sheet.keeping[-1][1]
