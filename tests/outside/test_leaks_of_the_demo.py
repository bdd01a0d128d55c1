"""Nothing that is for subscribers is found in any byte of the public tree of the demo."""

import datetime
import re
from pathlib import Path

from sitegen.kitchen.method import Words
from sitegen.kitchen.recipe import PublicShows, Recipe
from sitegen.source.library import read_content
from tests.outside.demo import Demo

PROJECT = Path(__file__).parents[2]
DAY = datetime.date(2026, 11, 25)
LONG = 24


def is_public(recipe: Recipe) -> bool:
    return recipe.release.public is not None and recipe.release.public <= DAY


def shows_all(recipe: Recipe) -> bool:
    return is_public(recipe) and recipe.release.public_shows is PublicShows.EVERYTHING


def secrets_of(recipe: Recipe) -> set[str]:
    """Stretches of text that only subscribers may read."""
    texts = []
    for component in recipe.components:
        for step in component.steps:
            texts += [part.text for part in step.prose if isinstance(part, Words)]
            texts += [step.until, step.photo.alt if step.photo else ""]
        texts.append(component.keeps)
    texts += re.split(r"[.\n]", recipe.notes)
    return {text.strip() for text in texts if len(text.strip()) >= LONG}


def everything_in(tree: Path) -> bytes:
    return b"\n".join(path.read_bytes() for path in sorted(tree.rglob("*")) if path.is_file())


def test_no_sentence_of_a_method_is_public_before_its_day(demo: Demo) -> None:
    recipes = read_content(PROJECT).recipes
    open_texts = set().union(*(secrets_of(recipe) for recipe in recipes if shows_all(recipe)))
    public = everything_in(demo.public)
    looked_for = 0
    for recipe in recipes:
        if not shows_all(recipe):
            for text in secrets_of(recipe) - open_texts:
                looked_for += 1
                assert text.encode() not in public, f"{recipe.slug}: {text}"
    assert looked_for > 150


def test_a_recipe_that_is_not_yet_public_is_not_named_there(demo: Demo) -> None:
    public = everything_in(demo.public)
    hidden = [recipe for recipe in read_content(PROJECT).recipes if not is_public(recipe)]
    assert len(hidden) >= 2
    for recipe in hidden:
        assert recipe.title.encode() not in public
        assert recipe.slug.encode() not in public


def test_no_card_lies_in_the_public_tree(demo: Demo) -> None:
    assert not list(demo.public.rglob("*.pdf"))
    assert b"%PDF" not in everything_in(demo.public)


def test_pictures_carry_no_metadata(demo: Demo) -> None:
    pictures = [path for tree in (demo.public, demo.subscribers) for path in (tree / "pictures").iterdir()]
    assert len(pictures) > 100
    for path in pictures:
        body = path.read_bytes()
        for mark in (b"Exif", b"<x:xmpmeta", b"Photoshop", b"http://ns.adobe.com"):
            assert mark not in body, path.name


def test_the_subscribers_tree_holds_what_the_public_one_hides(demo: Demo) -> None:
    """So that the checks above could fail: the same sentences are found where they belong."""
    subscribers = everything_in(demo.subscribers)
    recipe = next(one for one in read_content(PROJECT).recipes if one.slug == "blackcurrant-and-bay-cupcakes")
    found = [text for text in secrets_of(recipe) if text.encode() in subscribers]
    assert len(found) > 5
