"""The stage of boiled sugar, beside its temperature: 'firm ball', 'soft to firm ball'."""

from sitegen.kitchen.amounts import Amount
from sitegen.kitchen.method import Step, Words
from sitegen.kitchen.recipe import Component, IngredientLine
from sitegen.kitchen.temperatures import to_celsius
from sitegen.kitchen.word_marks import has_word
from sitegen.sheet.setting import Setting


def sugar_stage_text(amount: Amount, step: Step, component: Component, setting: Setting) -> str:
    """What the trade calls sugar at that temperature; '' where it is no sugar that is heated.

    amount: a temperature of the step's prose. Silent where the step has an oven or speaks of frying, where
    the component holds no sugar, and where the baker's own words name the stage.
    """
    table = setting.tables.sugar
    words = f"{''.join(part.text for part in step.prose if isinstance(part, Words))} {step.until}"
    if step.oven or has_word(words, table.unless_words) or not _holds_sugar(component, setting):
        return ""
    low, high = (to_celsius(end, amount.unit) for end in (amount.span.low, amount.span.high))
    names = table.names_of(low, high)
    said = words.casefold().replace("-", " ")
    if any(name in said for name in names):
        return ""
    return setting.respelled(_from_to(names))


def _holds_sugar(component: Component, setting: Setting) -> bool:
    lines = (line for line in component.lines if isinstance(line, IngredientLine))
    rows = (setting.row(line.chosen) for line in lines)
    return any(row.roles & setting.tables.sugar.roles for row in rows if row is not None)


def _from_to(names: tuple[str, ...]) -> str:
    """'soft ball', 'firm ball' -> 'soft to firm ball'; 'hard crack', 'light caramel' -> both in full."""
    if len(names) < 2:
        return "".join(names)
    first, last = names
    firsts, lasts = first.split(" "), last.split(" ")
    if firsts[-1] == lasts[-1]:
        return f"{' '.join(firsts[:-1])} to {last}"
    return f"{first} to {last}"
