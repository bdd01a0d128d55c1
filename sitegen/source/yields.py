"""Yields: '12 cupcakes', '12 rolls of 85 g dough', '900 g' -> Makes, and what two of them have in common."""

import re
from dataclasses import dataclass
from fractions import Fraction

from sitegen.faults import FaultCode, Place, Severity
from sitegen.kitchen.measures import Measures
from sitegen.kitchen.recipe import Makes, PieceWeight
from sitegen.source.context import Context
from sitegen.source.misread import Misread
from sitegen.source.numbers import number_at

YIELD = FaultCode(
    "yield",
    Severity.ERROR,
    "A yield that says neither how many of what, nor what weight.",
    "Write `12 cupcakes`, `12 rolls of 85 g dough` or `900 g`.",
    good="makes: 12 cupcakes",
    bad="makes: plenty",
)
CODES = (YIELD,)

NOUN = re.compile(r"[^\W\d_]+(?:[ '’-]{1,2}[^\W\d_]+){0,12}")
_EACH = re.compile(r"(?P<noun>.+) of (?P<each>[\d.½¼¾].*?)(?: (?P<weighed>dough|baked))?", re.IGNORECASE)
_TIMES_WEIGHT = re.compile(r"[x×] ?(?P<each>\d\S* ?(?:g|kg|oz|lb)) (?P<noun>.+)", re.IGNORECASE)


def read_makes(text: str, at: Place, context: Context) -> Makes:
    """A yield: '12 cupcakes', '12 rolls of 85 g dough', '900 g'. Raises Misread."""
    measures = context.tables.measures
    grams = weight_in(text, measures)
    if grams is not None:
        return Makes(grams, "", grams, at=at)
    pieces = pieces_in(text, measures)
    if pieces is None or not NOUN.fullmatch(pieces.noun) or measures.unit_named(pieces.noun) is not None:
        raise _no_yield(text)
    if pieces.each is None:
        return Makes(pieces.count, pieces.noun, at=at)
    return Makes(pieces.count, pieces.noun, pieces.count * pieces.each.grams, pieces.each.weighed, at)


@dataclass(frozen=True)
class Pieces:
    """So many of what. each: what one weighs, None where unsaid."""

    count: Fraction
    noun: str
    each: PieceWeight | None = None


def pieces_in(text: str, measures: Measures) -> Pieces | None:
    """'24 rolls of 60 g dough', '24 rolls'; None where no single number begins it, or 'of' no weight follows.

    The noun is whatever stands there: the caller says which will do.
    """
    found = number_at(text)
    if found is None or found.span.is_range:
        return None
    rest = text[found.end :].strip()
    each = _EACH.fullmatch(rest)
    if each is None:
        return Pieces(found.span.low, rest)
    grams = weight_in(each["each"], measures)
    if grams is None:
        return None
    piece = PieceWeight(grams, (each["weighed"] or "").casefold())
    return Pieces(found.span.low, each["noun"].strip(), piece)


def weight_in(text: str, measures: Measures) -> Fraction | None:
    """A text that is one weight and nothing else, in grams, exact; None for anything else."""
    found = number_at(text)
    unit = measures.unit_named(text[found.end :].strip()) if found else None
    if found is None or found.span.is_range or unit is None or not measures.is_weight(unit):
        return None
    return measures.gram_factor(unit) * found.span.low


def is_same_noun(one: str, other: str) -> bool:
    """Whether two nouns differ at most in number: 'loaf' and 'loaves', 'buns' and 'bun'."""
    return bool({*_singulars(one)} & {*_singulars(other)})


def _singulars(noun: str) -> tuple[str, ...]:
    """The noun, and all that could be its singular."""
    word = " ".join(noun.casefold().split())
    endings = (("ves", "f"), ("ves", "fe"), ("ies", "y"), ("es", ""), ("s", ""))
    return (word, *(word.removesuffix(many) + one for many, one in endings if word.endswith(many)))


def _no_yield(text: str) -> Misread:
    way_out = "write `12 cupcakes`, `12 rolls of 85 g dough` or `900 g`"
    found = number_at(text)
    times = _TIMES_WEIGHT.fullmatch(text[found.end :].strip()) if found else None
    if found and times:
        way_out = f"write '{text[: found.end]} {times['noun']} of {times['each']}'"
    return Misread(YIELD, f"'{text}' is no yield", way_out, 0, max(len(text), 1))
