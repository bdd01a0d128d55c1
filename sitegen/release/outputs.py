"""The table of outputs: what is made, by what, and for whom. A new output is one row here."""

from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import partial
from hashlib import sha256

from sitegen.press import addresses
from sitegen.press.bundles import ListedBundle, bundles_page
from sitegen.press.entries import IndexEntry, tag_link
from sitegen.press.feeds import atom_feed, sitemap
from sitegen.press.find_index import find_index
from sitegen.press.index_page import contents_page, index_page, tag_page
from sitegen.press.leaf import Tree
from sitegen.press.not_found_page import not_found_page
from sitegen.press.not_kept_page import not_kept_page
from sitegen.press.offline import worker
from sitegen.press.robots import robots
from sitegen.press.tutorial_pages import tutorial_page, tutorials_page
from sitegen.press.web_manifest import web_manifest
from sitegen.release.bundle_work import ReadyBundle, bundle_title
from sitegen.release.cache import Cache, NotKept
from sitegen.release.parcel import CardRow, PageRow, Parcel
from sitegen.release.print_room import PictureFiles
from sitegen.release.sites import Site


@dataclass(frozen=True)
class Output:
    """One file to come. path: POSIX, relative to its tree. body: makes the bytes when it is written; of a
    large one piece by piece.

    about: slugs of the recipes that it shows; empty for the school as a whole. digest: hash of the bytes
    where it is known beforehand, '' where not.
    """

    tree: Tree
    path: str
    body: Callable[[], bytes | Iterable[bytes]]
    about: tuple[str, ...] = ()
    digest: str = ""

    @property
    def place(self) -> str:
        """Its path below `output/`."""
        return f"{self.tree}/{self.path}"


@dataclass(frozen=True)
class BuiltRecipe:
    """A recipe that is worked off. pages: in both trees, and its texts. cards: each with its cache key."""

    parcel: Parcel
    pages: tuple[PageRow, ...]
    cards: tuple[tuple[CardRow, str], ...]


@dataclass(frozen=True)
class Build:
    """Everything that outputs are made of.

    recipes: all without errors, drafts too. theme_files: (path in the tree, cache key). pictures: the same,
    by source. bundles: of the subscribers' cards.
    """

    public: Site
    subscribers: Site
    recipes: tuple[BuiltRecipe, ...]
    theme_files: tuple[tuple[str, str], ...]
    pictures: PictureFiles
    bundles: tuple[ReadyBundle, ...]
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


def kept(build: Build, tree: Tree, path: str, key: str, about: tuple[str, ...] = ()) -> Output:
    """A file whose bytes are in the cache. Raises NotKept where they were taken away."""
    digest = build.cache.digest(key)
    if digest is None:
        raise NotKept(key)
    return Output(tree, path, partial(build.cache.fetch, key), about, digest)


def of_recipes(build: Build, tree: Tree) -> Iterator[Output]:
    """Pages and texts of single recipes; `recipe_outputs.py` has the table of them."""
    for recipe in build.recipes:
        for row in recipe.pages:
            if row.tree is tree:
                yield kept(build, tree, row.path, row.key, recipe.parcel.about)


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
    index = find_index(site.sought(), site.word_rules)
    front = partial(index_page, site.theme, site.imprint, entries, site.pictures, site.tutorials, index)
    yield Output(tree, addresses.INDEX, front)
    all_of_them = partial(contents_page, site.theme, site.imprint, entries)
    yield _kept_list(build, tree, addresses.CONTENTS, all_of_them, site.listed_as.values())
    for tag, tagged in _by_tag(entries).items():
        page = partial(tag_page, site.theme, site.imprint, tag, tagged, site.pictures)
        shows = (tag, *(site.listed_as[entry.slug] for entry in tagged))
        yield _kept_list(build, tree, tag_link(tag).path, page, shows)


def _kept_list(
    build: Build, tree: Tree, path: str, page: Callable[[], bytes], shows: Iterable[str]
) -> Output:
    """A list of recipes: from the cache, where the same was made before. shows: all that is told in it."""
    site, cache = build.site(tree), build.cache
    key = cache.key("list", tree, path, site.theme.page_digest, repr(site.imprint), *shows)
    digest = cache.digest(key)
    if digest is not None:
        return Output(tree, path, partial(cache.fetch, key), digest=digest)
    return Output(tree, path, partial(_newly_kept, cache, key, page))


