"""Tins in trade words: 'muffin 12', 'two 20 cm round', '30 x 20 cm rectangle', '900 g loaf'.

tin    = [number] (named ["," depth] | named holes | size shape | shape size) ["," depth]
size   = length | length "x" length, in cm or in
"""

import re
from dataclasses import dataclass, replace
from difflib import get_close_matches
from fractions import Fraction

from sitegen.faults import FaultCode, Place, Severity
from sitegen.kitchen.recipe import Tin
from sitegen.kitchen.tins import TinShape
from sitegen.source.context import Context
from sitegen.source.misread import Misread
from sitegen.source.numbers import whole_number

TIN = FaultCode(
    "tin",
    Severity.ERROR,
    "A tin that is in no trade list, or whose size is missing.",
    "Write `muffin 12`, `20 cm round`, `two 20 cm round, 4 cm deep`, `30 x 20 cm rectangle` or `900 g loaf`.",
    good="tin: muffin 12",
    bad="tin: muffle 12",
)
CODES = (TIN,)

NUMBER_WORDS = {"one": 1, "a": 1, "two": 2, "three": 3, "four": 4, "five": 5, "six": 6}
CM_IN_INCH = Fraction(254, 100)
MOST_CM = 200
MOST_TINS = 100
# '30 x 20 cm' is a size, '2 x 20 cm' a number of tins: nobody has a tin six centimetres wide.
_NUMBER = re.compile(
    r"(one|two|three|four|five|six|an?|[2-6] x)(?: x)? (?=\D|\d+[ .]|\d+(?:cm|in)\b)", re.IGNORECASE
)
_LENGTH = r"(\d{1,3}(?:\.\d{1,2})?(?: \d/\d)?)"
_SIZE = re.compile(rf"{_LENGTH}(?: ?(?:cm|in))?(?: ?[x×] ?{_LENGTH})? ?(cm|in)\b", re.IGNORECASE)
_DEPTH = re.compile(rf", ?{_LENGTH} ?(cm|in) deep$", re.IGNORECASE)
_HOLES = re.compile(r"(.+?) (\d{1,3})(?: holes)?", re.IGNORECASE)


@dataclass(frozen=True)
class _Size:
    width_cm: Fraction
    length_cm: Fraction


def read_tin(text: str, at: Place, context: Context) -> Tin:
    """A tin by its trade words; inside measures in cm, exact. Raises Misread."""
    body, depth = _without_depth(text)
    number, body = _without_number(body)
    tin = _named(body, context) or _sized(body, context)
    if tin is None:
        raise Misread(TIN, f"'{text}' is no tin that we know", _way_out(body, context), 0, max(len(text), 1))
    if depth is not None:
        tin = replace(tin, depth_cm=depth)
    return replace(tin, number=number, name=text, at=at)


def _without_depth(text: str) -> tuple[str, Fraction | None]:
    found = _DEPTH.search(text)
    if not found:
        return text.strip(), None
    return text[: found.start()].strip(), _cm(found.group(1), found.group(2))


def _without_number(text: str) -> tuple[int, str]:
    found = _NUMBER.match(text)
    if not found:
        return 1, text
    word = found.group(1).casefold().removesuffix(" x")
    number = NUMBER_WORDS.get(word) or (int(word) if word.isdigit() else 1)
    return max(1, min(number, MOST_TINS)), text[found.end() :].strip()


def _named(text: str, context: Context) -> Tin | None:
    """'900 g loaf', 'muffin 12'."""
    table = context.tables.tins
    known = table.tin_named(text)
    if known is not None:
        return known.tin
    holes = _HOLES.fullmatch(text)
    known = table.tin_named(holes.group(1)) if holes else None
    if known is None or holes is None or known.tin.holes == 1 or int(holes.group(2)) == 0:
        return None
    return replace(known.tin, holes=int(holes.group(2)))


def _sized(text: str, context: Context) -> Tin | None:
    """'20 cm round', 'ring 22 cm', 'baking tray'."""
    found = _SIZE.search(text)
    words = f"{text[: found.start()]} {text[found.end() :]}" if found else text
    shape = context.tables.tins.shape_written(" ".join(words.split()))
    if shape is None:
        return None
    size = _size(found) if found else None
    if size is None:
        return None if shape.solid else _tin(shape, _Size(Fraction(30), Fraction(40)))
    return _tin(shape, size)


def _size(found: re.Match[str]) -> _Size | None:
    first = _cm(found.group(1), found.group(3))
    second = _cm(found.group(2), found.group(3)) if found.group(2) else first
    if not (0 < first <= MOST_CM and 0 < second <= MOST_CM):
        return None
    return _Size(min(first, second), max(first, second))


def _cm(number: str, unit: str) -> Fraction:
    value = whole_number(number) or Fraction(0)
    return value * CM_IN_INCH if unit.casefold() == "in" else value


def _tin(shape: TinShape, size: _Size) -> Tin:
    return Tin(
        shape=shape.key,
        width_cm=size.width_cm,
        length_cm=size.length_cm,
        depth_cm=shape.depth_cm,
        base_width_cm=max(size.width_cm - shape.taper_cm, Fraction(1)),
        base_length_cm=max(size.length_cm - shape.taper_cm, Fraction(1)),
    )


def _way_out(text: str, context: Context) -> str:
    table = context.tables.tins
    words = [word for row in table.shapes for word in row.words] + [row.name for row in table.named]
    bare = re.sub(r"[\d.x×]+|\b(?:cm|in)\b", " ", text)
    bare = " ".join(bare.split())
    near = get_close_matches(bare, words, n=1, cutoff=0.6)
    if near and near[0] != bare:
        return f"did you mean '{near[0]}'?"
    if near:
        return f"say how large it is: '20 cm {near[0]}'"
    return "write `muffin 12`, `20 cm round`, `30 x 20 cm rectangle` or `900 g loaf`"
