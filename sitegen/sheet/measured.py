"""One amount in one edition: from an exact amount to the texts that are printed, and what they weigh."""

from dataclasses import dataclass
from fractions import Fraction

from sitegen.kitchen.editions import Measuring
from sitegen.kitchen.eggs import EggCount, edible_grams, whole_and_beaten
from sitegen.kitchen.larder import Ingredient
from sitegen.kitchen.recipe import Amount, Choice, Span, single
from sitegen.kitchen.rounding import rounded_grams, rounded_ml, rounded_ounces
from sitegen.kitchen.scoops import Scoops, choose_scoops, choose_sticks
from sitegen.kitchen.weighing import grams_of
from sitegen.sheet.amounts import NO_BREAK, fraction_text, grams_text, span_text, with_unit
from sitegen.sheet.setting import Setting

FINE_ROLES = frozenset({"salt", "leavening", "yeast", "gelatine"})
SPOON_UNITS = frozenset({"tsp", "tbsp", "pinch", "dash"})
COUNT_UNITS = frozenset({"", "leaf", "packet"})
USUAL_TOLERANCE = Fraction(3, 100)
TINY_WORDS = (
    (Fraction(9, 200), "a few grains"),
    (Fraction(9, 100), "a pinch"),
    (Fraction(1, 8), f"scant ⅛{NO_BREAK}tsp"),
    (Fraction(17, 100), f"generous ⅛{NO_BREAK}tsp"),
    (Fraction(1, 4), f"scant ¼{NO_BREAK}tsp"),
)
"""Up to how many teaspoons -> what is said."""
UNNOTICED_EGG = Fraction(3, 100)
"""A rest of egg that nobody weighs out, as a share of all the egg; common practice lets up to 5 % pass."""


def keeps_fine_step(row: Ingredient | None) -> bool:
    """Whether an ingredient keeps the finer step of salt, leavening, yeast and gelatine."""
    return row is not None and bool(row.roles & FINE_ROLES)


@dataclass(frozen=True)
class Measured:
    """An amount as printed.

    amount, beside: the first measure and the one beside it; '' for none.
    exact_g: the weight that the recipe means; printed_g: the weight of what is printed; None unknown.
    count: how many, for what is counted (it decides between 'lemon' and 'lemons'); None else.
    rest: what comes on top of a count, 'plus 26 g of a beaten one'.
    """

    amount: str
    beside: str = ""
    exact_g: Fraction | None = None
    printed_g: Fraction | None = None
    count: Fraction | None = None
    rest: str = ""


@dataclass(frozen=True)
class Ask:
    """What is to be measured: an amount as written, of a choice, times a factor.

    tolerance: how far cups and spoons may be off, as a share.
    """

    amount: Amount
    choice: Choice
    row: Ingredient | None
    factor: Fraction
    tolerance: Fraction = USUAL_TOLERANCE

    @property
    def is_fine(self) -> bool:
        return keeps_fine_step(self.row)

    @property
    def is_counted_egg(self) -> bool:
        return self.row is not None and "egg" in self.row.roles and self.amount.unit == ""


def measured(ask: Ask, setting: Setting) -> Measured:
    """The texts of an amount in the setting's edition.

    Eggs become whole ones and a weighed part; what is counted stays counted; spoons stay spoons;
    else the edition's own measure comes first.
    """
    weight = grams_of(ask.amount, ask.choice, ask.row, setting.written, setting.tables)
    exact = weight.times(ask.factor) if weight else None
    if ask.is_counted_egg and exact is not None:
        return _eggs(ask, exact, setting)
    if ask.amount.unit in COUNT_UNITS:
        return _counted(ask, exact)
    if setting.edition.measuring is Measuring.CUPS:
        return _by_cups(ask, exact, setting)
    return _by_weight(ask, exact, setting)


