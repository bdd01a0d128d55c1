"""Cups and spoons that a kitchen owns."""

from fractions import Fraction

import pytest

from sitegen.kitchen.scoops import Scoops, choose_scoops

US = (Fraction("4.92892159375"), Fraction("14.78676478125"), Fraction("236.5882365"))
METRIC = (Fraction(5), Fraction(15), Fraction(250))
AUSTRALIAN = (Fraction(5), Fraction(20), Fraction(250))


def words(scoops: Scoops | None) -> str:
    if scoops is None:
        return "weigh it"
    figures = ((scoops.cups, "cup"), (scoops.tablespoons, "tbsp"), (scoops.teaspoons, "tsp"))
    joint = " less " if scoops.is_less else " + "
    text = joint.join(f"{number} {name}" for number, name in figures if number)
    return text if scoops.fit == "exact" else f"{scoops.fit} {text}"


def us(cups: str, *, fine: bool = False, spoons_only: bool = False, tolerance: str = "0.03") -> str:
    ml = Fraction(cups) * US[2]
    return words(choose_scoops(ml, *US, fine=fine, spoons_only=spoons_only, tolerance=Fraction(tolerance)))


@pytest.mark.parametrize(
    ("cups", "printed"),
    [
        ("1", "1 cup"),
        ("1.02", "1 cup"),  # within 3 %
        ("3/4", "3/4 cup"),
        ("5/4", "5/4 cup"),
        ("8/3", "8/3 cup"),
        ("1/8", "2 tbsp"),
        ("1/16", "1 tbsp"),
        ("3/32", "1 tbsp + 3/2 tsp"),  # never 'one and a half tablespoons'
        ("1/48", "1 tsp"),
        ("1/4", "1/4 cup"),  # not four tablespoons
        ("9/16", "1/2 cup + 1 tbsp"),
        ("7/16", "1/2 cup less 1 tbsp"),  # not seven tablespoons
        ("15/16", "1 cup less 1 tbsp"),  # not 3/4 cup + 3 tbsp
        ("23/48", "1/2 cup less 1 tsp"),
        ("31/8", "15/4 cup + 1 tbsp"),
    ],
)
def test_the_fewest_scoops_within_3_percent(cups: str, printed: str) -> None:
    assert us(cups) == printed


@pytest.mark.parametrize(
    ("teaspoons", "printed"),
    [
        ("1/8", "1/8 tsp"),
        ("1/4", "1/4 tsp"),
        ("3/4", "3/4 tsp"),
        ("3/2", "3/2 tsp"),
        ("3", "1 tbsp"),
        ("6", "2 tbsp"),
    ],
)
def test_spoons(teaspoons: str, printed: str) -> None:
    assert words(choose_scoops(Fraction(teaspoons) * 5, *METRIC, fine=True, spoons_only=True)) == printed


def test_an_eighth_of_a_teaspoon_joins_nothing() -> None:
    assert words(choose_scoops(Fraction(5, 8) * 5, *METRIC, fine=True, spoons_only=True)) == "weigh it"


def test_what_is_only_spooned_never_goes_to_cups() -> None:
    assert us("1/4", spoons_only=True) == "4 tbsp"
    assert us("1/2", spoons_only=True) == "weigh it"  # nobody counts eight tablespoons


@pytest.mark.parametrize(
    ("cups", "why"),
    [
        ("0.91", "only three measures together, or one and a half tablespoons less, would do"),
        ("11", "nobody keeps count of eleven cups"),
    ],
)
def test_what_reads_worse_than_its_weight_is_weighed(cups: str, why: str) -> None:
    assert us(cups) == "weigh it", why


def test_a_sum_takes_two_measures_from_the_drawer_at_most() -> None:
    for hundredths in range(4, 1000, 3):
        chosen = choose_scoops(US[2] * hundredths / 100, *US, fine=False, spoons_only=False)
        if chosen is not None:
            assert sum(bool(one) for one in (chosen.cups, chosen.tablespoons, chosen.teaspoons)) <= 2


def test_between_3_and_5_percent_a_spoon_is_scant_or_generous() -> None:
    just_under, just_over = Fraction("0.96"), Fraction("1.04")
    # A quarter teaspoon: no finer sum of spoons is near.
    quarter = METRIC[0] / 4
    assert words(choose_scoops(quarter * just_under, *METRIC, False, True)) == "scant 1/4 tsp"
    assert words(choose_scoops(quarter * just_over, *METRIC, False, True)) == "generous 1/4 tsp"


def test_leavening_is_never_scant_nor_generous() -> None:
    assert choose_scoops(METRIC[0] / 4 * Fraction("0.96"), *METRIC, fine=True, spoons_only=True) is None


def test_a_tighter_tolerance_takes_more_scoops_or_none() -> None:
    assert us("1.02", tolerance="0.01") != us("1.02")
    assert us("0.7777", tolerance="0") == "weigh it"


@pytest.mark.parametrize(
    ("ml", "printed"),
    [
        ("20", "1 tbsp"),
        ("15", "3 tsp"),  # a British tablespoon
        ("17.5", "1 tbsp less 1/2 tsp"),
        ("35", "2 tbsp less 1 tsp"),  # not 1 tbsp + 3 tsp
        ("60", "3 tbsp"),
        ("62.5", "1/4 cup"),
        ("83.5", "1/3 cup"),
        ("100", "1/4 cup + 2 tbsp"),
        ("145", "1/2 cup + 1 tbsp"),
        ("230", "1 cup less 1 tbsp"),
        ("250", "1 cup"),  # twelve and a half tablespoons
        ("270", "1 cup + 1 tbsp"),
    ],
)
def test_australian_measures(ml: str, printed: str) -> None:
    assert words(choose_scoops(Fraction(ml), *AUSTRALIAN, fine=False, spoons_only=False)) == printed


@pytest.mark.parametrize("ml", ["0", "0.01"])
def test_less_than_the_smallest_spoon_is_weighed(ml: str) -> None:
    assert choose_scoops(Fraction(ml), *METRIC, fine=False, spoons_only=False) is None
