"""Allergens across the counter: a table of products, and what the order of work owes to it."""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass

from sitegen.kitchen.allergens import ORDERS, Regime, allergens, regime_of
from sitegen.kitchen.diets import Diet, disagrees
from sitegen.kitchen.recipe import Choice, Component, IngredientLine
from sitegen.sheet.allergen_words import CHECK_LABELS
from sitegen.sheet.amounts import joined
from sitegen.sheet.order_values import Counter, CounterRow
from sitegen.sheet.setting import Setting

YES, MAY = "yes", "may"
NUT_FREE = "nut-free"
SHOP_DECIDES = (
    "Whether a product may carry traces of the others is the shop's own decision, after a risk assessment."
)


@dataclass(frozen=True)
class OnCounter:
    """A product with all components that go into it."""

    title: str
    components: tuple[Component, ...]

    @property
    def lines(self) -> Iterator[IngredientLine]:
        return (line for part in self.components for line in part.lines if isinstance(line, IngredientLine))


def counter_of(products: Sequence[OnCounter], setting: Setting) -> Counter:
    """Which product contains what, in the words and the order of the law of the edition's region.

    'may' stands where only an alternative or an optional ingredient brings it. Sources: as of
    `allergen_words.allergen_lines`; nut-free work first, Food Standards Agency, Safer food, better business.
    """
    regime = regime_of(setting.edition.region)
    sure = {one.title: _named(_always(one), regime, setting) for one in products}
    may = {one.title: _named(_perhaps(one), regime, setting) for one in products}
    found = {name for names in (*sure.values(), *may.values()) for name in names}
    columns = (*(name for name in ORDERS[regime] if name in found), *sorted(found.difference(ORDERS[regime])))
    rows = tuple(
        CounterRow(
            setting.respelled(title),
            tuple(YES if name in sure[title] else MAY if name in may[title] else "" for name in columns),
        )
        for title in sure
    )
    return Counter(columns, rows, tuple(_notes(products, regime, setting)))


def _always(one: OnCounter) -> Iterator[Choice]:
    return (line.chosen for line in one.lines if not line.optional)


def _perhaps(one: OnCounter) -> Iterator[Choice]:
    for line in one.lines:
        yield from line.choices if line.optional else line.choices[1:]


def _named(choices: Iterable[Choice], regime: Regime, setting: Setting) -> tuple[str, ...]:
    return allergens([row for choice in choices if (row := setting.row(choice)) is not None], regime)


def _notes(products: Sequence[OnCounter], regime: Regime, setting: Setting) -> Iterator[str]:
    yield from _nut_note(products, setting)
    unknown = tuple(dict.fromkeys(name for one in products for name in _unknown(one, regime, setting)))
    if unknown:
        yield f"Allergens of {joined(unknown)} are not known: read the packet."
    yield CHECK_LABELS
    yield SHOP_DECIDES


def _unknown(one: OnCounter, regime: Regime, setting: Setting) -> Iterator[str]:
    for line in one.lines:
        for choice in line.choices:
            row = setting.row(choice)
            if row is None or regime in row.allergens_unsaid:
                yield setting.name(choice)


def _nut_note(products: Sequence[OnCounter], setting: Setting) -> Iterator[str]:
    """Which products come first, and which last: nothing where all or none of them has nuts."""
    diet = next((row for row in setting.tables.diets if row.key == NUT_FREE), None)
    if diet is None:
        return
    with_nuts = tuple(one.title for one in products if _has_nuts(one, diet, setting))
    without = tuple(one.title for one in products if one.title not in with_nuts)
    if with_nuts and without:
        first, last = setting.respelled(joined(without)), setting.respelled(joined(with_nuts))
        yield (
            f"Where the clock leaves a choice, make what has no nuts first ({first}), on clean trays and "
            f"with tools kept for it, and what has nuts last ({last})."
        )


def _has_nuts(one: OnCounter, diet: Diet, setting: Setting) -> bool:
    return any(
        disagrees(diet, line.text, row)
        for line in one.lines
        for choice in line.choices
        if (row := setting.row(choice)) is not None
    )
