"""Ovens and temperatures in notes: '180 C / 160 fan / gas 4', '350°F', '200C fan' -> our format's words."""

import re
from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction

from sitegen.kitchen.ovens import OvenOutOfRange, OvenTable, read_oven
from sitegen.source.misread import Misread
from sitegen.source.ovens import oven_in

_KIND = (
    r"(?:fan[- ]assisted|fan[- ]forced|no fan|non-fan|fan|convection|conventional|static|electric"
    r"|top(?: and |[/ &-])bottom(?: heat)?)"
)
_FAN = frozenset({"fan", "convection", "fan-assisted", "fan assisted", "fan-forced", "fan forced"})
_SCALE = r"(?: ?°| ?degrees?| ?deg\.?)? ?(?P<scale>[CF]|celsius|fahrenheit|centigrade)(?![\w])"
_BEHIND = rf"(?: ?(?:\((?P<inside>{_KIND})\b(?: oven)?\)|(?P<kind>{_KIND})\b(?: oven)?))?"
"""The kind behind the degrees: in brackets alone, since '(fan 160)' is another setting."""
_ONE = (
    rf"(?:(?P<before>{_KIND}) ?:? ?)?(?P<degrees>\d{{2,3}})"
    rf"(?:{_SCALE}|(?P<bare> ?°| ?degrees| ?deg))?{_BEHIND}"
)
_GAS = r"gas(?: mark)? ?(?P<gas>1/2|1/4|½|¼|\d{1,2})"
_NO_MEASURE = r"\s(?!(?:g|ml|grams?|millilit\w+|deg\w*|C|F|fan|conv\w*)\b|°|/)"
_LONE = (
    rf"(?P<lone>(?<=\bat |\bto )[1-5]\d[05](?:(?=$|[.,;)])|(?={_NO_MEASURE}))"
    rf"|\b[1-5]\d[05](?= ?\({_KIND}:? ?\d))"
)
"""A figure that only an oven has: 'bake at 350 for 20 minutes', '180 (fan 160)'."""
_HEAT = re.compile(rf"{_GAS}|{_LONE}|{_ONE}", re.IGNORECASE)
_JOINT = re.compile(r"[\s/,(;|]*(?:or |and )?\(?", re.IGNORECASE)
_CLOSE = re.compile(r"\s?\)")


@dataclass(frozen=True)
class Heat:
    """One setting. text: as our format reads it. kind: 'fan', 'conventional', '' unsaid. scale: C, F, gas."""

    text: str
    scale: str
    kind: str = ""
    bare: bool = False

    @property
    def is_oven(self) -> bool:
        """Whether nothing but an oven is set so."""
        return bool(self.kind) or self.scale == "gas"


@dataclass(frozen=True)
class Heats:
    """Settings that stand side by side and mean the same heat. start, end: where in the text."""

    all: tuple[Heat, ...]
    start: int
    end: int

    def oven(self, table: OvenTable) -> str:
        """What an oven is set to: fan where that is said; Celsius alone where nobody says which oven.

        A gas mark or a Fahrenheit figure of the same heat beside it says that the oven is conventional.
        """
        fan = next((one for one in self.all if one.kind == "fan" and one.scale == "C"), None)
        if fan:
            return fan.text
        first, *_ = self.all
        others = [one for one in self.all if one.scale != "C"]
        if first.scale == "C" and not first.kind and any(_same(first, other, table) for other in others):
            return f"{first.text} conventional"
        return first.text

    @property
    def in_prose(self) -> str:
        """What stands in braces: an oven where its kind is said, else the bare temperature."""
        fan = next((one for one in self.all if one.kind == "fan"), None)
        return (fan or self.all[0]).text


def heats_in(text: str) -> Iterator[Heats]:
    """Every heat of a text, in order."""
    index = 0
    while found := _next(text, index):
        heats, begin, end = [found[0]], found[1], found[2]
        while True:
            joint = _JOINT.match(text, end)
            following = _at(text, joint.end() if joint else end)
            if following is None:
                break
            heats.append(following[0])
            end = following[2]
            close = _CLOSE.match(text, end)
            end = close.end() if close and "(" in text[begin:end] else end
        yield Heats(tuple(_scaled(heats)), begin, end)
        index = end


def _next(text: str, index: int) -> tuple[Heat, int, int] | None:
    for found in _HEAT.finditer(text, index):
        heat = _heat(found)
        if heat is not None and _stands_alone(text, found):
            return heat, found.start(), found.end()
    return None


def _at(text: str, index: int) -> tuple[Heat, int, int] | None:
    found = _HEAT.match(text, index)
    heat = _heat(found) if found else None
    return (heat, found.start(), found.end()) if found and heat and _stands_alone(text, found) else None


def _stands_alone(text: str, found: re.Match[str]) -> bool:
    before, after = text[: found.start()][-1:], text[found.end() :][:1]
    return (
        not (before.isalnum() or (before in ".,/-–" and text[: found.start()][-2:-1].isdigit()))
        and not after.isalnum()
    )


def _heat(found: re.Match[str]) -> Heat | None:
    if found["gas"]:
        return Heat(f"gas {found['gas']}", "gas", "conventional")
    if found["lone"]:
        return Heat(f"{found['lone']} C", "C", bare=True)
    said = (found["kind"] or found["inside"] or found["before"] or "").casefold()
    kind = "fan" if said in _FAN else "conventional" if said else ""
    scale = (found["scale"] or "")[:1].upper()
    is_bare = not scale and not found["bare"] and not said
    if is_bare:
        return None
    return Heat(_text(found["degrees"], scale or "C", kind), scale or "C", kind, bare=not scale and not said)


def _text(degrees: str, scale: str, kind: str) -> str:
    return f"{degrees} {scale} {kind}".strip() if scale == "C" else f"{degrees} {scale}"


def _scaled(heats: list[Heat]) -> Iterator[Heat]:
    """Bare degrees over 260 are Fahrenheit: no oven at home is so hot in Celsius."""
    for one in heats:
        degrees = one.text.partition(" ")[0]
        if one.bare and degrees.isdigit() and int(degrees) > 260:
            yield Heat(f"{degrees} F", "F")
        else:
            yield one


def _same(celsius: Heat, other: Heat, table: OvenTable) -> bool:
    """Whether two settings mean the same heat within half a mark: 180 C conventional and gas 4."""
    try:
        one, two = oven_in(f"{celsius.text} conventional"), oven_in(other.text)
        if one is None or two is None:
            return False
        return abs(read_oven(one, table).conventional_c - read_oven(two, table).conventional_c) <= Fraction(8)
    except (Misread, OvenOutOfRange):
        return False
