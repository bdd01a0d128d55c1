"""The theme's tokens, files and templates."""

import re
from dataclasses import replace
from hashlib import sha256
from pathlib import Path

import pytest
from jinja2 import UndefinedError
from jinja2.exceptions import SecurityError
from jinja2.nodes import Add, Concat, Div, FloorDiv, Mod, Mul, Pow, Sub

from sitegen.press.theme import Theme, load_theme, theme_leaves
from sitegen.press.theme_folder import find_theme
from sitegen.press.tokens import Colours, ThemeUnusable, custom_properties, read_tokens
from tests.outside.contrast import contrast
from tests.press.sample_sheets import THEME_FOLDER

ARITHMETIC = (Add, Sub, Mul, Div, FloorDiv, Mod, Pow, Concat)
THEME_YAML = (THEME_FOLDER / "theme.yaml").read_text(encoding="utf-8")
PAGE_TEMPLATES = [
    path.name for path in sorted((THEME_FOLDER / "templates").glob("*.html")) if path.name != "card.html"
]


@pytest.fixture(scope="module")
def theme() -> Theme:
    return load_theme(THEME_FOLDER)


def test_the_school_s_own_theme_goes_before_the_one_that_comes_with_the_program(tmp_path: Path) -> None:
    assert find_theme(tmp_path, "oatcloth") == THEME_FOLDER
    own = tmp_path / "themes" / "oatcloth"
    own.mkdir(parents=True)
    (own / "theme.yaml").write_text(THEME_YAML, encoding="utf-8")
    assert find_theme(tmp_path, "oatcloth") == own


def test_a_theme_that_is_nowhere_is_named(tmp_path: Path) -> None:
    with pytest.raises(ThemeUnusable) as caught:
        find_theme(tmp_path, "velvet")
    assert caught.value.reasons == ("there is no theme 'velvet'",)


def test_a_folder_without_its_files_says_which_are_missing(tmp_path: Path) -> None:
    (tmp_path / "theme.yaml").write_text(THEME_YAML, encoding="utf-8")
    with pytest.raises(ThemeUnusable) as caught:
        load_theme(tmp_path)
    assert caught.value.reasons == ("scripts/*.js is missing", "mark.svg is missing")


@pytest.mark.parametrize(
    ("line", "instead", "reason"),
    [
        ('paper: "#f7f1e5"', "paper: cream", "theme.yaml, light.paper"),
        ("body: 1.125rem", 'body: "1.125rem; color: red"', "theme.yaml, type.body"),
        ("gap: 1.5rem", "gap: 1.5rem\n  gaps: 1rem", "theme.yaml, spacing.gaps"),
        ("name: Oatcloth\n", "", "theme.yaml, name"),
        ("name: Oatcloth", "name: [", "theme.yaml is not YAML"),
        ("package: font_source_serif_pro", "package: os", "theme.yaml, faces.0.package"),
        ("SourceSerifPro-Regular.ttf", "../../passwd.ttf", "theme.yaml, faces.0.file"),
    ],
)
def test_a_token_that_css_could_not_take_is_named(line: str, instead: str, reason: str) -> None:
    assert line in THEME_YAML
    with pytest.raises(ThemeUnusable) as caught:
        read_tokens([THEME_YAML.replace(line, instead, 1)], THEME_FOLDER)
    assert [text.startswith(reason) for text in caught.value.reasons] == [True]


def test_paper_stays_light_when_the_reader_s_screen_is_dark(theme: Theme) -> None:
    light, dark = custom_properties(theme.tokens).splitlines()
    assert light.startswith(":root{")
    assert "--colour-paper:#f7f1e5;" in light
    assert dark.startswith("@media screen and (prefers-color-scheme:dark)")
    assert "--space-touch:2.75rem;" in light


@pytest.mark.parametrize("scheme", ["light", "dark"])
@pytest.mark.parametrize(
    ("text", "ground"),
    [
        ("ink", "paper"),
        ("ink", "panel"),
        ("faint", "paper"),
        ("faint", "panel"),
        ("accent", "paper"),
        ("accent", "panel"),
        ("danger", "paper"),
        ("danger", "danger_panel"),
        ("ink", "danger_panel"),
        ("faint", "danger_panel"),
    ],
)
def test_every_text_colour_reads_on_its_ground(theme: Theme, scheme: str, text: str, ground: str) -> None:
    """At least 4.5 to 1: WCAG 2.2, success criterion 1.4.3."""
    colours: Colours = getattr(theme.tokens, scheme)
    assert contrast(getattr(colours, text), getattr(colours, ground)) >= 4.5


