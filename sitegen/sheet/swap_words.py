"""What may stand in for ingredients that an edition's readers can't get, in amounts for this sheet."""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction

from sitegen.kitchen.allergens import allergens, regime_of
from sitegen.kitchen.amounts import Amount, single
from sitegen.kitchen.larder import Ingredient
from sitegen.kitchen.recipe import Choice, Component, IngredientLine, OfferedSwap
from sitegen.kitchen.substitutions import Original, Substitute, Swap, needed_in, substitutes, ways_without
from sitegen.sheet.amounts import joined
from sitegen.sheet.asks import COUNT_UNITS, Ask, keeps_fine_step
from sitegen.sheet.measured import measured
from sitegen.sheet.panel_values import SheetSwap
from sitegen.sheet.setting import Setting
from sitegen.sheet.weights import SPOONED_UNDER_G

OFFERED = "for those who have none"
TOLERANCE = Fraction(5, 100)
FLAVOUR_TOLERANCE = Fraction(12, 100)
"""How far the measures of a stand-in may be off: it is no tested balance, and a flavouring goes by taste.

Source: common practice.
"""


@dataclass(frozen=True)
class MadeLines:
    """The lines of a component, and how many times its amounts are made."""

    component: Component
    factor: Fraction


def swaps_of(
    made: Sequence[MadeLines], offered: Sequence[OfferedSwap], setting: Setting
) -> tuple[SheetSwap, ...]:
    """What replaces ingredients that the edition's region lacks or sells otherwise, in order of the lines.

    made: everything that the sheet makes, base recipes among it. offered: what the recipe or a base recipe of
    it offers, to readers anywhere. The amounts are those of all the sheet's lines together. An ingredient to
    which a line names an alternative of its own needs no swap there.
    """
    return tuple(
        swap
        for way, lines in _offers(made, offered, setting)
        if (swap := _sheet_swap(way, lines, setting)) is not None
    )


def stand_ins(made: Sequence[MadeLines], offered: Sequence[OfferedSwap], setting: Setting) -> tuple[str, ...]:
    """Keys of the larder of all that `swaps_of` may offer in place of another ingredient, each once."""
    used = (one.ingredient for way, _ in _offers(made, offered, setting) for one in way.use)
    return tuple(dict.fromkeys(used))


@dataclass(frozen=True)
class _Line:
    line: IngredientLine
    factor: Fraction


def _offers(
    made: Sequence[MadeLines], offered: Sequence[OfferedSwap], setting: Setting
) -> Iterator[tuple[Swap, Sequence[_Line]]]:
    """Each way to do without an ingredient that the sheet tells of, and the lines that it is for."""
    keys = frozenset(one.ingredient for one in offered)
    for key, lines in _by_ingredient(made).items():
        yield from ((way, lines) for way in _ways(key, keys, setting))


def _by_ingredient(made: Sequence[MadeLines]) -> dict[str, list[_Line]]:
    """The lines that name no alternative, by the larder's key of what they take."""
    lines: dict[str, list[_Line]] = {}
    for part in made:
        for line in part.component.lines:
            if isinstance(line, IngredientLine) and len(line.choices) == 1 and line.chosen.ingredient:
                lines.setdefault(line.chosen.ingredient, []).append(_Line(line, part.factor))
    return lines


def _ways(key: str, offered: frozenset[str], setting: Setting) -> tuple[Swap, ...]:
    """Every way that the recipe offers; else the one that the region needs, if it needs any."""
    swaps, written = setting.tables.swaps, setting.written.region
    if key in offered:
        return ways_without(swaps, key, written)
    needed = needed_in(swaps, key, setting.edition.region, written)
    return () if needed is None else (needed,)


def _sheet_swap(swap: Swap, lines: Sequence[_Line], setting: Setting) -> SheetSwap | None:
    """None where the amount is not known in the terms of the swap."""
    choice = lines[0].line.chosen
    row = setting.row(choice)
    use = substitutes(swap, _all_of(lines, row, setting)) if row else None
    if row is None or use is None:
        return None
    reason = swap.reason(setting.edition.region, setting.written.region)
    sources = setting.tables.sources
    return SheetSwap(
        instead_of=_name_of(row, swap, choice, setting),
        use=" + ".join(_measured(one, setting) for one in use),
        changes=setting.respelled(_sentences((swap.method, swap.changes, _brings(swap, row, setting)))),
        reason=OFFERED if reason is None else reason,
        source=sources.get(swap.source.split(" ")[0], swap.source),
    )


