"""A card from a black-and-white printer: colours can still be read, and nothing is told by them alone.

Source: WCAG 2.2, 1.4.3 (contrast of 4.5 to 1) and 1.4.1; relative luminance is the grey that is printed.
"""

import re
from pathlib import Path

import pytest

from sitegen.press.theme import Theme, load_theme
from sitegen.press.timeline import timeline_picture
from tests.outside.contrast import contrast
from tests.press.test_timeline import LOAF

THEMES = Path(__file__).parents[2] / "themes"
NAMES = sorted(path.parent.name for path in THEMES.glob("*/theme.yaml"))
TEXT = re.compile(r"(?<![\w-])color:\s*var\(--colour-([a-z-]+)\)")
GROUND = re.compile(r"background(?:-color)?:\s*var\(--colour-([a-z-]+)\)")
STYLES = ("card.css", "kitchen-card.css")


@pytest.fixture(scope="module", params=NAMES)
def theme(request: pytest.FixtureRequest) -> Theme:
    return load_theme(THEMES / str(request.param))


@pytest.mark.parametrize("style", STYLES)
def test_every_colour_of_text_can_be_read_in_greys(style: str, theme: Theme) -> None:
    colours = theme.tokens.light.model_dump(by_alias=True)
    rules = re.findall(r"\{([^{}]*)\}", theme.styles[style])
    coloured = [(TEXT.search(rule), GROUND.search(rule)) for rule in rules]
    pairs = {(text[1], ground[1] if ground else "white") for text, ground in coloured if text}
    assert ("ink", "white") in pairs
    for text, ground in pairs:
        assert contrast(colours[text], colours.get(ground, "#ffffff")) >= 4.5, f"{text} on {ground}"


def test_caution_is_told_by_words_and_a_frame(theme: Theme) -> None:
    assert "<h2>Take care</h2>" in theme.templates["card.html"]
    assert re.search(r"\.caution\s*\{[^}]*border:\s*[\d.]+pt solid", theme.styles["card.css"])


def test_work_waiting_and_oven_differ_by_pattern() -> None:
    picture = timeline_picture(LOAF, "card")
    fills = re.findall(r'fill="([^"]+)"[^>]*class="(work|wait|oven)"', picture)
    by_kind = {kind: {fill for fill, each in fills if each == kind} for _, kind in fills}
    assert by_kind["work"] == {"#222222"}
    assert by_kind["wait"] == {"url(#timeline-card-wait)"}
    assert by_kind["oven"] == {"url(#timeline-card-oven)"}
