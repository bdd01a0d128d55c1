"""`sitegen drift` from the outside."""

import json
from fractions import Fraction
from pathlib import Path

import pytest

from sitegen.cli.drift_text import DriftTable, every_line, worst_lines
from sitegen.sheet.drift import ComponentDrift, LineDrift, SheetDrift
from tests.cli.conftest import Run


def test_every_line_of_one_recipe_in_one_edition(run: Run, school: Path) -> None:
    ran = run(school, "drift", "open-biscuits", "--edition", "us-weights")
    assert (ran.returncode, ran.stderr) == (0, "")
    assert "open-biscuits, us-weights," in ran.stdout
    assert "all-purpose flour" in ran.stdout
    assert "100.0 %" in ran.stdout


def test_without_a_recipe_each_has_a_row_an_edition_and_batch(run: Run, school: Path) -> None:
    ran = run(school, "drift")
    assert ran.returncode == 0
    heading, *rows = ran.stdout.rstrip("\n").split("\n")
    assert heading.split() == ["recipe", "edition", "batch", "moves", "most", "tested", "printed", "points"]
    assert len(rows) > len({row.split()[0] for row in rows}) > 1


def test_json_holds_every_line_with_its_points(run: Run, school: Path) -> None:
    ran = run(school, "drift", "open-biscuits", "--json")
    (first, *_) = json.loads(ran.stdout)
    assert first["recipe"] == "open-biscuits"
    (line, *_) = first["components"][0]["lines"]
    assert line["points"] == pytest.approx(line["after"] - line["before"], abs=0.002)


@pytest.mark.parametrize(
    ("arguments", "said"),
    [
        (["no-such-cake"], "there is no recipe 'no-such-cake'"),
        (["open-biscuits", "--edition", "martian"], "there is no edition 'martian'"),
    ],
)
def test_a_wrong_question_ends_with_2(run: Run, school: Path, arguments: list[str], said: str) -> None:
    ran = run(school, "drift", *arguments)
    assert ran.returncode == 2
    assert said in ran.stderr
    assert ran.stdout == ""


def test_faults_of_the_files_end_with_1(run: Run, school: Path) -> None:
    file = school / "content" / "recipes" / "open-biscuits" / "recipe.yaml"
    file.write_text(file.read_text().replace("180 g plain flour", "180 g plain flor"))
    ran = run(school, "drift")
    assert ran.returncode == 1
    assert "there is no balance to show" in ran.stderr


def line(name: str, points: str) -> LineDrift:
    return LineDrift(name, "1\u00a0cup", Fraction(50), 50 + Fraction(points), Fraction(points), 7)


def tables_of(*lines: LineDrift) -> tuple[DriftTable, DriftTable]:
    found = [SheetDrift("cake", "us-cups", "12 cakes", (ComponentDrift("Sponge", "flour", lines),))]
    return worst_lines(found), next(every_line(found))


def test_the_worst_line_is_marked_and_one_that_is_too_far_says_so() -> None:
    _, every = tables_of(line("milk", "1"), line("sugar", "-3"))
    assert [row[-1] for row in every.rows] == ["", "", "worst"]
    _, too_far = tables_of(line("milk", "4.5"), line("sugar", "-6"))
    assert [row[-1] for row in too_far.rows] == ["", "too far", "too far"]


def test_where_no_share_moves_nothing_is_named() -> None:
    worst, every = tables_of(line("milk", "0"), line("sugar", "0"))
    assert worst.rows[0][3] == "nothing"
    assert {row[-1] for row in every.rows} == {""}


def test_columns_stand_under_their_headings_without_blanks_at_the_end() -> None:
    worst, _ = tables_of(line("sugar", "-3"))
    heading, row = worst.plain().split("\n")
    assert heading.index("printed") + len("printed") == row.index("47.0 %") + len("47.0 %")
    assert row == row.rstrip()
