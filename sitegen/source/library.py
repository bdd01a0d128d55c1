"""The whole of a school: every file under `content/` read, joined and checked."""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from pathlib import Path
from re import fullmatch

from sitegen.faults import Fault, FaultCode, Place, Severity
from sitegen.kitchen.declared import known_with, tables_of
from sitegen.kitchen.prices import PriceList
from sitegen.kitchen.recipe import Recipe
from sitegen.kitchen.tables import Tables
from sitegen.source.checks import CHECKS, SCHOOL_CHECKS
from sitegen.source.context import Context
from sitegen.source.declared import declared_in
from sitegen.source.file_texts import SLUG_PATTERN
from sitegen.source.models import RecipeFile
from sitegen.source.order_file import order_from, unread_recipes
from sitegen.source.orders import Order
from sitegen.source.photos import OUTSIDE, Folder
from sitegen.source.prices import PRICE_LIST, prices_from
from sitegen.source.reader import Document, parse_document
from sitegen.source.recipes import RecipeSource, recipe_from
from sitegen.source.school import Content, School, Tutorial
from sitegen.source.shapes import shaped
from sitegen.source.site import school_from
from sitegen.source.tables import read_tables
from sitegen.source.textfile import read_text
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
    reading = _Reading(root)
    tables = reading.tables()
    school = reading.school(tables)
    tables = _with_own_eggs(tables, school)
    recipes = reading.recipes(tables)
    content = Content(
        root=str(root),
        school=school,
        recipes=recipes,
        tutorials=reading.tutorials(),
        tables=tables,
        faults=(),
        texts=reading.texts,
        prices=reading.prices(known_with(tables, tuple(row for one in recipes for row in one.declared))),
        orders=reading.orders(recipes, tables),
    )
    return replace(content, faults=_sorted([*reading.faults, *faults_of_meaning(content)]))


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
        document = self._document(self._folders.content, "larder.yaml") if larder.is_file() else None
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
        document = self._document(self._folders.content, PRICE_LIST) if path.is_file() else None
        if document is None:
            return None
        prices, faults = prices_from(document, tables)
        self.faults += faults
        return prices

    def recipes(self, tables: Tables) -> tuple[Recipe, ...]:
        sources = list(self._recipe_sources())
        if not sources and self._is_there:
            place = Place(self._folders.recipes.shown)
            self.faults.append(NO_RECIPES.fault(place, "there is no recipe here"))
        titles = tuple(source.file.title for source in sources)
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
        files = sorted(folder.path.glob("*.md")) if folder.path.is_dir() else []
        tutorials = []
        for path in files:
            shown = folder.shown_file(path.name)
            if not self._lies_inside(path, shown) or not self._is_slug(path.stem, folder):
                continue
            tutorial, faults, lines = tutorial_from(folder, path.stem)
            self.faults += faults
            self.texts[shown] = lines
            tutorials += [tutorial] if tutorial else []
        return tuple(tutorials)

    def orders(self, recipes: tuple[Recipe, ...], tables: Tables) -> tuple[Order, ...]:
        folder, unread = self._folders.orders, unread_recipes(self.faults, recipes)
        orders = []
        for path in sorted(folder.path.glob("*.yaml")) if folder.path.is_dir() else ():
            document = self._document(folder, path.name)
            if document is not None:
                order, faults = order_from(document, recipes, tables, unread)
                self.faults += faults
                orders += [order] if order else []
        return tuple(orders)

    def _recipe_sources(self) -> Iterator[RecipeSource]:
        """Each recipe whose file has the right shape; the faults of the others are kept."""
        folder = self._folders.recipes
        for path in sorted(folder.path.iterdir()) if folder.path.is_dir() else ():
            if path.name.startswith("."):
                continue
            if not path.is_dir():
                place = Place(folder.shown_file(path.name))
                self.faults.append(STRAY_FILE.fault(place, f"'{path.name}' is no folder"))
            elif self._is_slug(path.name, folder) and self._lies_inside(path, folder.shown_file(path.name)):
                yield from self._recipe_source(Folder(path, folder.shown_file(path.name)))

    def _recipe_source(self, folder: Folder) -> Iterator[RecipeSource]:
        document = self._document(folder, "recipe.yaml")
        if document is None:
            return
        file, faults = shaped(document, RecipeFile)
        self.faults += faults
        if file is not None:
            yield RecipeSource(folder.path.name, folder, document, file)

    def _document(self, folder: Folder, name: str) -> Document | None:
        shown, path = folder.shown_file(name), folder.path / name
        if not self._lies_inside(path, shown):
            return None
        text, faults = read_text(path, shown)
        self.faults += faults
        if text is None:
            return None
        self.texts[shown] = tuple(text.split("\n"))
        document, faults = parse_document(text, shown)
        self.faults += faults
        return document

    def _lies_inside(self, path: Path, shown: str) -> bool:
        inside = path.resolve().is_relative_to(self._folders.content.path.resolve())
        if not inside:
            sentence = f"'{shown}' is a link out of the folder 'content'"
            self.faults.append(OUTSIDE.fault(Place(shown), sentence))
        return inside

    def _is_slug(self, name: str, folder: Folder) -> bool:
        if fullmatch(SLUG_PATTERN, name):
            return True
        sentence = f"'{name}' makes no address"
        self.faults.append(BAD_SLUG.fault(Place(folder.shown_file(name)), sentence))
        return False
