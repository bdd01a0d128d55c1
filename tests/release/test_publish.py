"""A whole build: what it writes, what it keeps, and that it is the same everywhere."""

import os
import shutil
import signal
import subprocess
import sys
import time
from datetime import UTC, date, datetime
from pathlib import Path

import pytest

from sitegen.press.leaf import Tree
from sitegen.release import card_work
from sitegen.release.build import Order, Refused, publish
from sitegen.release.card_work import MachineLacks
from sitegen.release.lock import only_build
from sitegen.release.outputs import OUTPUTS
from sitegen.release.steps import Silent, Step
from tests.release.conftest import Done
from tests.release.small_school import (
    SUMMER,
    assert_whole,
    publish_school,
    tree_hashes,
    write_recipe,
)

PROJECT = Path(__file__).parents[2]


def run_publish(root: Path, *arguments: str, **environment: str) -> "subprocess.CompletedProcess[str]":
    return subprocess.run(
        [sys.executable, "-m", "sitegen", "publish", "--on", SUMMER.isoformat(), *arguments],
        cwd=root,
        capture_output=True,
        text=True,
        check=False,
        env={**os.environ, "PYTHONPATH": str(PROJECT), **environment},
    )


def codes(refused: Refused) -> list[str]:
    return [fault.code for fault in refused.faults]


def test_every_file_is_the_one_that_the_report_tells(done: Done) -> None:
    assert assert_whole(done.output) == "2026-07-15"


@pytest.mark.parametrize(
    "path",
    [
        "public/index.html",
        "public/404.html",
        "public/feed.xml",
        "public/sitemap.xml",
        "public/tags/biscuits.html",
        "public/tutorials/index.html",
        "public/tutorials/weighing.html",
        "public/recipes/ingredient-biscuits.html",
        "public/recipes/ingredient-biscuits/us-cups-12-squares.html",
        "public/recipes/ingredient-biscuits/british-metric-24-squares.html",
        "public/recipes/teaser-biscuits.html",
        "subscribers/index.html",
        "subscribers/recipes/teaser-biscuits/us-cups-24-squares.html",
        "subscribers/cards/coming-biscuits-us-cups-a4.pdf",
        "texts/teaser-biscuits/video-description.txt",
        "texts/coming-biscuits/subscriber-post.txt",
        "texts/coming-biscuits/change-notice-2026-07-20.txt",
    ],
)
def test_each_kind_of_output_is_there(done: Done, path: str) -> None:
    assert (done.output / path).stat().st_size > 100


@pytest.mark.parametrize(
    "path", ["public/recipes/teaser-biscuits", "public/recipes/coming-biscuits.html", "texts/draft-biscuits"]
)
def test_what_no_audience_may_have_is_not_there(done: Done, path: str) -> None:
    assert not (done.output / path).exists()


def test_every_row_of_the_table_of_outputs_has_a_name_and_an_audience() -> None:
    assert len({row.name for row in OUTPUTS}) == len(OUTPUTS)
    assert all(row.trees for row in OUTPUTS)
    assert next(row.trees for row in OUTPUTS if row.name == "cards") == (Tree.SUBSCRIBERS,)


def test_no_two_outputs_want_the_same_path(done: Done) -> None:
    on_disk = tree_hashes(done.output)
    assert len(on_disk) == len(done.published.report.files) + 1


def test_a_teasers_description_tells_no_ingredient(done: Done) -> None:
    text = (done.output / "texts" / "teaser-biscuits" / "video-description.txt").read_text()
    assert "INGREDIENTS" not in text
    assert "Contains: wheat and milk." in text or "Contains: milk and wheat." in text


