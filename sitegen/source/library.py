"""The whole of a school: every file under `content/` read, joined and checked."""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from os.path import lexists, realpath
from pathlib import Path
from re import fullmatch

from sitegen.faults import Fault, FaultCode, Place, Severity
from sitegen.kitchen.declared import known_with, tables_of
from sitegen.kitchen.prices import PriceList
from sitegen.kitchen.recipe import Recipe
from sitegen.kitchen.tables import Tables
from sitegen.source.checks import CHECKS, HEADING_CHECKS, SCHOOL_CHECKS
from sitegen.source.context import Context
from sitegen.source.declared import declared_in
from sitegen.source.file_texts import SLUG_PATTERN
from sitegen.source.films import with_films
from sitegen.source.headings import Heading, heading_of
from sitegen.source.models import RecipeFile
from sitegen.source.order_file import order_from, unread_recipes
from sitegen.source.orders import Order
from sitegen.source.photos import Folder
from sitegen.source.prices import PRICE_LIST, prices_from
from sitegen.source.reader import Document, parse_document
from sitegen.source.recipes import RecipeSource, recipe_from
from sitegen.source.school import Content, School, Tutorial
from sitegen.source.shapes import shaped
from sitegen.source.site import school_from
from sitegen.source.tables import read_tables
from sitegen.source.textfile import OUTSIDE, UNREADABLE, read_text
from sitegen.source.tutorials import tutorial_from

NO_CONTENT = FaultCode(
    "no-content",
    Severity.ERROR,
    "The folder has no `content/` in it: most likely the command was given in another folder.",
    "Go to the folder that holds `content/`, or name it on the command line.",
    file="",
)
NO_RECIPES = FaultCode(
    "no-recipes",
    Severity.ERROR,
    "There is no recipe under `content/recipes/`.",
    "Make a folder for the recipe and put its `recipe.yaml` and pictures there.",
    file="",
)
BAD_SLUG = FaultCode(
    "bad-slug",
    Severity.ERROR,
    "The name of a folder or page becomes its address, in which other letters than a-z get garbled.",
    "Rename it in small letters, figures and dashes, such as bay-cupcakes.",
    file="",
)
STRAY_FILE = FaultCode(
    "stray-file",
    Severity.ADVICE,
    "A file lies where only folders of recipes belong; nobody reads it.",
    "Move it into the folder of its recipe.",
    file="",
)

CODES = (NO_CONTENT, NO_RECIPES, BAD_SLUG, STRAY_FILE)


def read_content(root: Path) -> Content:
    """Read all of `root/content/`, never stopping at a fault.

    root: the folder that holds `content/`. Faults come sorted by place, each once.
    """
    school, slugs = read_school(root)
    reading = _Reading(root)
    sources = tuple(reading.sources(slugs))
    headings = tuple(map(heading_of, sources))
    content = read_kitchen(_with_recipes(school, reading, sources, headings))
    return replace(content, faults=_sorted([*content.faults, *faults_of_headings(headings)]))


def read_school(root: Path) -> tuple[Content, tuple[str, ...]]:
    """What all recipes have in common (the site, the larder, technique pages), and the recipes' folders."""
    reading = _Reading(root)
    tables = reading.tables()
    school = reading.school(tables)
    slugs = reading.slugs()
    content = Content(
        root=str(root),
        school=school,
        recipes=(),
        tutorials=reading.tutorials(),
        tables=_with_own_eggs(tables, school),
        faults=(),
        texts=reading.texts,
    )
    return replace(content, faults=tuple(reading.faults)), slugs


def read_headings(root: Path, slugs: Iterable[str]) -> tuple[Heading, ...]:
    """The heading of each recipe whose file has the right shape. slugs: of recipes, in order."""
    return tuple(map(heading_of, _Reading(root).sources(slugs)))


def read_recipes(school: Content, slugs: Iterable[str], headings: Sequence[Heading]) -> Content:
    """The school with some of its recipes, read and checked.

    slugs: whose, in order; with a recipe those that it draws on must be among them. headings: of all recipes
    of the school, since a line may name any of them.
    """
    reading = _Reading(Path(school.root))
    return _with_recipes(school, reading, tuple(reading.sources(slugs)), headings)


