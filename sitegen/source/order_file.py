"""An order file -> Order: recipes by name, each with how much of it is wanted."""

from collections.abc import Callable, Collection, Iterable, Iterator, Mapping, Sequence
from difflib import get_close_matches
from functools import partial
from typing import TypeVar

from pydantic import Field

from sitegen import limits
from sitegen.faults import Fault, FaultCode, Place, Severity
from sitegen.kitchen.declared import tables_of
from sitegen.kitchen.recipe import BatchAsk, Recipe
from sitegen.kitchen.tables import Tables
from sitegen.source.context import Context
from sitegen.source.day_hours import read_day_hour, read_rest
from sitegen.source.file_texts import FileModel, Short
from sitegen.source.misread import Misread, read_or_told
from sitegen.source.nodes import Path
from sitegen.source.orders import Order, OrderLine
from sitegen.source.phrases import read_batch
from sitegen.source.reader import Document
from sitegen.source.shapes import shaped

UNKNOWN_RECIPE = FaultCode(
    "unknown-recipe",
    Severity.ERROR,
    "An order names a recipe that the school does not have.",
    "Write the recipe's title, or the name of its folder.",
    good="blackcurrant-and-bay-cupcakes: 24 cupcakes",
    bad="blackcurrant-cupcakes: 24 cupcakes",
    file="order.yaml",
)
ORDERED_TWICE = FaultCode(
    "ordered-twice",
    Severity.ERROR,
    "An order names the same recipe twice: nobody could know whether the two are to be added.",
    "Write it once, with the whole amount.",
    good="make:\n",
    bad="make:\n  Blackcurrant and bay cupcakes: 12 cupcakes\n",
    file="order.yaml",
)
BAD_HELP = FaultCode(
    "bad-number-of-hands",
    Severity.ERROR,
    "How many cooks there are, or loads in the oven at a time: a whole number from 1 to 20.",
    "Write a figure: `cooks: 2`.",
    good="cooks: 2",
    bad="cooks: a few",
    file="order.yaml",
)
CODES = (UNKNOWN_RECIPE, ORDERED_TWICE, BAD_HELP)

MOST_HELP = 20
_FOR, _RECIPES = "for ", "content/recipes/"

Value = TypeVar("Value")


class OrderFile(FileModel):
    """What a kitchen makes for one day."""

    title: Short = Field(description="What the order is called.", examples=["Saturday counter"])
    ready_by: Short | None = Field(
        None,
        description="When all of it is ready. Without it the clock of the plan begins at 0:00.",
        examples=["2026-12-05 09:00", "Saturday 09:00"],
    )
    cooks: Short | None = Field(None, description="Pairs of hands; without it one.", examples=["2"])
    oven_loads: Short | None = Field(
        None, description="Loads that the oven takes at a time; without it one.", examples=["2"]
    )
    rest: Short | None = Field(None, description="Hours in which nobody works.", examples=["22:00-07:00"])
    make: dict[Short, Short] = Field(
        min_length=1,
        max_length=limits.ENTRIES,
        description="A recipe, by its title or its folder -> how much of it.",
        examples=[{"blackcurrant-and-bay-cupcakes": "48 cupcakes", "Base buttercream": "1 kg"}],
    )


def order_from(
    document: Document, recipes: Sequence[Recipe], tables: Tables, unread: Collection[str] = ()
) -> tuple[Order | None, tuple[Fault, ...]]:
    """The order; None with every fault of the file where it cannot be told.

    recipes: all of the school that could be read. unread: folders of the others; an order of one of them
    cannot be told either, and its faults stand with the recipe.
    """
    file, faults = shaped(document, OrderFile)
    if file is None:
        return None, faults
    reading = _OrderReading(document, file, recipes, tables, unread)
    order = reading.order()
    is_whole = not reading.faults and len(order.lines) == len(file.make)
    return (order if is_whole else None), (*faults, *reading.faults)


def unread_recipes(faults: Iterable[Fault], recipes: Sequence[Recipe]) -> frozenset[str]:
    """Folders of recipes that have faults and could not be read."""
    folders = {fault.place.file.split("/")[2] for fault in faults if fault.place.file.startswith(_RECIPES)}
    return frozenset(folders.difference(recipe.slug for recipe in recipes))


