"""A market day worked by hand: sums, shared bases, eggs and packs of a small order.

Source: worked by hand with the figures that stand in `tests/release/counter_school.py`; eggs weigh 51 g, a
white 34 g and a yolk 17 g (Commission Regulation (EC) No 589/2008, the middle of grade M less its shell).
"""

from pathlib import Path

import page
import pytest

from sitegen.press.paper_press import PAPERS
from sitegen.release.order_print import order_pdf
from sitegen.sheet.order_values import OrderSheet, ShoppingRow
from tests.release.counter_school import asked, write_counter


@pytest.fixture(scope="module")
def root(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return write_counter(tmp_path_factory.mktemp("counter"))


@pytest.fixture(scope="module")
def market(root: Path) -> OrderSheet:
    return asked(root).sheet


def bought(market: OrderSheet, what: str) -> tuple[str, str]:
    rows: list[ShoppingRow] = [row for section in market.shopping for row in section.rows]
    (found,) = [row for row in rows if row.what == what]
    return found.amount.replace("\u00a0", " "), found.packs.replace("\u00a0", " ")


# 36 buns are 3 x the recipe, 2 cakes twice, and 300 g of icing half of its 600 g.
# Icing: 3 x 240 g and a tenth to spare (792 g) + 2 x 120 g + 300 g = 1,332 g, a third of it butter.
SHOPPING = [
    ("plain flour", "3 x 300 + 2 x 100 = 1,100 g", "1.1 kg", "1 pack of 1.5 kg"),
    ("unsalted butter", "1,332 / 3 = 444 g", "445 g", "2 packs of 250 g"),
    ("icing sugar", "1,332 x 2/3 = 888 g", "890 g", "1 pack of 1 kg"),
    ("ground almonds", "2 x 150 = 300 g", "300 g", "2 packs of 200 g"),
    ("sunflower oil", "3 x 100 = 300 g", "300 g", "1 pack of 1 l"),
    ("lemon juice", "2 x 30 = 60 g", "60 g", "1 pack of 100 g"),
    ("lemons", "3 x 2 = 6, for their zest", "6", "2 packs of 4"),
    ("medium eggs", "3 x 2 whole; 3 x 3 = 9 yolks and 2 x 4 = 8 whites of the same 9", "15", "2 packs of 12"),
]


@pytest.mark.parametrize(("what", "by_hand", "amount", "packs"), SHOPPING)
def test_the_shopping_list_has_the_sums_done_by_hand(
    what: str, by_hand: str, amount: str, packs: str, market: OrderSheet
) -> None:
    assert by_hand
    assert bought(market, what) == (amount, packs)


def test_nothing_else_is_bought(market: OrderSheet) -> None:
    rows = [row.what for section in market.shopping for row in section.rows]
    assert sorted(rows) == sorted(what for what, *_ in SHOPPING)
    assert [row.what for row in market.optional] == ["demerara sugar"]
    assert market.to_hand == ("unsalted butter",)


def test_the_base_is_made_once_and_weighed_out_with_what_is_to_spare(market: OrderSheet) -> None:
    """1,332 g made: 720 g for the buns, 240 g for the cakes, 300 g for the counter, 72 g left."""
    (icing,) = [one for one in market.weigh_outs if one.title == "Base icing"]
    assert [amount.replace("\u00a0", " ") for amount, _ in icing.divided] == ["720 g", "240 g", "300 g"]
    assert icing.left.replace("\u00a0", " ") == "about 70 g of Base icing; keeps 10 days in the fridge"


def test_a_white_is_left_over(market: OrderSheet) -> None:
    notes = [row.note for section in market.shopping for row in section.rows if row.what == "medium eggs"]
    assert notes[0].replace("\u00a0", " ").startswith("6 whole, 9 separated; left over: 1 white,")


def test_the_day_costs_what_it_does_by_hand(market: OrderSheet) -> None:
    """Cake: 200 g flour 0.20, 300 g almonds 3.00, 8 whites at 2/3 of 0.25 1.33, juice 0.60, icing 0.96."""
    assert market.cost is not None
    assert {row.product: row.ingredients for row in market.cost.rows}["Almond cake"] == "6.09"
    assert {row.product: row.ingredients for row in market.cost.rows}["Base icing"] == "1.20"


@pytest.mark.parametrize("paper", PAPERS)
def test_the_printed_day_keeps_every_rule_of_pdf_ua_1(root: Path, paper: str, tmp_path: Path) -> None:
    """Source: ISO 14289-1 as the package `page-validation` checks it, 104 rules."""
    file = tmp_path / "day.pdf"
    file.write_bytes(order_pdf(root, asked(root), paper))
    found = page.validate_pdf(str(file), profile="ua1")
    assert [failure.rule_id for failure in found.failures] == []
    assert found.is_compliant
