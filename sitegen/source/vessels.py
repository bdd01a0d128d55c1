"""Tins in trade words: 'muffin 12', 'two 20 cm round', '30 x 20 cm rectangle', '900 g loaf'.

tin    = [number] (named | named holes | [holes] size shape | shape size) ["tin"] ["," depth "deep"]
size   = length | length "x" length, in cm or in
holes  = a number behind the name, or before it with "-hole": '6-hole 7 cm hemisphere'
"""

import re
from dataclasses import dataclass, replace
from difflib import get_close_matches
from fractions import Fraction

from sitegen.faults import FaultCode, Place, Severity
from sitegen.kitchen.recipe import Tin
from sitegen.kitchen.tins import NamedTin, TinShape, TinTable
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

NUMBER_WORDS = {"one": 1, "a": 1, "an": 1, "two": 2, "three": 3, "four": 4, "five": 5, "six": 6}
CM_IN_INCH = Fraction(254, 100)
MOST_CM = 200
MOST_DEEP_CM = 50
NEAR_NAME = 0.65
ROUND_SOLIDS = frozenset({"cylinder", "frustum", "ring", "tube", "hemisphere"})
EQUAL_SIDES = frozenset({"square"})
# '30 x 20 cm' is a size, '2 x 20 cm' a number of tins: nobody has a tin six centimetres wide.
_NUMBER = re.compile(
    r"(one|two|three|four|five|six|an?|[2-6] ?[x×])(?: [x×])? (?=\D|\d+[ .-]|\d+(?:cm|in)\b)", re.IGNORECASE
)
_LENGTH = r"(\d{1,3}(?:\.\d{1,2})?(?: \d/\d| ?[½¼¾])?)"
_UNIT = r"(?:[ -]?(cm|in|inch|inches)\b|(\"|″))"
_SIZE = re.compile(rf"{_LENGTH}(?: ?(?:cm|in))?(?: ?[x×] ?{_LENGTH})?{_UNIT}", re.IGNORECASE)
_DEPTH = re.compile(rf", ?{_LENGTH}{_UNIT} deep$", re.IGNORECASE)
_HOLES_BEHIND = re.compile(r"(?P<name>\D+) (?P<holes>[1-9]\d?)(?: holes)?", re.IGNORECASE)
_HOLES_BEFORE = re.compile(r"(?P<holes>[1-9]\d?)[- ](?:hole|cup|cavity) (?P<name>\D+)", re.IGNORECASE)
_HOLES_OF_A_SIZE = re.compile(r"(?P<holes>[1-9]\d?)[- ](?:hole|cup|cavity) (?=\d)", re.IGNORECASE)
_THREE_LENGTHS = re.compile(r"\d[^,]*[x×] ?\d[^,]*[x×] ?\d")
_TIN_WORD = re.compile(r" (?:tin|pan|mould|mold)s?$", re.IGNORECASE)


@dataclass(frozen=True)
class _Size:
    """Inside, in cm; length_cm is None where one measure is written."""

    width_cm: Fraction
    length_cm: Fraction | None


def read_tin(text: str, at: Place, context: Context) -> Tin:
    """A tin by its trade words; inside measures in cm, exact. Raises Misread."""
    table = context.tables.tins
    body, depth = _without_depth(text)
    number, body = _without_number(body)
    tin = _named(body, table) or _sized(body, table)
    if tin is None or (depth is not None and not 0 < depth <= MOST_DEEP_CM):
        raise Misread(TIN, f"'{text}' is no tin that we know", _way_out(body, table), 0, max(len(text), 1))
    return replace(tin, depth_cm=depth or tin.depth_cm, number=number, name=text, at=at)


def _without_depth(text: str) -> tuple[str, Fraction | None]:
    found = _DEPTH.search(text)
    if not found:
        return text.strip(), None
    return text[: found.start()].strip(), _cm(text, found, 1)


def _without_number(text: str) -> tuple[int, str]:
    found = _NUMBER.match(text)
    if not found:
        return 1, text
    word = found.group(1).casefold()
    return NUMBER_WORDS.get(word) or int(word.rstrip("x× ")), text[found.end() :].strip()


def _named(text: str, table: TinTable) -> Tin | None:
    """'900 g loaf', 'muffin 12', '6-hole muffin tin'."""
    known = _tin_named(text, table) or _tin_named(text.removesuffix("s"), table)
    if known is not None:
        return known.tin
    holes = _HOLES_BEHIND.fullmatch(text) or _HOLES_BEFORE.fullmatch(text)
    known = _tin_named(holes["name"], table) if holes else None
    if known is None or holes is None or known.tin.holes == 1:
        return None
    return replace(known.tin, holes=int(holes["holes"]))


