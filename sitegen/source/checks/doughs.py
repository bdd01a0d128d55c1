"""A dough against its preferment, and against the pieces that it is to make."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from sitegen.faults import Fault, FaultCode, Severity
from sitegen.kitchen.balances import DOUGH
from sitegen.kitchen.contents import Unpacking
from sitegen.kitchen.declared import tables_of
from sitegen.kitchen.doughs import DoughTable, unusual_preferments
from sitegen.kitchen.formulas import DoughFormula, dough_formula, kinds_of_parts
from sitegen.kitchen.part_errors import BaseCircle, NoWeight, UnknownPart
from sitegen.kitchen.pieces import dough_in_piece_g, flour_for_pieces, loss_of_recipe
from sitegen.kitchen.recipe import Component, Recipe
from sitegen.kitchen.tables import Tables
from sitegen.source.balance_words import finding_sentence
from sitegen.source.own_scale import own_unpacking
from sitegen.source.school import Content

PREFERMENT_UNUSUAL = FaultCode(
    "preferment-unusual",
    Severity.ADVICE,
    "More of the flour than usual is in the preferment, or more or less of a sour goes on the rest.",
    "Look at the amounts; where it is meant, write under `settled` why.",
)
PIECES_AND_DOUGH = FaultCode(
    "pieces-and-dough",
    Severity.ADVICE,
    "The pieces that the recipe promises weigh more than its dough, or leave much of it over.",
    "Look at `makes` and at the amounts; a piece that is weighed once baked is `of 75 g baked`.",
)
NO_FLOUR = FaultCode(
    "dough-without-flour",
    Severity.ERROR,
    "`dough` says how warm a dough is to be, and the component holds no flour: nothing would be printed.",
    "Move the key to the component that is kneaded, or take it out.",
    good="  Bay custard:\n",
    bad="  Bay custard:\n    dough: {temperature: 25 C}\n",
)
CODES = (PREFERMENT_UNUSUAL, PIECES_AND_DOUGH, NO_FLOUR)

TOLD_ELSEWHERE = (BaseCircle, NoWeight, UnknownPart)
"""By `circles.py`, by `made.py`, and by the reader of lines."""


def doughs_in_order(content: Content) -> Iterator[Fault]:
    """Each dough's preferment against its band, and the dough of a recipe against its pieces."""
    doughs = content.tables.doughs
    if content.school is None or doughs is None:
        return
    bases = {recipe.title: recipe for recipe in content.recipes}
    for recipe in content.recipes:
        tables = tables_of(recipe, bases, content.tables)
        unpacking = own_unpacking(bases, tables, content.school.written_in)
        try:
            yield from _Doughs(recipe, bases, tables, doughs, unpacking).faults()
        except TOLD_ELSEWHERE:
            continue


@dataclass(frozen=True)
class _Doughs:
    """The doughs of one recipe as written."""

    recipe: Recipe
    bases: Mapping[str, Recipe]
    tables: Tables
    table: DoughTable
    unpacking: Unpacking

    def faults(self) -> Iterator[Fault]:
        for component in self.recipe.components:
            if component.dough is not None and not self._has_flour(component):
                yield NO_FLOUR.fault(component.at, f"no flour goes into '{component.title}'")
        doughs = [one for one in self.recipe.components if self._is_dough(one)]
        for component in doughs:
            formula = self._formula(component)
            if formula is None:
                continue
            for finding in unusual_preferments(formula, self.table):
                sentence = finding_sentence(component, finding, self.tables)
                yield PREFERMENT_UNUSUAL.fault(component.at, sentence)
            if len(doughs) == 1:
                yield from self._pieces(component, formula)

    def _has_flour(self, component: Component) -> bool:
        contents = self.unpacking.component(self.recipe, component)
        return any(self.tables.balances.is_counted(held, "flour") for held in contents)

    def _is_dough(self, component: Component) -> bool:
        kind = self.tables.balances.kind(component.kind)
        return kind is not None and kind.family == DOUGH

    def _formula(self, component: Component) -> DoughFormula | None:
        """None where it holds no flour, or something that cannot be weighed."""
        contents = self.unpacking.component(self.recipe, component)
        if any(held.grams is None for held in contents):
            return None
        balances = self.tables.balances
        part_kinds = kinds_of_parts(self.recipe, component, self.bases, balances)
        return dough_formula(contents, part_kinds, balances, self.table.water)

    def _pieces(self, component: Component, formula: DoughFormula) -> Iterator[Fault]:
        makes = self.recipe.makes
        loss = loss_of_recipe(self.recipe, self.tables.balances)
        piece_g = dough_in_piece_g(makes.piece, loss) if makes.piece else None
        if piece_g is None:
            return
        wanted = piece_g * makes.count
        if wanted <= formula.dough_g <= wanted * (1 + self.table.left_over):
            return
        flour = flour_for_pieces(makes.count, piece_g, formula.dough_g / formula.flour_g, self.table.sticks)
        sentence = (
            f"{makes.count} {makes.noun} take {round(wanted)} g of dough, and '{component.title}' weighs "
            f"{round(formula.dough_g)} g"
        )
        way_out = f"it comes out with {round(flour)} g of flour in all, the rest in proportion"
        yield PIECES_AND_DOUGH.fault(makes.at, sentence, way_out)


SCHOOL_CHECKS = (doughs_in_order,)
