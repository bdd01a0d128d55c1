"""`sitegen captions` from the outside."""

import json
from pathlib import Path

import pytest

from tests.cli.conftest import Run

TALK = (
    "hello and welcome",
    "beat a hundred and twenty grams of butter with sixty grams of caster sugar",
    "now mix in a hundred and eighty grams of plain flour and press it flat",
    "and bake them at a hundred and fifty fan for twenty to twenty five minutes",
    "and that is that",
)
FIVE_MINUTES_MORE = "for twenty five to thirty minutes"


def film(folder: Path, *changes: tuple[str, str]) -> str:
    """Captions of the biscuits in a folder, with other words in places; the file's name."""
    text = "\n".join(TALK)
    for old, new in changes:
        text = text.replace(old, new)
    cues = (
        f"{number + 1}\n00:00:{number}0,000 --> 00:00:{number}7,000\n{line}\n"
        for number, line in enumerate(text.split("\n"))
    )
    (folder / "film.srt").write_text("\n".join(cues))
    return "film.srt"


def test_a_film_that_agrees_ends_with_0(run: Run, school: Path) -> None:
    ran = run(school, "captions", "open-biscuits", "--captions", film(school))
    assert (ran.returncode, ran.stderr) == (0, "")
    assert "Open biscuits: 3 of 3 steps found" in ran.stdout
    assert "   0:30  Dough   3  Bake." in ran.stdout
    assert "Nothing is said otherwise" in ran.stdout


def test_a_slip_is_told_with_both_figures_and_the_line_and_ends_with_1(run: Run, school: Path) -> None:
    name = film(school, ("for twenty to twenty five minutes", FIVE_MINUTES_MORE))
    ran = run(school, "captions", "open-biscuits", "--captions", name)
    assert ran.returncode == 1
    (row,) = (line for line in ran.stdout.split("\n") if "25-30 min" in line)
    assert row.split()[0] == "0:34"
    assert "written 20-25 min" in row
    assert "open-biscuits/recipe.yaml:" in row


def test_json_is_for_programs(run: Run, school: Path) -> None:
    name = film(school, ("a hundred and eighty", "two hundred"))
    found = json.loads(run(school, "captions", "open-biscuits", "--captions", name, "--json").stdout)
    assert [moment["begins_s"] for moment in found["moments"]] == [10, 20, 30]
    (finding,) = found["findings"]
    assert (finding["kind"], finding["said"], finding["written"]) == ("amount", "200 g", "180 g")
    assert finding["certain"] is True
    assert finding["line"] > 1


def test_what_the_recipe_settles_is_not_told(run: Run, school: Path) -> None:
    recipe = school / "content" / "recipes" / "open-biscuits" / "recipe.yaml"
    settled = 'said-otherwise:\n  - {at: "0:22", about: plain flour, because: It was a damp day.}\n'
    recipe.write_text(recipe.read_text() + settled)
    name = film(school, ("a hundred and eighty", "two hundred"))
    ran = run(school, "captions", "open-biscuits", "--captions", name)
    assert (ran.returncode, ran.stderr) == (0, "")


@pytest.mark.parametrize(
    ("arguments", "code", "said"),
    [
        (["open-biscuits"], 2, "'Open biscuits' has no captions"),
        (["no-such-cake"], 2, "there is no recipe 'no-such-cake'"),
        (["open-biscuits", "--captions", "none.vtt"], 1, "there is no file 'none.vtt'"),
        (["open-biscuits", "--captions", "content/site.yaml"], 1, "begins neither with WEBVTT"),
    ],
)
def test_what_cannot_be_shown_is_said(
    run: Run, school: Path, arguments: list[str], code: int, said: str
) -> None:
    ran = run(school, "captions", *arguments)
    assert ran.returncode == code
    assert said in ran.stderr
    assert ran.stdout == ""


def test_an_empty_film_tells_that_nothing_was_found(run: Run, school: Path) -> None:
    (school / "empty.vtt").write_text("WEBVTT\n")
    ran = run(school, "captions", "open-biscuits", "--captions", "empty.vtt")
    assert ran.returncode == 0
    assert "Nothing found" in ran.stdout
