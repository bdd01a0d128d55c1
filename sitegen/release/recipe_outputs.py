"""The table of what is made of one recipe by itself: its pages in each tree, and its texts."""

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import groupby

from sitegen.press import addresses
from sitegen.press.choices import CardFile
from sitegen.press.imprint import Imprint
from sitegen.press.leaf import Leaf, Tree
from sitegen.press.picture import Picture
from sitegen.press.recipe_page import recipe_page
from sitegen.press.texts import RevisedNote, change_notice, subscriber_post
from sitegen.press.theme import Theme
from sitegen.press.video_description import video_description
from sitegen.release.shown import Shown, ShownRecipe, TextBrief
from sitegen.sheet.revised_lines import revised_lines
from sitegen.sheet.values import SheetRevision, View


@dataclass(frozen=True)
class Setting:
    """What pages of a recipe are made with. pictures: of its photos, by file."""

    theme: Theme
    public: Imprint
    subscribers: Imprint
    pictures: Mapping[str, Picture]


def recipe_leaves(shown: Shown, setting: Setting) -> Iterator[Leaf]:
    """Every page and text of one recipe."""
    for maker in RECIPE_OUTPUTS.values():
        yield from maker(shown, setting)


def public_pages(shown: Shown, setting: Setting) -> Iterator[Leaf]:
    """The recipe in each edition at each batch that everyone may choose."""
    if shown.public is not None:
        yield from _pages(Tree.PUBLIC, shown.public, setting.public, setting)


def subscribers_pages(shown: Shown, setting: Setting) -> Iterator[Leaf]:
    """The same for subscribers."""
    if shown.subscribers is not None:
        yield from _pages(Tree.SUBSCRIBERS, shown.subscribers, setting.subscribers, setting)


def texts(shown: Shown, setting: Setting) -> Iterator[Leaf]:
    """Plain texts for the baker: they lie in a tree of their own, which nobody serves."""
    if shown.brief is not None:
        for name, text in _texts_of(shown.brief, setting):
            yield Leaf(Tree.TEXTS, f"{shown.brief.shown.slug}/{name}.txt", text.encode())


RECIPE_OUTPUTS: Mapping[str, Callable[[Shown, Setting], Iterator[Leaf]]] = {
    "public pages": public_pages,
    "subscribers' pages": subscribers_pages,
    "texts": texts,
}
"""Name -> maker."""


def _pages(tree: Tree, recipe: ShownRecipe, imprint: Imprint, setting: Setting) -> Iterator[Leaf]:
    shown = {file: setting.pictures[file] for file in recipe.photos()}
    for view in recipe.views():
        yield Leaf(tree, recipe.path(view), page_of(recipe, view, setting.theme, imprint, shown))


def page_of(
    recipe: ShownRecipe, view: View, theme: Theme, imprint: Imprint, pictures: Mapping[str, Picture]
) -> bytes:
    """One page of a recipe. view: one of the recipe's. pictures: of all its photos, by file."""
    here, choices = recipe.path(view), recipe.choices(view)
    return recipe_page(theme, imprint, view, choices, pictures, here, recipe.revisions)


def _texts_of(brief: TextBrief, setting: Setting) -> Iterator[tuple[str, str]]:
    recipe, table = brief.shown, setting.subscribers.address
    pages = [setting.public.address + recipe.path(sheet) for sheet in brief.sheets]
    full_page = table + addresses.recipe_page(recipe.slug)
    cards = _addressed(recipe, table)
    yield "video-description", video_description(brief.everyone, brief.corrections, pages, full_page)
    yield "subscriber-post", subscriber_post(brief.sheets, full_page, cards)
    for day, revisions in groupby(brief.notify, key=lambda revision: revision.iso):
        yield f"change-notice-{day}", _notice(brief, tuple(revisions), full_page, cards)


def _notice(
    brief: TextBrief, revisions: Sequence[SheetRevision], page: str, cards: Sequence[CardFile]
) -> str:
    """revisions: of one day."""
    notes = [RevisedNote(one.note, revised_lines(brief.sheets, one.note)) for one in revisions]
    return change_notice(brief.sheets[0].head.title, revisions[0].day, notes, page, cards)


def _addressed(recipe: ShownRecipe, address: str) -> tuple[CardFile, ...]:
    """All cards with their edition and their full address."""
    return tuple(
        CardFile(f"{view.head.edition.title}, {card.title}", address + card.path)
        for view in recipe.rows[0]
        for card in recipe.cards(view.head.edition.key)
    )
