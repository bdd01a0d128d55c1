"""Faults as a baker sees them."""

import pytest

from sitegen.cli.fault_text import fault_text, faults_text
from sitegen.faults import Fault, Place

FILE = "content/recipes/bay/recipe.yaml"
LINES = ("title: Bay", "ingredients:", "      - 160 g castor sugar")
FAULT = Fault(
    Place(FILE, 3, 15, 12),
    "unknown-ingredient",
    "'castor sugar' is not in the larder",
    "did you mean 'caster sugar'?",
)


def test_place_code_sentence_line_mark_and_way_out() -> None:
    assert fault_text(FAULT, LINES) == (
        f"{FILE}:3:15: error unknown-ingredient: 'castor sugar' is not in the larder\n"
        "    3 |       - 160 g castor sugar\n"
        "      |               ^^^^^^^^^^^^ did you mean 'caster sugar'?\n"
    )


def test_a_fault_of_a_whole_file_shows_no_line() -> None:
    fault = Fault(Place(FILE), "not-text", "the file is not plain text", "save it as text")
    assert (
        fault_text(fault, LINES)
        == f"{FILE}: error not-text: the file is not plain text\n      = save it as text\n"
    )


def test_a_line_that_is_gone_is_not_shown() -> None:
    assert "|" not in fault_text(FAULT, LINES[:2])


@pytest.mark.parametrize(
    ("line", "column", "mark"),
    [
        ("\t- castor", 4, "   ^"),
        ("\N{CJK UNIFIED IDEOGRAPH-7CD6}\N{CJK UNIFIED IDEOGRAPH-7CD6} castor", 4, "     ^"),
        ("cre\N{COMBINING GRAVE ACCENT}me castor", 8, "      ^"),
    ],
)
def test_the_mark_stands_below_its_word_whatever_the_letters(line: str, column: int, mark: str) -> None:
    shown = fault_text(Fault(Place(FILE, 1, column, 1), "x", "x"), [line])
    assert shown.split("\n")[2] == f"      | {mark}"


def test_a_long_line_is_cut_round_its_mark() -> None:
    line = "a" * 300 + "castor" + "b" * 300
    shown, marked = fault_text(Fault(Place(FILE, 1, 301, 6), "x", "x"), [line]).split("\n")[1:3]
    start = marked.index("^")
    assert shown[start : start + 6] == "castor"
    assert marked.count("^") == 6
    assert len(shown) < 120


def test_no_file_can_steer_the_terminal() -> None:
    shown = fault_text(Fault(Place(FILE, 1, 1, 1), "x", "a\x1b[2Jb"), ["\x1b[31mred"])
    assert "\x1b" not in shown


def test_all_faults_come_one_below_the_other() -> None:
    assert faults_text([FAULT, FAULT], {FILE: LINES}) == fault_text(FAULT, LINES) * 2
