"""What a publish says when it is done, as text of so many columns."""

import json

import pytest

from sitegen.cli.build_record import build_record
from sitegen.cli.closing_table import closing_table
from sitegen.cli.figures import duration, size
from sitegen.cli.step_log import StepRow
from sitegen.release.report import BuiltFile, Changes, Report, changes_since
from sitegen.release.steps import Step

STEPS = (
    StepRow(Step.READ, seconds=0.42),
    StepRow(Step.CARDS, seconds=75.2, made=2, reused=1042),
)


def school(recipes: int, edited: int = 0, theme: str = "1") -> Report:
    """A school in which so many recipes were edited since `recipes` of them were built."""
    files, inputs = {}, {"themes/plain/styles/1-page.css": theme}
    for number in range(recipes):
        slug = f"bake-{number:04}"
        mark = theme + ("2" if number < edited else "1")
        inputs[f"content/recipes/{slug}/recipe.yaml"] = mark[1:]
        about = (slug, "base-cream")
        for page in range(3):
            path = f"public/recipes/{slug}/{page}.html"
            files[path] = BuiltFile(size=30_000, sha256=mark, about=about)
        files[f"subscribers/cards/{slug}.pdf"] = BuiltFile(size=300_000, sha256=mark, about=about)
        files[f"public/pictures/{slug}.jpg"] = BuiltFile(size=90_000, sha256="1", about=about)
    files["public/index.html"] = BuiltFile(size=20_000, sha256=f"{theme}{edited}")
    return Report(on="2026-07-15", sitegen="0.1.0", changes=Changes(), files=files, inputs=inputs)


def since(before: Report | None, now: Report) -> Report:
    return now.model_copy(update={"changes": changes_since(before, now.files, now.inputs)})


def shown(report: Report, width: int = 80) -> str:
    return closing_table("output", report, STEPS, width, str)


def part(text: str, heading: str) -> str:
    return next(each for each in text.split("\n\n") if each.startswith(heading))


def test_one_figure_in_one_recipe_is_told_in_three_lines() -> None:
    why = part(shown(since(school(12), school(12, edited=1))), "What changed, and why")
    assert why.split("\n")[1:] == [
        "  content/recipes/bake-0000/recipe.yaml",
        "      bake-0000: 3 pages, 1 card changed",
        "  The site's own pages, lists and files: 1 page changed",
        "  As before: 56 files",
    ]


def test_each_tree_and_kind_has_its_row() -> None:
    rows = [line.split() for line in shown(since(school(12), school(12, edited=1))).split("\n")]
    assert ["public", "49", "2.2", "MB", "-", "4", "-", "45"] in rows
    assert ["pictures", "12", "1.1", "MB", "-", "-", "-", "12"] in rows
    assert ["subscribers", "12", "3.6", "MB", "-", "1", "-", "11"] in rows


def test_many_edited_recipes_are_told_together() -> None:
    why = part(shown(since(school(900), school(900, edited=800))), "What changed, and why")
    assert "  800 recipe files\n      800 recipes, such as bake-0000 and bake-0001: 2,400 pages, 800" in why
    assert len(why.split("\n")) < 8


def test_a_changed_theme_is_told_once_for_all_recipes() -> None:
    why = part(shown(since(school(30), school(30, theme="2"))), "What changed, and why")
    assert why.count("themes/plain/styles/1-page.css") == 1
    assert "30 recipes, such as bake-0000 and bake-0001: 90 pages, 30 cards changed" in why


def test_a_recipe_that_goes_is_told_by_its_name() -> None:
    """Its file lies among the inputs of the last build and no more among those of this one."""
    text = shown(since(school(3), school(2)))
    assert "bake-0002: 3 pages, 1 card, 1 picture gone" in part(text, "What changed, and why")
    assert ["cards", "2", "600", "kB", "-", "-", "1", "2"] in [line.split() for line in text.split("\n")] or (
        ["subscribers", "2", "600", "kB", "-", "-", "1", "2"] in [line.split() for line in text.split("\n")]
    )


def test_a_build_without_changes_is_told_in_a_sentence() -> None:
    assert "Nothing has changed: 61 files as before." in shown(since(school(12), school(12)))


def test_a_first_build_lists_no_changes() -> None:
    text = shown(since(None, school(12)))
    assert text.split("\n")[0] == "output: 61 files, 5.8 MB, for 2026-07-15 (first build)"
    assert "What changed" not in text


@pytest.mark.parametrize("width", [50, 80, 120])
def test_nothing_is_wider_than_the_terminal(width: int) -> None:
    for report in (since(school(9), school(9, edited=5)), since(school(900), school(900, edited=800))):
        assert max(map(len, shown(report, width).split("\n\nSteps")[0].split("\n"))) <= width


def test_steps_tell_their_time_and_what_was_kept() -> None:
    rows = [line.split() for line in part(shown(school(1)), "Steps").split("\n")]
    assert rows[1] == ["1", "read", "the", "folder", "0.4", "s"]
    assert rows[2] == ["4", "print", "the", "cards", "1", "min", "15", "s", "2", "1,042"]
    assert rows[3] == ["in", "all", "1", "min", "16", "s"]


def test_the_record_has_the_same_figures() -> None:
    record = json.loads(build_record(since(school(12), school(12, edited=1)), STEPS))
    assert record["files"] == {"all": 61, "new": 0, "changed": 5, "gone": 0, "as-before": 56}
    assert record["seconds"] == 75.62
    assert record["steps"][1] == {"step": "print the cards", "seconds": 75.2, "made": 2, "reused": 1042}


def test_figures_in_words() -> None:
    assert [size(count) for count in (0, 999, 1000, 12_345, 999_600, 4_140_000_000)] == [
        "0 bytes", "999 bytes", "1.0 kB", "12 kB", "1.0 MB", "4.1 GB"
    ]  # fmt: skip
    assert [duration(seconds) for seconds in (0.04, 59.4, 59.6, 125, 3840)] == [
        "0.0 s", "59.4 s", "1 min 00 s", "2 min 05 s", "1 h 04 min"
    ]  # fmt: skip
