"""The work of a recipe on one clock: rows, totals, durations for machines."""

from fractions import Fraction

import pytest

from sitegen.kitchen.method import OvenSetting
from sitegen.kitchen.recipe import Component
from sitegen.sheet.conflict_words import StepsInConflict, conflict_text
from sitegen.sheet.work import Work, work_of
from tests.sheet.pantry import minutes, says, setting

FAN_160 = OvenSetting(Fraction(160), "celsius", fan=True)
BEAT = says("Beat.", hands_on_min=minutes(10))
BAKE = says("Bake.", wait_min=minutes(22, 24), oven=FAN_160)
COOL = says("Cool.", hands_on_min=minutes(2), wait_min=minutes(60))
BOIL = says("Boil.", hands_on_min=minutes(6), heat="hob")
CHILL = says("Chill.", hands_on_min=minutes(2), wait_min=minutes(90), heat="fridge")
SPONGE = Component("Sponge", (), (BEAT, BAKE, COOL))
CUSTARD = Component("Custard", (), (BOIL, CHILL))
FINISH = Component("Finish", (), (says("Fill.", hands_on_min=minutes(15), after=("Sponge", "Custard")),))


def work(*components: Component) -> Work:
    summaries = [f"Step {number}" for number in range(1, 1 + sum(len(part.steps) for part in components))]
    return work_of(components, {}, summaries, setting())


def plain(text: str) -> str:
    return text.replace("\N{NO-BREAK SPACE}", " ")


def test_the_totals_keep_the_ranges_of_the_file() -> None:
    times = work(SPONGE).times
    assert plain(times.hands_on) == "12 min"
    assert plain(times.waiting) == "1 h 20 min – 1 h 25 min"
    assert plain(times.start_to_finish) == "1 h 35 min"


def test_rows_stand_by_start_and_keep_their_ranges() -> None:
    rows = work(SPONGE).plan
    assert [(row.step, row.start, plain(row.hands_on), plain(row.wait), row.heat) for row in rows] == [
        (1, "0:00", "10 min", "", ""),
        (2, "+0:10", "", "22–24 min", "oven"),
        (3, "+0:34", "2 min", "1 h", ""),
    ]


def test_a_step_without_a_time_has_no_row() -> None:
    assert [row.step for row in work(Component("Part", (), (says("Look."), BEAT))).plan] == [2]


def test_preparation_cooking_and_total_follow_from_the_plan() -> None:
    """10 + 2 + 2 + 15 at no heat; 24 in the oven and 6 at the hob; 8 for the custard, 96 for the cake, 15.

    Source: https://schema.org/prepTime, cookTime, totalTime; durations as ISO 8601 writes them.
    """
    times = work(SPONGE, CUSTARD, FINISH).times
    assert times.hands_on_iso == "PT29M"
    assert times.cook_iso == "PT30M"
    assert times.total_iso == "PT1H59M"


def test_what_stands_at_no_heat_is_not_cooked() -> None:
    assert work(Component("Part", (), (BEAT, CHILL))).times.cook_iso == ""


def test_a_wait_on_from_the_hob_is_no_cooking() -> None:
    """It is worked at the hob and then steeps beside it for hours."""
    steep = says("Boil, then steep.", hands_on_min=minutes(5), wait_min=minutes(600), heat="hob")
    assert work(Component("Part", (), (steep,))).times.cook_iso == "PT5M"


def test_a_recipe_that_takes_no_time_has_no_picture() -> None:
    assert work(Component("Part", (), (says("Look."),))).timeline is None


def test_loads_are_told_with_the_range_of_one() -> None:
    baked = says("Bake.", wait_min=minutes(22, 24), oven=FAN_160, loads=2)
    row = work(Component("Part", (), (BEAT, baked))).plan[1]
    assert plain(row.wait) == "2 loads of 22–24 min"
    assert row.wait_min == 48


def test_work_that_grew_with_a_batch_is_printed_in_whole_minutes() -> None:
    piped = says("Pipe.", hands_on_min=minutes(8, 10).times(Fraction(4, 3)))
    assert plain(work(Component("Part", (), (piped,))).plan[0].hands_on) == "11–13 min"


def test_half_a_minute_is_told_in_seconds() -> None:
    dip = says("Dip.", hands_on_min=minutes(1).times(Fraction(1, 2)))
    assert plain(work(Component("Part", (), (dip,))).plan[0].hands_on) == "30 s"


def refused(*components: Component) -> str:
    with pytest.raises(StepsInConflict) as caught:
        work(*components)
    return conflict_text(caught.value)


def test_a_bound_that_no_order_keeps_is_told_by_its_steps() -> None:
    syrup = Component("Syrup", (), (says("Boil.", hands_on_min=minutes(5), within_min=Fraction(10)),))
    jelly = Component("Jelly", (), (says("Set.", wait_min=minutes(60), after=("Syrup",)),))
    pour = Component("Finish", (), (says("Pour.", hands_on_min=minutes(5), after=("Syrup", "Jelly")),))
    assert refused(syrup, jelly, pour) == (
        "no order of work keeps every `within` and `holds`: step 1 of 'Syrup' and step 1 of 'Finish'; "
        "what stands between them takes longer"
    )


def test_two_oven_temperatures_at_once_are_told_so() -> None:
    hot = OvenSetting(Fraction(220), "celsius", fan=True)
    five = Fraction(5)
    tart = Component("Tart", (), (says("Bake.", wait_min=minutes(30), oven=hot, within_min=five),))
    top = Component("Top", (), (says("Bake.", wait_min=minutes(30), oven=FAN_160, within_min=five),))
    join = Component("Join", (), (says("Join.", hands_on_min=minutes(5), after=("Tart", "Top")),))
    assert refused(tart, top, join).endswith(
        "step 1 of 'Top' and step 1 of 'Join'; they want the oven at two settings at one time"
    )