class _OrderReading:
    """One walk through an order; faults grow."""

    def __init__(
        self,
        document: Document,
        file: OrderFile,
        recipes: Sequence[Recipe],
        tables: Tables,
        unread: Collection[str],
    ) -> None:
        self.faults: list[Fault] = []
        self._document = document
        self._file = file
        self._tables = tables
        self._unread = unread
        self._bases = {recipe.title: recipe for recipe in recipes}
        self._by_name = names_of(recipes)

    def order(self) -> Order:
        file = self._file
        lines = tuple(self._lines())
        self._refuse_twice(lines)
        return Order(
            title=file.title,
            lines=lines,
            ready_by=self._read(("ready-by",), file.ready_by, read_day_hour),
            cooks=self._read(("cooks",), file.cooks, _help) or 1,
            oven_loads=self._read(("oven-loads",), file.oven_loads, _help) or 1,
            rest=self._read(("rest",), file.rest, read_rest),
        )

    def _lines(self) -> Iterator[OrderLine]:
        for name, text in self._file.make.items():
            path: Path = ("make", name)
            place = self._document.key_place(path)
            recipe = self._by_name.get(_folded(name))
            if recipe is None:
                self.faults += [] if _folded(name) in self._unread else [self._unknown(name, place)]
                continue
            ask = self._read(path, text, partial(self._ask, recipe))
            if ask is not None:
                yield OrderLine(recipe, ask, place)

    def _unknown(self, name: str, place: Place) -> Fault:
        near = near_names(name, self._by_name)
        way_out = f"did you mean {near}?" if near else f"there are {', '.join(sorted(self._slugs()))}"
        return UNKNOWN_RECIPE.fault(place, f"there is no recipe '{name}'", way_out)

    def _slugs(self) -> set[str]:
        return {recipe.slug for recipe in self._by_name.values()}

    def _ask(self, recipe: Recipe, text: str) -> BatchAsk:
        """'48 cupcakes', '48' alone, '1 kg', 'double', 'for 23 cm round'. Raises Misread."""
        context = Context(
            tables_of(recipe, self._bases, self._tables),
            tuple(part.title for part in recipe.components),
            tuple(self._bases),
        )
        bare = text[len(_FOR) :].lstrip() if text.casefold().startswith(_FOR) else text
        is_number = bool(recipe.makes.noun) and not any(mark.isalpha() for mark in bare)
        try:
            return read_batch(
                f"{bare} {recipe.makes.noun}" if is_number else bare,
                self._document.place(("make",)),
                context,
                recipe.makes,
            )
        except Misread as problem:
            sentence = problem.sentence.replace(f"{bare} {recipe.makes.noun}", text)
            raise Misread(problem.code, sentence, problem.way_out, problem.start, problem.end) from problem

    def _refuse_twice(self, lines: Sequence[OrderLine]) -> None:
        seen: set[str] = set()
        for line in lines:
            if line.recipe.slug in seen:
                sentence = f"'{line.recipe.title}' is ordered already"
                self.faults.append(ORDERED_TWICE.fault(line.at, sentence))
            seen.add(line.recipe.slug)

    def _read(self, path: Path, text: str | None, read: Callable[[str], Value]) -> Value | None:
        return read_or_told(text, self._document.place(path), read, self.faults)


def names_of(recipes: Sequence[Recipe]) -> Mapping[str, Recipe]:
    """Each recipe under its title and its slug, whatever their case."""
    return {_folded(name): recipe for recipe in recipes for name in (recipe.title, recipe.slug)}


def near_names(name: str, by_name: Mapping[str, Recipe]) -> str:
    """Up to three slugs of recipes that a name was perhaps meant for: "'a' or 'b'"; '' for none."""
    folded = _folded(name)
    parts = [known for known in by_name if folded in known][:3]
    near = parts or get_close_matches(folded, by_name, n=3, cutoff=0.5)
    return " or ".join(dict.fromkeys(f"'{by_name[each].slug}'" for each in near))


def _folded(name: str) -> str:
    return name.casefold().strip()


def _help(text: str) -> int:
    """A whole number of cooks or loads. Raises Misread."""
    if not text.isdecimal() or not 1 <= int(text) <= MOST_HELP:
        raise Misread(BAD_HELP, f"'{text}' is no number from 1 to {MOST_HELP}", "", 0, max(len(text), 1))
    return int(text)
