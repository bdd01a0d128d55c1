"""The live site: both trees as `publish` would make them on the day, each page made when it is asked for.

Beside what publish makes it has the pages of recipes that are not out yet, which no list names.
"""

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass, replace
from functools import partial

from jinja2 import TemplateError

from sitegen.desk.bench import Bench
from sitegen.desk.dressing import mark_of
from sitegen.desk.live_pictures import LivePictures
from sitegen.desk.reading import Reading
from sitegen.desk.shown_faults import faults_here
from sitegen.faults import Fault, Severity
from sitegen.press import addresses
from sitegen.press.addresses import BUNDLES
from sitegen.press.bundles import ListedBundle, bundles_page
from sitegen.press.leaf import Tree
from sitegen.press.picture import PictureUnreadable
from sitegen.press.theme import Theme
from sitegen.release.bundle_work import bundle_title, bundles_to_make
from sitegen.release.commission import Imprints
from sitegen.release.outputs import OUTPUTS, Build
from sitegen.release.recipe_outputs import Setting, page_of, texts
from sitegen.release.shown import ShownRecipe
from sitegen.release.sites import Site, site_of
from sitegen.source.school import School

_WHOLE_SCHOOL = frozenset({"technique pages", "lists", "feeds", "crawling", "no signal"})
"""Rows of the table of outputs that are made of all recipes together, or of none."""
_RECIPES = "recipes/"
_NO_SIZE = "made by publish"


class NotMade(Exception):
    """A page that cannot be made. told: why, a sentence. slug: of the recipe at fault, '' for none."""

    def __init__(self, title: str, told: str, faults: Iterable[Fault] = (), slug: str = "") -> None:
        super().__init__(title, told)
        self.title = title
        self.told = told
        self.faults = tuple(faults)
        self.slug = slug

    @property
    def mark(self) -> str:
        """What tells whether a page that tells of it is still the one that is open."""
        return mark_of(repr((self.title, self.told, self.faults)).encode())


@dataclass(frozen=True)
class Page:
    """A file of the live site. slug: of the recipe whose page it is, '' for any other."""

    body: bytes
    slug: str = ""


