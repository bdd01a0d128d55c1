"""`sitegen cost` from the outside."""

import json
from pathlib import Path

import pytest

from tests.cli.conftest import Run

PRICES = """\
currency: GBP
margin: 60 %
prices:
  plain flour: 1.00 per 1 kg
  caster sugar: 1.00 per 1 kg
  unsalted butter: 10.00 per 1 kg
"""


@pytest.fixture
def priced(school: Path) -> Path:
    (school / "content" / "prices.yaml").write_text(PRICES)
    return school


def totals(run: Run, school: Path, *options: str) -> dict[str, str]:
    ran = run(school, "cost", "open-biscuits", "--json", *options)
    assert (ran.returncode, ran.stderr) == (0, "")
    return dict(json.loads(ran.stdout)["totals"])


def test_the_cost_is_shown_with_a_price_at_the_lists_margin(run: Run, priced: Path) -> None:
    """120 g butter, 60 g sugar and 180 g flour for 12 squares: 1.20 + 0.06 + 0.18."""
    ran = run(priced, "cost", "open-biscuits")
    assert (ran.returncode, ran.stderr) == (0, "")
    assert "Open biscuits, 12\u00a0squares" in ran.stdout
    assert "1.44" in ran.stdout
    assert "price of a square at a margin of 60 %" in ran.stdout
    assert totals(run, priced) == {
        "ingredients": "1.44",
        "the batch": "1.44",
        "a square": "0.12",
        "price of a square at a margin of 60 %": "0.30",
    }


@pytest.mark.parametrize("margin", ["70", "70 %"])
def test_another_batch_and_margin(run: Run, priced: Path, margin: str) -> None:
    found = totals(run, priced, "--makes", "48", "--margin", margin)
    assert found["the batch"] == "5.76"
    assert found["price of a square at a margin of 70 %"] == "0.40"


def test_work_that_grows_with_the_batch_is_paid_for_by_the_batch(run: Run, priced: Path) -> None:
    """13 minutes at 60 an hour: 13.00; four times the batch: 5 + 4 x 8 minutes."""
    (priced / "content" / "prices.yaml").write_text("labour: 60 per hour\n" + PRICES)
    recipe = priced / "content" / "recipes" / "open-biscuits" / "recipe.yaml"
    text = recipe.read_text().replace("hands-on: 8 min\n", "hands-on: 8 min\n        grows: yes\n", 1)
    recipe.write_text(text)
    assert totals(run, priced)["the batch"] == "14.44"
    assert totals(run, priced, "--makes", "48")["the batch"] == "42.76"


def test_a_missing_price_is_named(run: Run, priced: Path) -> None:
    (priced / "content" / "prices.yaml").write_text(PRICES.replace("  caster sugar: 1.00 per 1 kg\n", ""))
    ran = run(priced, "cost", "open-biscuits")
    assert ran.returncode == 0
    assert "Not in these sums: caster sugar (no price)." in ran.stdout
    assert "at least 1.38" in ran.stdout


@pytest.mark.parametrize(
    ("options", "said"),
    [
        (["--margin", "100"], "no price keeps 100 % of itself"),
        (["--margin", "much"], "no percentage"),
        (["--makes", "24", "--times", "2"], "one way"),
    ],
)
def test_a_wrong_question_is_2(run: Run, priced: Path, options: list[str], said: str) -> None:
    ran = run(priced, "cost", "open-biscuits", *options)
    assert ran.returncode == 2
    assert said in ran.stderr


def test_without_a_price_list_it_says_how_to_get_one(run: Run, school: Path) -> None:
    ran = run(school, "cost", "open-biscuits")
    assert ran.returncode == 2
    assert "content/prices.yaml" in ran.stderr


def test_a_price_list_at_fault_is_1_and_shown_at_its_word(run: Run, priced: Path) -> None:
    (priced / "content" / "prices.yaml").write_text(PRICES.replace("plain flour", "plain flor"))
    ran = run(priced, "cost", "open-biscuits")
    assert ran.returncode == 1
    assert "did you mean 'plain flour'?" in ran.stdout + ran.stderr
