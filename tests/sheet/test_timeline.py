"""The plan as a picture, before it is drawn."""

from fractions import Fraction
from itertools import pairwise

from sitegen.sheet.timeline import MOST_TICKS, timeline_of
from sitegen.sheet.work_values import PlanRow, Timeline


def row(
    step: int, start: int, hands_on: int, wait: int = 0, component: str = "Cake", heat: str = ""
) -> PlanRow:
    return PlanRow(
        step,
        component,
        f"Step {step}",
        "",
        "",
        "",
        Fraction(start),
        Fraction(hands_on),
        Fraction(wait),
        heat == "oven",
        heat,
    )


def drawn(*rows: PlanRow) -> Timeline:
    made = timeline_of(rows, "spoken")
    assert made is not None
    return made


def test_steps_stand_to_scale() -> None:
    lane = drawn(row(1, 0, 30), row(2, 30, 0, 60, heat="oven"), row(3, 90, 10)).lanes[0]
    assert [(bar.start, bar.free, bar.end, bar.heat) for bar in lane.bars] == [
        (0, Fraction(3, 10), Fraction(3, 10), ""),
        (Fraction(3, 10), Fraction(3, 10), Fraction(9, 10), "oven"),
        (Fraction(9, 10), 1, 1, ""),
    ]


def test_a_component_has_one_lane_in_the_order_of_beginning() -> None:
    made = drawn(row(4, 0, 5, component="Icing"), row(1, 5, 5), row(5, 10, 5, component="Icing"))
    assert [(lane.title, [bar.step for bar in lane.bars]) for lane in made.lanes] == [
        ("Icing", [4, 5]),
        ("Cake", [1]),
    ]


def test_ticks_are_round_few_and_in_order() -> None:
    for length in (7, 16, 59, 61, 128, 205, 340, 700, 1500):
        ticks = drawn(row(1, 0, length)).ticks
        assert 2 <= len(ticks) <= MOST_TICKS + 2
        assert all(one[0] < other[0] for one, other in pairwise(ticks))
        assert ticks[0] == (0, "0:00")


def test_a_long_wait_is_cut_and_told() -> None:
    """Twelve hours between an hour's work and an hour's work are drawn as 45 minutes."""
    made = drawn(row(1, 0, 60, 720), row(2, 780, 60))
    assert [label.replace("\N{NO-BREAK SPACE}", " ") for _, label in made.cuts] == ["12 h"]
    assert made.cuts[0][0] == Fraction(60 * 2 + 45, 2) / (60 + 45 + 60)
    assert made.lanes[0].bars[1].start == Fraction(60 + 45, 60 + 45 + 60)


def test_a_wait_beside_which_others_work_is_not_cut() -> None:
    beside = [row(step, 100 * step, 50, component="Icing") for step in range(1, 7)]
    assert drawn(row(9, 0, 10, 690), *beside).cuts == ()


def test_a_plan_without_time_has_no_picture() -> None:
    assert timeline_of([], "spoken") is None
