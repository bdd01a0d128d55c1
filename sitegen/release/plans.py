"""Work plans that are asked for: one or more recipes, put at hours of the school's own day."""

import re
from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime, time
from fractions import Fraction
from pathlib import Path
from zoneinfo import ZoneInfo

from sitegen.kitchen.orders import Ordered, order_as_recipe
from sitegen.kitchen.ovens import OvenOutOfRange
from sitegen.kitchen.part_errors import RECIPE_AT_FAULT
from sitegen.kitchen.recipe import Recipe
from sitegen.kitchen.scaling import CannotScale
from sitegen.release.asking import (
    AtFault,
    BatchWords,
    NotAsked,
    batch_asked,
    edition_named,
    recipe_named,
    school_without_errors,
)
from sitegen.release.proof import proof
from sitegen.release.sheets import sheet_setter
from sitegen.sheet.checks import WHY_NOT, Shelf
from sitegen.sheet.day_plan import TooLate, Wish, day_plan
from sitegen.sheet.making import Making, making_of
from sitegen.sheet.work_values import DayPlan
from sitegen.source.library import read_content
from sitegen.source.school import Content
from sitegen.timing.conflict import CannotPlan
from sitegen.timing.graph import TaskCircle
from sitegen.timing.kitchens import Kitchen
from sitegen.timing.plan import Anchor

_HOUR = re.compile(r"(\d{4}-\d{2}-\d{2})[ T](\d{1,2}:\d{2})")
_REST = re.compile(r"(\d{1,2}:\d{2})-(\d{1,2}:\d{2})")


@dataclass(frozen=True)
class PlanWords:
    """What is wished of a plan, in a cook's words; '' for what is left open.

    ready_by, start: '2026-12-05 16:00' on the school's own wall, at most one of them. rest: '22:00-07:00'.
    """

    ready_by: str = ""
    start: str = ""
    rest: str = ""
    cooks: int = 1
    oven_loads: int = 1


@dataclass(frozen=True)
class AskedPlan:
    """plan: the plan. host: the school's, for the names of calendar events."""

    plan: DayPlan
    host: str


def asked_plan(
    root: Path, names: Sequence[str], edition: str, words: BatchWords, wished: PlanWords, now: datetime
) -> AskedPlan:
    """The plan of one or more recipes. now: aware; a plan that had to begin before it is refused.

    words: the batch, for one recipe alone. Raises NotAsked and AtFault.
    """
    content = read_content(root)
    recipes = [recipe_named(content, name) for name in dict.fromkeys(names)]
    school = school_without_errors(content, recipes[0])
    for recipe in recipes[1:]:
        school_without_errors(content, recipe)
    wish = wish_of(wished, ZoneInfo(school.time_zone))
    shelf = sheet_setter(content, school).shelf
    made = _made(recipes, edition_named(content, school, edition), words, content, shelf, root)
    title = " + ".join(recipe.title for recipe in recipes)
    return AskedPlan(planned(title, made, wish, now), school.address.split("/")[2])


def planned(title: str, made: Making, wish: Wish, now: datetime) -> DayPlan:
    """The plan of what is made; raises NotAsked where no order or no hour will do."""
    try:
        return day_plan(title, made.in_batch, made.summaries, wish, made.setting, now)
    except TooLate as problem:
        raise NotAsked(
            "it cannot be ready by then: the work would have had to begin already",
            f"the earliest is {problem.earliest:%Y-%m-%d %H:%M}",
        ) from problem
    except CannotPlan as problem:
        steps = " and ".join(str(task + 1) for task in problem.tasks)
        raise NotAsked(
            f"no order of work keeps what steps {steps} ask for", "allow more time, cooks or ovens"
        ) from problem


def wish_of(words: PlanWords, zone: ZoneInfo) -> Wish:
    """Raises NotAsked for hours that cannot be read, or two ends of the day at once."""
    if words.ready_by and words.start:
        raise NotAsked("a plan has one fast end", "give --ready-by or --start")
    hour = words.ready_by or words.start
    return Wish(
        kitchen=Kitchen(cooks=words.cooks, oven_loads=words.oven_loads),
        hour=_hour(hour, zone) if hour else None,
        anchor=Anchor.START if words.start else Anchor.END,
        rest=_rest(words.rest) if words.rest else None,
    )


def _hour(text: str, zone: ZoneInfo) -> datetime:
    found = _HOUR.fullmatch(text.strip())
    try:
        if found is None:
            raise ValueError(text)
        return datetime.fromisoformat(f"{found[1]}T{found[2]:0>5}").replace(tzinfo=zone)
    except ValueError as problem:
        raise NotAsked(f"'{text}' is no hour of a day", "write it as '2026-12-05 16:00'") from problem


def _rest(text: str) -> tuple[time, time]:
    found = _REST.fullmatch(text.strip())
    try:
        if found is None:
            raise ValueError(text)
        begins, ends = (time.fromisoformat(f"{hour:0>5}") for hour in found.groups())
    except ValueError as problem:
        raise NotAsked(f"'{text}' is no night", "write it as '22:00-07:00'") from problem
    if begins == ends:
        raise NotAsked(f"'{text}' leaves no hour to work in", "write it as '22:00-07:00'")
    return begins, ends


def _made(
    recipes: Sequence[Recipe], edition: str, words: BatchWords, content: Content, shelf: Shelf, root: Path
) -> Making:
    """What is made: a recipe at its batch, or several recipes together at their tested ones."""
    printed = shelf.tables.editions[edition]
    try:
        if len(recipes) == 1:
            ask = batch_asked(words, recipes[0], content)
            return making_of(recipes[0], shelf.bases, shelf.tables, printed, shelf.written, ask)
        if words.given:
            raise NotAsked("a batch is asked for with one recipe", "write an order file for several")
        together = order_as_recipe("Together", [Ordered(recipe, Fraction(1)) for recipe in recipes])
        return making_of(together, shelf.bases, shelf.tables, printed, shelf.written)
    except CannotScale as problem:
        raise NotAsked(f"'{recipes[0].title}' cannot be made so: {WHY_NOT[problem.reason]}") from problem
    except (*RECIPE_AT_FAULT, OvenOutOfRange, TaskCircle) as problem:
        raise AtFault(proof(root).errors, content.texts) from problem
