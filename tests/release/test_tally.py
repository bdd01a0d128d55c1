"""Counts in words."""

import pytest

from sitegen.faults import Fault, Place, Severity
from sitegen.release.tally import counted, tally


def test_a_count_has_its_noun() -> None:
    assert [counted(1, "recipe"), counted(2000, "recipe")] == ["1 recipe", "2,000 recipes"]
    assert [counted(1, "copy", "copies"), counted(0, "copy", "copies")] == ["1 copy", "0 copies"]


@pytest.mark.parametrize(
    ("errors", "advice", "told"),
    [
        (0, 0, "no faults"),
        (1, 0, "1 error"),
        (2, 1, "2 errors, 1 piece of advice"),
        (0, 2, "2 pieces of advice"),
    ],
)
def test_errors_and_advice_are_told_apart(errors: int, advice: int, told: str) -> None:
    kinds = [Severity.ERROR] * errors + [Severity.ADVICE] * advice
    assert tally([Fault(Place("site.yaml"), "x", "x", severity=kind) for kind in kinds]) == told
