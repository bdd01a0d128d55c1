"""A card from a black-and-white printer: colours can still be read, and nothing is told by them alone.

Source: WCAG 2.2, 1.4.3 (contrast of 4.5 to 1) and 1.4.1; relative luminance is the grey that is printed.
"""

import re
from pathlib import Path

import pytest

from sitegen.press.theme import Theme, load_theme
from sitegen.press.timeline import timeline_picture
from tests.press.test_timeline import LOAF

THEMES = Path(__file__).parents[2] / "themes"
NAMES = sorted(path.parent.name for path in THEMES.glob("*/theme.yaml"))
TEXT = re.compile(r"(?<![\w-])color:\s*var\(--colour-([a-z-]+)\)")
GROUND = re.compile(r"background(?:-color)?:\s*var\(--colour-([a-z-]+)\)")
STYLES = ("card.css", "kitchen-card.css")


def grey(colour: str) -> float:
    """Relative luminance, from 0 (black) to 1. colour: '#2a211d'."""
    shares = [int(colour[at : at + 2], 16) / 255 for at in (1, 3, 5)]
    linear = [share / 12.92 if share <= 0.04045 else ((share + 0.055) / 1.055) ** 2.4 for share in shares]
    return sum(weight * share for weight, share in zip((0.2126, 0.7152, 0.0722), linear, strict=True))


def contrast(one: str, other: str) -> float:
    darker, lighter = sorted((grey(one), grey(other)))
    return (lighter + 0.05) / (darker + 0.05)


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