def _newly_kept(cache: Cache, key: str, page: Callable[[], bytes]) -> bytes:
    body = page()
    cache.put(key, body)
    return body


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
        yield kept(build, tree, path, key)


def pictures(build: Build, tree: Tree) -> Iterator[Output]:
    """The cuts of those photos that the pages of this tree show, and of no other."""
    about = _shown_by(build, tree)
    paths = {
        path: (key, source) for source in build.site(tree).pictures for path, key in build.pictures[source]
    }
    for path, (key, source) in sorted(paths.items()):
        yield kept(build, tree, path, key, about.get(source, ()))


def cards(build: Build, tree: Tree) -> Iterator[Output]:
    """Printed cards of the tested batch, in each edition and on each paper."""
    for recipe in build.recipes:
        for card, key in recipe.cards:
            yield kept(build, tree, card.path, key, recipe.parcel.about)


def bundles(build: Build, tree: Tree) -> Iterator[Output]:
    """Cards of a month, and those that changed, as ZIP files; and the page that lists them."""
    site = build.site(tree)
    listed: dict[bool, list[ListedBundle]] = {True: [], False: []}
    for ready in build.bundles:
        bundle = ready.bundle
        path = addresses.bundle(bundle.name)
        titles = tuple(item.recipe.title for item in bundle.items)
        listed[bundle.is_of_changes].append(ListedBundle(bundle_title(bundle), path, ready.size_text, titles))
        about = tuple(item.recipe.slug for item in bundle.items)
        yield Output(tree, path, partial(ready.pieces, build.cache), about, ready.digest(build.cache))
    page = partial(bundles_page, site.theme, site.imprint, listed[True], listed[False])
    yield Output(tree, addresses.BUNDLES, page)


READERS = (Tree.PUBLIC, Tree.SUBSCRIBERS)

OUTPUTS = (
    OutputRow("recipe pages", of_recipes, READERS),
    OutputRow("technique pages", tutorial_pages, READERS),
    OutputRow("lists", lists, READERS),
    OutputRow("not found", not_found, READERS),
    OutputRow("feeds", feeds, (Tree.PUBLIC,)),
    OutputRow("crawling", crawling, READERS),
    OutputRow("no signal", with_no_signal, READERS),
    OutputRow("theme", theme_files, READERS),
    OutputRow("pictures", pictures, READERS),
    OutputRow("cards", cards, (Tree.SUBSCRIBERS,)),
    OutputRow("bundles", bundles, (Tree.SUBSCRIBERS,)),
    OutputRow("texts", of_recipes, (Tree.TEXTS,)),
)
"""Name, maker, audience. The leak test walks this table."""


def _by_tag(entries: Sequence[IndexEntry]) -> dict[str, tuple[IndexEntry, ...]]:
    """Tag -> its recipes in the order given; tags whose pages would share an address are one."""
    tagged: dict[str, dict[str, IndexEntry]] = {}
    titles: dict[str, str] = {}
    for entry in entries:
        for tag in entry.tags:
            path = tag_link(tag).path
            tagged.setdefault(path, {})[entry.slug] = entry
            titles[path] = min(tag, titles.get(path, tag))
    return {titles[path]: tuple(found.values()) for path, found in sorted(tagged.items())}


def _mapped(site: Site) -> Iterator[tuple[str, str]]:
    """(path, day of the last change): each page that is not another page at another batch."""
    yield addresses.INDEX, ""
    yield addresses.CONTENTS, ""
    for recipe in site.recipes:
        yield from recipe.mapped
    yield addresses.TUTORIALS, ""
    for tutorial in site.tutorials:
        yield tutorial.path, ""
    for tag in _by_tag(site.entries()):
        yield tag_link(tag).path, ""


def _is_page(path: str, tree: Tree) -> bool:
    """path: below `output/`."""
    return path.startswith(f"{tree}/") and path.endswith(".html")


def _shown_by(build: Build, tree: Tree) -> dict[str, tuple[str, ...]]:
    """Photo -> slugs of the recipes that show it; a photo of a technique page has none."""
    shown: dict[str, tuple[str, ...]] = {}
    for recipe in build.recipes:
        listed = recipe.parcel.listed(tree)
        for file in listed.photos if listed else ():
            shown[file] = tuple(dict.fromkeys((*shown.get(file, ()), *recipe.parcel.about)))
    return shown
