"""The steps of a card in rows of two halves."""

from fractions import Fraction

import pytest

from sitegen.press.card_rows import StepRow, step_rows
from sitegen.sheet.values import SheetComponent, SheetPhoto, SheetStep, StepUse
from sitegen.sheet.work_values import PlanRow

SHORT, LONG = "Cover and leave to rise.", "Whisk without a pause and scrape the sides as you go. " * 8
PHOTO = SheetPhoto("bowl.jpg", "A bowl")


def component(title: str, *texts: str, first: int = 1, photo: SheetPhoto | None = None) -> SheetComponent:
    steps = tuple(
        SheetStep(number, text, uses=(StepUse("160\u00a0g", "caster sugar"),), photo=photo)
        for number, text in enumerate(texts, first)
    )
    return SheetComponent(title, (), steps)


def numbers(rows: tuple[StepRow, ...]) -> list[list[int]]:
    return [[cell.step.number for cell in row.cells] for row in rows]


def test_short_steps_stand_side_by_side() -> None:
    assert numbers(step_rows([component("Dough", *[SHORT] * 4)], ())) == [[1, 2], [3, 4]]


def test_long_step_is_spread_over_both_halves_where_its_neighbour_is_short() -> None:
    listed = "Whisk. " * 20
    names = ("caster sugar", "cornflour", "plain flour", "ground rice")
    uses = tuple(StepUse("160\u00a0g", name) for name in names)
    part = SheetComponent("Custard", (), (SheetStep(1, listed, uses=uses, photo=PHOTO), SheetStep(2, SHORT)))
    rows = step_rows([part], ())
    assert numbers(rows) == [[1], [2]]
    assert all(row.is_spread for row in rows)


def test_last_of_an_odd_number_is_spread() -> None:
    rows = step_rows([component("Dough", *[SHORT] * 3)], ())
    assert sorted(map(len, numbers(rows))) == [1, 2]


@pytest.mark.parametrize("photo", [None, PHOTO])
@pytest.mark.parametrize("steps", range(1, 14))
def test_every_step_stands_once_and_in_order(steps: int, photo: SheetPhoto | None) -> None:
    texts = [LONG if number % 3 == 0 else SHORT for number in range(steps)]
    rows = step_rows([component("Custard", *texts, photo=photo)], ())
    assert [number for row in numbers(rows) for number in row] == list(range(1, steps + 1))


def test_each_component_begins_once_and_may_do_so_on_the_right() -> None:
    rows = step_rows([component("Dough", SHORT), component("Glaze", SHORT, first=2)], ())
    (row,) = rows
    assert [cell.opens and cell.opens.title for cell in row.cells] == ["Dough", "Glaze"]


def test_component_without_steps_is_passed_over() -> None:
    assert step_rows([component("Bought pastry")], ()) == ()


def test_each_step_knows_when_it_starts() -> None:
    none = Fraction(0)
    plan = [PlanRow(2, "Dough", "", "0:00", "", "", none, none, none, uses_oven=False)]
    (row,) = step_rows([component("Dough", SHORT, SHORT)], plan)
    assert [cell.start for cell in row.cells] == ["", "0:00"]
