"""The table of outputs: what is made, by what, and for whom. A new output is one row here."""

from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import dataclass
from functools import partial
from hashlib import sha256
from itertools import groupby

from sitegen.press import addresses
from sitegen.press.choices import CardFile
from sitegen.press.entries import IndexEntry, tag_link
from sitegen.press.feeds import atom_feed, sitemap
from sitegen.press.find_index import find_index
from sitegen.press.index_page import contents_page, index_page, tag_page
from sitegen.press.leaf import Tree
from sitegen.press.not_found_page import not_found_page
from sitegen.press.not_kept_page import not_kept_page
from sitegen.press.offline import worker
from sitegen.press.recipe_page import recipe_page
from sitegen.press.robots import robots
from sitegen.press.texts import change_notice, subscriber_post, video_description
from sitegen.press.tutorial_pages import tutorial_page, tutorials_page
from sitegen.press.web_manifest import web_manifest
from sitegen.release.audience import photos_in
from sitegen.release.cache import Cache
from sitegen.release.print_room import PictureFiles
from sitegen.release.sites import ShownRecipe, Site, TextBrief


@dataclass(frozen=True)
class Output:
    """One file to come. path: POSIX, relative to its tree. body: makes the bytes when it is written.

    about: slugs of the recipes that it shows; empty for the school as a whole.
    """

    tree: Tree
    path: str
    body: Callable[[], bytes]
    about: tuple[str, ...] = ()


@dataclass(frozen=True)
class Build:
    """Everything that outputs are made of.

    theme_files: (path in the tree, cache key). pictures: the same, by source.
    cards: path in the tree -> cache key.
    """

    public: Site
    subscribers: Site
    texts: tuple[TextBrief, ...]
    theme_files: tuple[tuple[str, str], ...]
    pictures: PictureFiles
    cards: Mapping[str, str]
    cache: Cache

    def site(self, tree: Tree) -> Site:
        return self.public if tree is Tree.PUBLIC else self.subscribers


@dataclass(frozen=True)
class OutputRow:
    """A row of the table. trees: who gets it; the maker is called once for each."""

    name: str
    maker: Callable[[Build, Tree], Iterable[Output]]
    trees: tuple[Tree, ...]


def all_outputs(build: Build) -> tuple[Output, ...]:
    """Every file of every tree but the workers, in the order of the table."""
    return tuple(output for row in OUTPUTS for tree in row.trees for output in row.maker(build, tree))


def offline_workers(build: Build, digests: Mapping[str, str]) -> Iterator[Output]:
    """The worker of each tree, made last: its version is that of the pages.

    digests: path below `output/` -> hash, of every other file.
    """
    shown_with = [path for path, _ in build.theme_files if not path.endswith(".txt")]
    for tree in READERS:
        pages = sorted(each for each in digests.items() if _is_page(each[0], tree))
        version = sha256(repr(pages).encode()).hexdigest()[:16]
        made = partial(worker, build.site(tree).imprint, version, shown_with)
        yield Output(tree, addresses.WORKER, made)


def recipe_pages(build: Build, tree: Tree) -> Iterator[Output]:
    """Each recipe in each edition at each batch that its audience may choose."""
    site = build.site(tree)
    for recipe in site.recipes:
        for view in recipe.views():
            here = recipe.path(view)
            body = partial(
                recipe_page,
                site.theme,
                site.imprint,
                view,
                recipe.choices(view),
                site.pictures,
                here,
                recipe.revisions,
            )
            yield Output(tree, here, body, recipe.about)


def tutorial_pages(build: Build, tree: Tree) -> Iterator[Output]:
    """Technique pages and the list of them."""
    site = build.site(tree)
    lists = partial(tutorials_page, site.theme, site.imprint, site.tutorials, site.pictures)
    yield Output(tree, addresses.TUTORIALS, lists)
    for tutorial in site.tutorials:
        page = partial(tutorial_page, site.theme, site.imprint, tutorial, site.pictures)
        yield Output(tree, tutorial.path, page)


def lists(build: Build, tree: Tree) -> Iterator[Output]:
    """The front page, the contents, and a page for each tag."""
    site = build.site(tree)
    entries = site.entries()
    tags = _by_tag(entries)
    index = find_index(site.sought(), site.word_rules)
    front = partial(index_page, site.theme, site.imprint, entries, site.pictures, site.tutorials, index)
    yield Output(tree, addresses.INDEX, front)
    yield Output(tree, addresses.CONTENTS, partial(contents_page, site.theme, site.imprint, entries))
    for tag, tagged in tags.items():
        yield Output(
            tree, tag_link(tag).path, partial(tag_page, site.theme, site.imprint, tag, tagged, site.pictures)
        )


def not_found(build: Build, tree: Tree) -> Iterator[Output]:
    """The page for an address that is none."""
    site = build.site(tree)
    yield Output(tree, addresses.NOT_FOUND, partial(not_found_page, site.theme, site.imprint))


def feeds(build: Build, tree: Tree) -> Iterator[Output]:
    """What programs read: the feed and the map of the pages that search engines should list."""
    site = build.site(tree)
    yield Output(tree, addresses.FEED, partial(atom_feed, site.imprint, site.entries(), site.pictures))
    yield Output(tree, addresses.SITEMAP, partial(sitemap, site.imprint, tuple(_mapped(site))))


def crawling(build: Build, tree: Tree) -> Iterator[Output]:
    """What crawlers may read."""
    yield Output(tree, addresses.ROBOTS, partial(robots, build.site(tree).imprint))