def _with_recipes(
    school: Content, reading: "_Reading", sources: Sequence[RecipeSource], headings: Sequence[Heading]
) -> Content:
    titles = tuple(heading.title for heading in headings)
    recipes = reading.recipes(sources, school.tables, titles)
    written_in = school.school.written_in if school.school else ""
    recipes, film_faults = with_films(recipes, titles, school.tables, written_in, Path(school.root))
    reading.faults += film_faults
    texts = {**school.texts, **reading.texts}
    content = replace(school, recipes=recipes, texts=texts, headings=tuple(headings))
    return replace(content, faults=(*school.faults, *reading.faults, *faults_of_meaning(content)))


def read_kitchen(content: Content) -> Content:
    """The same with what is for the kitchen alone: prices and orders."""
    reading = _Reading(Path(content.root))
    declared = tuple(row for recipe in content.recipes for row in recipe.declared)
    prices = reading.prices(known_with(content.tables, declared))
    orders = reading.orders(content.recipes, content.tables, unread_recipes(content.faults, content.recipes))
    faults = (*content.faults, *reading.faults)
    return replace(
        content, prices=prices, orders=orders, faults=faults, texts={**content.texts, **reading.texts}
    )


def _with_own_eggs(tables: Tables, school: School | None) -> Tables:
    """The tables in which the usual egg of the school's own region is the one that its site file names."""
    if school is None or school.written_in not in tables.editions:
        return tables
    region = tables.editions[school.written_in].egg_region
    editions = {
        key: replace(edition, egg_size=school.egg_size) if edition.egg_region == region else edition
        for key, edition in tables.editions.items()
    }
    return replace(tables, editions=editions)


def faults_of_meaning(content: Content) -> Iterator[Fault]:
    """What the tables of checks find in recipes that could be read."""
    bases = {recipe.title: recipe for recipe in content.recipes}
    for recipe in content.recipes:
        tables = tables_of(recipe, bases, content.tables)
        for check in CHECKS:
            yield from check(recipe, tables)
    for school_check in SCHOOL_CHECKS:
        yield from school_check(content)


def faults_of_headings(headings: Sequence[Heading]) -> Iterator[Fault]:
    """What the tables of checks find in the headings of all recipes."""
    for check in HEADING_CHECKS:
        yield from check(headings)


def _sorted(faults: list[Fault]) -> tuple[Fault, ...]:
    return tuple(sorted(dict.fromkeys(faults), key=lambda fault: (fault.place, fault.code)))


@dataclass(frozen=True)
class _Folders:
    content: Folder
    recipes: Folder
    tutorials: Folder
    orders: Folder

    @classmethod
    def under(cls, root: Path) -> "_Folders":
        content = root / "content"
        return cls(
            Folder(content, "content"),
            Folder(content / "recipes", "content/recipes"),
            Folder(content / "tutorials", "content/tutorials"),
            Folder(content / "orders", "content/orders"),
        )


