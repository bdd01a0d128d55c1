"""Work plans that are asked for: one or more recipes, put at hours of the school's own day."""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from datetime import datetime
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
from sitegen.release.wall_hours import comes_twice, hour_asked, rest_asked
from sitegen.sheet.checks import WHY_NOT, Shelf
from sitegen.sheet.conflict_words import StepsInConflict, conflict_text
from sitegen.sheet.day_plan import TooLate, Wish, day_plan
from sitegen.sheet.making import Making, making_of
from sitegen.sheet.work_values import DayPlan
from sitegen.source.library import read_content
from sitegen.source.school import Content, School
from sitegen.timing.graph import TaskCircle
from sitegen.timing.kitchens import Kitchen
from sitegen.timing.plan import Anchor


@dataclass(frozen=True)
class PlanWords:
    """What is wished of a plan, in a cook's words; '' for what is left open.

    ready_by, start: '2026-12-05 16:00' or 'Saturday 16:00' on the school's own wall, at most one of them.
    rest: '22:00-07:00'. oven_tins: how many the oven takes at one time; None for as many as were tested.
    """

    ready_by: str = ""
    start: str = ""
    rest: str = ""
    cooks: int = 1
    oven_tins: int | None = None


@dataclass(frozen=True)
class AskedPlan:
    """plan: the plan. school: whose it is. language: the BCP 47 tag of its words."""

    plan: DayPlan
    school: School
    language: str

    @property
    def host(self) -> str:
        """The school's, for the names of calendar events."""
        return self.school.address.split("/")[2]


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
    wish = wish_of(wished, now, ZoneInfo(school.time_zone))
    shelf = sheet_setter(content, school).shelf
    made = _made(recipes, edition_named(content, school, edition), words, content, shelf, root)
    title = " + ".join(recipe.title for recipe in recipes)
    try:
        plan = planned(title, made, wish, now)
    except TaskCircle as problem:
        raise AtFault(proof(root).errors, content.texts) from problem
    return AskedPlan(plan, school, made.setting.edition.language)


def planned(title: str, made: Making, wish: Wish, now: datetime) -> DayPlan:
    """The plan of what is made; raises NotAsked where no order or no hour will do, and
    TaskCircle where the recipe itself is at fault."""
    try:
        plan = day_plan(title, made.in_batch, made.summaries, wish, made.setting, now)
    except TooLate as problem:
        raise _too_late(problem, wish) from problem
    except StepsInConflict as problem:
        way_out = "allow more time, cooks, room in the oven or hours of work"
        raise NotAsked(conflict_text(problem), way_out) from problem
    if wish.hour is not None and comes_twice(wish.hour):
        note = f"Clocks go back that night: {wish.hour:%H:%M} comes twice, and the first is meant."
        return replace(plan, notes=(note, *plan.notes))
    return plan


def _too_late(problem: TooLate, wish: Wish) -> NotAsked:
    earliest = f"{problem.earliest:%Y-%m-%d %H:%M}"
    if wish.anchor is Anchor.START:
        return NotAsked("that start is past", f"begun now it is ready at {earliest}")
    sentence = "it cannot be ready by then: the work would have had to begin already"
    return NotAsked(sentence, f"the earliest is {earliest}")


def wish_of(words: PlanWords, now: datetime, zone: ZoneInfo) -> Wish:
    """Raises NotAsked for hours that cannot be read, or two ends of the day at once. now: aware."""
    if words.ready_by and words.start:
        raise NotAsked("a plan has one fast end", "give --ready-by or --start")
    hour = words.ready_by or words.start
    if words.rest and not hour:
        raise NotAsked("nights off need a day", "give --ready-by or --start with --rest")
    return Wish(
        kitchen=Kitchen(cooks=words.cooks, oven_tins=words.oven_tins),
        hour=hour_asked(hour, now, zone) if hour else None,
        anchor=Anchor.START if words.start else Anchor.END,
        rest=rest_asked(words.rest) if words.rest else None,
    )


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
    except (*RECIPE_AT_FAULT, OvenOutOfRange) as problem:
        raise AtFault(proof(root).errors, content.texts) from problem
