"""Faults that show only when a recipe is set: a batch that cannot be made, an oven that no table has."""

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from fractions import Fraction
from functools import partial

from sitegen import limits
from sitegen.faults import Fault, FaultCode, Place, Severity
from sitegen.kitchen.editions import Edition
from sitegen.kitchen.ovens import OvenOutOfRange
from sitegen.kitchen.part_errors import RECIPE_AT_FAULT
from sitegen.kitchen.recipe import BatchAsk, Recipe
from sitegen.kitchen.scaling import CannotScale
from sitegen.kitchen.tables import Tables
from sitegen.sheet.amounts import decimal_text
from sitegen.sheet.batches import offered
from sitegen.sheet.conflict_words import StepsInConflict, TooManySteps, conflict_text
from sitegen.sheet.drift import sheet_drift
from sitegen.sheet.fill_checks import CODES as FILL_CODES
from sitegen.sheet.fill_checks import fill_faults
from sitegen.sheet.values import Sheet
from sitegen.timing.graph import TaskCircle


@dataclass(frozen=True)
class Shelf:
    """What recipes are set with.

    bases: all recipes by title. editions: those that the school prints. written: the edition of the files.
    """

    bases: Mapping[str, Recipe] = field(hash=False)
    tables: Tables
    editions: tuple[Edition, ...]
    written: Edition


SheetOf = Callable[[Recipe, str, BatchAsk | None], Sheet]
"""Sets the sheet of a recipe in an edition, named by its key, at a batch; raises what `build_sheet` does."""


def sheet_faults(recipe: Recipe, shelf: Shelf, sheet_of: SheetOf) -> Iterator[Fault]:
    """Every fault of a recipe in any edition at any batch that its page offers, each once."""
    found: dict[tuple[str, str], Fault] = {}
    for edition in shelf.editions:
        for ask in offered(recipe):
            for fault in _faults_of_one(recipe, partial(sheet_of, recipe, edition.key, ask)):
                found.setdefault((fault.code, fault.sentence), fault)
    for fault in fill_faults(recipe, shelf.bases, shelf.tables, shelf.written):
        found.setdefault((fault.code, fault.sentence), fault)
    yield from found.values()


def _faults_of_one(recipe: Recipe, set_sheet: Callable[[], Sheet]) -> Sequence[Fault]:
    try:
        sheet = set_sheet()
    except RECIPE_AT_FAULT:
        return ()
    except CannotScale as error:
        return (_cannot_scale(recipe, error),)
    except OvenOutOfRange as error:
        return (_oven_fault(recipe, error),)
    except TaskCircle as error:
        way = " -> ".join((*error.components, error.components[0]))
        return (_fault(recipe.at, "steps-in-a-circle", f"components wait for each other: {way}"),)
    except TooManySteps as error:
        return (_too_many_steps(recipe, error),)
    except StepsInConflict as error:
        return (_conflict_fault(error),)
    return tuple(_drift_faults(recipe, sheet))


def _conflict_fault(error: StepsInConflict) -> Fault:
    way_out = "give one of them more time, or move a step"
    return _fault(error.at, "plan-cannot-be-kept", conflict_text(error), way_out)


def _too_many_steps(recipe: Recipe, error: TooManySteps) -> Fault:
    sentence = f"with its base recipes it has {error.count} steps; {limits.STEPS} is the most"
    return _fault(recipe.at, "too-many-steps", sentence, "join small steps, or divide the recipe")


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
    "no-piece-weight": "it asks for pieces of a weight, and the recipe does not say what its own weigh",
    "no-bake-loss": "one weight is of dough and the other baked, and nobody knows what goes off in baking",
}
"""Why a batch cannot be made, in a baker's words."""


def _oven_fault(recipe: Recipe, error: OvenOutOfRange) -> Fault:
    sentence = f"no oven is set to {decimal_text(error.degrees)} {error.scale}"
    return _fault(
        recipe.at, "oven-out-of-range", sentence, "is the scale right: C or F, fan or conventional?"
    )


def _drift_faults(recipe: Recipe, sheet: Sheet) -> Iterator[Fault]:
    """Each line of the recipe's own components that drifts too far, marked in its file."""
    places = {line.at.line: line.at for part in recipe.components for line in part.lines}
    for part in sheet_drift(sheet).components:
        for line in part.lines:
            if line.is_too_far and not part.from_base:
                sentence = (
                    f"'{line.name}' drifts by {_points(line.points)} % of the {part.base} in "
                    f"{sheet.head.edition.title}, {sheet.head.batch.title}: it prints {line.amount}"
                )
                way_out = "write the amount so that it rounds more finely"
                yield _fault(places.get(line.at_line, recipe.at), "balance-drift", sentence, way_out)


def _points(points: Fraction) -> str:
    return f"{float(abs(points)):.1f}"


def _fault(place: Place, code: str, sentence: str, way_out: str = "") -> Fault:
    return Fault(place, code, sentence, way_out)


CODES = (
    *FILL_CODES,
    FaultCode(
        "cannot-scale",
        Severity.ERROR,
        "A batch in `batches` cannot be worked out from the recipe, so its page could not be made.",
        "Give the recipe a tin, ask for a sensible count, or take the batch out.",
        good="batches: [6 cupcakes, double]",
        bad="batches: [90000 cupcakes, double]",
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
        "too-many-steps",
        Severity.ERROR,
        "A recipe has more steps, with those of its base recipes, than can be put on one clock.",
        "Join small steps into one, or divide the recipe.",
    ),
    FaultCode(
        "plan-cannot-be-kept",
        Severity.ERROR,
        "What must be used soon cannot be: the steps that stand between take longer than `within` allows.",
        "Write a longer `within` or `holds`, or make the other parts first.",
    ),
    FaultCode(
        "balance-drift",
        Severity.ERROR,
        "Rounding has moved an ingredient by more than 4 % of the flour: it would not be the tested cake.",
        "Write the amount more finely, or let that ingredient be weighed (`measured-by: weight`).",
    ),
)
