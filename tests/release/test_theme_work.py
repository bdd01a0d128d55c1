"""The faces of a theme, cut once and found again."""

from dataclasses import replace

import pytest

from sitegen.press.fonts import subset
from sitegen.press.theme import Theme, load_theme, theme_leaves
from sitegen.press.theme_folder import find_theme
from sitegen.release.cache import Cache
from sitegen.release.theme_work import card_faces, face_work, theme_files


@pytest.fixture(scope="module")
def theme(tmp_path_factory: pytest.TempPathFactory) -> Theme:
    """With one of its faces, since each takes a second to cut."""
    loaded = load_theme(find_theme(tmp_path_factory.mktemp("no-themes"), "oatcloth"))
    return replace(loaded, fonts=loaded.fonts[:1])


@pytest.fixture(scope="module")
def cache(theme: Theme, tmp_path_factory: pytest.TempPathFactory) -> Cache:
    """In which the face is cut."""
    cache = Cache(tmp_path_factory.mktemp("cache"), "makers")
    (work,) = face_work(theme, cache)
    assert not work.is_kept()
    work.made()
    assert work.is_kept()
    return cache


def test_the_files_are_those_that_pages_need(theme: Theme, cache: Cache) -> None:
    files = {path: cache.fetch(key) for path, key in theme_files(theme, cache)}
    assert files == dict(theme_leaves(theme))


def test_cards_are_set_in_the_same_face(theme: Theme, cache: Cache) -> None:
    assert card_faces(theme, cache) == {theme.fonts[0]: subset(theme.fonts[0])}


def test_another_style_needs_no_other_face(theme: Theme, cache: Cache) -> None:
    other = replace(theme, styles={**theme.styles, "1-base.css": "p{margin:0}"})
    assert all(work.is_kept() for work in face_work(other, cache))
    assert theme_files(other, cache) != theme_files(theme, cache)


def test_a_face_under_another_name_is_another_face(theme: Theme, cache: Cache) -> None:
    renamed = replace(theme, fonts=(replace(theme.fonts[0], family="Another name"),))
    assert not any(work.is_kept() for work in face_work(renamed, cache))
