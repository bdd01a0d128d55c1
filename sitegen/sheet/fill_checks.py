"""Will it fit: faults of a batter that is too much for its tins."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from fractions import Fraction

from sitegen.faults import Fault, FaultCode, Severity
from sitegen.kitchen.batters import BatterKind, Fill, batter_kind, fill_of
from sitegen.kitchen.declared import tables_of
from sitegen.kitchen.editions import Edition
from sitegen.kitchen.part_errors import RECIPE_AT_FAULT
from sitegen.kitchen.recipe import Component, IngredientLine, PartLine, Recipe, Tin
from sitegen.kitchen.scaling import Batch, CannotScale, batch_of, tested_batch
from sitegen.kitchen.shares import made_components
from sitegen.kitchen.tables import Tables
from sitegen.kitchen.tin_scaling import written_fill
from sitegen.sheet.batches import about_grams, grams_text_of, offered
from sitegen.sheet.setting import Setting
from sitegen.sheet.tin_words import tin_text

OVERFILLED = FaultCode(
    "overfilled-tin",
    Severity.ERROR,
    "More batter than the tin can hold, however heavy that batter is: it would run over, in the bowl or in "
    "the oven.",
    "Take a larger tin or more of them, or less of the recipe.",
    good="tin: muffin 12",
    bad="tin: muffin 4",
)
FULL = FaultCode(
    "full-tin",
    Severity.ADVICE,
    "The batter stands higher in the tin than the step's `fill` says, by more than a tenth of the depth; of "
    "a dough, it is more than a tin takes even for a loaf that stands well above the rim.",
    "Look at the size and depth of `tin` and at `fill`: one of them is not as baked.",
    good="fill: 2/3",
    bad="fill: 1/8",
)
CODES = (OVERFILLED, FULL)
BATTER_ROLES = frozenset({"flour", "egg"})


@dataclass(frozen=True)
class _InTheTin:
    """What goes into the tins: a component by its title, the kind of batter that it is, and what it fills."""

    title: str
    kind: BatterKind
    fill: Fill


def fill_faults(
    recipe: Recipe, bases: Mapping[str, Recipe], tables: Tables, written: Edition
) -> Iterator[Fault]:
    """What is too much for its tins in the tested batch and in other tins that the page offers.

    bases: recipes by title. written: the edition that the recipe files are written in. Nothing is said of a
    recipe that cannot be made or scaled: other checks do.
    """
    tables = tables_of(recipe, bases, tables)
    for ask in offered(recipe):
        try:
            batch = tested_batch(recipe) if ask is None else batch_of(ask, recipe, bases, tables, written)
            yield from tuple(_faults_of_batch(recipe, bases, batch, tables, written))
        except (CannotScale, *RECIPE_AT_FAULT):
            continue


def _faults_of_batch(
    recipe: Recipe, bases: Mapping[str, Recipe], batch: Batch, tables: Tables, written: Edition
) -> Iterator[Fault]:
    """Of one batch; none where tins multiply with it."""
    tin, setting = batch.tin, Setting(tables, written, written)
    if tin is None or not tables.tins.shape(tin.shape).solid:
        return
    place = tin.at if tin.at.line else recipe.at
    for part in _in_the_tin(recipe, bases, batch, tin, setting):
        if part.fill.is_over:
            yield OVERFILLED.fault(place, _sentence(part, tin, part.fill.most_g, OVER_WORDS, setting))
        elif part.fill.is_high:
            yield FULL.fault(place, _sentence(part, tin, part.fill.wanted_g, HIGH_WORDS, setting))


OVER_WORDS = ("holds at most", "hold at most")
HIGH_WORDS = ("is full enough with", "are full enough with")


def _sentence(part: _InTheTin, tin: Tin, limit_g: Fraction, verbs: tuple[str, str], setting: Setting) -> str:
    made, limit = (grams_text_of(about_grams(grams)) for grams in (part.fill.grams, limit_g))
    verb = verbs[0] if tin.number == 1 else verbs[1]
    return f"'{part.title}' makes about {made} of {part.kind.called}; {tin_text(tin, setting)} {verb} {limit}"


def _in_the_tin(
    recipe: Recipe, bases: Mapping[str, Recipe], batch: Batch, tin: Tin, setting: Setting
) -> Iterator[_InTheTin]:
    """Components whose step says `fill`; where none does, those with flour or egg that go into the oven.

    Each is held against the tins by itself; one that cannot be weighed is left out. How full the recipe says
    that its tin is counts for the tested tin alone: in another one the batter lies as it was scaled to lie.
    """
    made = [part for part in made_components(recipe, bases, batch.factor, setting.grams) if part.base is None]
    filled = [part for part in made if any(step.fill is not None for step in part.component.steps)]
    baked = [part for part in made if any(step.oven for step in part.component.steps)]
    written = written_fill(recipe) if batch.ask is None else None
    for part in filled or baked:
        inside = tuple(_with_parts(part.component, recipe, bases))
        roles = frozenset(role for component in inside for role in _roles(component, setting))
        kind = batter_kind(_kind(inside), roles, setting.tables.batters)
        if part.grams is not None and kind is not None and (filled or roles & BATTER_ROLES):
            fill = fill_of(part.grams, tin, written, kind, setting.tables.tins)
            yield _InTheTin(part.component.title, kind, fill)


def _with_parts(component: Component, owner: Recipe, bases: Mapping[str, Recipe]) -> Iterator[Component]:
    """A component and all that it is made of, to any depth; `made_components` has found any circle."""
    yield component
    for line in component.lines:
        if not isinstance(line, PartLine):
            continue
        source = bases[line.source] if line.from_base else owner
        parts = source.components if line.from_base else (owner.component(line.source),)
        for part in parts:
            if part is not None:
                yield from _with_parts(part, source, bases)


def _kind(inside: tuple[Component, ...]) -> str:
    """The kind that the component names, else the first that one of its parts does."""
    return next((component.kind for component in inside if component.kind), "")


def _roles(component: Component, setting: Setting) -> Iterator[str]:
    for line in component.lines:
        row = setting.row(line.chosen) if isinstance(line, IngredientLine) else None
        if row is not None:
            yield from row.roles
