"""Recipe + edition + batch -> Sheet: the trip through this room, on one page."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction

from sitegen.kitchen.editions import Edition, Measuring
from sitegen.kitchen.recipe import BatchAsk, Component, IngredientLine, OvenSetting, Recipe, Span
from sitegen.kitchen.scaling import batch_of, tested_batch
from sitegen.kitchen.shares import MadeComponent, made_components, part_grams
from sitegen.kitchen.tables import Tables
from sitegen.kitchen.weighing import grams_of
from sitegen.sheet.allergen_words import allergen_lines
from sitegen.sheet.batch_notes import batch_notes
from sitegen.sheet.batches import about_grams, batch_label, counted, grams_text_of
from sitegen.sheet.caution_words import SheetCautions, cautions_of
from sitegen.sheet.head import head_of, revisions_of
from sitegen.sheet.heat_words import oven_text
from sitegen.sheet.lines import PrintedComponent, printed_lines
from sitegen.sheet.measure_words import ESTIMATES, cup_note, egg_note
from sitegen.sheet.setting import Setting
from sitegen.sheet.steps import StepScene, printed_step
from sitegen.sheet.tin_words import batch_tin_text
from sitegen.sheet.values import Sheet, SheetComponent, SheetStep, SheetVideo
from sitegen.sheet.work import work_of

SUMMARY_LENGTH = 56


@dataclass(frozen=True)
class _Made:
    """A component on its way into the sheet.

    component: under the title that other components call it by. printed: its lines.
    part_grams: the weights of its part lines.
    """

    made: MadeComponent
    component: Component
    printed: PrintedComponent
    part_grams: tuple[Fraction | None, ...]


def build_sheet(
    recipe: Recipe,
    bases: Mapping[str, Recipe],
    tables: Tables,
    edition: Edition,
    written: Edition,
    batch: BatchAsk | None = None,
    tutorials: Mapping[str, str] | None = None,
) -> Sheet:
    """The sheet of one recipe in one edition at one batch.

    bases: all recipes by title, for those that this one uses. written: the edition that the recipe files
    are written in. batch: None for the tested one. tutorials: slug -> title.
    Raises CannotScale for a batch that the recipe cannot give; BaseCircle, UnknownPart, SharesDontAddUp,
    NoWeight and TaskCircle where the recipe itself is at fault (`sheet/checks.py` turns them into faults).
    """
    setting = Setting(tables, written, edition)
    made_batch = tested_batch(recipe) if batch is None else batch_of(batch, recipe, bases, tables, written)
    parts = _made_parts(recipe, bases, made_batch.factor, setting)
    components = tuple(part.component for part in parts)
    cautions = cautions_of(components, setting)
    steps = _all_steps(parts, cautions, setting, tutorials or {})
    work = work_of(components, _finished_by(parts), [_summary(step) for each in steps for step in each])
    label = batch_label(batch, recipe, made_batch.makes, setting)
    makes = setting.respelled(counted(recipe.makes, made_batch.makes))
    return Sheet(
        head=head_of(recipe, makes, label, work.times, setting),
        components=tuple(_component(part, own, setting) for part, own in zip(parts, steps, strict=True)),
        tin=batch_tin_text(recipe, made_batch, setting),
        oven=_ovens(components, setting),
        allergens=allergen_lines(components, setting),
        egg_note=egg_note(components, setting),
        measure_note=cup_note(setting) if edition.measuring is Measuring.CUPS else "",
        batch_notes=batch_notes(recipe, made_batch, setting),
        plan=work.plan,
        cautions=cautions.cautions,
        notes=setting.respelled(recipe.notes),
        keeping=_keeping(components, setting),
        revisions=revisions_of(recipe, setting),
        video=SheetVideo(recipe.video.address) if recipe.video else None,
        estimates_note=ESTIMATES,
    )


def _made_parts(
    recipe: Recipe, bases: Mapping[str, Recipe], factor: Fraction, setting: Setting
) -> tuple[_Made, ...]:
    def weigh(line: IngredientLine) -> Span | None:
        return grams_of(line.amount, line.chosen, setting.row(line.chosen), setting.written, setting.tables)

    parts = []
    for made in made_components(recipe, bases, factor, weigh):
        component, grams = _titled(made), part_grams(made)
        parts.append(_Made(made, component, printed_lines(component, made.factor, grams, setting), grams))
    return tuple(parts)


def _titled(made: MadeComponent) -> Component:
    """The component; where it is all of a base recipe, under that recipe's title, as others call it."""
    if made.base is not None and len(made.base.components) == 1:
        return replace(made.component, title=made.base.title)
    return made.component


def _all_steps(
    parts: Sequence[_Made], cautions: SheetCautions, setting: Setting, tutorials: Mapping[str, str]
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
        for step, step_keys in zip(part.component.steps, keys, strict=True):
            number += 1
            own.append(printed_step(step, number, scene, step_keys, taken))
            taken |= {reference.line for reference in step.references if reference.line is not None}
        steps.append(tuple(own))
    return tuple(steps)


def _finished_by(parts: Sequence[_Made]) -> dict[str, str]:
    """Title of a base recipe -> title of the component that finishes it."""
    return {part.made.base.title: part.component.title for part in parts if part.made.base is not None}


def _summary(step: SheetStep) -> str:
    """The opening of a step, cut at a clause or a word, for the rows of the plan."""
    clause = step.text.replace("\n", " ").split(". ")[0].rstrip(".")
    if len(clause) <= SUMMARY_LENGTH:
        return clause
    cut = clause[: SUMMARY_LENGTH + 1].rsplit(" ", 1)[0]
    return cut.rstrip(",;:") + "…"


def _component(part: _Made, steps: tuple[SheetStep, ...], setting: Setting) -> SheetComponent:
    grams, base = part.made.grams, part.made.base
    return SheetComponent(
        title=setting.respelled(part.component.title),
        lines=part.printed.lines,
        steps=steps,
        makes=f"about {grams_text_of(about_grams(grams))}" if grams and _is_mixed(part) else "",
        keeps=setting.respelled(part.component.keeps),
        base_slug=base.slug if base else "",
    )


def _is_mixed(part: _Made) -> bool:
    """Whether its weight says something: all of it known, no other component (baked by now) whole in it."""
    takes_whole = any(line.is_part and line.exact_g is None for line in part.printed.lines)
    return not part.made.unknown and not takes_whole and len(part.component.lines) > 1


def _ovens(components: Sequence[Component], setting: Setting) -> str:
    """Every oven setting that the method uses, in its order, each once."""
    settings: list[OvenSetting] = [step.oven for part in components for step in part.steps if step.oven]
    texts = (oven_text(oven, setting.edition, setting.tables.ovens) for oven in settings)
    return ", then ".join(dict.fromkeys(texts))


def _keeping(components: Sequence[Component], setting: Setting) -> tuple[tuple[str, str], ...]:
    kept = (component for component in components if component.keeps)
    return tuple((setting.respelled(part.title), setting.respelled(part.keeps)) for part in kept)
