"""How a component is balanced: asked about where it lies outside the bands of its kind, never forbidden."""

from collections.abc import Iterator

from sitegen.faults import Fault, FaultCode, Severity
from sitegen.kitchen.balances import unusual
from sitegen.kitchen.contents import Unpacking
from sitegen.kitchen.declared import tables_of
from sitegen.kitchen.part_errors import BaseCircle, NoWeight, UnknownPart
from sitegen.kitchen.recipe import Component, Recipe
from sitegen.kitchen.tables import Tables
from sitegen.source.balance_words import finding_sentence
from sitegen.source.own_scale import own_unpacking
from sitegen.source.school import Content

BALANCE_UNUSUAL = FaultCode(
    "balance-unusual",
    Severity.ADVICE,
    "A component of a known kind has more or less of something than such bakes usually have. It may be "
    "meant, or a slip in an amount.",
    "Look at the amount and at `kind`; where it is meant, write under `settled` why.",
    good="kind: oil cake",
    bad="kind: whisked sponge",
)
LEAVENING_UNUSUAL = FaultCode(
    "leavening-unusual",
    Severity.ADVICE,
    "There is more baking powder, bicarbonate or baker's ammonia than flour can take: it would be tasted.",
    "Look at the amount and at the spoon; where it is meant, write under `settled` why.",
    good="1/2 tsp bicarbonate of soda",
    bad="3 tsp bicarbonate of soda",
)
ACID_MISSING = FaultCode(
    "acid-missing",
    Severity.ADVICE,
    "Bicarbonate of soda needs an acid to work, and none is listed: it would taste of soap.",
    "Use baking powder, or something sour: buttermilk, yoghurt, lemon juice, treacle, natural cocoa.",
    good="- 120 g buttermilk, at room temperature\n",
    bad="- 120 g whole milk or buttermilk, at room temperature\n",
)
SALT_UNUSUAL = FaultCode(
    "salt-unusual",
    Severity.ADVICE,
    "A dough has much more or less salt than bread usually has.",
    "Look at the amount; where it is meant, write under `settled` why.",
    good="kind: oil cake",
    bad="kind: soft roll",
)
YEAST_UNUSUAL = FaultCode(
    "yeast-unusual",
    Severity.ADVICE,
    "There is more yeast than any dough needs: it would rise too fast and taste of yeast.",
    "Look at the amount, and at the sort: fresh yeast weighs three times as much as instant.",
    good="- 150 g plain flour\n      - 160 g caster sugar\n      - 1/2 tsp bicarbonate of soda\n",
    bad="- 150 g plain flour\n      - 160 g caster sugar\n      - 1/2 tsp bicarbonate of soda\n"
    "      - 14 g instant yeast\n",
)
CODES = (BALANCE_UNUSUAL, LEAVENING_UNUSUAL, ACID_MISSING, SALT_UNUSUAL, YEAST_UNUSUAL)

_BY_CODE = {code.code: code for code in CODES}
TOLD_ELSEWHERE = (BaseCircle, NoWeight, UnknownPart)
"""By `circles.py`, by `made.py`, and by the reader of lines."""


def components_in_balance(content: Content) -> Iterator[Fault]:
    """Each component against the bands of its kind, and any with flour against those for leavening."""
    if content.school is None:
        return
    bases = {recipe.title: recipe for recipe in content.recipes}
    for recipe in content.recipes:
        tables = tables_of(recipe, bases, content.tables)
        unpacking = own_unpacking(bases, tables, content.school.written_in)
        for component in recipe.components:
            try:
                yield from _of_component(recipe, component, unpacking, tables)
            except TOLD_ELSEWHERE:
                continue


def _of_component(
    recipe: Recipe, component: Component, unpacking: Unpacking, tables: Tables
) -> Iterator[Fault]:
    contents = unpacking.component(recipe, component)
    own = tuple(held for held in contents if not held.brought_by)
    kind = tables.balances.kind(component.kind)
    for finding in unusual(contents, own, kind, tables.balances):
        yield _BY_CODE[finding.band.code].fault(component.at, finding_sentence(component, finding, tables))


SCHOOL_CHECKS = (components_in_balance,)
