"""What is made in a batch, component by component, with its lines and steps: what a sheet is laid from."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction

from sitegen.kitchen.declared import tables_of
from sitegen.kitchen.editions import Edition
from sitegen.kitchen.recipe import BatchAsk, Component, Recipe, Tin, Video
from sitegen.kitchen.scaling import Batch, batch_of, tested_batch
from sitegen.kitchen.shares import MadeComponent, made_components, part_grams
from sitegen.kitchen.tables import Tables
from sitegen.sheet.caution_words import InBatch, SheetCautions, cautions_of, portions_of
from sitegen.sheet.lines import PrintedComponent, printed_lines
from sitegen.sheet.linked import linked
from sitegen.sheet.setting import Setting
from sitegen.sheet.steps import StepScene, printed_step
from sitegen.sheet.values import SheetStep
from sitegen.sheet.video_words import step_moment
from sitegen.timing.growth import Growth, grown, growth_of

SUMMARY_LENGTH = 56


@dataclass(frozen=True)
class MadePart:
    """A component on its way into the sheet.

    component: under the title that other components call it by. printed: its lines.
    part_grams: the weights of its part lines. growth: what the batch does to its times.
    """

    made: MadeComponent
    component: Component
    printed: PrintedComponent
    part_grams: tuple[Fraction | None, ...]
    growth: Growth

    @property
    def is_mixed(self) -> bool:
        """Whether its weight says something: all known, no other component (baked by now) whole in it."""
        takes_whole = any(line.is_part and line.exact_g is None for line in self.printed.lines)
        return not self.made.unknown and not takes_whole and len(self.component.lines) > 1


@dataclass(frozen=True)
class Making:
    """One recipe in one batch.

    in_batch: the components as the batch knows them, with its titles and times. steps: as printed, a tuple a
    component.
    """

    batch: Batch
    setting: Setting
    parts: tuple[MadePart, ...]
    in_batch: tuple[Component, ...]
    cautions: SheetCautions
    steps: tuple[tuple[SheetStep, ...], ...]

    @property
    def components(self) -> tuple[Component, ...]:
        """The components as the baker wrote them, under the titles of the batch."""
        return tuple(part.component for part in self.parts)

    @property
    def made(self) -> tuple[MadeComponent, ...]:
        return tuple(part.made for part in self.parts)

    @property
    def summaries(self) -> tuple[str, ...]:
        """The opening of each step, for the rows of a plan."""
        return tuple(_summary(step) for own in self.steps for step in own)


def making_of(
    recipe: Recipe,
    bases: Mapping[str, Recipe],
    tables: Tables,
    edition: Edition,
    written: Edition,
    batch: BatchAsk | None = None,
    tutorials: Mapping[str, str] | None = None,
    tins: Mapping[str, Tin] | None = None,
) -> Making:
    """What is made of a recipe; the arguments and errors are those of `build.build_sheet`.

    tins: title of a base recipe -> the tin in which it is baked, where that is another than its own.
    """
    tables = tables_of(recipe, bases, tables)
    setting = Setting(tables, written, edition)
    made_batch = tested_batch(recipe) if batch is None else batch_of(batch, recipe, bases, tables, written)
    parts = _made_parts(recipe, bases, made_batch, setting, tins or {})
    in_batch = tuple(grown(linked(part.made), part.growth) for part in parts)
    portions = portions_of(recipe, made_batch)
    facts = [InBatch(one, part.printed.lines, portions) for one, part in zip(in_batch, parts, strict=True)]
    cautions = cautions_of(facts, setting)
    steps = _all_steps(parts, cautions, setting, tutorials or {}, recipe.video)
    return Making(made_batch, setting, parts, in_batch, cautions, steps)


def made_as_grown(
    recipe: Recipe, bases: Mapping[str, Recipe], batch: Batch, setting: Setting
) -> tuple[MadeComponent, ...]:
    """All components of a batch with the times that it asks for: what its cost is counted from.

    Raises what `made_components` does.
    """
    made = made_components(recipe, bases, batch.factor, setting.grams)
    return tuple(
        replace(one, component=grown(one.component, _growth(one, recipe, batch, {}))) for one in made
    )


def _growth(made: MadeComponent, recipe: Recipe, batch: Batch, tins: Mapping[str, Tin]) -> Growth:
    owner, tin = (made.base, tins.get(made.base.title)) if made.base else (recipe, batch.tin)
    return growth_of(made.factor, owner.tin, tin)


def _made_parts(
    recipe: Recipe, bases: Mapping[str, Recipe], batch: Batch, setting: Setting, tins: Mapping[str, Tin]
) -> tuple[MadePart, ...]:
    parts = []
    for made in made_components(recipe, bases, batch.factor, setting.grams):
        growth = _growth(made, recipe, batch, tins)
        component, grams = grown(replace(made.component, title=made.title), growth), part_grams(made)
        printed = printed_lines(component, made.factor, grams, setting)
        parts.append(MadePart(made, component, printed, grams, growth))
    return tuple(parts)


def _all_steps(
    parts: Sequence[MadePart],
    cautions: SheetCautions,
    setting: Setting,
    tutorials: Mapping[str, str],
    video: Video | None,
) -> tuple[tuple[SheetStep, ...], ...]:
    """All steps, numbered through the sheet, a tuple a component."""
    number = 0
    steps = []
    for part, keys in zip(parts, cautions.at_steps, strict=True):
        scene = StepScene(
            part.component,
            part.printed.lines,
            part.printed.tolerances,
            part.part_grams,
            part.made.factor,
            setting,
            tutorials,
        )
        own: list[SheetStep] = []
        taken: frozenset[int] = frozenset()
        for index, (step, step_keys) in enumerate(zip(part.component.steps, keys, strict=True), start=1):
            number += 1
            printed = printed_step(step, number, scene, step_keys, taken)
            # A base recipe has a film of its own.
            on_film = None if part.made.base else step_moment(video, part.made.component.title, index)
            own.append(replace(printed, on_film=on_film))
            taken |= {reference.line for reference in step.references if reference.line is not None}
        steps.append(tuple(own))
    return tuple(steps)


def _summary(step: SheetStep) -> str:
    """The opening of a step, cut at a clause or a word, for the rows of the plan."""
    clause = step.text.replace("\n", " ").split(". ")[0].rstrip(".")
    if len(clause) <= SUMMARY_LENGTH:
        return clause
    cut = clause[: SUMMARY_LENGTH + 1].rsplit(" ", 1)[0]
    return cut.rstrip(",;:") + "…"