def with_no_signal(build: Build, tree: Tree) -> Iterator[Output]:
    """What a device needs to keep pages, beside the worker: its page for all others, and the manifest."""
    site = build.site(tree)
    yield Output(tree, addresses.NOT_KEPT, partial(not_kept_page, site.theme, site.imprint))
    yield Output(tree, addresses.WEB_MANIFEST, partial(web_manifest, site.theme, site.imprint))


def theme_files(build: Build, tree: Tree) -> Iterator[Output]:
    """Style sheet, script, fonts and their licences."""
    for path, key in build.theme_files:
        yield Output(tree, path, partial(build.cache.fetch, key))


def pictures(build: Build, tree: Tree) -> Iterator[Output]:
    """The cuts of those photos that the pages of this tree show, and of no other."""
    about = _shown_by(build.site(tree))
    paths = {
        path: (key, source) for source in build.site(tree).pictures for path, key in build.pictures[source]
    }
    for path, (key, source) in sorted(paths.items()):
        yield Output(tree, path, partial(build.cache.fetch, key), about.get(source, ()))


def cards(build: Build, tree: Tree) -> Iterator[Output]:
    """Printed cards of the tested batch, in each edition and on each paper."""
    for recipe in build.site(tree).recipes:
        for view in recipe.rows[0]:
            for card in recipe.cards(view.head.edition.key):
                yield Output(
                    tree, card.path, partial(build.cache.fetch, build.cards[card.path]), recipe.about
                )


def texts(build: Build, tree: Tree) -> Iterator[Output]:
    """Plain texts for the baker: they lie in a tree of their own, which nobody serves."""
    for brief in build.texts:
        yield from _texts_of(brief, build, tree)


READERS = (Tree.PUBLIC, Tree.SUBSCRIBERS)

OUTPUTS = (
    OutputRow("recipe pages", recipe_pages, READERS),
    OutputRow("technique pages", tutorial_pages, READERS),
    OutputRow("lists", lists, READERS),
    OutputRow("not found", not_found, READERS),
    OutputRow("feeds", feeds, (Tree.PUBLIC,)),
    OutputRow("crawling", crawling, READERS),
    OutputRow("no signal", with_no_signal, READERS),
    OutputRow("theme", theme_files, READERS),
    OutputRow("pictures", pictures, READERS),
    OutputRow("cards", cards, (Tree.SUBSCRIBERS,)),
    OutputRow("texts", texts, (Tree.TEXTS,)),
)
"""Name, maker, audience. The leak test walks this table."""


def _by_tag(entries: Iterable[IndexEntry]) -> dict[str, tuple[IndexEntry, ...]]:
    """Tag -> its recipes in the order given; tags whose pages would share an address are one."""
    tagged = [(tag_link(tag).path, tag, entry) for entry in entries for tag in entry.tags]
    grouped = groupby(sorted(tagged, key=lambda row: row[:2]), key=lambda row: row[0])
    found = {}
    for _, rows in grouped:
        listed = list(rows)
        found[listed[0][1]] = tuple(dict.fromkeys(entry for _, _, entry in listed))
    return {tag: tuple(entry for entry in entries if entry in chosen) for tag, chosen in found.items()}


def _mapped(site: Site) -> Iterator[tuple[str, str]]:
    """(path, day of the last change): each page that is not another page at another batch."""
    yield addresses.INDEX, ""
    yield addresses.CONTENTS, ""
    for recipe in site.recipes:
        for view in recipe.rows[0]:
            yield recipe.path(view), view.head.modified
    yield addresses.TUTORIALS, ""
    for tutorial in site.tutorials:
        yield tutorial.path, ""
    for tag in _by_tag(site.entries()):
        yield tag_link(tag).path, ""


def _is_page(path: str, tree: Tree) -> bool:
    """path: below `output/`."""
    return path.startswith(f"{tree}/") and path.endswith(".html")


def _shown_by(site: Site) -> dict[str, tuple[str, ...]]:
    """Photo -> slugs of the recipes that show it; a photo of a technique page has none."""
    shown: dict[str, tuple[str, ...]] = {}
    for recipe in site.recipes:
        for file in dict.fromkeys(photo for view in recipe.views() for photo in photos_in(view)):
            shown[file] = tuple(dict.fromkeys((*shown.get(file, ()), *recipe.about)))
    return shown


def _texts_of(brief: TextBrief, build: Build, tree: Tree) -> Iterator[Output]:
    recipe = brief.shown
    folder, about = recipe.slug, recipe.about
    page = build.public.imprint.address + addresses.recipe_page(recipe.slug)
    table = build.subscribers.imprint.address
    full_page = table + addresses.recipe_page(recipe.slug)
    described = partial(_plain, video_description, brief.everyone, brief.corrections, page)
    yield Output(tree, f"{folder}/video-description.txt", described, about)
    posted = partial(_plain, subscriber_post, brief.sheets, full_page, _addressed(recipe, table))
    yield Output(tree, f"{folder}/subscriber-post.txt", posted, about)
    for day, revisions in groupby(brief.notify, key=lambda revision: revision.iso):
        told = partial(
            _plain, change_notice, brief.sheets[0], tuple(revisions), full_page, _addressed(recipe, table)
        )
        yield Output(tree, f"{folder}/change-notice-{day}.txt", told, about)


def _addressed(recipe: ShownRecipe, address: str) -> tuple[CardFile, ...]:
    """All cards with their edition and their full address."""
    return tuple(
        CardFile(f"{view.head.edition.title}, {card.title}", address + card.path)
        for view in recipe.rows[0]
        for card in recipe.cards(view.head.edition.key)
    )


def _plain(make: Callable[..., str], *arguments: object) -> bytes:
    return make(*arguments).encode()