def _all_of(lines: Iterable[_Line], row: Ingredient, setting: Setting) -> Original:
    """The sum of all lines that are measured; unknown where one of them is."""
    amounts = [one for one in lines if one.line.amount is not None]
    if not amounts:
        return Original(None)
    return Original(
        grams=_sum(_grams(one, setting) for one in amounts),
        pieces=_sum(_pieces(one, row, setting) for one in amounts),
    )


def _sum(values: Iterator[Fraction | None]) -> Fraction | None:
    total = Fraction(0)
    for value in values:
        if value is None:
            return None
        total += value
    return total


def _grams(one: _Line, setting: Setting) -> Fraction | None:
    weight = setting.grams(one.line)
    return weight.middle * one.factor if weight else None


def _pieces(one: _Line, row: Ingredient, setting: Setting) -> Fraction | None:
    """How many: as counted, else by the weight of one."""
    amount = one.line.amount
    if amount is not None and amount.unit in COUNT_UNITS:
        return amount.span.middle * one.factor
    piece, grams = row.piece(one.line.chosen.size), _grams(one, setting)
    return grams / piece.grams if piece and grams is not None else None


def _name_of(row: Ingredient, swap: Swap, choice: Choice, setting: Setting) -> str:
    """The name in the list: 'superfine sugar', 'double cream, in the list heavy cream'.

    With the British name before it where the two are not the same thing, or a substitute is called so too.
    """
    printed = setting.name(choice)
    others = {_name(one.ingredient, setting) for one in swap.use}
    is_another_thing = setting.edition.region in swap.differs_in or printed in others
    return f"{row.key}, in the list {printed}" if is_another_thing and printed != row.key else printed


def _name(key: str, setting: Setting) -> str:
    row = setting.tables.larder.find(key)
    return row.name_in(setting.edition.region) if row else key


def _measured(one: Substitute, setting: Setting) -> str:
    """'1½ cups (190 g) all-purpose flour': in the edition's measures, its weight beside."""
    row = setting.tables.larder.find(one.ingredient)
    choice = Choice(one.ingredient, one.ingredient)
    figures = measured(_ask(one, choice, row, setting), setting)
    beside = f"({figures.beside})" if figures.beside else ""
    name = _name(one.ingredient, setting)
    if row is not None and figures.count is not None:
        name = row.counted(name, figures.count, setting.edition.region)
    return " ".join(part for part in (figures.amount, beside, name) if part)


def _ask(one: Substitute, choice: Choice, row: Ingredient | None, setting: Setting) -> Ask:
    """By the spoon for what is only ever spooned, else by weight, rounded as any scaled amount is."""
    tolerance = FLAVOUR_TOLERANCE if _goes_by_taste(one, row) else TOLERANCE
    if row is None or row.measured_by != "spoon" or row.density is None:
        return Ask(Amount(single(1), "g"), choice, row, one.grams, tolerance)
    teaspoon_ml = setting.tables.measures.unit_ml(setting.written.teaspoon)
    teaspoons = one.grams / row.density.grams_per_ml / teaspoon_ml
    return Ask(Amount(single(1), "tsp"), choice, row, teaspoons, tolerance)


def _goes_by_taste(one: Substitute, row: Ingredient | None) -> bool:
    """What is spooned, and a little of anything else, but never what raises, salts or sets."""
    is_little = one.grams < SPOONED_UNDER_G or (row is not None and row.measured_by == "spoon")
    return is_little and not keeps_fine_step(row)


def _brings(swap: Swap, row: Ingredient, setting: Setting) -> str:
    """The allergens that come with the swap and were not in the ingredient; '' for none."""
    regime = regime_of(setting.edition.region)
    found = (setting.tables.larder.find(one.ingredient) for one in swap.use)
    new = allergens([one for one in found if one is not None], regime)
    old = allergens([row], regime)
    brought = tuple(name for name in new if name not in old)
    return f"It brings {joined(brought)}" if brought else ""


def _sentences(texts: Iterable[str]) -> str:
    return " ".join(f"{text}." for text in texts if text)
