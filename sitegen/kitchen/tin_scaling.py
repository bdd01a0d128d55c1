"""From the tested tin to another: how much of the recipe it takes, and how deep the batter then lies."""

from dataclasses import dataclass
from enum import StrEnum
from fractions import Fraction

from sitegen.kitchen.recipe import Recipe, Tin
from sitegen.kitchen.tins import TinTable, area_cm2, capacity_ml, fits_as_it_is

USUAL_FILL = Fraction(2, 3)
MOST_FULL = Fraction(4, 5)
SAME = Fraction(1)


class TinRule(StrEnum):
    """What was kept when a recipe went into another tin.

    AS_IT_IS: its amounts, since the tins are within a tenth of each other. DEPTH: the depth of the batter,
    so that the areas of the tins count. FILL: how full the tin is, so that capacities count.
    """

    AS_IT_IS = "as it is"
    DEPTH = "depth"
    FILL = "fill"


@dataclass(frozen=True)
class TinScale:
    """factor: of the recipe as written, exact. depth_ratio: depth of the batter, new to tested, exact."""

    factor: Fraction
    depth_ratio: Fraction
    rule: TinRule


def tin_scale(tested: Tin, wanted: Tin, fill: Fraction | None, table: TinTable) -> TinScale:
    """How much of a recipe another tin takes.

    fill: how full the tested tin is, as a share of its depth; None where the recipe does not say.
    Between shapes that keep the depth (cakes, traybakes, tarts) by area, as long as the new tin is deep
    enough for it; else by capacity, as full as the tested one. A factor within a tenth of 1 is taken as 1.
    Raises NoCapacity, UnknownShape. Source: common practice.
    """
    areas = area_cm2(wanted, table) / area_cm2(tested, table)
    rule = _rule(tested, wanted, fill, table)
    by_capacity = capacity_ml(wanted, table) / capacity_ml(tested, table)
    factor = areas if rule is TinRule.DEPTH else by_capacity
    if fits_as_it_is(factor):
        return TinScale(SAME, 1 / areas, TinRule.AS_IT_IS)
    return TinScale(factor, factor / areas, rule)


def _rule(tested: Tin, wanted: Tin, fill: Fraction | None, table: TinTable) -> TinRule:
    if any(table.shape(tin.shape).keeps != "depth" for tin in (tested, wanted)):
        return TinRule.FILL
    known = fill or USUAL_FILL
    fill_in_wanted = known * tested.depth_cm / wanted.depth_cm
    return TinRule.DEPTH if fill_in_wanted <= max(known, MOST_FULL) else TinRule.FILL


def written_fill(recipe: Recipe) -> Fraction | None:
    """How full the recipe says that its tin is, as a share of the depth; None where it does not say."""
    steps = (step for component in recipe.components for step in component.steps)
    return next((step.fill for step in steps if step.fill is not None), None)