def _eggs(ask: Ask, exact: Span, setting: Setting) -> Measured:
    """Whole eggs of the edition's own size, and the rest weighed from a beaten one."""
    edition, eggs = setting.edition, setting.tables.eggs
    size = _egg_size(ask.choice, setting)
    part = _egg_part(ask)
    one_g = edible_grams(eggs, edition.egg_region, size, part)
    count = _egg_count(exact.middle, one_g, is_tight=ask.tolerance < USUAL_TOLERANCE)
    rest_g = count.beaten_g
    beaten_g = rounded_grams(rest_g, fine=False) if rest_g else Fraction(0)
    weight = grams_text(single(rounded_grams(exact.middle, fine=False)))
    beaten = grams_text(single(beaten_g))
    if not count.whole:
        return Measured(beaten, "", exact.middle, beaten_g, count=Fraction(1), rest="beaten, weighed")
    return Measured(
        amount=f"{count.whole}{NO_BREAK}{size}",
        beside=weight,
        exact_g=exact.middle,
        printed_g=count.whole * one_g + beaten_g,
        count=Fraction(count.whole),
        rest=f"plus {beaten} of another, beaten" if beaten_g else "",
    )


def _egg_count(grams: Fraction, one_g: Fraction, *, is_tight: bool) -> EggCount:
    """Whole eggs and the rest; a small rest goes unsaid unless the balance is tight."""
    if is_tight:
        whole, rest = divmod(grams, one_g)
        return EggCount(int(whole), rest)
    count = whole_and_beaten(grams, one_g)
    if count.whole and count.beaten_g <= UNNOTICED_EGG * grams:
        return EggCount(count.whole, Fraction(0))
    return count


def _egg_size(choice: Choice, setting: Setting) -> str:
    """The size word printed: the baker's own in her region, the region's usual one elsewhere."""
    same_region = setting.edition.egg_region == setting.written.egg_region
    return choice.size if choice.size and same_region else setting.edition.egg_size


def _egg_part(ask: Ask) -> str:
    if ask.choice.part in ("white", "yolk"):
        return ask.choice.part
    key = ask.row.key if ask.row else ""
    return "white" if "white" in key else "yolk" if "yolk" in key else ""


def _counted(ask: Ask, exact: Span | None) -> Measured:
    """A count to halves, rounded up, as a lemon is cut: 1.2 -> 1½."""
    span = ask.amount.span.times(ask.factor)
    low, high = _up_to_half(span.low), _up_to_half(span.high)
    number = span_text(fraction_text(low), fraction_text(high))
    unit = ask.amount.unit
    text = number if not unit else with_unit(number, unit if high <= 1 else _plural_unit(unit))
    return Measured(text, exact_g=exact.middle if exact else None, count=high)


def _plural_unit(unit: str) -> str:
    return {"leaf": "leaves"}.get(unit, f"{unit}s")


