"""Recipe + edition + batch -> Sheet: the trip through this room, on one page."""

from collections.abc import Mapping, Sequence

from sitegen.kitchen.declared import with_bases
from sitegen.kitchen.editions import Edition
from sitegen.kitchen.method import OvenSetting
from sitegen.kitchen.recipe import BatchAsk, Component, Recipe
from sitegen.kitchen.tables import Tables
from sitegen.sheet.allergen_words import allergen_lines
from sitegen.sheet.batch_notes import batch_notes
from sitegen.sheet.batches import batch_label, counted
from sitegen.sheet.egg_note import egg_note
from sitegen.sheet.facet_words import facets_of
from sitegen.sheet.formula_words import formulas_of
from sitegen.sheet.head import head_of, revisions_of
from sitegen.sheet.heat_words import oven_text
from sitegen.sheet.keeping_words import keeping_rows, keeps_text
from sitegen.sheet.leftover_words import leftover_texts
from sitegen.sheet.making import MadePart, making_of
from sitegen.sheet.measure_words import ESTIMATES, measure_note, small_scale_note
from sitegen.sheet.nutrition_words import nutrition_of
from sitegen.sheet.setting import Setting
from sitegen.sheet.swap_words import MadeLines, stand_ins, swaps_of
from sitegen.sheet.tin_words import batch_tin_text
from sitegen.sheet.unknown_words import unknowns_of
from sitegen.sheet.values import Sheet, SheetComponent, SheetStep
from sitegen.sheet.video_words import video_of
from sitegen.sheet.weights import about_text
from sitegen.sheet.work import work_of


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
    NoWeight, TaskCircle, StepsInConflict and TooManySteps where the recipe itself is at fault
    (`sheet/checks.py` turns them into faults).
    """
    making = making_of(recipe, bases, tables, edition, written, batch, tutorials)
    setting, made, made_batch, components = making.setting, making.made, making.batch, making.components
    lines = [MadeLines(part.component, part.made.factor) for part in making.parts]
    offers = [one for each in with_bases(recipe, bases) for one in each.swaps]
    work = work_of(making.in_batch, {}, making.summaries, setting)
    label = batch_label(batch, recipe, made_batch.makes, setting)
    makes = setting.respelled(counted(recipe.makes, made_batch.makes, batch.each if batch else None))
    facets = facets_of(
        components, made_batch.tin or recipe.tin, work.times, stand_ins(lines, offers, setting), setting
    )
    nutrition, no_nutrition = nutrition_of(recipe, made, made_batch, setting)
    return Sheet(
        head=head_of(recipe, makes, label, work.times, facets, setting),
        components=tuple(
            _component(part, own, setting) for part, own in zip(making.parts, making.steps, strict=True)
        ),
        tin=batch_tin_text(recipe, made_batch, setting),
        oven=_ovens(components, setting),
        allergens=allergen_lines(components, setting),
        egg_note=egg_note(components, setting),
        measure_note=_measures(making.parts, setting),
        batch_notes=batch_notes(recipe, made_batch, setting),
        plan=work.plan,
        timeline=work.timeline,
        plan_notes=work.notes,
        cautions=making.cautions.cautions,
        notes=setting.respelled(recipe.notes),
        keeping=keeping_rows(made, setting),
        revisions=revisions_of(recipe, setting),
        video=video_of(recipe.video, setting),
        estimates_note=ESTIMATES,
        swaps=swaps_of(lines, offers, setting),
        nutrition=nutrition,
        formulas=formulas_of(recipe, bases, made_batch, made, setting),
        unknowns=(*unknowns_of(components, setting), *no_nutrition),
        leftovers=leftover_texts(made, setting),
    )


def _component(part: MadePart, steps: tuple[SheetStep, ...], setting: Setting) -> SheetComponent:
    grams, base = part.made.grams, part.made.base
    return SheetComponent(
        title=setting.respelled(part.component.title),
        lines=part.printed.lines,
        steps=steps,
        makes=about_text(grams, setting.edition) if grams and part.is_mixed else "",
        keeps=setting.respelled(keeps_text(part.component)),
        base_slug=base.slug if base else "",
    )


def _measures(parts: Sequence[MadePart], setting: Setting) -> str:
    """The small print on measures, and on the scale that the smallest weights need."""
    lines = [line for part in parts for line in part.printed.lines]
    return " ".join(filter(None, (measure_note(setting), small_scale_note(lines))))


def _ovens(components: Sequence[Component], setting: Setting) -> str:
    """Every oven setting that the method uses, in its order, each once."""
    settings: list[OvenSetting] = [step.oven for part in components for step in part.steps if step.oven]
    texts = (oven_text(oven, setting.edition, setting.tables.ovens) for oven in settings)
    return ", then ".join(dict.fromkeys(texts))
