"""What a boiled syrup is called."""

from fractions import Fraction

import pytest

from sitegen.kitchen.sugar import SugarStage, SugarStages

STAGES = SugarStages(
    (
        SugarStage("soft ball", Fraction(112), Fraction(116), "candy-stage-tables"),
        SugarStage("firm ball", Fraction(118), Fraction(120), "candy-stage-tables"),
        SugarStage("hard ball", Fraction(120), Fraction(130), "candy-stage-tables"),
    )
)


@pytest.mark.parametrize(
    ("low", "high", "names"),
    [
        (114, 114, ("soft ball",)),
        (117, 117, ("soft ball", "firm ball")),  # between two: both
        (120, 120, ("hard ball",)),  # where two meet: the hotter
        (114, 119, ("soft ball", "firm ball")),
        (112, 125, ("soft ball", "hard ball")),
        (100, 100, ()),
        (131, 131, ()),
    ],
)
def test_a_temperature_has_its_stage(low: int, high: int, names: tuple[str, ...]) -> None:
    assert STAGES.names_of(Fraction(low), Fraction(high)) == names
