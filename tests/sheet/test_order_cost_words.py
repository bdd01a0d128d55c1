"""What an order costs: a product by itself, and the day as a whole."""

from fractions import Fraction
from pathlib import Path

import pytest

from sitegen.sheet.order_values import OrderCost
from tests.release.counter_school import asked, write_counter


@pytest.fixture
def counter(tmp_path: Path) -> Path:
    return write_counter(tmp_path)


def cost(root: Path) -> OrderCost:
    found = asked(root).sheet.cost
    assert found is not None
    return found


def test_ingredients_of_the_products_make_up_those_of_the_day(counter: Path) -> None:
    found = cost(counter)
    each = sum((Fraction(row.ingredients) for row in found.rows), Fraction(0))
    assert abs(each - Fraction(dict(found.totals)["ingredients"])) <= Fraction(len(found.rows), 200)


def test_charges_by_the_batch_count_once_a_product_and_by_the_piece_for_what_is_sold_so(
    counter: Path,
) -> None:
    """36 buns and 2 cakes at 0.10 a box; three ovens at 0.50; nothing by the piece for icing by weight."""
    totals = dict(cost(counter).totals)
    assert (totals["box"], totals["oven"]) == ("3.80", "1.50")


def test_hands_on_time_is_that_of_the_day_with_shared_bases_once(counter: Path) -> None:
    """10 min batter, 3 x 12 min to finish, 10 min icing once, 15 min cake: 71 min at 12.00 an hour."""
    totals = dict(cost(counter).totals)
    assert totals["hands-on time, 1\u00a0h\u00a010\u00a0min"] == "14.20"


def test_a_missing_price_makes_every_sum_that_it_touches_a_least_one(counter: Path) -> None:
    prices = counter / "content" / "prices.yaml"
    prices.write_text(prices.read_text().replace("  ground almonds: 2.00 per 200 g\n", ""))
    found = cost(counter)
    rows = {row.product: row.ingredients for row in found.rows}
    assert rows["Almond cake"].startswith("at least ")
    assert not rows["Iced buns"].startswith("at least ")
    assert dict(found.totals)["the whole day"].startswith("at least ")
    assert found.missing == ("ground almonds (no price)",)


def test_what_is_left_to_the_cook_is_named(counter: Path) -> None:
    assert cost(counter).notes[1] == (
        "Not counted, as it is left to the cook: demerara sugar and unsalted butter."
    )
