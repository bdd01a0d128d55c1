"""What the desk says of each recipe."""

import re
import shutil
from datetime import date
from pathlib import Path

import pytest

from sitegen.desk.reading import Reading
from sitegen.desk.states import band_of, desk_of
from sitegen.desk.values import Desk, DeskRow, Stands
from sitegen.press.leaf import Tree
from tests.desk.running_desk import read_all
from tests.release.small_school import NOON, SUMMER, write_recipe, write_school


@pytest.fixture
def school(tmp_path: Path) -> Path:
    return write_school(tmp_path / "school")


def desk(root: Path, on: date = SUMMER) -> Desk:
    reading = Reading(root, lambda: NOON, on)
    read_all(reading)
    return desk_of(reading.bench)


def row(root: Path, slug: str, on: date = SUMMER) -> DeskRow:
    return next(row for row in desk(root, on).rows if row.slug == slug)


@pytest.mark.parametrize(
    ("slug", "stands", "told"),
    [
        ("draft-biscuits", Stands.DRAFT, "A draft: no day publishes it."),
        ("coming-biscuits", Stands.OUT, "Subscribers since 3 July 2026; everyone from 17 July 2026."),
        ("open-biscuits", Stands.OUT, "Subscribers since 3 July 2026; everyone since 10 July 2026."),
    ],
)
def test_a_recipe_says_how_it_stands(school: Path, slug: str, stands: Stands, told: str) -> None:
    found = row(school, slug)
    assert (found.stands, found.told) == (stands, told)


def test_each_audience_has_its_day_and_what_it_sees(school: Path) -> None:
    releases = row(school, "coming-biscuits").releases
    assert [(each.to, each.iso, each.sees, each.is_past) for each in releases] == [
        ("subscribers", "2026-07-03", "in full", True),
        ("everyone", "2026-07-17", "the ingredients", False),
    ]


def test_before_its_day_a_recipe_is_coming_and_its_pages_say_so(school: Path) -> None:
    found = row(school, "open-biscuits", date(2026, 7, 1))
    assert found.stands is Stands.COMING
    assert [page.note for page in found.pages] == ["not out yet", "not out yet"]


def test_a_fault_shows_its_line_and_the_mark_in_it(school: Path) -> None:
    write_recipe(school, "open-biscuits", preparation="soft\n      - 10 g moonflower dust")
    found = row(school, "open-biscuits")
    assert found.stands is Stands.FAULTY
    assert not found.pages
    assert not found.what_if
    (fault,) = found.errors
    assert (fault.before, fault.marked, fault.after) == ("      - 10 g ", "moonflower dust", "")
    assert fault.code == "unknown-ingredient"
    assert re.fullmatch(r"content/recipes/open-biscuits/recipe\.yaml, line \d+", fault.place)
    assert desk(school).told.startswith("5 recipes: 1 error")


def test_faults_of_all_stand_with_the_desk(school: Path) -> None:
    (school / "content" / "recipes" / "stray.txt").write_text("x")
    assert [fault.code for fault in desk(school).faults] == ["stray-file"]


def test_photos_that_are_missing_are_counted(school: Path) -> None:
    assert row(school, "open-biscuits").lacks == ("no photo of 2 of 3 steps",)
    recipe = school / "content" / "recipes" / "open-biscuits" / "recipe.yaml"
    recipe.write_text(re.sub(r"photo: \{file: finished.*\n", "", recipe.read_text()))
    assert row(school, "open-biscuits").lacks[0] == "no photo of the finished bake"


def test_what_a_film_says_otherwise_stands_by_itself(school: Path) -> None:
    recipe = school / "content" / "recipes" / "open-biscuits" / "recipe.yaml"
    video = 'video: {address: "https://video.example/b", published: 2026-07-11, captions: film.vtt}\n'
    recipe.write_text(recipe.read_text().replace("components:\n", f"{video}components:\n"))
    welcome = "hello and welcome back to our long table where we are going to bake together today"
    spoken = (
        welcome,
        "we beat a hundred and seventy grams of unsalted butter",
        "with sixty grams of caster sugar until it is pale",
        "mix in a hundred and eighty grams of plain flour and press it flat",
        "bake it at one hundred and fifty fan for twenty to twenty five minutes",
        "let them cool on the sheet and see you again next week at this same table",
    )
    cues = "".join(
        f"00:{number}0.000 --> 00:{number}9.000\n{text}\n\n" for number, text in enumerate(spoken, 1)
    )
    (recipe.parent / "film.vtt").write_text(f"WEBVTT\n\n{cues}")
    found = row(school, "open-biscuits")
    assert found.film
    assert all(fault.code.startswith("film-") for fault in found.film)
    assert "butter" in found.film[0].sentence
    assert not set(found.film) & set(found.advice)


