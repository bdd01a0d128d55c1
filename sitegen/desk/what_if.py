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
"""More than any kitchen has; a search for a plan is bounded by them."""


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
        followed = next(iter(_batch_fields(self.words)), "")
        return self.faults.get(followed) or self.faults.get("edition")


class RecipeFaulty(Exception):
    """The recipe itself, or what it draws on, has errors: nothing of it can be trusted."""


def answered(
    content: Content, setter: SheetSetter, recipe: Recipe, words: WhatIfWords, now: datetime
) -> Answer:
    """All that is asked of a recipe. now: aware. Raises RecipeFaulty, and AtFault where files have errors."""
    asked = _Asked(content, setter, school_without_errors(content, recipe), recipe, words, now)
    edition = asked.edition()
    wanted = asked.batch()
    try:
        tested = setter.sheet(recipe, edition, None)
        sheet = asked.sheet(edition, wanted) if wanted else None
        plan, no_plan = asked.plan(edition, wanted if sheet else None)
    except (*RECIPE_AT_FAULT, OvenOutOfRange, *CANNOT_BE_PLANNED, CannotScale) as problem:
        raise RecipeFaulty(recipe.title) from problem
    return Answer(recipe, words, sheet or tested, tested, plan, no_plan, asked.faults)


@dataclass
class _Asked:
    """A question while it is worked out. faults: what was found so far that cannot be, field -> why."""

    content: Content
    setter: SheetSetter
    school: School
    recipe: Recipe
    words: WhatIfWords
    now: datetime
    faults: dict[str, Told] = field(default_factory=dict)

    def edition(self) -> str:
        """Its key; the school's own where that which is asked for is none of the school's."""
        asked, offered = self.words.edition, self.school.editions
        if not asked or asked in offered:
            return asked or offered[0]
        titles = ", ".join(self.content.tables.editions[key].title for key in offered)
        self.faults["edition"] = Told(f"'{asked}' is no edition of this school", f"its site has {titles}")
        return offered[0]

    def batch(self) -> BatchAsk | None:
        """None for the tested one. The first field that is given is followed, and each other one told of."""
        given = _batch_fields(self.words)
        if not given:
            return None
        name, *others = given
        for other in others:
            self.faults[other] = Told(
                "a batch is asked for in one way", "empty the other fields of the batch"
            )
        if name == "in-hand" and not self.words.in_hand:
            sentence = f"how much {self.words.of} is there?"
            self.faults[name] = Told(sentence, "write '200 g', or '3' of what is counted")
            return None
        try:
            return batch_asked(given[name], self.recipe, self.content)
        except NotAsked as problem:
            self.faults[name] = Told(problem.sentence, problem.way_out)
            return None

    def sheet(self, edition: str, batch: BatchAsk) -> Sheet | None:
        """The sheet of a batch; None for one that cannot be made."""
        name = next(iter(_batch_fields(self.words)))
        try:
            return self.setter.sheet(self.recipe, edition, batch)
        except CannotScale as problem:
            why_not = WHY_NOT[problem.reason]
            self.faults[name] = Told(f"'{self.recipe.title}' cannot be made so: {why_not}")
        except StepsInConflict as problem:
            self.faults[name] = Told(conflict_text(problem), "ask for a smaller batch")
        return None

    def plan(self, edition: str, batch: BatchAsk | None) -> tuple[DayPlan | None, str]:
        """The plan, or why there is none. batch: None for the tested one."""
        shelf = self.setter.shelf
        printed = shelf.tables.editions[edition]
        made = making_of(self.recipe, shelf.bases, shelf.tables, printed, shelf.written, batch)
        cooks = self._number("cooks", self.words.cooks, MOST_COOKS, "cooks") or 1
        tins = self._number("oven-tins", self.words.oven_tins, MOST_TINS, "tins")
        zone = ZoneInfo(self.school.time_zone)

        def at(ready_by: str) -> DayPlan:
            wish = wish_of(PlanWords(ready_by=ready_by, cooks=cooks, oven_tins=tins), self.now, zone)
            return planned(self.recipe.title, made, wish, self.now)

        if self.words.ready_by:
            try:
                return at(self.words.ready_by.replace("T", " ")), ""
            except NotAsked as problem:
                self.faults["ready-by"] = Told(problem.sentence, problem.way_out)
        try:
            return at(""), ""
        except NotAsked as problem:
            return None, f"{problem.sentence}; {problem.way_out}"

    def _number(self, name: str, text: str, most: int, of: str) -> int | None:
        """A whole number from 1; None for what is not given or cannot be followed."""
        if not text:
            return None
        if text.isascii() and text.isdigit() and len(text) <= len(str(most)) and 1 <= int(text) <= most:
            return int(text)
        self.faults[name] = Told(f"'{text}' is no number of {of}", f"write a whole number from 1 to {most}")
        return None


def _batch_fields(words: WhatIfWords) -> dict[str, BatchWords]:
    """Each field of the batch that is given -> the batch in words, in the order of the form."""
    in_hand = f"{words.in_hand} {words.of}".strip()
    ways = {
        "batch": BatchWords(makes=words.batch),
        "tin": BatchWords(tin=words.tin),
        "in-hand": BatchWords(using=in_hand),
    }
    return {name: way for name, way in ways.items() if way.given}
