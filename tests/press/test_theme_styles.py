"""Styles against templates: a rule for nothing is a slip of the pen, or is left from what once was there."""

import re
from pathlib import Path

import pytest

import sitegen
from sitegen.kitchen.allergens import ORDERS
from sitegen.press.theme import Theme, load_theme
from sitegen.press.timeline import SHAPES, timeline_svg
from tests.press.sample_sheets import THEME_FOLDER
from tests.press.test_timeline import LOAF

THEMES = sorted(folder.parent for folder in THEME_FOLDER.parent.glob("*/theme.yaml"))
HOUSE = Path(sitegen.__file__).parent


@pytest.fixture(scope="module", params=THEMES, ids=lambda folder: folder.name)
def theme(request: pytest.FixtureRequest) -> Theme:
    return load_theme(request.param)


def styled(theme: Theme) -> set[str]:
    """Every class that a selector of the theme names."""
    bare = re.sub(r"/\*.*?\*/", "", "".join(theme.styles.values()), flags=re.DOTALL)
    selectors = re.findall(r"([^{};]+)\{", bare)
    return {name for selector in selectors for name in re.findall(r"\.([a-zA-Z][\w-]*)", selector)}


def templates(theme: Theme) -> str:
    return "".join(theme.templates.values())


def written(theme: Theme) -> set[str]:
    """Every word that may become a class: of templates, scripts, pictures, and of values that name one."""
    marked = re.findall(r'class="[^>]*', templates(theme))
    code = [path.read_text("utf-8") for room in ("press", "sheet") for path in (HOUSE / room).glob("*.py")]
    values = [word for text in [*code, templates(theme)] for word in re.findall(r'"([a-z-]+)"', text)]
    drawn = re.findall(r'class="[^>]*', "".join(timeline_svg(LOAF, shape, "") for shape in SHAPES.values()))
    return {*re.findall(r"[\w-]+", " ".join([*marked, *values, *drawn, theme.script])), *ORDERS}


def test_every_class_that_is_styled_is_written_somewhere(theme: Theme) -> None:
    begun = tuple(re.findall(r"([a-z]+-)\{\{", templates(theme)))
    unused = {name for name in styled(theme) - written(theme) if not name.startswith(begun)}
    assert unused == set()
