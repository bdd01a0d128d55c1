"""A whole school, read in one go: what comes out, and that nothing stops it."""

import shutil
from datetime import date
from fractions import Fraction
from pathlib import Path

import pytest

from sitegen.faults import Fault
from sitegen.kitchen.recipe import PublicShows
from sitegen.source.library import read_content

SAMPLE = Path(__file__).parent / "sample_school"
DEMO = Path(__file__).parents[2]
CUPCAKES = Path("content/recipes/blackcurrant-and-bay-cupcakes/recipe.yaml")


@pytest.fixture
def school(tmp_path: Path) -> Path:
    return Path(shutil.copytree(SAMPLE, tmp_path / "school"))


def change(path: Path, old: str, new: str) -> None:
    text = path.read_text(encoding="utf-8")
    assert old in text
    path.write_text(text.replace(old, new), encoding="utf-8")


def told(root: Path) -> list[tuple[str, str, int]]:
    return [(fault.place.file, fault.code, fault.place.line) for fault in read_content(root).faults]


def test_the_school_is_who_publishes() -> None:
    school = read_content(SAMPLE).school
    assert school is not None
    assert (school.name, school.address) == ("Tansy Row", "https://tansyrow.example/")
    assert (school.editions, school.papers) == (("british-metric", "us-cups"), ("a4", "letter"))


def test_recipes_come_by_slug_with_what_their_files_say() -> None:
    base, cupcakes = read_content(SAMPLE).recipes
    assert (base.slug, cupcakes.slug) == ("base-buttercream", "blackcurrant-and-bay-cupcakes")
    assert (cupcakes.makes.count, cupcakes.makes.noun) == (Fraction(12), "cupcakes")
    assert [component.title for component in cupcakes.components] == [
        "Bay sponge",
        "Bay custard",
        "Blackcurrant buttercream",
        "Assembly",
    ]
    assert cupcakes.release.public == date(2026, 7, 10)
    assert cupcakes.release.public_shows is PublicShows.INGREDIENTS
    assert cupcakes.video is not None
    assert cupcakes.video.captions == str(CUPCAKES.parent / "captions.vtt")
    assert cupcakes.components[0].steps[2].fill == Fraction(2, 3)
    assert cupcakes.components[3].steps[0].after == ("Bay sponge", "Bay custard", "Blackcurrant buttercream")


def test_each_line_knows_its_place_in_the_file() -> None:
    cupcakes = read_content(SAMPLE).recipes[1]
    line = cupcakes.components[0].lines[0]
    text = (SAMPLE / CUPCAKES).read_text(encoding="utf-8").split("\n")[line.at.line - 1]
    assert text[line.at.column - 1 :][: line.at.length] == "150 g plain flour"


def test_a_blank_line_moves_places_and_changes_no_recipe(school: Path) -> None:
    before = read_content(school).recipes
    change(school / CUPCAKES, "components:", "\ncomponents:")
    after = read_content(school).recipes
    assert after == before
    assert after[1].components[0].at.line == before[1].components[0].at.line + 1


def test_the_lines_of_every_file_are_kept_to_show_a_fault(school: Path) -> None:
    change(school / CUPCAKES, "- text: Bake.", "- text: {Bake.")
    texts = read_content(school).texts
    assert set(texts) == {
        "content/site.yaml",
        "content/larder.yaml",
        "content/prices.yaml",
        "content/orders/saturday.yaml",
        "content/recipes/base-buttercream/recipe.yaml",
        str(CUPCAKES),
        "content/tutorials/whisking.md",
    }
    assert "- text: {Bake." in "\n".join(texts[str(CUPCAKES)])


def test_faults_of_all_files_come_in_one_run_sorted_by_place(school: Path) -> None:
    change(school / "content/site.yaml", "Europe/London", "Europe/Londn")
    change(school / CUPCAKES, "150 g plain flour", "150 g plain floor")
    change(school / CUPCAKES, "hands-on: 3 min", "hands-on: 3 mins.")
    change(school / CUPCAKES, "oven: 150 C fan", "oven: 150 C")
    change(school / CUPCAKES, "file: whisk.jpg", "file: wisk.jpg")
    change(school / "content/tutorials/whisking.md", "summary:", "sumary:")
    faults = told(school)
    assert {file for file, _, _ in faults} == {
        "content/site.yaml",
        str(CUPCAKES),
        "content/tutorials/whisking.md",
    }
    assert len({code for file, code, _ in faults if file == str(CUPCAKES)}) >= 4
    assert faults == sorted(faults, key=lambda fault: (fault[0], fault[2]))