def test_the_files_that_pages_need_are_named_by_what_is_in_them(theme: Theme) -> None:
    leaves = dict(theme_leaves(theme))
    for path in (theme.stylesheet_path, theme.script_path, theme.mark_path):
        assert sha256(leaves[path]).hexdigest()[:16] in path
    assert all(path.startswith("theme/") for path in leaves)


def test_every_font_that_the_stylesheet_names_is_published_with_a_licence(theme: Theme) -> None:
    leaves = dict(theme_leaves(theme))
    named = re.findall(r'url\("([^"]+)"\)', theme.stylesheet)
    assert {f"theme/{address}" for address in named} == {path for path in leaves if path.endswith(".woff2")}
    assert len([path for path in leaves if "OFL" in path]) == 2


def test_the_stylesheet_asks_no_other_host_and_leaves_the_card_s_style_out(theme: Theme) -> None:
    assert "//" not in theme.stylesheet
    assert "@import" not in theme.stylesheet
    assert theme.styles["card.css"] not in theme.stylesheet


def test_every_property_that_styles_use_is_a_token(theme: Theme) -> None:
    used = set(re.findall(r"var\((--[a-z-]+)\)", theme.stylesheet))
    assert used <= set(re.findall(r"(--[a-z-]+):", custom_properties(theme.tokens)))


def test_the_scripts_together_are_small_and_write_no_html(theme: Theme) -> None:
    assert len(theme.script.encode()) < 15_000
    assert not re.search(r"innerHTML|outerHTML|\beval\b|\bimport\b|document\.write", theme.script)


def test_no_script_reads_an_amount(theme: Theme) -> None:
    """Amounts are texts that were computed before; whoever counts with them needs a number first."""
    assert not re.search(r"amount|parseFloat|parseInt|\bNumber\b|valueAsNumber", theme.script)


def test_every_request_of_the_scripts_is_for_a_page_or_a_file_of_the_site(theme: Theme) -> None:
    assert "http" not in theme.script.replace('startsWith("http")', "")


def test_a_changed_style_changes_digest_and_address(theme: Theme) -> None:
    changed = replace(theme, styles={**theme.styles, "x.css": "p{}"})
    assert changed.page_digest != theme.page_digest
    assert changed.paper_digest("card.css") == theme.paper_digest("card.css")
    assert changed.stylesheet_path != theme.stylesheet_path


def test_a_style_of_one_kind_of_paper_is_none_of_the_others(theme: Theme) -> None:
    changed = replace(theme, styles={**theme.styles, "order.css": "p{}"})
    assert changed.page_digest == theme.page_digest
    assert changed.paper_digest("card.css") == theme.paper_digest("card.css")
    assert changed.paper_digest("order.css") != theme.paper_digest("order.css")


@pytest.mark.parametrize("name", PAGE_TEMPLATES)
def test_no_template_computes(theme: Theme, name: str) -> None:
    tree = theme.environment.parse(theme.templates[name])
    assert list(tree.find_all(ARITHMETIC)) == []
    assert not re.search(r"\|\s*(round|sum|int|float|safe)\b", theme.templates[name])


@pytest.mark.parametrize("name", PAGE_TEMPLATES)
def test_no_template_carries_style_or_script_inside(theme: Theme, name: str) -> None:
    assert not re.search(r"<style|\sstyle=|\son\w+=|javascript:", theme.templates[name])


def test_a_name_that_is_missing_is_an_error(theme: Theme) -> None:
    with pytest.raises(UndefinedError):
        theme.environment.from_string("{{ nobody }}").render()


def test_a_template_cannot_reach_behind_a_value(theme: Theme) -> None:
    with pytest.raises(SecurityError):
        theme.environment.from_string("{{ x.__class__.__mro__ }}").render(x="")


def test_plain_texts_get_print_quotes_and_are_escaped(theme: Theme) -> None:
    text = theme.environment.from_string("{{ x }}").render(x="""Baker's "best" <b>""")
    assert text == "Baker’s “best” &lt;b&gt;"
