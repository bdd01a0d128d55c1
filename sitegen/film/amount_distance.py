"""How far an amount as said is off what a line writes, in tolerances; whatever units both are in."""

from collections.abc import Iterable, Iterator, Sequence
from fractions import Fraction

from sitegen.film.attribution import Attributed
from sitegen.film.names import LineKey
from sitegen.film.scene import Scene
from sitegen.kitchen.amounts import Amount, Span
from sitegen.kitchen.recipe import IngredientLine, Line
from sitegen.kitchen.weighing import grams_of

SAME_UNIT = Fraction(1, 200)
"""Of a weight said and written in metric: what rounding to a whole gram leaves of a large amount."""
OTHER_UNIT = Fraction(6, 100)
"""Between units: cups within 3 %, ounces to a quarter, and how a cup is filled (sheet's own rules)."""
ABOUT = Fraction(8, 100)
"""Of a figure that is said as about right."""
QUARTER_OUNCE_G, HALF_GRAM = Fraction(4), Fraction(1, 2)
AT_A_LOSS = Fraction(99)
"""What is said of nothing, or nothing of what is written."""


def offs_by(
    scene: Scene, amounts: tuple[Amount, ...], keys: Sequence[LineKey], one: Attributed
) -> dict[LineKey, Fraction]:
    """Line -> how far the amount is off, in tolerances; lines that it cannot be held against are left out."""
    found = {}
    for key in keys:
        offs = [
            off
            for amount in _written(scene, key)
            if (off := _off_by(scene, amounts, amount, key, one.amount.is_about)) is not None
        ]
        if offs:
            found[key] = min(offs)
    return found


def times_by(scene: Scene, amounts: tuple[Amount, ...], key: LineKey) -> Fraction:
    """How many times as much, or as little, is said as is written; 1 where that cannot be told."""
    line = line_at(scene, key)
    if line.amount is None:
        return Fraction(1)
    both = amounts[0], line.amount
    spans = [_grams(scene, amount, line) or amount.span for amount in both]
    low, high = sorted(span.middle for span in spans)
    return high / low if low else AT_A_LOSS


def _written(scene: Scene, key: LineKey) -> Iterator[Amount]:
    """The amount of a line, and those of its parts that steps take."""
    line = line_at(scene, key)
    if line.amount is None:
        return
    yield line.amount
    for step in scene.recipe.components[key[0]].steps:
        for reference in step.references:
            if reference.line == key[1] and reference.amount is not None:
                yield reference.amount
            elif reference.line == key[1] and 0 < reference.share < 1:
                yield Amount(line.amount.span.times(reference.share), line.amount.unit)


def _off_by(
    scene: Scene, amounts: tuple[Amount, ...], written: Amount, key: LineKey, is_about: bool
) -> Fraction | None:
    """How far an amount as said is off one as written, in tolerances; None where they cannot be compared."""
    if len(amounts) == 1 and amounts[0].unit == written.unit:
        return _off(amounts[0].span, written.span, ABOUT if is_about else SAME_UNIT, Fraction(0))
    line = line_at(scene, key)
    grams = _grams(scene, written, line)
    offs = []
    for edition in scene.tables.editions.values():
        spans = [_grams_in(scene, amount, line, edition.key) for amount in amounts]
        if grams is None or any(span is None for span in spans):
            continue
        total = Span(_sum(span.low for span in spans if span), _sum(span.high for span in spans if span))
        share = SAME_UNIT if _are_metric(amounts, written) else OTHER_UNIT
        least = QUARTER_OUNCE_G if amounts[0].unit in ("oz", "lb") else HALF_GRAM
        offs.append(_off(total, grams, ABOUT if is_about else share, least))
    return min(offs, default=None)


def _sum(figures: Iterable[Fraction]) -> Fraction:
    return sum(figures, Fraction(0))


def _are_metric(amounts: tuple[Amount, ...], written: Amount) -> bool:
    return all(amount.unit in ("g", "kg") for amount in (*amounts, written))


def _off(said: Span, written: Span, share: Fraction, least: Fraction) -> Fraction:
    """0 where one lies in the other; else how far apart they are, in tolerances, over 1 where it counts."""
    if written.low <= said.low and said.high <= written.high:
        return Fraction(0)
    apart = max(abs(said.low - written.low), abs(said.high - written.high))
    tolerance = max(share * written.high, least)
    return apart / tolerance if tolerance else AT_A_LOSS


def _grams(scene: Scene, amount: Amount, line: Line) -> Span | None:
    return _grams_in(scene, amount, line, scene.written.key)


def _grams_in(scene: Scene, amount: Amount, line: Line, edition: str) -> Span | None:
    if not isinstance(line, IngredientLine):
        measures = scene.tables.measures
        return measures.grams(amount) if measures.is_weight(amount.unit) else None
    row = scene.tables.larder.find(line.chosen.ingredient) if line.chosen.ingredient else None
    return grams_of(amount, line.chosen, row, scene.tables.editions[edition], scene.tables)


def line_at(scene: Scene, key: LineKey) -> Line:
    """A line of the recipe."""
    return scene.recipe.components[key[0]].lines[key[1]]


def name_of(line: Line) -> str:
    """What a line is of, as written."""
    return line.chosen.name if isinstance(line, IngredientLine) else line.source