def test_a_second_build_changes_nothing_and_prints_nothing(
    again: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    before = tree_hashes(again / "output")

    def refuse(*_: object) -> None:
        raise AssertionError("a card was printed again")

    monkeypatch.setattr(card_work, "_warm_press", refuse)
    published = publish_school(again)
    after = tree_hashes(again / "output")
    del before["report.json"], after["report.json"]
    assert published.report.changes.count == 0
    assert after == before


def test_an_empty_line_more_in_a_recipe_prints_no_new_card(
    again: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    file = again / "content" / "recipes" / "open-biscuits" / "recipe.yaml"
    file.write_text("\n" + file.read_text())

    def refuse(*_: object) -> None:
        raise AssertionError("a card was printed again")

    monkeypatch.setattr(card_work, "_warm_press", refuse)
    assert publish_school(again).report.changes.count == 0


def test_a_changed_recipe_changes_its_own_files_and_the_lists(again: Path) -> None:
    write_recipe(again, "open-biscuits", summary="Thinner than before")
    changes = publish_school(again).report.changes
    changed = {change.path: change.why for change in changes.changed}
    cause = ("content/recipes/open-biscuits/recipe.yaml",)
    assert set(changed.values()) == {cause}
    assert "subscribers/cards/open-biscuits-us-cups-a4.pdf" in changed
    assert "public/index.html" in changed
    assert not [path for path in changed if "teaser-biscuits" in path]


def test_a_release_day_makes_a_recipe_public_and_says_why(again: Path) -> None:
    changes = publish_school(again, on=date(2026, 7, 17)).report.changes
    added = {change.path: change.why for change in changes.added}
    assert added["public/recipes/coming-biscuits.html"] == ("release of coming-biscuits",)


def test_a_recipe_taken_back_leaves_every_tree(again: Path) -> None:
    shutil.rmtree(again / "content" / "recipes" / "open-biscuits")
    publish_school(again)
    named = [path for path in (again / "output").rglob("*") if "open-biscuits" in path.name]
    assert named == []


def test_the_day_is_the_one_of_the_schools_own_zone(again: Path) -> None:
    """23:30 UTC on 16 July is 00:30 on the 17th in London."""
    site = again / "content" / "site.yaml"
    late = Order(datetime(2026, 7, 16, 23, 30, tzinfo=UTC))
    assert publish(again, late, Silent()).report.on == "2026-07-17"
    site.write_text(site.read_text().replace("Europe/London", "America/New_York"))
    assert publish(again, late, Silent()).report.on == "2026-07-16"


def test_faults_keep_the_last_good_output(again: Path) -> None:
    before = tree_hashes(again / "output")
    file = again / "content" / "recipes" / "open-biscuits" / "recipe.yaml"
    file.write_text(file.read_text().replace("plain flour", "plane flour", 1))
    with pytest.raises(Refused) as refused:
        publish_school(again)
    assert "unknown-ingredient" in codes(refused.value)
    assert tree_hashes(again / "output") == before


def test_a_picture_that_ends_early_keeps_the_last_good_output(again: Path) -> None:
    before = tree_hashes(again / "output")
    photo = again / "content" / "recipes" / "open-biscuits" / "step.jpg"
    photo.write_bytes(photo.read_bytes()[:-600])
    with pytest.raises(Refused) as refused:
        publish_school(again)
    assert codes(refused.value)[0] in {"picture-unprintable", "not-a-picture", "damaged-picture"}
    assert "step.jpg" in str(refused.value.faults[0])
    assert tree_hashes(again / "output") == before


def test_a_theme_that_is_not_there_is_a_fault(again: Path) -> None:
    site = again / "content" / "site.yaml"
    site.write_text(site.read_text().replace("oatcloth", "sackcloth"))
    with pytest.raises(Refused) as refused:
        publish_school(again)
    assert codes(refused.value) == ["theme-unusable"]


def test_a_second_build_at_the_same_time_is_refused(again: Path) -> None:
    """The lock counts by open file, so that a second one is refused in the same process as well."""
    with only_build(again / ".sitegen"), pytest.raises(Refused) as refused:
        publish_school(again)
    assert codes(refused.value) == ["another-build"]


def test_a_press_that_cannot_be_loaded_is_what_the_machine_lacks(
    again: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def no_pango(*_: object) -> None:
        raise OSError("cannot load library 'libpango-1.0-0'")

    shutil.rmtree(again / ".sitegen" / "cache")
    card_work._warm_press.cache_clear()
    monkeypatch.setattr(card_work, "CardPress", no_pango)
    before = tree_hashes(again / "output")
    with pytest.raises(MachineLacks, match="libpango"):
        publish_school(again)
    assert tree_hashes(again / "output") == before


@pytest.mark.parametrize(
    ("step", "milliseconds"),
    [(2, 0), (6, 40), (7, 0), (7, 4)],
)
def test_a_killed_publish_leaves_one_whole_output(again: Path, step: int, milliseconds: int) -> None:
    child = subprocess.Popen(
        [sys.executable, "-m", "sitegen", "publish", "--on", "2026-07-17", "--jobs", "1"],
        cwd=again,
        stdout=subprocess.DEVNULL,
        stderr=subprocess.PIPE,
        text=True,
        env={**os.environ, "PYTHONPATH": str(PROJECT)},
    )
    with child:
        assert child.stderr is not None
        assert any(line.startswith(f"{step}/7") for line in child.stderr)
        time.sleep(milliseconds / 1000)
        os.kill(child.pid, signal.SIGKILL)
    assert assert_whole(again / "output") in {"2026-07-15", "2026-07-17"}
    publish_school(again, on=date(2026, 7, 17))
    assert assert_whole(again / "output") == "2026-07-17"


def test_the_steps_are_told_in_their_order(again: Path) -> None:
    told: list[tuple[Step, int]] = []

    class Told(Silent):
        def begin(self, step: Step, total: int) -> None:
            told.append((step, total))

    shutil.rmtree(again / "output")
    publish(again, Order(datetime(2026, 7, 15, 12, tzinfo=UTC)), Told())
    assert [step for step, _ in told] == list(Step)
    assert dict(told)[Step.CARDS] == 8
