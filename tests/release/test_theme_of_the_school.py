"""A school with a theme of its own that inherits: three lines of tokens, one template, one style."""

from pathlib import Path

from tests.release.small_school import publish_school, write_school

TOKENS = 'name: Pantry shelf\ninherits: enamel\nlight: {accent: "#1d4f3a"}\n'
NOT_FOUND = '{% extends "base.html" %}\n{% block main %}<h1>Not on this shelf</h1>{% endblock %}\n'


def write_theme(root: Path, parent: str) -> None:
    folder = root / "themes" / "shelf"
    (folder / "templates").mkdir(parents=True)
    (folder / "theme.yaml").write_text(TOKENS.replace("enamel", parent))
    (folder / "templates" / "not-found.html").write_text(NOT_FOUND)
    site = root / "content" / "site.yaml"
    site.write_text(site.read_text().replace("theme: oatcloth", "theme: shelf"))


def test_a_school_is_published_whole_in_a_theme_that_inherits(tmp_path: Path) -> None:
    write_theme(write_school(tmp_path), "oatcloth")
    published = publish_school(tmp_path)
    output = tmp_path / "output"
    assert "Not on this shelf" in (output / "public" / "404.html").read_text()
    [stylesheet] = (output / "public" / "theme").glob("page-*.css")
    assert "--colour-accent:#1d4f3a" in stylesheet.read_text()
    assert sorted((output / "subscribers" / "cards").glob("*.pdf"))
    assert "themes/shelf/theme.yaml" in published.report.inputs


def test_an_inherited_style_that_changes_is_an_input_like_any_other(tmp_path: Path) -> None:
    write_theme(write_school(tmp_path), "cupboard")
    cupboard = tmp_path / "themes" / "cupboard"
    (cupboard / "styles").mkdir(parents=True)
    (cupboard / "theme.yaml").write_text("name: Cupboard\ninherits: oatcloth\n")
    (cupboard / "styles" / "9-own.css").write_text("main{margin:0}\n")
    before = publish_school(tmp_path)
    (cupboard / "styles" / "9-own.css").write_text("main{margin:1px}\n")
    after = publish_school(tmp_path)
    changed = {name for name, digest in after.report.inputs.items() if before.report.inputs[name] != digest}
    assert changed == {"themes/cupboard/styles/9-own.css"}
