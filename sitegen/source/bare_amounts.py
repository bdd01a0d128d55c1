"""Amounts, temperatures and lengths left bare in words, where no batch and no edition would reach them."""

import re
from dataclasses import dataclass

from sitegen.source.numbers import GLYPHS

_GLYPHS = "".join(GLYPHS)
_FIGURE = rf"(?:\d[\d.,/⁄]{{0,12}} ?[{_GLYPHS}]?|[{_GLYPHS}])"
_MEASURE = (
    r"(?:g|kg|mg|ml|cl|dl|l|L|oz|lbs?|tsp|tbsp|fl oz|grams?|kilos?|litres?|liters?|ounces?|pounds?|pints?"
    r"|teaspoons?|tablespoons?|cups?)\b"
)
_HEAT = r"(?:(?:°|degrees) ?[CF]?|[CF])(?!\w)(?: (?:fan|conventional)\b)?"
_LENGTH = r"(?:cm|mm|inch(?:es)?)\b|in (?=(?:deep|thick|wide|long|across|tall|high|apart|square|round)\b)"
_GAS = r"\bgas (?:mark )?(?:1/2|1/4|½|¼|\d{1,2})"
_BARE = re.compile(
    rf"(?<![\w.,/])(?P<figure>[-−]?{_FIGURE}(?: ?[-–] ?{_FIGURE})?)[ -]?"
    rf"(?:(?P<measure>{_MEASURE})|(?P<heat>{_HEAT})|(?P<length>{_LENGTH}))|(?P<gas>{_GAS})",
)
_SCALE = re.compile(r"[CF](?= |$)")


@dataclass(frozen=True)
class BareAmount:
    """A bare amount: its words, where they stand, and how they would stand in braces."""

    text: str
    start: int
    end: int
    in_braces: str


def bare_amount_in(text: str, start: int = 0, end: int | None = None) -> BareAmount | None:
    """The first bare amount between two indices; None where there is none.

    Times and plain counts ('for 2 minutes', 'in three additions') are no amounts.
    """
    found = _BARE.search(text, start, len(text) if end is None else end)
    if not found:
        return None
    words = found.group(0).strip()
    return BareAmount(words, found.start(), found.start() + len(words), _in_braces(found))


def _in_braces(found: re.Match[str]) -> str:
    if found.group("gas"):
        return f"{{{found.group('gas').strip()}}}"
    figure = found.group("figure").strip()
    if found.group("measure"):
        return f"{{{figure} {found.group('measure')} of ...}}"
    if found.group("length"):
        return f"{{{figure} {found.group('length').strip()}}}"
    scale = _SCALE.search(found.group("heat"))
    kind = found.group("heat").partition(scale.group(0) if scale else " ")[2]
    return f"{{{figure} {scale.group(0) if scale else 'C'}{kind}}}"