class _Reading:
    """One walk through a school's folder. faults and texts grow as files are read."""

    def __init__(self, root: Path) -> None:
        self.faults: list[Fault] = []
        self.texts: dict[str, tuple[str, ...]] = {}
        self._folders = _Folders.under(root)
        self._is_there = self._folders.content.path.is_dir()
        if not self._is_there:
            sentence = f"there is no folder 'content' in '{root}'"
            self.faults.append(NO_CONTENT.fault(Place("content"), sentence))

    def tables(self) -> Tables:
        larder = self._folders.content.path / "larder.yaml"
        document = self._document(self._folders.content, "larder.yaml") if lexists(larder) else None
        tables, faults = read_tables(document)
        self.faults += faults
        return tables

    def school(self, tables: Tables) -> School | None:
        document = self._document(self._folders.content, "site.yaml") if self._is_there else None
        if document is None:
            return None
        school, faults = school_from(document, tables)
        self.faults += faults
        return school

    def prices(self, tables: Tables) -> PriceList | None:
        path = self._folders.content.path / PRICE_LIST
        document = self._document(self._folders.content, PRICE_LIST) if lexists(path) else None
        if document is None:
            return None
        prices, faults = prices_from(document, tables)
        self.faults += faults
        return prices

    def recipes(
        self, sources: Sequence[RecipeSource], tables: Tables, titles: tuple[str, ...]
    ) -> tuple[Recipe, ...]:
        recipes = []
        for source in sources:
            declared, faults = declared_in(source.document, source.file.larder, tables)
            self.faults += faults
            known = known_with(tables, declared)
            context = Context(known, tuple(source.file.components), titles, declared)
            recipe, faults = recipe_from(source, context)
            self.faults += faults
            recipes += [recipe] if recipe else []
        return tuple(recipes)

    def tutorials(self) -> tuple[Tutorial, ...]:
        folder = self._folders.tutorials
        tutorials = []
        for path in self._listed(folder, ".md"):
            shown = folder.shown_file(path.name)
            if not self._lies_inside(path, shown) or not self._is_slug(path.stem, folder):
                continue
            tutorial, faults, lines = tutorial_from(folder, path.stem)
            self.faults += faults
            self.texts[shown] = lines
            tutorials += [tutorial] if tutorial else []
        return tuple(tutorials)

    def orders(
        self, recipes: tuple[Recipe, ...], tables: Tables, unread: frozenset[str]
    ) -> tuple[Order, ...]:
        folder = self._folders.orders
        orders = []
        for path in self._listed(folder, ".yaml"):
            document = self._document(folder, path.name)
            if document is not None:
                order, faults = order_from(document, recipes, tables, unread)
                self.faults += faults
                orders += [order] if order else []
        return tuple(orders)

    def slugs(self) -> tuple[str, ...]:
        """The folders of recipes, sorted; what is none is told."""
        slugs = tuple(self._slugs())
        if not slugs and self._is_there:
            place = Place(self._folders.recipes.shown)
            self.faults.append(NO_RECIPES.fault(place, "there is no recipe here"))
        return slugs

    def _slugs(self) -> Iterator[str]:
        folder = self._folders.recipes
        for path in self._listed(folder):
            if path.name.startswith("."):
                continue
            if not path.is_dir():
                place = Place(folder.shown_file(path.name))
                self.faults.append(STRAY_FILE.fault(place, f"'{path.name}' is no folder"))
            elif self._is_slug(path.name, folder):
                recipe = Folder(path, folder.shown_file(path.name))
                yield from (path.name,) if self._is_no_link(recipe) else ()

    def sources(self, slugs: Iterable[str]) -> Iterator[RecipeSource]:
        """Each recipe whose file has the right shape; the faults of the others are kept."""
        for slug in slugs:
            folder = Folder(self._folders.recipes.path / slug, self._folders.recipes.shown_file(slug))
            document = self._document(folder, "recipe.yaml")
            file, faults = shaped(document, RecipeFile) if document is not None else (None, ())
            self.faults += faults
            if document is not None and file is not None:
                yield RecipeSource(slug, folder, document, file)

    def _listed(self, folder: Folder, ending: str = "") -> tuple[Path, ...]:
        """What lies in a folder, sorted; nothing where there is none, a fault where it is closed to us."""
        if not self._is_no_link(folder):
            return ()
        try:
            return tuple(path for path in sorted(folder.path.iterdir()) if path.name.endswith(ending))
        except (FileNotFoundError, NotADirectoryError):
            return ()
        except OSError as problem:
            sentence = f"the folder cannot be read: {problem.strerror}"
            self.faults.append(UNREADABLE.fault(Place(folder.shown), sentence))
            return ()

    def _document(self, folder: Folder, name: str) -> Document | None:
        shown, path = folder.shown_file(name), folder.path / name
        if not self._lies_inside(path, shown):
            return None
        text, faults = read_text(path, shown, self._folders.content.path)
        self.faults += faults
        if text is None:
            return None
        self.texts[shown] = tuple(text.split("\n"))
        document, faults = parse_document(text, shown)
        self.faults += faults
        return document

    def _lies_inside(self, path: Path, shown: str) -> bool:
        inside = Path(realpath(path)).is_relative_to(realpath(self._folders.content.path))
        if not inside:
            sentence = f"'{shown}' is a link out of the folder 'content'"
            self.faults.append(OUTSIDE.fault(Place(shown), sentence))
        return inside

    def _is_no_link(self, folder: Folder) -> bool:
        """Files may be links within `content`; a folder may not, so that each of its files has one path."""
        if folder.path.is_symlink():
            sentence = f"'{folder.shown}' is a link, where a folder should be"
            self.faults.append(OUTSIDE.fault(Place(folder.shown), sentence, "put the folder itself there"))
        return not folder.path.is_symlink()

    def _is_slug(self, name: str, folder: Folder) -> bool:
        if fullmatch(SLUG_PATTERN, name):
            return True
        sentence = f"'{name}' makes no address"
        self.faults.append(BAD_SLUG.fault(Place(folder.shown_file(name)), sentence))
        return False
