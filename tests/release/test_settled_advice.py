"""Advice that a recipe has settled."""

from dataclasses import replace
from fractions import Fraction
from pathlib import Path

import pytest

from sitegen.faults import Fault, FaultCode, Place, Severity
from sitegen.kitchen.recipe import Makes, Recipe, SettledAdvice
from sitegen.release.proof import all_faults, proof
from sitegen.release.settled_advice import without_settled
from tests.release.small_school import write_school

ADVICE = FaultCode("balance-unusual", Severity.ADVICE, "Meaning.", "Cure.")
ERROR = FaultCode("unknown-ingredient", Severity.ERROR, "Meaning.", "Cure.")
KNOWN = {code.code: code for code in (ADVICE, ERROR)}
HERE, ELSEWHERE = (
    Place("content/recipes/bay/recipe.yaml", 3, 1, 1),
    Place("content/recipes/plum/recipe.yaml", 3),
)


def recipe(*codes: str) -> Recipe:
    settled = tuple(SettledAdvice(code, "It is meant so.", replace(HERE, line=9)) for code in codes)
    return Recipe("bay", "Bay", "", Makes(Fraction(1), "cake"), (), settled=settled, at=HERE)


def told(faults: list[Fault], *codes: str) -> list[tuple[str, int]]:
    settled = without_settled(faults, [recipe(*codes)], KNOWN)
    return [(fault.code, fault.place.line) for fault in all_faults(settled.faults, settled.idle)]


def test_settled_advice_is_not_given() -> None:
    assert told([ADVICE.fault(HERE, "a"), ADVICE.fault(HERE, "b")], "balance-unusual") == []


def test_the_same_advice_in_another_recipe_is() -> None:
    assert told([ADVICE.fault(HERE, "a"), ADVICE.fault(ELSEWHERE, "b")], "balance-unusual") == [
        ("balance-unusual", 3)
    ]


def test_settled_advice_that_is_not_given_any_more_is_told() -> None:
    assert told([], "balance-unusual") == [("nothing-to-settle", 9)]


def test_behind_an_error_nothing_is_called_idle() -> None:
    assert told([ERROR.fault(ELSEWHERE, "a")], "balance-unusual") == [("unknown-ingredient", 3)]


def test_an_error_cannot_be_settled() -> None:
    assert told([ERROR.fault(HERE, "a")], "unknown-ingredient") == [
        ("unknown-ingredient", 3), ("cannot-settle", 9),
    ]  # fmt: skip


def test_what_is_no_code_is_answered_with_the_nearest() -> None:
    (fault,) = without_settled([], [recipe("balance-unusal")], KNOWN).faults
    assert (fault.code, fault.way_out) == ("cannot-settle", "did you mean 'balance-unusual'?")


@pytest.mark.parametrize(
    ("kind", "settled", "codes"),
    [
        ("creamed cake", "", {"balance-unusual"}),
        ("creamed cake", "settled: {balance-unusual: No eggs in the cupboard.}\n", set()),
        ("shortbread", "settled: {balance-unusual: No eggs in the cupboard.}\n", {"nothing-to-settle"}),
        ("shortbread", "", set()),
    ],
)
def test_a_proof_leaves_out_what_is_settled(tmp_path: Path, kind: str, settled: str, codes: set[str]) -> None:
    path = write_school(tmp_path) / "content" / "recipes" / "open-biscuits" / "recipe.yaml"
    path.write_text(path.read_text().replace("  Dough:\n", f"  Dough:\n    kind: {kind}\n") + settled)
    own = ("balance-unusual", "nothing-to-settle")
    assert {fault.code for fault in proof(tmp_path).faults if fault.code in own} == codes