def test_a_line_that_cannot_be_read_is_not_missed_by_the_steps_a_second_time(school: Path) -> None:
    change(school / CUPCAKES, "- 150 g plain flour", "- 150 g plein floor")
    assert [code for _, code, _ in told(school)] == ["unknown-ingredient"]


def test_a_reference_knows_its_braces(school: Path) -> None:
    change(
        school / CUPCAKES,
        "text: Whisk {eggs}, {buttermilk}",
        "text: >-\n          Whisk {eggs},\n          {buttermilk}",
    )
    step = read_content(school).recipes[1].components[0].steps[0]
    eggs, buttermilk, _ = step.references
    lines = (school / CUPCAKES).read_text(encoding="utf-8").split("\n")
    assert buttermilk.at.line == eggs.at.line + 1
    assert lines[buttermilk.at.line - 1][buttermilk.at.column - 1 :].startswith("{buttermilk}")


def test_an_amount_inside_a_line_is_marked_by_its_own_column(school: Path) -> None:
    change(school / CUPCAKES, "- 160 g caster sugar", "- 160 g caster suger")
    fault = next(fault for fault in read_content(school).faults if fault.place.file == str(CUPCAKES))
    line = (school / CUPCAKES).read_text(encoding="utf-8").split("\n")[fault.place.line - 1]
    assert line[fault.place.column - 1 :][: fault.place.length] == "caster suger"
    assert fault.way_out == "did you mean 'caster sugar'?"


def test_a_recipe_that_cannot_be_read_leaves_the_others(school: Path) -> None:
    (school / CUPCAKES).write_text("title: [", encoding="utf-8")
    assert [recipe.slug for recipe in read_content(school).recipes] == ["base-buttercream"]


def test_a_recipe_behind_a_link_out_of_content_is_not_read(school: Path, tmp_path: Path) -> None:
    shutil.copytree(school / "content/recipes/base-buttercream", tmp_path / "elsewhere")
    (school / "content/recipes/linked").symlink_to(tmp_path / "elsewhere")
    assert told(school) == [("content/recipes/linked", "outside-folder", 0)]


def test_a_file_behind_a_link_out_of_content_is_not_read(school: Path, tmp_path: Path) -> None:
    (tmp_path / "other.yaml").write_text("title: other\n", encoding="utf-8")
    (school / CUPCAKES).unlink()
    (school / CUPCAKES).symlink_to(tmp_path / "other.yaml")
    assert (str(CUPCAKES), "outside-folder", 0) in told(school)


def test_hidden_files_are_nobodys_business(school: Path) -> None:
    (school / "content/recipes/.DS_Store").touch()
    assert told(school) == []


def test_a_missing_picture_is_one_fault_and_no_second_one(school: Path) -> None:
    change(school / CUPCAKES, "file: finished.jpg", "file: finish.jpg")
    assert [code for _, code, _ in told(school)] == ["photo-not-found"]


def test_an_empty_folder_is_one_fault(tmp_path: Path) -> None:
    assert told(tmp_path) == [("content", "no-content", 0)]


def test_the_demo_has_no_error() -> None:
    faults = read_content(DEMO).faults
    assert [_shown(fault) for fault in faults if fault.severity == "error"] == []


def _shown(fault: Fault) -> str:
    place = fault.place
    return f"{place.file}:{place.line}:{place.column}: {fault.code}: {fault.sentence} ({fault.way_out})"


def test_the_usual_egg_is_the_one_that_the_school_names(school: Path) -> None:
    change(school / "content" / "site.yaml", "egg-size: medium", "egg-size: large")
    editions = read_content(school).tables.editions
    assert editions["british-metric"].egg_size == "large"
    assert editions["us-cups"].egg_size == "large"
    assert read_content(SAMPLE).tables.editions["british-metric"].egg_size == "medium"
