"""Faults that show only when a recipe is set: a batch that cannot be made, an oven that no table has."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from fractions import Fraction

from sitegen.faults import Fault, FaultCode, Place, Severity
from sitegen.kitchen.editions import Edition
from sitegen.kitchen.ovens import OvenOutOfRange
from sitegen.kitchen.recipe import BatchAsk, Recipe
from sitegen.kitchen.scaling import CannotScale
from sitegen.kitchen.shares import BaseCircle, MoreThanIsMade, NoWeight, SharesDontAddUp, UnknownPart
from sitegen.kitchen.tables import Tables
from sitegen.sheet.amounts import decimal_text
from sitegen.sheet.batches import offered
from sitegen.sheet.build import build_sheet
from sitegen.sheet.lines import DRIFT_LIMIT, drift_points
from sitegen.sheet.values import Sheet, SheetComponent
from sitegen.timing.graph import TaskCircle

RECIPE_AT_FAULT = (BaseCircle, MoreThanIsMade, NoWeight, SharesDontAddUp, UnknownPart)
"""What `source/checks` has already told the baker, with the line that it is about."""


@dataclass(frozen=True)
class Shelf:
    """What recipes are set with.

    bases: all recipes by title. editions: those that the school prints. written: the edition of the files.
    """

    bases: Mapping[str, Recipe] = field(hash=False)
    tables: Tables
    editions: tuple[Edition, ...]
    written: Edition


def sheet_faults(recipe: Recipe, shelf: Shelf) -> Iterator[Fault]:
    """Every fault of a recipe in any edition at any batch that its page offers, each once."""
    found: dict[tuple[str, str], Fault] = {}
    for edition in shelf.editions:
        for ask in offered(recipe):
            for fault in _faults_of_one(recipe, ask, edition, shelf):
                found.setdefault((fault.code, fault.sentence), fault)
    yield from found.values()


def _faults_of_one(recipe: Recipe, ask: BatchAsk | None, edition: Edition, shelf: Shelf) -> Sequence[Fault]:
    try:
        sheet = build_sheet(recipe, shelf.bases, shelf.tables, edition, shelf.written, ask)
    except RECIPE_AT_FAULT:
        return ()
    except CannotScale as error:
        return (_cannot_scale(recipe, error),)
    except OvenOutOfRange as error:
        return (_oven_fault(recipe, error),)
    except TaskCircle as error:
        way = " -> ".join((*error.components, error.components[0]))
        return (_fault(recipe.at, "steps-in-a-circle", f"components wait for each other: {way}"),)
    return tuple(_drift_faults(recipe, sheet))


def _cannot_scale(recipe: Recipe, error: CannotScale) -> Fault:
    sentence = f"'{recipe.title}' cannot be made in one of its batches: {WHY_NOT[error.reason]}"
    return _fault(recipe.at, "cannot-scale", sentence, "mend or take out that line of `batches`")


WHY_NOT = {
    "nothing-asked": "it asks for nothing",
    "not-above-zero": "it asks for none or less",
    "absurd": "it asks for more than a thousand times the recipe, or less than a thousandth",
    "no-tin": "the recipe names no tin to compare with",
    "no-capacity": "a tray holds no batter that could be scaled",
    "not-in-recipe": "the ingredient in hand is not in the recipe",
    "no-weight": "the ingredient in hand cannot be weighed",
}
"""Why a batch cannot be made, in a baker's words."""


def _oven_fault(recipe: Recipe, error: OvenOutOfRange) -> Fault:
    sentence = f"no oven is set to {decimal_text(error.degrees)} {error.scale}"
    return _fault(
        recipe.at, "oven-out-of-range", sentence, "is the scale right: C or F, fan or conventional?"
    )


def _drift_faults(recipe: Recipe, sheet: Sheet) -> Iterator[Fault]:
    for component in sheet.components:
        if not component.base_slug:
            yield from _component_drift(recipe, sheet, component)


def _component_drift(recipe: Recipe, sheet: Sheet, component: SheetComponent) -> Iterator[Fault]:
    for line, points in zip(component.lines, drift_points(component.lines), strict=True):
        if points is not None and abs(points) > DRIFT_LIMIT:
            place = Place(recipe.at.file, line.at_line, 1, 1) if line.at_line else recipe.at
            edition, batch = sheet.head.edition.title, sheet.head.batch.title
            sentence = (
                f"'{line.name}' drifts by {_points(points)} % of the flour in {edition}, {batch}: "
                f"it prints {line.amount}"
            )
            yield _fault(place, "balance-drift", sentence, "write the amount so that it rounds more finely")


def _points(points: Fraction) -> str:
    return f"{float(abs(points)):.1f}"


def _fault(place: Place, code: str, sentence: str, way_out: str = "") -> Fault:
    return Fault(place, code, sentence, way_out)


CODES = (
    FaultCode(
        "cannot-scale",
        Severity.ERROR,
        "A batch in `batches` cannot be worked out from the recipe, so its page could not be made.",
        "Give the recipe a tin, ask for a sensible count, or take the batch out.",
        good="batches: [24 cupcakes]",
        bad="batches: [90000 cupcakes]",
    ),
    FaultCode(
        "oven-out-of-range",
        Severity.ERROR,
        "No household oven goes there; nearly always the wrong scale was written.",
        "Say C or F, fan or conventional, and look at the figure again.",
    ),
    FaultCode(
        "steps-in-a-circle",
        Severity.ERROR,
        "Components wait for each other, so that none of them could ever be begun.",
        "Take one `after`, or one reference to a component, out of the circle.",
    ),
    FaultCode(
        "balance-drift",
        Severity.ERROR,
        "Rounding has moved an ingredient by more than 4 % of the flour: it would not be the tested cake.",
        "Write the amount more finely, or let that ingredient be weighed (`measured-by: weight`).",
    ),
)
