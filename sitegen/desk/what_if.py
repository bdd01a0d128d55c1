"""What if a recipe is made in another batch, edition, kitchen or hour: all that its page shows, worked out.

The same functions as those of `sitegen sheet`, `sitegen plan` and `sitegen drift` give the same figures. What
cannot be is told beside the field that asks for it, and the rest is worked out without it.
"""

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import datetime
from zoneinfo import ZoneInfo

from sitegen.desk.what_if_words import WhatIfWords
from sitegen.kitchen.ovens import OvenOutOfRange
from sitegen.kitchen.part_errors import RECIPE_AT_FAULT
from sitegen.kitchen.recipe import BatchAsk, Recipe
from sitegen.kitchen.scaling import CannotScale
from sitegen.release.asking import BatchWords, NotAsked, batch_asked, school_without_errors
from sitegen.release.plans import PlanWords, planned, wish_of
from sitegen.release.sheets import SheetSetter
from sitegen.sheet.checks import WHY_NOT
from sitegen.sheet.conflict_words import CANNOT_BE_PLANNED, StepsInConflict, conflict_text
from sitegen.sheet.making import making_of
from sitegen.sheet.values import Sheet
from sitegen.sheet.work_values import DayPlan
from sitegen.source.school import Content, School

MOST_COOKS, MOST_TINS = 20, 200


@dataclass(frozen=True)
class Told:
    """Why a field cannot be followed. way_out: what would do, or ''."""

    sentence: str
    way_out: str = ""

    @property
    def told(self) -> str:
        """Both in one line."""
        return f"{self.sentence}: {self.way_out}" if self.way_out else self.sentence


@dataclass(frozen=True)
class Answer:
    """What a what-if page shows.

    tested: the batch as written, in the same edition. plan: None where there is no order of work, for which
    no_plan then says why. faults: field, as the form names it -> why it was not followed.
    """

    recipe: Recipe
    words: WhatIfWords
    sheet: Sheet
    tested: Sheet
    plan: DayPlan | None
    no_plan: str
    faults: Mapping[str, Told] = field(hash=False)

    @property
    def batch_fault(self) -> Told | None:
        """Why the batch, or the edition, that was asked for is not the one that is shown."""
        asked = (*list(_fields(self.words))[:1], "edition")
        return next((self.faults[name] for name in asked if name in self.faults), None)


class RecipeFaulty(Exception):
    """The recipe itself, or what it draws on, has errors: nothing of it can be trusted."""


def answered(
    content: Content, setter: SheetSetter, recipe: Recipe, words: WhatIfWords, now: datetime
) -> Answer:
    """All that is asked of a recipe. now: aware. Raises RecipeFaulty, and AtFault where files have errors."""
    school = school_without_errors(content, recipe)
    faults: dict[str, Told] = {}
    edition = _edition(words, school, content, faults)
    ask = _ask(words, recipe, content, faults)
    try:
        tested = setter.sheet(recipe, edition, None)
        sheet, ask = _sheet(setter, recipe, edition, ask, tested, words, faults)
        plan, no_plan = _plan(setter, school, recipe, edition, ask, words, now, faults)
    except (*RECIPE_AT_FAULT, OvenOutOfRange, *CANNOT_BE_PLANNED, CannotScale) as problem:
        raise RecipeFaulty(recipe.title) from problem
    return Answer(recipe, words, sheet, tested, plan, no_plan, faults)


def _edition(words: WhatIfWords, school: School, content: Content, faults: dict[str, Told]) -> str:
    if not words.edition or words.edition in school.editions:
        return words.edition or school.editions[0]
    titles = [content.tables.editions[key].title for key in school.editions]
    faults["edition"] = Told(
        f"'{words.edition}' is no edition of this school", f"its site has {', '.join(titles)}"
    )
    return school.editions[0]


def _ask(words: WhatIfWords, recipe: Recipe, content: Content, faults: dict[str, Told]) -> BatchAsk | None:
    """The batch; the first field that is given is followed, and each other one told of."""
    given = _fields(words)
    if not given:
        return None
    name, *others = given
    for other in others:
        faults[other] = Told("a batch is asked for in one way", "empty the other fields of the batch")
    if name == "in-hand" and not words.in_hand:
        faults[name] = Told(f"how much {words.of} is there?", "write '200 g', or '3' of what is counted")
        return None
    try:
        return batch_asked(given[name], recipe, content)
    except NotAsked as problem:
        faults[name] = Told(problem.sentence, problem.way_out)
        return None


def _fields(words: WhatIfWords) -> dict[str, BatchWords]:
    """Each field of the batch that is given -> the batch in words."""
    in_hand = f"{words.in_hand} {words.of}".strip()
    ways = {
        "batch": BatchWords(makes=words.batch),
        "tin": BatchWords(tin=words.tin),
        "in-hand": BatchWords(using=in_hand),
    }
    return {name: way for name, way in ways.items() if way.given}


def _sheet(
    setter: SheetSetter,
    recipe: Recipe,
    edition: str,
    ask: BatchAsk | None,
    tested: Sheet,
    words: WhatIfWords,
    faults: dict[str, Told],
) -> tuple[Sheet, BatchAsk | None]:
    """The sheet, and the batch that it is of: the tested one where that which is asked for cannot be."""
    if ask is None:
        return tested, None
    name = next(iter(_fields(words)))
    try:
        return setter.sheet(recipe, edition, ask), ask
    except CannotScale as problem:
        faults[name] = Told(f"'{recipe.title}' cannot be made so: {WHY_NOT[problem.reason]}")
    except StepsInConflict as problem:
        faults[name] = Told(conflict_text(problem), "ask for a smaller batch")
    return tested, None


def _plan(
    setter: SheetSetter,
    school: School,
    recipe: Recipe,
    edition: str,
    ask: BatchAsk | None,
    words: WhatIfWords,
    now: datetime,
    faults: dict[str, Told],
) -> tuple[DayPlan | None, str]:
    """The plan, or why there is none."""
    shelf = setter.shelf
    printed = shelf.tables.editions[edition]
    made = making_of(recipe, shelf.bases, shelf.tables, printed, shelf.written, ask)
    cooks = _number("cooks", words.cooks, MOST_COOKS, "cooks", faults) or 1
    tins = _number("oven-tins", words.oven_tins, MOST_TINS, "tins", faults)
    zone = ZoneInfo(school.time_zone)

    def at(ready_by: str) -> DayPlan:
        wish = wish_of(PlanWords(ready_by=ready_by, cooks=cooks, oven_tins=tins), now, zone)
        return planned(recipe.title, made, wish, now)

    if words.ready_by:
        try:
            return at(words.ready_by.replace("T", " ")), ""
        except NotAsked as problem:
            faults["ready-by"] = Told(problem.sentence, problem.way_out)
    try:
        return at(""), ""
    except NotAsked as problem:
        return None, f"{problem.sentence}; {problem.way_out}"


def _number(name: str, text: str, most: int, of: str, faults: dict[str, Told]) -> int | None:
    """A whole number from 1; None for what is not given or cannot be followed."""
    if not text:
        return None
    if text.isascii() and text.isdigit() and len(text) <= len(str(most)) and 1 <= int(text) <= most:
        return int(text)
    faults[name] = Told(f"'{text}' is no number of {of}", f"write a whole number from 1 to {most}")
    return None
