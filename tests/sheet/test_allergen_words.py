"""The allergen lines of a sheet: what is sure, what an alternative brings, and which packets to read."""

from dataclasses import replace

import pytest

from sitegen.kitchen.recipe import Component, IngredientLine
from sitegen.sheet.allergen_words import CHECK_LABELS, NONE_LISTED, allergen_lines
from sitegen.sheet.lines import printed_lines
from sitegen.sheet.values import SheetAlternative
from tests.sheet.pantry import Fraction, choice, line, setting

UK, US, AU = "british-metric", "us-cups", "australian"


def said(*lines: IngredientLine, edition: str = UK) -> tuple[str, ...]:
    """The allergen lines without the last, which asks to check labels."""
    return allergen_lines([Component("It", lines, ())], setting(edition))[:-1]


def labels(*lines: IngredientLine, edition: str = UK) -> str:
    """The line that asks to check labels."""
    return allergen_lines([Component("It", lines, ())], setting(edition))[-1]


def instead(first: str, *others: str) -> IngredientLine:
    return replace(line(50, "g", first), choices=tuple(choice(name) for name in (first, *others)))


def optional(name: str) -> IngredientLine:
    return replace(line(50, "g", name), optional=True)


DOUGH = (line(100, "g", "plain flour"), line(50, "g", "rye flour"), line(1, "", "egg", "medium"))


@pytest.mark.parametrize(
    ("edition", "sentence"),
    [
        (UK, "Contains: wheat, rye and eggs."),
        (US, "Contains: egg and wheat."),
        (AU, "Contains: wheat, rye, gluten and egg."),
    ],
)
def test_each_region_is_told_in_the_words_of_its_law(edition: str, sentence: str) -> None:
    assert said(*DOUGH, edition=edition) == (sentence,)


def test_oats_alone_bring_gluten_to_australia() -> None:
    assert said(line(50, "g", "porridge oats"), edition=AU) == ("Contains: oats and gluten.",)
    assert said(line(50, "g", "porridge oats"), edition=US) == (NONE_LISTED,)


def test_an_alternative_stands_apart_from_what_is_sure() -> None:
    assert said(instead("sunflower oil", "unsalted butter")) == (
        NONE_LISTED,
        "If you use the unsalted butter: contains milk.",
    )


def test_each_alternative_is_told_under_its_own_name() -> None:
    assert said(instead("pecans", "walnuts", "hazelnuts"), edition=US) == (
        "Contains: pecan.",
        "If you use the walnuts: contains walnut.",
        "If you use the hazelnuts: contains hazelnut.",
    )


def test_an_alternative_that_brings_nothing_new_is_not_told() -> None:
    assert said(line(50, "g", "whole milk"), instead("sunflower oil", "unsalted butter")) == (
        "Contains: milk.",
    )


def test_an_optional_ingredient_is_told_and_is_not_sure() -> None:
    assert said(line(50, "g", "plain flour"), optional("flaked almonds")) == (
        "Contains: wheat.",
        "With the optional flaked almonds: contains almonds.",
    )


def test_what_is_optional_here_and_certain_there_is_certain() -> None:
    assert said(line(50, "g", "ground almonds"), optional("flaked almonds")) == ("Contains: almonds.",)


@pytest.mark.parametrize(
    ("lines", "named"),
    [
        ((line(50, "g", "plain flour"),), ""),
        ((line(50, "g", "dark chocolate"),), "dark chocolate"),
        ((line(50, "g", "dark chocolate"), optional("marzipan")), "dark chocolate and marzipan"),
        ((instead("unsalted butter", "block margarine"),), "block margarine"),
        # Some baking powders hold wheat starch: no news where there is flour.
        ((line(2, "tsp", "baking powder"),), "baking powder"),
        ((line(2, "tsp", "baking powder"), line(50, "g", "plain flour")), ""),
    ],
)
def test_the_packets_that_decide_are_named(lines: tuple[IngredientLine, ...], named: str) -> None:
    assert labels(*lines) == (f"{CHECK_LABELS} Above all for {named}." if named else CHECK_LABELS)


def test_the_packet_is_named_in_the_words_of_the_edition() -> None:
    assert labels(line(50, "g", "dark chocolate"), edition=US).endswith(
        "Above all for bittersweet chocolate."
    )


def test_the_names_of_alternatives_carry_their_own_allergens() -> None:
    """So that print can emphasise them one by one."""
    component = Component("It", (instead("sunflower oil", "unsalted butter"),), ())
    printed = printed_lines(component, Fraction(1), (None,), setting(UK)).lines[0]
    assert printed.others == (SheetAlternative("or", "unsalted butter", ("milk",)),)
    assert printed.alternatives == "or unsalted butter"
    assert printed.allergens == ()
