"""What the desk says of each recipe."""

import re
import shutil
from datetime import date
from pathlib import Path

import pytest

from sitegen.desk.reading import Reading
from sitegen.desk.states import band_of, desk_of
from sitegen.desk.values import DeskRow, Stands
from sitegen.press.leaf import Tree
from tests.desk.running_desk import read_again, read_all
from tests.release.small_school import NOON, SUMMER, write_recipe, write_school


@pytest.fixture(scope="module")
def as_written(tmp_path_factory: pytest.TempPathFactory) -> Reading:
    """The small school as it is written, for tests that save nothing."""
    return read(write_school(tmp_path_factory.mktemp("as-written") / "school"))


@pytest.fixture
def school(tmp_path: Path) -> Path:
    """The same, to write into."""
    return write_school(tmp_path / "school")


def read(root: Path, on: date = SUMMER) -> Reading:
    reading = Reading(root, lambda: NOON, on)
    read_all(reading)
    return reading


def row(reading: Reading, slug: str) -> DeskRow:
    return next(row for row in desk_of(reading.bench).rows if row.slug == slug)


@pytest.mark.parametrize(
    ("slug", "stands", "told"),
    [
        ("draft-biscuits", Stands.DRAFT, "A draft: no day publishes it."),
        ("coming-biscuits", Stands.OUT, "Subscribers since 3 July 2026; everyone from 17 July 2026."),
        ("open-biscuits", Stands.OUT, "Subscribers since 3 July 2026; everyone since 10 July 2026."),
    ],
)
def test_a_recipe_says_how_it_stands(as_written: Reading, slug: str, stands: Stands, told: str) -> None:
    found = row(as_written, slug)
    assert (found.stands, found.told) == (stands, told)


def test_each_audience_has_its_day_and_what_it_sees(as_written: Reading) -> None:
    releases = row(as_written, "coming-biscuits").releases
    assert [(each.to, each.iso, each.sees, each.is_past) for each in releases] == [
        ("subscribers", "2026-07-03", "", True),
        ("everyone", "2026-07-17", "the ingredients", False),
    ]


def test_before_its_day_a_recipe_is_coming_and_its_pages_say_so(as_written: Reading) -> None:
    found = row(read(as_written.bench.root, date(2026, 7, 1)), "open-biscuits")
    assert found.stands is Stands.COMING
    assert [page.note for page in found.pages] == ["not out yet", "not out yet"]


def test_a_fault_shows_its_line_and_the_mark_in_it_and_stands_with_its_recipe(school: Path) -> None:
    write_recipe(school, "open-biscuits", preparation="soft\n      - 10 g moonflower dust")
    (school / "content" / "recipes" / "stray.txt").write_text("x")
    reading = read(school)
    found = row(reading, "open-biscuits")
    assert found.stands is Stands.FAULTY
    assert not found.pages
    assert not found.what_if
    (fault,) = found.errors
    assert (fault.before, fault.marked, fault.after) == ("      - 10 g ", "moonflower dust", "")
    assert fault.code == "unknown-ingredient"
    assert re.fullmatch(r"content/recipes/open-biscuits/recipe\.yaml, line \d+", fault.place)
    desk = desk_of(reading.bench)
    assert desk.told == "5 recipes: 1 error, 1 piece of advice"
    assert [fault.code for fault in desk.faults] == ["stray-file"], "a fault of all stands with the desk"


def test_photos_that_are_missing_are_counted(school: Path) -> None:
    reading = read(school)
    assert row(reading, "open-biscuits").lacks == ("no photo of 2 of 3 steps",)
    recipe = school / "content" / "recipes" / "open-biscuits" / "recipe.yaml"
    recipe.write_text(re.sub(r"photo: \{file: finished.*\n", "", recipe.read_text()))
    read_again(reading)
    assert row(reading, "open-biscuits").lacks[0] == "no photo of the finished bake"


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
    reading = read(school)
    found = row(reading, "open-biscuits")
    assert found.film
    assert "1 thing said otherwise on film" in desk_of(reading.bench).told
    assert all(fault.code.startswith("film-") for fault in found.film)
    assert "butter" in found.film[0].sentence
    assert not set(found.film) & set(found.advice)


def test_a_school_that_was_never_published_says_so(as_written: Reading) -> None:
    assert desk_of(as_written.bench).published == "Never published."
    found = row(as_written, "open-biscuits")
    assert (found.published, found.is_changed) == ("Never published.", True)


def test_what_was_saved_since_the_last_publish_is_named(published_school: Path) -> None:
    recipes = published_school / "content" / "recipes"
    for same in (recipes / "open-biscuits" / "recipe.yaml", recipes / "open-biscuits" / "step.jpg"):
        same.write_bytes(same.read_bytes())
    reading = read(published_school)
    found = row(reading, "open-biscuits")
    assert (found.published, found.is_changed) == ("As it was published last.", False)
    assert desk_of(reading.bench).published == "Last published for 15 July 2026."
    write_recipe(published_school, "open-biscuits", summary="Another one.")
    photo = recipes / "open-biscuits" / "step.jpg"
    photo.write_bytes(photo.read_bytes() + b"\0")
    shutil.copytree(recipes / "teaser-biscuits", recipes / "new-biscuits")
    read_again(reading)
    changed = row(reading, "open-biscuits")
    assert changed.is_changed
    assert changed.published == "Changed since the last publish: recipe.yaml, step.jpg."
    assert not row(reading, "teaser-biscuits").is_changed
    assert row(reading, "new-biscuits").published == "New since the last publish."
    site_file = published_school / "content" / "site.yaml"
    site_file.write_text(site_file.read_text().replace("One long table", "Two"))
    reading.renewed()
    assert desk_of(reading.bench).published.endswith("Changed since for every recipe: content/site.yaml.")


def test_a_folder_without_anything_has_a_desk(tmp_path: Path) -> None:
    (tmp_path / "content").mkdir()
    shown = desk_of(read(tmp_path).bench)
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
    as_written: Reading, slug: str, tree: Tree, standing: str, links: int
) -> None:
    band = band_of(as_written.bench, tree, slug)
    assert (band.standing, len(band.links)) == (standing, links)
    assert band.seen.endswith("on 15 July 2026")


def test_a_file_that_is_no_recipe_keeps_the_title_that_stands_in_it(school: Path) -> None:
    recipe = school / "content" / "recipes" / "open-biscuits" / "recipe.yaml"
    recipe.write_text(recipe.read_text().replace("makes:", "makse:"))
    reading = read(school)
    assert row(reading, "open-biscuits").title == "Open biscuits"
    recipe.write_text("nothing of the kind")
    read_again(reading)
    assert row(reading, "open-biscuits").title == "open-biscuits"


def test_advice_that_settles_nothing_stands_with_its_recipe(school: Path) -> None:
    recipe = school / "content" / "recipes" / "open-biscuits" / "recipe.yaml"
    recipe.write_text(f"{recipe.read_text()}settled: {{balance-unusual: It is so.}}\n")
    assert [fault.code for fault in row(read(school), "open-biscuits").advice] == ["nothing-to-settle"]
