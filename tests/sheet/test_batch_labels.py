"""What a batch is called, and by what it is told: a count, a share or a tin."""

from dataclasses import replace

from sitegen.kitchen.recipe import BatchAsk, BatchKind, Component, Recipe, Tin
from sitegen.sheet.batches import batch_label
from sitegen.sheet.values import BatchLabel
from tests.sheet.pantry import Fraction, recipe, setting


def two_round(cm: int) -> Tin:
    width = Fraction(cm)
    return Tin("round", width, width, Fraction(5), width, width, number=2)


CAKES = replace(recipe(Component("Sponge", (), ())), tin=two_round(20))


def label(ask: BatchAsk | None, made: int, of: Recipe = CAKES, edition: str = "british-metric") -> BatchLabel:
    return batch_label(ask, of, Fraction(made), setting(edition))


def plain(text: str) -> str:
    return text.replace("\N{NO-BREAK SPACE}", " ")


def test_the_tested_batch_is_told_by_its_count_and_by_its_tin() -> None:
    tested = label(None, 12)
    assert plain(tested.title) == "12 cakes"
    assert plain(tested.tin) == "two 20 cm round cake tins"


def test_a_count_or_a_share_names_no_tin() -> None:
    assert label(BatchAsk(BatchKind.TIMES, times=Fraction(2)), 24).tin == ""


def test_a_batch_for_a_tin_is_told_by_it_in_the_edition_s_words() -> None:
    ask = BatchAsk(BatchKind.TIN, tin=two_round(18))
    assert plain(label(ask, 10).tin) == "two 18 cm round cake tins"
    assert "pans" in label(ask, 10, edition="us-cups").tin


def test_a_recipe_without_a_tin_names_none() -> None:
    assert label(None, 12, replace(CAKES, tin=None)).tin == ""
