"""The README's table of limits says what the program holds to."""

import re
from pathlib import Path

import pytest

from sitegen import limits

README = (Path(__file__).parents[1] / "README.md").read_text(encoding="utf-8")
SAID = {
    "a text file": limits.TEXT_BYTES // 1_000_000,
    "a line of it": limits.LINE_CHARACTERS,
    "values in a YAML file": limits.VALUES,
    "levels in each other": limits.DEPTH,
    "a key": limits.KEY_CHARACTERS,
    "a technique page, `notes`, `about`": limits.MARKDOWN_CHARACTERS,
    "marks of Markdown in a paragraph": limits.PARAGRAPH_MARKS,
    "quotes and lists in each other": limits.MARKDOWN_DEPTH,
    "components": limits.COMPONENTS,
    "lines, or steps, of a component": limits.LINES,
    "steps, with those of base recipes": limits.STEPS,
    "batches": limits.BATCHES,
    "other lists of a recipe, what an order makes": limits.ENTRIES,
    "prices": limits.PRICES,
    "cues of a film's captions": limits.CUES,
    "the captions' file": limits.CAPTION_BYTES // 1_000_000,
    "lines of notes for a draft": limits.NOTE_LINES,
    "a picture": limits.PICTURE_BYTES // 1_000_000,
    "its pixels": limits.PICTURE_PIXELS // 1_000_000,
    "its longer side": limits.PICTURE_SIDE,
    "its colour profile": limits.PICTURE_PROFILE_BYTES // 1_000_000,
}
"""What the table calls it -> the figure, in the table's unit."""


def rows() -> dict[str, int]:
    section = README.split("### Limits\n", 1)[1].split("\n#", 1)[0]
    cells = re.findall(r"^\| (.+?) \| ([\d,]+)\D*\|$", section, re.MULTILINE)
    return {name: int(figure.replace(",", "")) for name, figure in cells}


@pytest.mark.parametrize("name", SAID)
def test_the_table_names_the_limit(name: str) -> None:
    assert rows()[name] == SAID[name]


def test_the_table_names_no_other() -> None:
    assert rows().keys() == SAID.keys()
