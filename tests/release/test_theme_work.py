"""The files of a theme, made once and found again."""

from dataclasses import replace
from pathlib import Path

import pytest

from sitegen.press.theme import Theme, load_theme, theme_leaves
from sitegen.press.theme_folder import find_theme
from sitegen.release.cache import Cache
from sitegen.release.theme_work import ThemeWork


@pytest.fixture
def work(tmp_path: Path) -> ThemeWork:
    """Of a theme without faces, which take seconds to cut."""
    theme: Theme = replace(load_theme(find_theme(tmp_path, "oatcloth")), fonts=())
    return ThemeWork(theme, Cache(tmp_path / "cache", "makers"))


def test_nothing_is_kept_before_it_is_made(work: ThemeWork) -> None:
    assert not work.is_kept()


def test_the_files_are_those_that_pages_need(work: ThemeWork) -> None:
    work.made()
    assert work.is_kept()
    assert [(path, work.cache.fetch(key)) for path, key in work.files()] == list(theme_leaves(work.theme))


def test_with_one_file_gone_the_theme_is_made_again(work: ThemeWork) -> None:
    work.made()
    _, key = work.files()[0]
    (work.cache.folder / key[:2] / key).unlink()
    assert not work.is_kept()


def test_another_style_is_other_work(work: ThemeWork) -> None:
    work.made()
    other = replace(work.theme, styles={**work.theme.styles, "1-base.css": "p{margin:0}"})
    assert not ThemeWork(other, work.cache).is_kept()
