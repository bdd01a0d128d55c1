"""`sitegen order` from the outside."""

import json
from io import StringIO
from pathlib import Path

import pytest
from rich.console import Console

from sitegen.cli.order_tables import show_order
from tests.cli.conftest import Run
from tests.release.counter_school import asked, write_counter

WEDNESDAY = "1795608000"
"""2026-11-25 12:00 UTC: on a Saturday morning there is no time left to be ready on that Saturday at nine."""


@pytest.fixture
def counter(tmp_path: Path) -> Path:
    return write_counter(tmp_path)


def test_the_day_is_printed_as_plain_text_into_a_pipe(run: Run, counter: Path) -> None:
    ran = run(counter, "order", "market", SOURCE_DATE_EPOCH=WEDNESDAY)
    assert (ran.returncode, ran.stderr) == (0, "")
    for text in ("What we make", "Shopping", "Base icing, makes about 1.35 kg", "Allergens", "Costs, GBP"):
        assert text in ran.stdout


def test_as_json_with_options(run: Run, counter: Path) -> None:
    ran = run(
        counter, "order", "market", "--json", "--no-cost", "--cooks", "2", "--ready-by", "2036-12-06 09:00"
    )
    assert (ran.returncode, ran.stderr) == (0, "")
    day = json.loads(ran.stdout)
    assert (day["title"], day["cost"]) == ("Market day", None)
    assert day["plan"]["ready"] == "09:00, Saturday 6 December 2036"


def test_on_paper(run: Run, counter: Path) -> None:
    ran = run(
        counter, "order", "market", "--pdf", "day.pdf", "--paper", "letter", SOURCE_DATE_EPOCH=WEDNESDAY
    )
    assert (ran.returncode, ran.stdout, ran.stderr) == (0, "", "written: day.pdf\n")
    assert (counter / "day.pdf").read_bytes().startswith(b"%PDF")


def test_at_a_terminal_everything_stands_in_tables(counter: Path) -> None:
    out = StringIO()
    show_order(asked(counter).sheet, Console(file=out, width=120, force_terminal=False))
    for text in (
        "2\u00a0packs of 250\u00a0g",
        "or rapeseed oil",
        "720\u00a0g for Finish",
        "the whole day",
        "almonds",
    ):
        assert text in out.getvalue()


def test_a_fault_is_shown_with_its_line_and_a_mark(run: Run, counter: Path) -> None:
    file = counter / "content" / "orders" / "market.yaml"
    file.write_text(file.read_text().replace("36 buns", "a heap"))
    ran = run(counter, "order", "market", SOURCE_DATE_EPOCH=WEDNESDAY)
    assert ran.returncode == 1
    assert "content/orders/market.yaml:4:14: error batch: 'a heap' is no batch of this recipe" in ran.stderr
    assert "    4 |   iced-buns: a heap" in ran.stderr


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (["nowhere"], "there is no order file 'nowhere'"),
        (["market", "--ready-by", "soon"], "'soon' is no hour of a day"),
        (["market", "--ready-by", "2020-01-01 09:00"], "the earliest is "),
        (["market", "--cooks", "0"], "--cooks"),
        ([], "ORDERFILE"),
    ],
)
def test_wrong_use_is_told_apart(run: Run, counter: Path, words: list[str], said: str) -> None:
    ran = run(counter, "order", *words)
    assert ran.returncode == 2
    assert said in ran.stderr


def test_the_form_of_an_order_file_is_told(run: Run, counter: Path) -> None:
    ran = run(counter, "schema", "order")
    assert json.loads(ran.stdout)["required"] == ["title", "make"]
