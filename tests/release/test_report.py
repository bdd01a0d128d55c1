"""The report says what changed since the last build, and which input is the cause."""

from pathlib import Path

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
    return page.model_copy(update={"sha256": "changed"})


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
        Change(path="public/bay.html", why=("release of bay",)),
    )


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
