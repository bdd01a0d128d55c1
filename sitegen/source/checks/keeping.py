"""How long components are said to keep, held against what is usual for such a thing."""

from collections.abc import Iterator
from fractions import Fraction

from sitegen.faults import Fault, FaultCode, Severity
from sitegen.kitchen.amounts import Span
from sitegen.kitchen.keeping import NOT_THERE, kept_part, longer_than_usual, usual_keeping
from sitegen.kitchen.recipe import Recipe
from sitegen.kitchen.tables import Tables

KEEPS_LONG = FaultCode(
    "keeps-long",
    Severity.ADVICE,
    "A component is said to keep longer than such a thing usually does.",
    "Look at the figure again; food safety where you work goes before any table.",
    good="{fridge: 2 days,",
    bad="{fridge: 2 weeks,",
)
CODES = (KEEPS_LONG,)

DAY = Fraction(24)
IN_PLACE = {"room": "at room temperature", "fridge": "in the fridge", "freezer": "in the freezer"}


def keeps_no_longer_than_usual(recipe: Recipe, tables: Tables) -> Iterator[Fault]:
    """A baker's figure for a place is within what the table of keeping says of that kind of thing."""
    for component in recipe.components:
        part = kept_part(component, lambda choice: tables.larder.find(choice.ingredient))
        row = usual_keeping(part, tables.keeping)
        if row is None:
            continue
        for said, usual in longer_than_usual(part, row):
            where, most = IN_PLACE[said.place], _most(usual.hours)
            sentence = f"'{component.title}' is to keep {_days(said.hours)} {where}: {row.key}, {most}"
            yield KEEPS_LONG.fault(component.at, sentence)


def _most(hours: Span) -> str:
    return "usually not at all" if hours == NOT_THERE else f"usually {_days(hours)} at most"


def _days(hours: Span) -> str:
    if hours.high < DAY:
        return f"{round(hours.high)} h"
    return f"{round(hours.high / DAY)} days"


CHECKS = (keeps_no_longer_than_usual,)
