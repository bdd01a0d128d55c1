"""Cups, spoons and sticks of butter in an edition's words, with the weight beside."""

from collections.abc import Mapping
from fractions import Fraction

from sitegen.kitchen.amounts import Span
from sitegen.kitchen.scoops import Scoops, choose_scoops
from sitegen.kitchen.sticks import choose_sticks
from sitegen.sheet.amounts import NO_BREAK, fraction_text, grams_text, span_text, with_unit
from sitegen.sheet.asks import Ask, Measured
from sitegen.sheet.setting import Setting
from sitegen.sheet.weights import in_grams

TINY_WORDS = (
    (Fraction(1, 32), "a few grains of"),
    (Fraction(9, 200), "a small pinch of"),
    (Fraction(9, 100), "a pinch of"),
    (Fraction(1, 8), f"scant ⅛{NO_BREAK}tsp"),
    (Fraction(17, 100), f"generous ⅛{NO_BREAK}tsp"),
    (Fraction(1, 4), f"scant ¼{NO_BREAK}tsp"),
)
"""Up to how many teaspoons -> what is said."""


def in_sticks(ask: Ask, exact: Span) -> Measured | None:
    """Butter by the stick, or None where no half tablespoon is near enough, or a range is asked for."""
    chosen = None if exact.is_range else choose_sticks(exact.middle, ask.tolerance)
    if chosen is None:
        return None
    sticks = with_unit(fraction_text(chosen.sticks), "stick" if chosen.sticks <= 1 else "sticks")
    spoons = with_unit(fraction_text(chosen.tablespoons), "tbsp")
    parts = ([sticks] if chosen.sticks else []) + ([spoons] if chosen.tablespoons else [])
    text = " + ".join(parts)
    text = text if chosen.fit == "exact" else f"{chosen.fit} {text}"
    return Measured(text, grams_text(in_grams(ask, exact)), exact.middle, chosen.grams)


def spooned(ask: Ask, exact: Span | None, setting: Setting, *, spoons_only: bool) -> Measured | None:
    """Cups and spoons with the grams beside, since no spoonful comes out to a quarter of an ounce.

    None where no measure fits, or the density that turns a weight into one is unknown.
    """
    volume = _volume(ask, exact, setting)
    if volume is None:
        return None
    low, high = (_scoops(ask, ml, setting, spoons_only) for ml in (volume.low, volume.high))
    if low is None or high is None:
        return _tiny(ask, volume, exact, setting)
    text = _span_of(low, high)
    if text is None or exact is None:
        return Measured(text) if text else None
    printed = exact.middle * (low.millilitres + high.millilitres) / (volume.low + volume.high)
    return Measured(text, grams_text(in_grams(ask, exact)), exact.middle, printed)


def _volume(ask: Ask, exact: Span | None, setting: Setting) -> Span | None:
    """Millilitres of the measures as the edition fills them; as written where nothing changes them."""
    measures, same_fill = setting.tables.measures, setting.written.cup_fill == setting.edition.cup_fill
    density = ask.row.density_by(setting.edition.cup_fill) if ask.row else None
    if measures.is_volume(ask.amount.unit) and (same_fill or exact is None or density is None):
        return measures.millilitres(ask.amount, setting.written).times(ask.factor)
    if exact is None or density is None:
        return None
    return exact.times(1 / density.grams_per_ml)


def _tiny(ask: Ask, volume: Span, exact: Span | None, setting: Setting) -> Measured | None:
    """Less than a quarter teaspoon: the nearest measure in words; None for more.

    The weight stands beside what still is a spoon; few kitchens weigh a pinch, a tenth of a gram.
    Source: common practice, a pinch is 1/16 tsp.
    """
    teaspoons = volume.middle / setting.tables.measures.unit_ml(setting.edition.teaspoon)
    words = next((text for most, text in TINY_WORDS if teaspoons <= most), None)
    if words is None:
        return None
    if exact is None:
        return Measured(words)
    if not words.endswith("tsp"):
        return Measured(words, "", exact.middle)
    grams = in_grams(ask, exact)
    return Measured(words, grams_text(grams), exact.middle, grams.middle)


def _scoops(ask: Ask, ml: Fraction, setting: Setting, spoons_only: bool) -> Scoops | None:
    measures, edition = setting.tables.measures, setting.edition
    return choose_scoops(
        ml,
        measures.unit_ml(edition.teaspoon),
        measures.unit_ml(edition.tablespoon),
        measures.unit_ml(edition.cup),
        fine=ask.is_fine,
        spoons_only=spoons_only,
        tolerance=ask.tolerance,
    )


def _span_of(low: Scoops, high: Scoops) -> str | None:
    """A range with its unit said once, '2–2½ tsp', or with 'to' between two measures, '2 tsp to 1 tbsp'.

    None where an end takes two measures, or is scant: then the weight reads better.
    """
    if low == high:
        return _scoops_text(low)
    (one, *more), (other, *others) = _figures(low).items(), _figures(high).items()
    if more or others or {low.fit, high.fit} != {"exact"}:
        return None
    (unit, first), (other_unit, second) = one, other
    if unit == other_unit:
        return with_unit(span_text(fraction_text(first), fraction_text(second)), _plural(unit, second))
    return f"{_scoops_text(low)} to {_scoops_text(high)}"


def _figures(scoops: Scoops) -> Mapping[str, Fraction]:
    """Unit -> figure, the largest measure first, without those that are not used."""
    all_units = {"cup": scoops.cups, "tbsp": scoops.tablespoons, "tsp": scoops.teaspoons}
    return {unit: figure for unit, figure in all_units.items() if figure}


def _plural(unit: str, figure: Fraction) -> str:
    return "cups" if unit == "cup" and figure > 1 else unit


def _scoops_text(scoops: Scoops) -> str:
    texts = [
        with_unit(fraction_text(figure), _plural(unit, figure)) for unit, figure in _figures(scoops).items()
    ]
    text = (" less " if scoops.is_less else " + ").join(texts)
    return text if scoops.fit == "exact" else f"{scoops.fit} {text}"
