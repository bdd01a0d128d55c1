"""Numbers as print sets them: the one place where an amount becomes text."""

from fractions import Fraction

from sitegen.kitchen.amounts import Span

EN_DASH = "–"
NO_BREAK = "\u00a0"
VULGAR = {
    Fraction(1, 8): "⅛",
    Fraction(1, 4): "¼",
    Fraction(1, 3): "⅓",
    Fraction(3, 8): "⅜",
    Fraction(1, 2): "½",
    Fraction(5, 8): "⅝",
    Fraction(2, 3): "⅔",
    Fraction(3, 4): "¾",
    Fraction(7, 8): "⅞",
}
GRAMS_IN_KILOGRAM = 1000
OUNCES_IN_POUND = 16
SHARE_WORDS = {
    Fraction(1, 2): "half",
    Fraction(1, 3): "a third",
    Fraction(2, 3): "two-thirds",
    Fraction(1, 4): "a quarter",
    Fraction(3, 4): "three-quarters",
    Fraction(1, 5): "a fifth",
    Fraction(2, 5): "two-fifths",
    Fraction(3, 5): "three-fifths",
    Fraction(4, 5): "four-fifths",
    Fraction(1, 6): "a sixth",
    Fraction(5, 6): "five-sixths",
    Fraction(1, 8): "an eighth",
}
NUMBER_WORDS = ("no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten")


def fraction_text(value: Fraction) -> str:
    """A kitchen fraction: 5/4 -> '1¼'; what has no glyph of its own is set as a decimal, 0.15 -> '0.15'."""
    whole, rest = divmod(value, 1)
    if rest == 0:
        return str(whole)
    if rest in VULGAR:
        return (str(whole) if whole else "") + VULGAR[rest]
    return decimal_text(value)


def decimal_text(value: Fraction) -> str:
    """A decimal with no more places than it needs, two at most: 7/2 -> '3.5'."""
    text = f"{float(value):.2f}".rstrip("0").rstrip(".")
    return text or "0"


def word_or_figure(count: int) -> str:
    """Counts up to ten as words, as running text sets them: 2 -> 'two', 12 -> '12'."""
    return NUMBER_WORDS[count] if 0 <= count < len(NUMBER_WORDS) else str(count)


def share_text(share: Fraction) -> str:
    """A share in words: 1/2 -> 'half', 3/8 -> '⅜', 5/7 -> '71 %'."""
    if share in SHARE_WORDS:
        return SHARE_WORDS[share]
    return VULGAR.get(share) or f"{round(share * 100)}{NO_BREAK}%"


def span_text(low: str, high: str) -> str:
    """A range of two texts, or one where both read the same: '22', '24' -> '22–24'."""
    return low if low == high else f"{low}{EN_DASH}{high}"


def grams_text(span: Span) -> str:
    """A rounded weight: '150 g', '10–12 g', '1.25 kg'."""
    if span.low >= GRAMS_IN_KILOGRAM:
        low, high = span.low / GRAMS_IN_KILOGRAM, span.high / GRAMS_IN_KILOGRAM
        return span_text(_kilogram_text(low), _kilogram_text(high)) + NO_BREAK + "kg"
    return span_text(decimal_text(span.low), decimal_text(span.high)) + NO_BREAK + "g"


def _kilogram_text(value: Fraction) -> str:
    return f"{float(value):.3f}".rstrip("0").rstrip(".")


def ounces_text(span: Span) -> str:
    """A weight in ounces, pounds and ounces from a pound up: '5¾ oz', '1 lb 2½ oz', '14–18 oz'."""
    if span.low < OUNCES_IN_POUND:
        return with_unit(span_text(fraction_text(span.low), fraction_text(span.high)), "oz")
    return span_text(_pounds_text(span.low), _pounds_text(span.high)).replace(EN_DASH, f" {EN_DASH} ")


def _pounds_text(ounces: Fraction) -> str:
    pounds, rest = divmod(ounces, OUNCES_IN_POUND)
    parts = [with_unit(str(pounds), "lb")] + ([with_unit(fraction_text(rest), "oz")] if rest else [])
    return NO_BREAK.join(parts)


def with_unit(number: str, unit: str) -> str:
    """A number and its unit, kept on one line."""
    return f"{number}{NO_BREAK}{unit}"


def duration_text(span: Span) -> str:
    """Minutes as a card prints them: '22–24 min', '1 h 15 min', '8–12 h', '2 days'; '' for none at all.

    span: minutes, already rounded.
    """
    if span.high <= 0:
        return ""
    if not span.is_range:
        return _duration(span.high)
    if span.high < 60:
        return with_unit(span_text(_minutes(span.low), _minutes(span.high)), "min")
    hours = span.low % 30 == 0 and span.high % 30 == 0 and span.low >= 60
    if hours and span.high < 48 * 60:
        return with_unit(span_text(fraction_text(span.low / 60), fraction_text(span.high / 60)), "h")
    return span_text(_duration(span.low), _duration(span.high)).replace(EN_DASH, f" {EN_DASH} ")


_FEW_MINUTES = 3
"""Below so many, half a minute more or less decides how a bake turns out."""


def _minutes(minutes: Fraction) -> str:
    """Halves as they are; other parts of a minute come of a batch, and are rounded."""
    return decimal_text(minutes if minutes.denominator <= 2 else Fraction(round(minutes)))


def _duration(minutes: Fraction) -> str:
    if 0 < minutes < 1:
        return f"{int(minutes * 60 + Fraction(1, 2))}{NO_BREAK}s"
    if minutes < _FEW_MINUTES:
        return with_unit(_minutes(minutes), "min")
    whole = int(minutes + Fraction(1, 2))
    if whole >= 48 * 60:
        days, rest = divmod(whole, 24 * 60)
        hours = int(Fraction(rest, 60) + Fraction(1, 2))
        return " ".join(
            part for part in (f"{days}{NO_BREAK}days", f"{hours}{NO_BREAK}h" if hours else "") if part
        )
    hours, left = divmod(whole, 60)
    parts = ([f"{hours}{NO_BREAK}h"] if hours else []) + ([f"{left}{NO_BREAK}min"] if left else [])
    return NO_BREAK.join(parts) or f"0{NO_BREAK}min"


def joined(words: tuple[str, ...]) -> str:
    """A list in running text: 'wheat, milk and eggs'."""
    if len(words) < 2:
        return "".join(words)
    return ", ".join(words[:-1]) + " and " + words[-1]
