"""Production days that are asked for: an order file as the sheets that a kitchen pins to its wall."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import datetime
from pathlib import Path
from zoneinfo import ZoneInfo

from sitegen.faults import Fault, Severity
from sitegen.kitchen.ovens import OvenOutOfRange
from sitegen.kitchen.part_errors import RECIPE_AT_FAULT
from sitegen.kitchen.recipe import Recipe
from sitegen.kitchen.scaling import CannotScale
from sitegen.release.asking import AtFault, NotAsked, edition_named, school_without_errors
from sitegen.release.proof import proof
from sitegen.release.wall_hours import on_the_wall
from sitegen.sheet.checks import WHY_NOT
from sitegen.sheet.conflict_words import StepsInConflict, conflict_text
from sitegen.sheet.day_plan import TooLate, Wish
from sitegen.sheet.order_sheet import OrderKitchen, order_sheet
from sitegen.sheet.order_values import OrderSheet
from sitegen.source.day_hours import DayHour, read_day_hour
from sitegen.source.library import read_content
from sitegen.source.misread import Misread
from sitegen.source.order_file import order_from, unread_recipes
from sitegen.source.orders import Order
from sitegen.source.reader import read_document
from sitegen.source.school import Content, School
from sitegen.timing.graph import TaskCircle
from sitegen.timing.kitchens import Kitchen

ORDERS = Path("content") / "orders"


@dataclass(frozen=True)
class OrderWords:
    """What is wished beside the order file, in a cook's words; '' and None for what the file says.

    edition: a key, '' for the school's own. with_costs: where the school has a price list.
    """

    ready_by: str = ""
    cooks: int | None = None
    edition: str = ""
    with_costs: bool = True


@dataclass(frozen=True)
class AskedOrder:
    """sheet: the production day. school: whose it is, for print."""

    sheet: OrderSheet
    school: School


def asked_order(root: Path, name: Path, words: OrderWords, now: datetime) -> AskedOrder:
    """The production day of an order file. now: aware; work that had to begin before it is refused.

    name: a file, or the name of one in `content/orders/`, with or without its ending. Faults of recipes that
    are not ordered do not stand in the way. Raises NotAsked and AtFault.
    """
    content = read_content(root)
    order = _read_order(order_file(root, name), content)
    school = _school(content, [line.recipe for line in order.lines])
    kitchen = _kitchen(content, school, words)
    wish = _wish(order, words, now, ZoneInfo(school.time_zone))
    wanted = [(line.recipe, line.ask) for line in order.lines]
    try:
        return AskedOrder(order_sheet(order.title, wanted, wish, kitchen, now), school)
    except TooLate as problem:
        sentence = "it cannot be ready by then: the work would have had to begin already"
        raise NotAsked(sentence, f"the earliest is {problem.earliest:%Y-%m-%d %H:%M}") from problem
    except StepsInConflict as problem:
        raise NotAsked(conflict_text(problem), "allow more cooks, loads or hours") from problem
    except CannotScale as problem:
        raise NotAsked(f"'{problem.subject}' cannot be made so: {WHY_NOT[problem.reason]}") from problem
    except (*RECIPE_AT_FAULT, OvenOutOfRange, TaskCircle) as problem:
        raise AtFault(proof(root).errors, content.texts) from problem


def order_file(root: Path, name: Path) -> Path:
    """The file that a name means; raises NotAsked where there is none."""
    known = root / ORDERS / name
    for path in (name, known, known.with_name(f"{name.name}.yaml")):
        if path.is_file():
            return path
    there = sorted(path.name for path in (root / ORDERS).glob("*.yaml"))
    raise NotAsked(
        f"there is no order file '{name}'",
        f"in {ORDERS} there are {', '.join(there)}" if there else "'sitegen schema order' tells its form",
    )


def _read_order(path: Path, content: Content) -> Order:
    document, faults = read_document(path, _shown(path, Path(content.root)))
    if document is None:
        raise AtFault(faults, content.texts)
    unread = unread_recipes(content.faults, content.recipes)
    order, more = order_from(document, content.recipes, content.tables, unread)
    errors = [fault for fault in (*faults, *more) if fault.severity is Severity.ERROR]
    if order is None or errors:
        errors = errors or [fault for fault in content.faults if fault.severity is Severity.ERROR]
        raise AtFault(_sorted(errors), {**content.texts, document.shown: document.lines})
    return order


def _shown(path: Path, root: Path) -> str:
    """The path as the baker is told it: below the school's folder where it lies there."""
    whole, folder = path.resolve(), root.resolve()
    return str(whole.relative_to(folder)) if whole.is_relative_to(folder) else str(path)


def _sorted(faults: Sequence[Fault]) -> tuple[Fault, ...]:
    return tuple(sorted(dict.fromkeys(faults), key=lambda fault: (fault.place, fault.code)))


def _school(content: Content, recipes: Sequence[Recipe]) -> School:
    """The school; raises AtFault where it or one of the recipes has errors, with those of all of them."""
    faults: list[Fault] = []
    texts: Mapping[str, tuple[str, ...]] = content.texts
    for recipe in recipes:
        try:
            school_without_errors(content, recipe)
        except AtFault as problem:
            faults += problem.faults
    if faults or content.school is None:
        raise AtFault(_sorted(faults), texts)
    return content.school


def _kitchen(content: Content, school: School, words: OrderWords) -> OrderKitchen:
    editions = content.tables.editions
    return OrderKitchen(
        bases={recipe.title: recipe for recipe in content.recipes},
        tables=content.tables,
        edition=editions[edition_named(content, school, words.edition)],
        written=editions[school.written_in],
        prices=content.prices if words.with_costs else None,
    )


def _wish(order: Order, words: OrderWords, now: datetime, zone: ZoneInfo) -> Wish:
    ready_by = _ready_by(words.ready_by) if words.ready_by.strip() else order.ready_by
    return Wish(
        kitchen=Kitchen(cooks=words.cooks or order.cooks, oven_loads=order.oven_loads),
        hour=on_the_wall(ready_by.after(now, zone)) if ready_by else None,
        rest=order.rest,
    )


def _ready_by(text: str) -> DayHour:
    try:
        return read_day_hour(text.strip())
    except Misread as problem:
        raise NotAsked(problem.sentence, "write it as '2026-12-05 09:00' or 'Saturday 09:00'") from problem