class LiveSite:
    """Pages of what was read. All its calls but those of pictures are made from the thread that reads."""

    def __init__(self, reading: Reading, pictures: LivePictures) -> None:
        self._reading = reading
        self._pictures = pictures
        self._made: dict[tuple[Tree, str], Page | None] = {}
        self._makers: dict[Tree, Mapping[str, Callable[[], bytes | Iterable[bytes]]]] = {}
        self._number = -1

    def page(self, tree: Tree, path: str) -> Page | None:
        """A page, a list, a feed or a text; None where there is none. Raises NotMade."""
        bench = self._reading.bench
        if bench.number != self._number:
            self._number, self._made, self._makers = bench.number, {}, {}
        here = (tree, path)
        if here not in self._made:
            try:
                self._made[here] = self._newly_made(bench, tree, path)
            except (TemplateError, PictureUnreadable, OSError) as problem:
                faults = faults_here(problem, bench.root)
                raise NotMade("This page cannot be made", faults[0].sentence, faults) from problem
        return self._made[here]

    def _newly_made(self, bench: Bench, tree: Tree, path: str) -> Page | None:
        school, theme, imprints = bench.school, bench.theme, bench.imprints
        if school is None or imprints is None or theme is None:
            what = "content/site.yaml" if school is None else "the theme"
            raise NotMade("There is no site to show yet", f"It appears once {what} is mended.", bench.own)
        if path.startswith(_RECIPES) and path.endswith(".html"):
            slug = path.removeprefix(_RECIPES).removesuffix(".html").partition("/")[0]
            return self._recipe_page(bench, theme, imprints, tree, slug, path)
        if tree is Tree.TEXTS:
            return self._text(theme, imprints, path)
        if path.startswith("bundles/") and path.endswith(".zip"):
            raise NotMade("Bundles are made by publish", "Only there all their cards are printed.")
        maker = self._whole_school(bench, school, theme, tree).get(path)
        if maker is None:
            return None
        body = maker()
        return Page(body if isinstance(body, bytes) else b"".join(body))

    def _recipe_page(
        self, bench: Bench, theme: Theme, imprints: Imprints, tree: Tree, slug: str, path: str
    ) -> Page | None:
        recipe = self._shown(bench, tree, slug)
        view = next((view for view in recipe.views() if recipe.path(view) == path), None) if recipe else None
        if recipe is None or view is None:
            return None
        imprint = imprints.public if tree is Tree.PUBLIC else imprints.subscribers
        pictures = self._pictures.marked(bench.marks)
        shown = {file: pictures[file] for file in recipe.photos()}
        return Page(page_of(recipe, view, theme, imprint, shown), slug)

    def _shown(self, bench: Bench, tree: Tree, slug: str) -> ShownRecipe | None:
        if slug not in bench.slugs:
            return None
        hand = self._reading.at_hand(slug)
        if hand is None:
            return None
        if hand.shown is None:
            faults = _concerning((*hand.read.proofed.faults, *hand.read.content.faults), slug)
            titles = {heading.slug: heading.title for heading in bench.headings}
            raise NotMade(titles.get(slug, slug), "It appears here once these are mended.", faults, slug)
        return hand.shown.public if tree is Tree.PUBLIC else hand.shown.subscribers

    def _text(self, theme: Theme, imprints: Imprints, path: str) -> Page | None:
        slug = path.partition("/")[0]
        hand = self._reading.at_hand(slug)
        if hand is None or hand.shown is None:
            return None
        setting = Setting(theme, imprints.public, imprints.subscribers, {})
        made = {leaf.path: leaf.body for leaf in texts(hand.shown, setting)}
        return Page(made[path], slug) if path in made else None

    def _whole_school(
        self, bench: Bench, school: School, theme: Theme, tree: Tree
    ) -> Mapping[str, Callable[[], bytes | Iterable[bytes]]]:
        """Path -> maker, of all that shows the school as a whole."""
        if tree not in self._makers:
            build = Build(
                public=self._site(bench, school, theme, Tree.PUBLIC),
                subscribers=self._site(bench, school, theme, Tree.SUBSCRIBERS),
                recipes=(),
                theme_files=(),
                pictures={},
                bundles=(),
                cache=bench.cache,
            )
            rows = (row for row in OUTPUTS if row.name in _WHOLE_SCHOOL and tree in row.trees)
            outputs = (output for row in rows for output in row.maker(build, tree))
            makers = {output.path: output.body for output in outputs}
            if tree is Tree.SUBSCRIBERS:
                makers[BUNDLES] = partial(_bundles, bench, build.subscribers)
            self._makers[tree] = makers
        return self._makers[tree]

    def _site(self, bench: Bench, school: School, theme: Theme, tree: Tree) -> Site:
        site = site_of(bench.common, school, tree, theme, bench.listed(tree))
        return replace(site, pictures=self._pictures.marked(bench.marks))


def _bundles(bench: Bench, site: Site) -> bytes:
    """The page of bundles, none of which is made: their sizes stand in what publish makes."""
    out = {row.entry.slug for row in site.recipes}
    parcels = [state.parcel for slug, state in bench.states.items() if slug in out]
    cards = {card.path: "" for parcel in parcels for card in parcel.cards}
    listed: dict[bool, list[ListedBundle]] = {True: [], False: []}
    for bundle in bundles_to_make(parcels, cards, bench.day):
        titles = tuple(item.recipe.title for item in bundle.items)
        row = ListedBundle(bundle_title(bundle), addresses.bundle(bundle.name), _NO_SIZE, titles)
        listed[bundle.is_of_changes].append(row)
    return bundles_page(site.theme, site.imprint, listed[True], listed[False])


def _concerning(faults: Iterable[Fault], slug: str) -> tuple[Fault, ...]:
    """Errors, each once: the recipe's own first, then those of what it draws on."""
    folder = f"content/recipes/{slug}/"
    errors = (fault for fault in dict.fromkeys(faults) if fault.severity is Severity.ERROR)
    return tuple(sorted(errors, key=lambda fault: not fault.place.file.startswith(folder)))