def _tin_named(text: str, table: TinTable) -> NamedTin | None:
    return table.tin_named(text) or table.tin_named(_TIN_WORD.sub("", text))


def _sized(text: str, table: TinTable) -> Tin | None:
    """'20 cm round', 'ring 22 cm', 'baking tray', '6-hole 7 cm hemisphere'."""
    holes = _HOLES_OF_A_SIZE.match(text)
    if holes:
        one = _sized(text[holes.end() :], table)
        fits = one is not None and _is_sold_by_size_and_holes(one, table)
        return replace(one, holes=int(holes["holes"])) if one is not None and fits else None
    found = _SIZE.search(text)
    words = f"{text[: found.start()]} {text[found.end() :]}" if found else text
    shape = _shape_written(" ".join(words.split()), table)
    if shape is None or _has_holes(shape, table):
        return None
    if found is None:
        return None if shape.solid else _tin(shape, Fraction(30), Fraction(40))
    return _of_size(shape, _size(text, found))


def _shape_written(words: str, table: TinTable) -> TinShape | None:
    """The shape of a baker's word, with or without 'tin' behind it, one or many."""
    without = _TIN_WORD.sub("", words)
    for word in (words, without, without.removesuffix("s")):
        shape = table.shape_written(word)
        if shape is not None:
            return shape
    return None


def _has_holes(shape: TinShape, table: TinTable) -> bool:
    """Whether tins of this shape are told by their holes: a muffin tin has no width of its own."""
    return any(row.tin.shape == shape.key and row.tin.holes > 1 for row in table.named)


def _is_sold_by_size_and_holes(tin: Tin, table: TinTable) -> bool:
    """Whether a mould of that shape is told by its width and its holes: half balls, not round tins."""
    return any(words.one_with_holes for words in table.shape(tin.shape).names.values())


def _of_size(shape: TinShape, size: _Size) -> Tin | None:
    """None where the shape asks for one length and two are written, or the other way round."""
    length = size.length_cm if size.length_cm is not None else size.width_cm
    if not (0 < size.width_cm <= MOST_CM and 0 < length <= MOST_CM):
        return None
    has_one_length = shape.solid in ROUND_SOLIDS or shape.key in EQUAL_SIDES
    is_fit = length == size.width_cm if has_one_length else size.length_cm is not None
    if shape.solid and not is_fit:
        return None
    return _tin(shape, min(size.width_cm, length), max(size.width_cm, length))


def _size(text: str, found: re.Match[str]) -> _Size:
    second = _cm(text, found, 2) if found.group(2) else None
    return _Size(_cm(text, found, 1), second)


def _cm(text: str, found: re.Match[str], group: int) -> Fraction:
    """A length of a match in cm; its last two groups hold the unit."""
    value = whole_number(text[: found.end(group)], found.start(group)) or Fraction(0)
    in_cm = "cm" in (word.casefold() for word in found.groups()[-2:] if word)
    return value if in_cm else value * CM_IN_INCH


def _tin(shape: TinShape, width_cm: Fraction, length_cm: Fraction) -> Tin:
    return Tin(
        shape=shape.key,
        width_cm=width_cm,
        length_cm=length_cm,
        depth_cm=shape.usual_depth_cm(width_cm),
        base_width_cm=max(width_cm - shape.taper_cm, Fraction(1)),
        base_length_cm=max(length_cm - shape.taper_cm, Fraction(1)),
    )


def _way_out(text: str, table: TinTable) -> str:
    if _THREE_LENGTHS.search(text):
        return "write the depth behind a comma: '30 x 20 cm rectangle, 5 cm deep'"
    words = [word for row in table.shapes for word in row.words] + [row.name for row in table.named]
    bare = " ".join(re.sub(r"[\d.,x×½¼¾\"]+|\b(?:cm|in|inch|inches)\b", " ", text).split())
    near = get_close_matches(bare, words, n=1, cutoff=NEAR_NAME)
    if not near:
        return "write `muffin 12`, `20 cm round`, `30 x 20 cm rectangle` or `900 g loaf`"
    shape = _shape_written(bare, table)
    return _size_wanted(bare, shape, table) if shape else f"did you mean '{near[0]}'?"


def _size_wanted(word: str, shape: TinShape, table: TinTable) -> str:
    if _has_holes(shape, table):
        return f"say how many holes: '{word} 12'"
    if shape.solid in ROUND_SOLIDS or shape.key in EQUAL_SIDES:
        return f"say how wide it is: '20 cm {word}'"
    return f"say both sides: '30 x 20 cm {word}'"
