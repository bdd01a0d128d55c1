"""By what a recipe is found: the bands of its times, its tin, and the allergens that nothing in it brings."""

from collections.abc import Iterable, Iterator, Sequence
from fractions import Fraction

from sitegen.kitchen.allergens import regime_of
from sitegen.kitchen.finding import NO_TIN, AllergenGroup, TimeBand
from sitegen.kitchen.larder import Ingredient
from sitegen.kitchen.recipe import Component, IngredientLine, Tin
from sitegen.kitchen.rounding import rounded_minutes
from sitegen.sheet.allergen_words import packets_that_decide
from sitegen.sheet.amounts import joined
from sitegen.sheet.facet_values import TIME, TIN, WITHOUT, WORK, Facet, Facets
from sitegen.sheet.setting import Setting
from sitegen.sheet.work_values import Times


def facets_of(
    components: Sequence[Component],
    tin: Tin | None,
    times: Times,
    stand_ins: Iterable[str],
    setting: Setting,
) -> Facets:
    """Everything by which readers may choose the recipe.

    components: all that is made, base recipes among it. tin: None for a recipe that needs none. stand_ins:
    keys of the larder of what the sheet offers in place of an ingredient.
    """
    table = setting.tables.finding
    held = {
        TIME: {*_bands(table.start_to_finish, times.total_min)},
        WORK: {*_bands(table.hands_on, times.hands_on_min)},
        TIN: {_family(tin, setting)},
        WITHOUT: {*_without(components, stand_ins, setting)},
    }
    marks = tuple(facet for facet in all_facets(setting) if facet.key in held[facet.group])
    return Facets(marks, joined(packets_that_decide(components, setting)))


def all_facets(setting: Setting) -> tuple[Facet, ...]:
    """Every facet that a recipe may have in an edition, in the order of the table."""
    table, regime = setting.tables.finding, regime_of(setting.edition.region)
    rows = [
        *((TIME, band.key, band.title) for band in table.start_to_finish),
        *((WORK, band.key, band.title) for band in table.hands_on),
        *((TIN, family.key, setting.respelled(family.title)) for family in table.tins),
        *((WITHOUT, each.key, each.title_in(regime)) for each in table.without if regime in each.names),
    ]
    return tuple(Facet(place, *row) for place, row in enumerate(rows))


def _bands(bands: Iterable[TimeBand], minutes: Fraction) -> Iterator[str]:
    """By the time as it is printed, or a recipe of '1 h' would not be one that takes an hour."""
    printed = rounded_minutes(minutes)
    return (band.key for band in bands if band.holds(printed))


def _family(tin: Tin | None, setting: Setting) -> str:
    return setting.tables.tins.shape(tin.shape).family if tin else NO_TIN


def _without(components: Sequence[Component], stand_ins: Iterable[str], setting: Setting) -> Iterator[str]:
    """The groups that no ingredient brings, be it an alternative, optional or offered in another's place.

    Nothing is said of a recipe with an ingredient of which nobody knows what it brings.
    """
    regime = regime_of(setting.edition.region)
    rows = [*_named(components, setting), *map(setting.tables.larder.find, stand_ins)]
    known = [row for row in rows if row is not None and regime not in row.allergens_unsaid]
    if len(known) < len(rows):
        return iter(())
    return (group.key for group in setting.tables.finding.without if not _brings(group, known, setting))


def _named(components: Iterable[Component], setting: Setting) -> Iterator[Ingredient | None]:
    lines = (line for part in components for line in part.lines if isinstance(line, IngredientLine))
    return (setting.row(choice) for line in lines for choice in line.choices)


def _brings(group: AllergenGroup, rows: Iterable[Ingredient], setting: Setting) -> bool:
    regime = regime_of(setting.edition.region)
    return any(group.is_in(row, regime) for row in rows)