def _up_to_half(count: Fraction) -> Fraction:
    return Fraction(-(-count * 2 // 1), 2)


def _by_weight(ask: Ask, exact: Span | None, setting: Setting) -> Measured:
    if ask.amount.unit in SPOON_UNITS:
        spooned = _spooned(ask, exact, setting, spoons_only=True)
        if spooned:
            return spooned
    if exact is not None and not _is_written_in_ml(ask):
        return _weighed(ask, exact)
    return _in_millilitres(ask, exact, setting)


def _is_written_in_ml(ask: Ask) -> bool:
    return ask.amount.unit in ("ml", "l", "cl", "dl")


def _weighed(ask: Ask, exact: Span, beside: str = "") -> Measured:
    """A weight to the scale's step; the tested batch prints the baker's own figure."""
    if ask.factor == 1 and ask.amount.unit == "g":
        return Measured(grams_text(exact), beside, exact.middle, exact.middle)
    rounded = Span(rounded_grams(exact.low, ask.is_fine), rounded_grams(exact.high, ask.is_fine))
    return Measured(grams_text(rounded), beside, exact.middle, rounded.middle)


def _in_millilitres(ask: Ask, exact: Span | None, setting: Setting) -> Measured:
    volume = setting.tables.measures.millilitres(ask.amount, setting.written).times(ask.factor)
    rounded = Span(rounded_ml(volume.low), rounded_ml(volume.high))
    number = span_text(fraction_text(rounded.low), fraction_text(rounded.high))
    printed = exact.middle * rounded.middle / volume.middle if exact else None
    return Measured(with_unit(number, "ml"), "", exact.middle if exact else None, printed)


def _by_cups(ask: Ask, exact: Span | None, setting: Setting) -> Measured:
    """Cups and spoons with the weight beside; the weight first where no honest measure fits."""
    measured_by = ask.row.measured_by if ask.row else "cup"
    is_spoon = ask.amount.unit in SPOON_UNITS
    if exact is not None and measured_by == "stick" and not is_spoon:
        sticks = _in_sticks(ask, exact)
        if sticks:
            return sticks
    if is_spoon or measured_by in ("cup", "spoon"):
        spooned = _spooned(ask, exact, setting, spoons_only=measured_by == "spoon")
        if spooned:
            return spooned
    if exact is None:
        return _in_millilitres(ask, exact, setting)
    return _weighed(ask, exact, _ounces_text(exact))


def _ounces_text(exact: Span) -> str:
    ounces = Span(rounded_ounces(exact.low), rounded_ounces(exact.high))
    if ounces.low <= 0:
        return ""
    return with_unit(span_text(fraction_text(ounces.low), fraction_text(ounces.high)), "oz")


def _in_sticks(ask: Ask, exact: Span) -> Measured | None:
    chosen = choose_sticks(exact.middle, ask.tolerance)
    if chosen is None:
        return None
    sticks = fraction_text(chosen.sticks) + NO_BREAK + ("stick" if chosen.sticks <= 1 else "sticks")
    spoons = fraction_text(chosen.tablespoons) + f"{NO_BREAK}tbsp"
    parts = ([sticks] if chosen.sticks else []) + ([spoons] if chosen.tablespoons else [])
    weighed = _weighed(ask, exact)
    return Measured(" + ".join(parts), weighed.amount, exact.middle, chosen.grams)


def _spooned(ask: Ask, exact: Span | None, setting: Setting, *, spoons_only: bool) -> Measured | None:
    """Cups and spoons, or None where none fits (or the density that turns a weight into them is unknown)."""
    volume = _volume(ask, exact, setting)
    if volume is None:
        return None
    low, high = (_scoops(ask, ml, setting, spoons_only) for ml in (volume.low, volume.high))
    if low is None or high is None:
        return _tiny(ask, volume, exact, setting)
    text = span_text(_scoops_text(low), _scoops_text(high))
    if exact is None:
        return Measured(text)
    printed = exact.middle * (low.millilitres + high.millilitres) / (volume.low + volume.high)
    return Measured(text, _weighed(ask, exact).amount, exact.middle, printed)


def _volume(ask: Ask, exact: Span | None, setting: Setting) -> Span | None:
    if setting.tables.measures.is_volume(ask.amount.unit):
        return setting.tables.measures.millilitres(ask.amount, setting.written).times(ask.factor)
    density = ask.row.density if ask.row else None
    if exact is None or density is None:
        return None
    return exact.times(1 / density.grams_per_ml)


def _tiny(ask: Ask, volume: Span, exact: Span | None, setting: Setting) -> Measured | None:
    """Less than a quarter teaspoon: the nearest measure in words, with the weight beside; None for more.

    Few kitchens weigh a tenth of a gram. Source: common practice, a pinch is 1/16 tsp.
    """
    teaspoons = volume.middle / setting.tables.measures.unit_ml(setting.edition.teaspoon)
    words = next((text for most, text in TINY_WORDS if teaspoons <= most), None)
    if words is None:
        return None
    if exact is None:
        return Measured(words)
    weighed = _weighed(ask, exact)
    is_weighed = words.endswith("tsp")
    return Measured(words, weighed.amount, exact.middle, weighed.printed_g if is_weighed else None)


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


def _scoops_text(scoops: Scoops) -> str:
    cups = "cup" if scoops.cups <= 1 else "cups"
    figures = ((scoops.cups, cups), (scoops.tablespoons, "tbsp"), (scoops.teaspoons, "tsp"))
    text = " + ".join(with_unit(fraction_text(number), unit) for number, unit in figures if number)
    return text if scoops.fit == "exact" else f"{scoops.fit} {text}"
