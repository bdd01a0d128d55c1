"""The theme Enamel: complete, with a look of its own, and readable."""

import re
from collections.abc import Iterator
from io import BytesIO
from pathlib import Path

import pytest
from fontTools.ttLib import TTFont

from sitegen.press.fonts import FontFile, subset
from sitegen.press.theme import Theme, load_theme
from sitegen.press.tokens import Colours
from tests.outside.contrast import contrast

THEMES = Path(__file__).parents[2] / "themes"
ENAMEL, OATCLOTH = load_theme(THEMES / "enamel"), load_theme(THEMES / "oatcloth")
OF_RECIPES = "aZ09é £€½⅓⅔¼¾⅛⅜⅝⅞⅙⅚°−–—‘’“”…×→\N{NO-BREAK SPACE}\N{NON-BREAKING HYPHEN}"


def test_every_style_sheet_is_its_own() -> None:
    own = {path.name for path in (THEMES / "enamel" / "styles").glob("*.css")}
    assert set(OATCLOTH.styles) <= own
    assert [name for name in OATCLOTH.styles if ENAMEL.styles[name] == OATCLOTH.styles[name]] == []
    assert "Oatcloth" not in ENAMEL.stylesheet + "".join(ENAMEL.styles.values())


def test_no_colour_size_or_face_is_that_of_oatcloth() -> None:
    for scheme in ("light", "dark"):
        own, other = (getattr(theme.tokens, scheme).model_dump() for theme in (ENAMEL, OATCLOTH))
        assert [name for name, colour in own.items() if colour == other[name]] == []
    assert not {font.file for font in ENAMEL.fonts} & {font.file for font in OATCLOTH.fonts}


@pytest.mark.parametrize("theme", [ENAMEL, OATCLOTH], ids=lambda theme: theme.name)
def test_every_family_that_leads_a_stack_has_a_face(theme: Theme) -> None:
    """The names behind the first are those of type that a machine may have."""
    stacks = [theme.tokens.type.serif, theme.tokens.type.sans, *stacks_in("".join(theme.styles.values()))]
    leading = {stack.split(",")[0].strip("'\" ") for stack in stacks}
    assert leading <= {font.family for font in theme.fonts}


def stacks_in(css: str) -> Iterator[str]:
    """What declarations of `font` and `font-family` name in quotes, to the end of each."""
    for declaration in re.findall(r"\bfont(?:-family)?:([^;}]+)", css):
        yield from re.findall(r"['\"].*", declaration)


@pytest.mark.parametrize("font", ENAMEL.fonts, ids=lambda font: font.name)
def test_every_face_has_all_that_recipes_are_set_with(font: FontFile) -> None:
    """No fraction comes from another face: beside '2', a ⅔ of another weight would stand out."""
    characters = TTFont(BytesIO(subset(font))).getBestCmap()
    assert [letter for letter in OF_RECIPES if ord(letter) not in characters] == []


def test_every_weight_that_a_style_asks_for_is_there() -> None:
    asked = set(re.findall(r"font-weight:\s*(\w+)", "".join(ENAMEL.styles.values())))
    asked |= set(re.findall(r"\bfont:\s*(\d{3})\b", "".join(ENAMEL.styles.values())))
    assert asked - {"inherit"} <= {str(font.weight) for font in ENAMEL.fonts}


def test_contrast_is_that_of_the_standard() -> None:
    """Source: W3C, Techniques for WCAG 2.2, G18; #767676 is the lightest grey that reads on white."""
    assert contrast("#000000", "#ffffff") == pytest.approx(21)
    assert 4.5 <= contrast("#767676", "#ffffff") < contrast("#757575", "#ffffff")
    assert contrast("#777777", "#ffffff") < 4.5


TEXTS = [
    (text, ground)
    for ground in ("paper", "panel", "danger_panel")
    for text in ("ink", "faint", "accent", "danger")
]
LINES = [(line, ground) for ground in ("paper", "panel") for line in ("accent", "spark")]


@pytest.mark.parametrize("scheme", ["light", "dark"])
@pytest.mark.parametrize(("text", "ground"), TEXTS)
def test_every_text_reads_on_every_ground(scheme: str, text: str, ground: str) -> None:
    """At least 4.5 to 1: WCAG 2.2, 1.4.3. A plate turns paper and accent round, with the same contrast."""
    colours: Colours = getattr(ENAMEL.tokens, scheme)
    assert contrast(getattr(colours, text), getattr(colours, ground)) >= 4.5


@pytest.mark.parametrize("scheme", ["light", "dark"])
@pytest.mark.parametrize(("line", "ground"), LINES)
def test_rims_and_marks_are_seen_on_every_ground(scheme: str, line: str, ground: str) -> None:
    """At least 3 to 1: WCAG 2.2, 1.4.11."""
    colours: Colours = getattr(ENAMEL.tokens, scheme)
    assert contrast(getattr(colours, line), getattr(colours, ground)) >= 3
