"""A theme reads its own files and no others, and no file of it can keep a build busy."""

import os
import shutil
from collections.abc import Callable
from pathlib import Path

import pytest

from sitegen import limits
from sitegen.press.theme import load_theme
from sitegen.press.theme_folder import find_theme
from sitegen.press.tokens import ThemeUnusable

THEMES = Path(__file__).parents[2] / "themes"


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    (tmp_path / "secret").write_text("secret")
    return Path(shutil.copytree(THEMES / "oatcloth", tmp_path / "themes" / "linen"))


def _linked(folder: Path, name: str) -> None:
    (folder / name).unlink()
    (folder / name).symlink_to(folder.parents[1] / "secret")


def _pipe(folder: Path, name: str) -> None:
    (folder / name).unlink()
    os.mkfifo(folder / name)


def _text(folder: Path, name: str, text: str) -> None:
    (folder / name).write_text(text)


NESTED = "a: " + "[" * 2_000 + "]" * 2_000
REPEATED = "a: &a [x, x]\nb: &b [*a, *a]\nc: [*b, *b]\n"
WRONG: dict[str, tuple[Callable[[Path], None], str]] = {
    "a template that is a link": (lambda theme: _linked(theme, "templates/recipe.html"), "link"),
    "a style that is a link": (lambda theme: _linked(theme, "styles/card.css"), "link"),
    "a script that is a link": (lambda theme: _linked(theme, "scripts/3-bar.js"), "link"),
    "a mark that is a link": (lambda theme: _linked(theme, "mark.svg"), "link"),
    "tokens that are a link": (lambda theme: _linked(theme, "theme.yaml"), "link"),
    "a pipe": (lambda theme: _pipe(theme, "styles/card.css"), "plain file"),
    "a pipe of tokens": (lambda theme: _pipe(theme, "theme.yaml"), "plain file"),
    "a giant": (lambda theme: _text(theme, "mark.svg", "a" * (limits.TEXT_BYTES + 1)), "more than 1 MB"),
    "no text": (lambda theme: (theme / "styles/card.css").write_bytes(b"\xff\xfe") and None, "UTF-8"),
    "brackets in brackets": (lambda theme: _text(theme, "theme.yaml", NESTED), "more values"),
    "values that repeat others": (lambda theme: _text(theme, "theme.yaml", REPEATED), "more values"),
    "a day that is none": (lambda theme: _text(theme, "theme.yaml", "name: 2026-02-30\n"), "theme.yaml"),
    "a number of 5,000 figures": (
        lambda theme: _text(theme, "theme.yaml", "name: " + "9" * 5_000),
        "theme.yaml",
    ),
    "a parent elsewhere": (lambda theme: _text(theme, "theme.yaml", "inherits: ../linen"), "names no theme"),
}


@pytest.mark.parametrize("what", WRONG)
def test_what_is_wrong_is_told(what: str, folder: Path) -> None:
    spoil, words = WRONG[what]
    spoil(folder)
    with pytest.raises(ThemeUnusable) as caught:
        load_theme(folder)
    assert any(words in reason for reason in caught.value.reasons), caught.value.reasons


def test_a_theme_that_is_a_link_is_refused(folder: Path) -> None:
    (folder.parent / "hemp").symlink_to(folder)
    with pytest.raises(ThemeUnusable) as caught:
        find_theme(folder.parents[1], "hemp")
    assert "link" in caught.value.reasons[0]
