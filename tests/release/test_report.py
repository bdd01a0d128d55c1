"""The report says what changed since the last build, and which input is the cause."""

import json
from dataclasses import replace
from pathlib import Path

import pytest

from sitegen.release.causes import in_short
from sitegen.release.kinds import kind_of
from sitegen.release.report import BuiltFile, Change, Changes, Report, changes_since, file_hashes, last_report

BAY_PAGE = BuiltFile(size=10, sha256="aa", about=("bay",))
ROSE_PAGE = BuiltFile(size=10, sha256="bb", about=("rose", "base-buttercream"))
INDEX = BuiltFile(size=10, sha256="cc")
FILES = {"public/bay.html": BAY_PAGE, "public/rose.html": ROSE_PAGE, "public/index.html": INDEX}
INPUTS = {
    "content/recipes/base-buttercream/recipe.yaml": "1",
    "content/recipes/bay/recipe.yaml": "1",
    "content/site.yaml": "1",
    "release of bay": "subscribers",
}


def report() -> Report:
    return Report(on="2026-07-03", sitegen="0.1.0", changes=Changes(), files=FILES, inputs=INPUTS)


def changed(page: BuiltFile) -> BuiltFile:
    return replace(page, sha256="changed")


def test_without_an_earlier_build_everything_is_added() -> None:
    changes = changes_since(None, FILES, INPUTS)
    assert [change.path for change in changes.added] == sorted(FILES)
    assert {change.why for change in changes.added} == {("first build",)}


def test_the_same_build_again_changes_nothing() -> None:
    assert changes_since(report(), FILES, INPUTS).count == 0


def test_a_changed_base_recipe_is_told_for_the_pages_about_it_only() -> None:
    files = {path: changed(page) for path, page in FILES.items()}
    inputs = INPUTS | {"content/recipes/base-buttercream/recipe.yaml": "2"}
    why = {change.path: change.why for change in changes_since(report(), files, inputs).changed}
    assert why == {
        "public/bay.html": (),
        "public/rose.html": ("content/recipes/base-buttercream/recipe.yaml",),
        "public/index.html": ("content/recipes/base-buttercream/recipe.yaml",),
    }


def test_a_page_that_goes_is_told_with_the_release_that_took_it() -> None:
    files = {path: page for path, page in FILES.items() if path != "public/bay.html"}
    inputs = INPUTS | {"release of bay": "nobody"}
    assert changes_since(report(), files, inputs).removed == (
        Change(path="public/bay.html", recipe="bay", why=("release of bay",)),
    )


def test_of_many_inputs_the_folders_are_told() -> None:
    """What is told of a change stays short, and costs no more, however many inputs differ."""
    many = {f"content/recipes/bake-{number}/recipe.yaml": "1" for number in range(100)}
    many |= {f"release of bake-{number}": "nobody" for number in range(100)}
    files = {
        "public/index.html": changed(INDEX),
        "public/bake-7.html": BuiltFile(size=1, sha256="d", about=("bake-7",)),
    }
    changes = changes_since(report(), files, INPUTS | many)
    assert [change.why for change in changes.changed] == [
        ("content/recipes/ (100 files)", "release of 100 recipes")
    ]
    assert [change.why for change in changes.added] == [
        ("content/recipes/bake-7/recipe.yaml", "release of bake-7")
    ]


def test_a_file_alone_in_its_folder_is_told_by_name_among_many() -> None:
    themes = {f"themes/plain/styles/{number}.css": "1" for number in range(20)}
    told = in_short([*themes, "content/larder.yaml", "themes/plain/theme.yaml"])
    assert told == ("content/larder.yaml", "themes/plain/styles/ (20 files)", "themes/plain/theme.yaml")


def test_the_report_tells_what_each_tree_holds() -> None:
    told = json.loads(report().as_json())
    assert told["sizes"] == {"public": {"pages": {"files": 3, "bytes": 30}}}
    assert told["same"] == 3


@pytest.mark.parametrize(
    ("path", "kind"),
    [
        ("public/recipes/bay/us-cups-double.html", "pages"),
        ("public/feed.xml", "for programs"),
        ("public/theme/oatcloth.css", "theme"),
        ("public/pictures/bay-800.webp", "pictures"),
        ("subscribers/cards/bay-us-cups-a4.pdf", "cards"),
        ("texts/bay/subscriber-post.txt", "texts"),
    ],
)
def test_what_kind_a_file_is_shows_in_its_place(path: str, kind: str) -> None:
    assert kind_of(path) == kind


def test_a_report_is_read_back_as_it_was_written(tmp_path: Path) -> None:
    (tmp_path / "report.json").write_text(report().as_json())
    assert last_report(tmp_path) == report()


def test_a_report_that_cannot_be_read_counts_as_none(tmp_path: Path) -> None:
    assert last_report(tmp_path) is None
    (tmp_path / "report.json").write_text('{"on": 3')
    assert last_report(tmp_path) is None


def test_inputs_are_named_by_their_path_below_the_folder(tmp_path: Path) -> None:
    (tmp_path / "content").mkdir()
    (tmp_path / "content" / "site.yaml").write_text("name: Tansy Row")
    assert list(file_hashes(tmp_path, [tmp_path / "content"])) == ["content/site.yaml"]
