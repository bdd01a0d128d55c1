"""A dough in baker's percentages: every weight in % of all the flour, that of the preferment included."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from fractions import Fraction

from sitegen.kitchen.balances import PREFERMENT, BalanceTable, Kind
from sitegen.kitchen.contents import Contents, Held
from sitegen.kitchen.part_weights import parts
from sitegen.kitchen.recipe import Component, Recipe

COUNTED_FOR_WATER = frozenset({"liquid", "egg", "fat", "sugar", "dairy"})


@dataclass(frozen=True)
class WaterShares:
    """How much of an ingredient is water, key -> share, for those whose composition is not known."""

    by_key: Mapping[str, Fraction] = field(default_factory=dict, hash=False)

    def grams(self, held: Held) -> Fraction:
        """The water in an ingredient, grams, exact; none is counted of flour, seeds, nuts and dried fruit.

        Source: the composition of the larder's row, else the table.
        """
        if held.grams is None or held.ingredient is None or not held.roles & COUNTED_FOR_WATER:
            return Fraction(0)
        composition = held.ingredient.composition
        if composition is not None and composition.water is not None:
            return held.grams * composition.water / 100
        return held.grams * self.by_key.get(held.key, Fraction(0))


@dataclass(frozen=True)
class FormulaLine:
    """One ingredient of a dough. percent: of all flour, as a ratio (65 % is 13/20); None where unweighed."""

    held: Held
    percent: Fraction | None


@dataclass(frozen=True)
class PrefermentFigures:
    """A preferment in a dough. flour: its share of all flour. hydration: of its own flour."""

    title: str
    flour: Fraction
    hydration: Fraction


@dataclass(frozen=True)
class DoughFormula:
    """Figures of a dough as ratios to its total flour, exact.

    flour_g, dough_g: grams. hydration: water, milk and other liquids over flour; all_water: the water that is
    really present, in eggs, butter and honey too. yeast: as instant. inoculation: ripe starter over the flour
    of the final dough, 0 for none.
    """

    lines: tuple[FormulaLine, ...]
    flour_g: Fraction
    dough_g: Fraction
    hydration: Fraction
    all_water: Fraction
    salt: Fraction
    yeast: Fraction
    sugar: Fraction
    fat: Fraction
    egg: Fraction
    preferments: tuple[PrefermentFigures, ...]
    inoculation: Fraction

    @property
    def prefermented(self) -> Fraction:
        """The share of all flour that is in preferments."""
        return sum((part.flour for part in self.preferments), Fraction(0))


def dough_formula(
    contents: Contents, part_kinds: Mapping[str, Kind | None], table: BalanceTable, water: WaterShares
) -> DoughFormula | None:
    """The formula of a dough; None where it holds no flour that could be weighed.

    contents: of the dough, its parts included. part_kinds: title of each part -> its kind, None for none.
    Source: common practice; total flour counts all milled grain, that of a preferment and a soaker too.
    """
    flour = table.weight(contents, "flour")
    if not flour:
        return None

    def on_flour(*groups: str) -> Fraction:
        return table.weight(contents, *groups) / flour

    return DoughFormula(
        lines=tuple(FormulaLine(held, held.grams and held.grams / flour) for held in contents),
        flour_g=flour,
        dough_g=table.weight(contents, "whole"),
        hydration=on_flour("liquid"),
        all_water=_all_water(contents, table, water) / flour,
        salt=on_flour("salt"),
        yeast=on_flour("yeast"),
        sugar=on_flour("sugar"),
        fat=on_flour("fat"),
        egg=on_flour("egg"),
        preferments=_preferments(contents, part_kinds, flour, table),
        inoculation=_inoculation(contents, part_kinds, table),
    )


def _all_water(contents: Contents, table: BalanceTable, water: WaterShares) -> Fraction:
    """Water of everything but flour; a ripe starter brings what its group says."""
    starters = [held for held in contents if table.is_counted(held, "ripe starter")]
    others = (water.grams(held) for held in contents if held not in starters)
    return sum(others, Fraction(0)) + table.weight(starters, "liquid")


def _preferments(
    contents: Contents, part_kinds: Mapping[str, Kind | None], flour: Fraction, table: BalanceTable
) -> tuple[PrefermentFigures, ...]:
    return tuple(
        PrefermentFigures(
            title=title,
            flour=table.weight(part, "flour") / flour,
            hydration=table.weight(part, "liquid") / table.weight(part, "flour"),
        )
        for title, part in _fermented(contents, part_kinds, table)
    )


def _fermented(
    contents: Contents, part_kinds: Mapping[str, Kind | None], table: BalanceTable
) -> list[tuple[str, Contents]]:
    """The parts that have fermented, by title: a preferment by its kind, or flour, water and yeast."""
    found = []
    for title, kind in part_kinds.items():
        part = tuple(held for held in contents if held.brought_by == title)
        ferments = table.weight(part, "yeast") or table.weight(part, "ripe starter")
        is_one = kind.family == PREFERMENT if kind else bool(ferments and table.weight(part, "liquid"))
        if is_one and table.weight(part, "flour"):
            found.append((title, part))
    return found


def _inoculation(contents: Contents, part_kinds: Mapping[str, Kind | None], table: BalanceTable) -> Fraction:
    """Ripe starter, or the whole of a sour that was raised from one, over the other flour of the dough."""
    sours = {
        title for title, part in _fermented(contents, part_kinds, table) if table.weight(part, "ripe starter")
    }
    starter = [held for held in contents if _is_starter(held, sours, table)]
    rest = table.weight((held for held in contents if held not in starter), "flour")
    return table.weight(starter, "whole") / rest if rest else Fraction(0)


def _is_starter(held: Held, sours: set[str], table: BalanceTable) -> bool:
    return held.brought_by in sours or table.is_counted(held, "ripe starter")


def kinds_of_parts(
    owner: Recipe, component: Component, bases: Mapping[str, Recipe], table: BalanceTable
) -> dict[str, Kind | None]:
    """Title of each part that a component takes of -> its kind, None for none.

    owner: the recipe that it stands in. bases: recipes by title; one is of the kind of its last component.
    """
    found: dict[str, Kind | None] = {}
    for line in parts(component):
        base = bases.get(line.source) if line.from_base else None
        source = base.components[-1] if base else owner.component(line.source)
        found[line.source] = table.kind(source.kind) if source else None
    return found