def test_a_school_that_was_never_published_says_so(school: Path) -> None:
    assert desk(school).published == "Never published."
    found = row(school, "open-biscuits")
    assert (found.published, found.is_changed) == ("Never published.", True)


def test_what_was_saved_since_the_last_publish_is_named(published_school: Path) -> None:
    school = published_school
    assert row(school, "open-biscuits").published == "As it was published last."
    assert desk(school).published == "Last published for 15 July 2026."
    write_recipe(school, "open-biscuits", summary="Another one.")
    photo = school / "content" / "recipes" / "open-biscuits" / "step.jpg"
    photo.write_bytes(photo.read_bytes() + b"\0")
    shutil.copytree(school / "content/recipes/teaser-biscuits", school / "content/recipes/new-biscuits")
    changed = row(school, "open-biscuits")
    assert changed.is_changed
    assert changed.published == "Changed since the last publish: recipe.yaml, step.jpg."
    assert not row(school, "teaser-biscuits").is_changed
    assert row(school, "new-biscuits").published == "New since the last publish."
    site_file = school / "content" / "site.yaml"
    site_file.write_text(site_file.read_text().replace("One long table", "Two"))
    assert desk(school).published.endswith("Changed since for every recipe: content/site.yaml.")


def test_a_file_that_was_written_again_as_it_was_has_not_changed(published_school: Path) -> None:
    for file in ("recipe.yaml", "step.jpg"):
        path = published_school / "content" / "recipes" / "open-biscuits" / file
        path.write_bytes(path.read_bytes())
    assert not row(published_school, "open-biscuits").is_changed


def test_a_folder_without_anything_has_a_desk(tmp_path: Path) -> None:
    (tmp_path / "content").mkdir()
    shown = desk(tmp_path)
    assert shown.school == ""
    assert [fault.code for fault in shown.faults] == ["no-recipes", "no-file"]


@pytest.mark.parametrize(
    ("slug", "tree", "standing", "links"),
    [
        ("draft-biscuits", Tree.SUBSCRIBERS, "Draft: no day publishes it", 0),
        ("coming-biscuits", Tree.PUBLIC, "Not out yet: from 17 July 2026", 2),
        ("coming-biscuits", Tree.SUBSCRIBERS, "", 2),
        ("", Tree.PUBLIC, "", 0),
    ],
)
def test_the_band_of_a_page_says_what_is_not_out(
    school: Path, slug: str, tree: Tree, standing: str, links: int
) -> None:
    band = band_of(Reading(school, lambda: NOON, SUMMER).bench, tree, slug)
    assert (band.standing, len(band.links)) == (standing, links)
    assert band.seen.endswith("on 15 July 2026")


def test_a_file_that_is_no_recipe_keeps_the_title_that_stands_in_it(school: Path) -> None:
    recipe = school / "content" / "recipes" / "open-biscuits" / "recipe.yaml"
    recipe.write_text(recipe.read_text().replace("makes:", "makse:"))
    assert row(school, "open-biscuits").title == "Open biscuits"
    recipe.write_text("nothing of the kind")
    assert row(school, "open-biscuits").title == "open-biscuits"


def test_advice_that_settles_nothing_stands_with_its_recipe(school: Path) -> None:
    recipe = school / "content" / "recipes" / "open-biscuits" / "recipe.yaml"
    recipe.write_text(f"{recipe.read_text()}settled: {{balance-unusual: It is so.}}\n")
    assert [fault.code for fault in row(school, "open-biscuits").advice] == ["nothing-to-settle"]
