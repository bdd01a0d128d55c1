"""A theme that inherits: what it leaves out is taken from the other, what it brings goes first."""

from pathlib import Path

import pytest

from sitegen.press.theme import Theme, load_theme
from sitegen.press.theme_folder import lineage
from sitegen.press.tokens import ThemeUnusable
from tests.press.sample_sheets import THEME_FOLDER

TINY = """\
name: Pantry shelf
inherits: oatcloth
light:
  accent: "#1d4f3a"
type:
  body: 1.25rem
"""
NOT_FOUND = """\
{% extends "oatcloth/not-found.html" %}
{% block main %}
<p>Not on this shelf.</p>
{{ super() }}
{% endblock %}
"""


def written(themes: Path, name: str, files: dict[str, str]) -> Path:
    for path, text in files.items():
        file = themes / name / path
        file.parent.mkdir(parents=True, exist_ok=True)
        file.write_text(text, encoding="utf-8")
    return themes / name


@pytest.fixture
def shelf(tmp_path: Path) -> Theme:
    files = {
        "theme.yaml": TINY,
        "templates/not-found.html": NOT_FOUND,
        "styles/2-frame.css": ".masthead{border:0}\n",
    }
    return load_theme(written(tmp_path, "shelf", files))


@pytest.fixture(scope="module")
def oatcloth() -> Theme:
    return load_theme(THEME_FOLDER)


def test_tokens_that_it_leaves_out_are_inherited_one_by_one(shelf: Theme, oatcloth: Theme) -> None:
    assert shelf.tokens.light.accent == "#1d4f3a"
    assert shelf.tokens.light.paper == oatcloth.tokens.light.paper
    assert shelf.tokens.type.body == "1.25rem"
    assert shelf.tokens.dark == oatcloth.tokens.dark
    assert shelf.fonts == oatcloth.fonts


def test_a_style_of_the_same_name_takes_the_other_s_place(shelf: Theme, oatcloth: Theme) -> None:
    assert ".masthead{border:0}" in shelf.stylesheet
    assert oatcloth.styles["2-frame.css"] not in shelf.stylesheet
    assert oatcloth.styles["1-ground.css"] in shelf.stylesheet


def test_scripts_and_mark_are_inherited(shelf: Theme, oatcloth: Theme) -> None:
    assert shelf.script == oatcloth.script
    assert shelf.mark == oatcloth.mark


def test_a_template_can_extend_the_one_whose_place_it_takes(shelf: Theme, oatcloth: Theme) -> None:
    assert shelf.templates["not-found.html"] == NOT_FOUND
    assert shelf.templates["oatcloth/not-found.html"] == oatcloth.templates["not-found.html"]
    assert shelf.environment.get_template("not-found.html").blocks.keys() == {"main"}
    assert shelf.templates["recipe.html"] == oatcloth.templates["recipe.html"]


def test_a_changed_ancestor_changes_the_digest(tmp_path: Path) -> None:
    files = {"theme.yaml": TINY.replace("oatcloth", "cupboard")}
    cupboard = {"theme.yaml": "name: Cupboard\ninherits: oatcloth\n", "styles/x.css": "p{margin:0}\n"}
    written(tmp_path, "cupboard", cupboard)
    before = load_theme(written(tmp_path, "shelf", files))
    written(tmp_path, "cupboard", {"styles/x.css": "p{margin:1px}\n"})
    assert load_theme(tmp_path / "shelf").page_digest != before.page_digest
    assert [folder.name for folder in lineage(tmp_path / "shelf")] == ["shelf", "cupboard", "oatcloth"]


def test_a_faulty_token_is_told_where_the_theme_says_it(tmp_path: Path) -> None:
    folder = written(tmp_path, "shelf", {"theme.yaml": TINY.replace('"#1d4f3a"', "green")})
    with pytest.raises(ThemeUnusable) as caught:
        load_theme(folder)
    assert caught.value.folder == folder
    assert [reason.partition(":")[0] for reason in caught.value.reasons] == ["theme.yaml, light.accent"]


@pytest.mark.parametrize(
    ("inherits", "reason"),
    [
        ("velvet", "there is no theme 'velvet'"),
        ("shelf", "theme.yaml, inherits: 'shelf' inherits from itself"),
        ("[oatcloth]", "theme.yaml, inherits: the name of another theme is wanted"),
    ],
)
def test_a_parent_that_cannot_be_is_refused(tmp_path: Path, inherits: str, reason: str) -> None:
    text = TINY.replace("inherits: oatcloth", f"inherits: {inherits}")
    with pytest.raises(ThemeUnusable) as caught:
        load_theme(written(tmp_path, "shelf", {"theme.yaml": text}))
    assert caught.value.reasons == (reason,)
