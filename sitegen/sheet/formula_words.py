"""The formula panel: a dough in baker's percentages, as texts ready for print."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction

from sitegen.kitchen.balances import DOUGH, Kind
from sitegen.kitchen.contents import Contents, Unpacking
from sitegen.kitchen.doughs import DoughTable
from sitegen.kitchen.editions import Measuring
from sitegen.kitchen.formulas import DoughFormula, FormulaLine, dough_formula, kinds_of_parts
from sitegen.kitchen.part_weights import PartScale
from sitegen.kitchen.pieces import baked_g, baking_loss, dough_in_piece_g, wanted_piece
from sitegen.kitchen.recipe import Recipe
from sitegen.kitchen.rounding import to_step
from sitegen.kitchen.scaling import Batch
from sitegen.kitchen.shares import MadeComponent
from sitegen.sheet.amounts import NO_BREAK, decimal_text, joined
from sitegen.sheet.asks import keeps_fine_step
from sitegen.sheet.batches import grams_text_of
from sitegen.sheet.dough_words import temperature_notes
from sitegen.sheet.panel_values import Formula, FormulaRow
from sitegen.sheet.setting import Setting
from sitegen.sheet.weights import about_text, weight_text

NOT_WORTH_SAYING = Fraction(1, 200)
"""Half a point of hydration."""
SAID_TO_THE_GRAM = 100
"""Grams under which a baked piece is."""
UNKNOWN = "–"


def formulas_of(
    recipe: Recipe,
    bases: Mapping[str, Recipe],
    batch: Batch,
    made: Sequence[MadeComponent],
    setting: Setting,
) -> tuple[Formula, ...]:
    """A formula for each made component that is a dough by its kind, or that says how warm it is to be.

    bases: recipes by title. made: all components of the batch.
    """
    doughs = setting.tables.doughs
    if doughs is None:
        return ()
    panel = _Panel(recipe, bases, batch, made, setting, doughs)
    formulas = (panel.formula(one) for one in made if panel.is_dough(one))
    return tuple(formula for formula in formulas if formula is not None)


@dataclass(frozen=True)
class _Panel:
    """A batch on its way into formulas. made: all its components."""

    recipe: Recipe
    bases: Mapping[str, Recipe]
    batch: Batch
    made: Sequence[MadeComponent]
    setting: Setting
    doughs: DoughTable

    def is_dough(self, one: MadeComponent) -> bool:
        kind = self._kind(one)
        return one.component.dough is not None or bool(kind and kind.family == DOUGH)

    def formula(self, one: MadeComponent) -> Formula | None:
        """One dough; None where it holds no flour that could be weighed."""
        owner = one.base or self.recipe
        contents = tuple(held.times(one.factor) for held in self._unpacking.component(owner, one.component))
        balances = self.setting.tables.balances
        part_kinds = kinds_of_parts(owner, one.component, self.bases, balances)
        dough = dough_formula(contents, part_kinds, balances, self.doughs.water)
        if dough is None:
            return None
        return Formula(
            title=self.setting.respelled(one.title),
            rows=tuple(self._row(line) for line in dough.lines),
            totals=tuple((what, figure) for what, figure in self._totals(one, dough) if figure),
            notes=tuple(self.setting.respelled(note) for note in self._notes(one, contents, dough)),
        )

    @property
    def _unpacking(self) -> Unpacking:
        return Unpacking(PartScale(self.bases, self.setting.grams), self.setting.row)

    def _kind(self, one: MadeComponent) -> Kind | None:
        return self.setting.tables.balances.kind(one.component.kind)

    def _row(self, line: FormulaLine) -> FormulaRow:
        held = line.held
        return FormulaRow(
            name=self.setting.name(held.choice),
            weight=self._weight(held.grams, fine=keeps_fine_step(held.ingredient)) if held.grams else UNKNOWN,
            percent=percent_text(line.percent) if line.percent is not None else UNKNOWN,
            part=self.setting.respelled(held.brought_by),
        )

    def _totals(self, one: MadeComponent, dough: DoughFormula) -> Iterator[tuple[str, str]]:
        loss = self._loss(one)
        yield "total flour", self._weight(dough.flour_g)
        yield "dough", f"{self._weight(dough.dough_g)}{self._once_baked(dough.dough_g, loss)}"
        yield "piece", self._piece(loss)
        yield "hydration", percent_text(dough.hydration)
        if abs(dough.all_water - dough.hydration) > NOT_WORTH_SAYING:
            yield "hydration, all water", percent_text(dough.all_water)
        yield "flour that is pre-fermented", percent_text(dough.prefermented)
        for part in dough.preferments:
            yield f"hydration of {self.setting.respelled(part.title)}", percent_text(part.hydration)
        yield "ripe starter on the other flour", percent_text(dough.inoculation)
        for what, ratio in (("salt", dough.salt), ("yeast", dough.yeast), ("sugar", dough.sugar)):
            yield what, percent_text(ratio)
        yield "fat", percent_text(dough.fat)
        yield "egg", percent_text(dough.egg)

    def _piece(self, loss: Fraction | None) -> str:
        """'85 g dough, about 74 g baked'; '' where no weight is known, or not of which of two doughs."""
        piece = wanted_piece(self.batch.ask.each if self.batch.ask else None, self.recipe.makes)
        if piece is None or sum(map(self.is_dough, self.made)) > 1:
            return ""
        piece_g = dough_in_piece_g(piece, loss)
        return f"{self._weight(piece_g, fine=True)} dough{self._once_baked(piece_g, loss)}" if piece_g else ""

    def _once_baked(self, dough_g: Fraction, loss: Fraction | None) -> str:
        """', about 74 g baked'; '' where the loss is not known."""
        if loss is None:
            return ""
        baked, edition = baked_g(dough_g, loss), self.setting.edition
        if baked >= SAID_TO_THE_GRAM or edition.measuring is Measuring.OUNCES:
            return f", {about_text(baked, edition)} baked"
        return f", about {grams_text_of(baked)} baked"

    def _weight(self, grams: Fraction, *, fine: bool = False) -> str:
        return weight_text(grams, self.setting.edition, fine=fine)

    def _loss(self, one: MadeComponent) -> Fraction | None:
        becomes = (other.component for other in self.made if other.title in one.needed_by)
        return baking_loss(one.component, becomes, self._kind(one))

    def _notes(self, one: MadeComponent, contents: Contents, dough: DoughFormula) -> Iterator[str]:
        if dough.preferments:
            yield "Percentages are of all the flour, the preferment's included; its hydration is of its own."
        more = self._watery(contents)
        if more and abs(dough.all_water - dough.hydration) > NOT_WORTH_SAYING:
            yield (
                "Hydration counts water, milk and other liquids as they are poured; all water counts the "
                f"water in them, and in the {joined(more)}."
            )
        if any("yeast" in held.roles and held.key != "instant yeast" for held in contents):
            yield "Yeast is counted as instant yeast."
        if one.component.dough is not None:
            yield from temperature_notes(
                one.component.dough, contents, bool(dough.preferments), self.setting, self.doughs.temperatures
            )

    def _watery(self, contents: Contents) -> tuple[str, ...]:
        """Names of what brings water and is no liquid."""
        balances, water = self.setting.tables.balances, self.doughs.water
        names = (
            self.setting.name(held.choice)
            for held in contents
            if water.grams(held) and not balances.is_counted(held, "liquid")
        )
        return tuple(dict.fromkeys(names))


def percent_text(ratio: Fraction) -> str:
    """A baker's percentage to a tenth, under 1 to a hundredth: '62.5 %', '65 %', '0.08 %'; '' for nothing."""
    if not ratio:
        return ""
    rounded = to_step(ratio * 100, Fraction(1, 10) if ratio * 100 >= 1 else Fraction(1, 100))
    return f"{decimal_text(rounded)}{NO_BREAK}%"
