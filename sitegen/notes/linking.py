"""A step's words -> prose of our format: its ingredients, components, temperatures and lengths in braces."""

import re
from collections.abc import Sequence
from dataclasses import dataclass, field
from functools import cache

from sitegen.notes.amounts_in_notes import amount_at, spaced
from sitegen.notes.ingredients import Ingredient, ingredient_of
from sitegen.notes.line_names import LineNames
from sitegen.notes.number_patterns import FIGURE, GLYPH, NUMBER, number_word
from sitegen.notes.prose_marks import heats_and_lengths
from sitegen.notes.values import Lore
from sitegen.notes.verbs import WORD, verb_kinds
from sitegen.notes.word_table import note_words

_MOST_NAME_WORDS = 5
_LONGEST = 3_000
"""Letters of a step: what is longer is refused by the format, and stays as it is."""
_NEAR = 60
"""Letters before a name in which its share or its amount may stand."""
_NAME_WORD = re.compile(rf"{WORD}(?:(?<=s)'(?= ))?|00(?= flour)")
_SHARE = re.compile(
    r"(?P<share>half|a half|one half|a third|one third|two[- ]thirds|a quarter|three[- ]quarters"
    rf"|(?:the )?rest|(?:the )?remaining|[123]/[234]|{GLYPH})(?: of)?(?: the| your| that)? $",
    re.IGNORECASE,
)
_AMOUNT_BEFORE = re.compile(
    rf"(?P<amount>{FIGURE}(?:{FIGURE}|[\s./–-])*(?: ?[a-zA-Z]+\.?(?: oz)?)?)(?: of)?(?: the| your)? $"
)
_DEED_OBJECT = re.compile(r" (?:the|a|an|and (?:line|flour|base)|your|each)\b", re.IGNORECASE)
"""What follows 'butter', 'flour' or 'zest' where it is a verb."""


@dataclass
class Linked:
    """text: with braces. taken: indices of the lines that it names. new: lines that only the method has.

    components: titles of the others that it names.
    """

    text: str
    taken: set[int] = field(default_factory=set)
    new: list[str] = field(default_factory=list)
    components: set[str] = field(default_factory=set)


class Linker:
    """Puts braces into the steps of one component."""

    def __init__(self, names: LineNames, lore: Lore) -> None:
        self._names = names
        self._lore = lore

    def linked(self, text: str) -> Linked:
        """The step with braces; lines that it adds may be named by the steps that follow."""
        found = Linked(text)
        if len(text) > _LONGEST:
            return found
        said = self._spoken_lines(spaced(text, self._lore), found)
        found.text = self._with_names(heats_and_lengths(said), found)
        return found

    def _with_names(self, text: str, found: Linked) -> str:
        """Every name in braces, the longest first from the left; what stands in braces already stays."""
        out, index = "", 0
        while index < len(text):
            if text[index] == "{":
                end = text.find("}", index) + 1 or len(text)
                out, index = out + text[index:end], end
                continue
            word = _NAME_WORD.match(text, index)
            if word is None or (index and text[index - 1].isalnum()):
                out, index = out + text[index], index + 1
                continue
            out, index = self._name_at(text, index, out, found)
        return out

    def _name_at(self, text: str, index: int, out: str, found: Linked) -> tuple[str, int]:
        """What is written once the name at an index is, and the index behind it."""
        ends = _word_ends(text, index)
        for end in reversed(ends):
            name = text[index:end]
            if name.casefold() in _common() or _is_a_deed(text, index, end):
                continue
            inside = self._names.inside(name)
            if inside is not None:
                braced, out = self._with_share(out, inside, found)
                return f"{out}{braced}", end
        return self._unlisted(out, text, index, ends, found) or (out + text[index : ends[0]], ends[0])

    def _with_share(self, out: str, name: str, found: Linked) -> tuple[str, str]:
        """The braces for a name, with the share or the amount before it, and what stands before them."""
        reference = self._names.read(name)
        if reference is None:
            return name, out
        if reference.line is None:
            found.components |= {reference.target} if reference.target else set()
            return f"{{{name}}}", out
        found.taken.add(reference.line)
        share = _last(_SHARE, out)
        if share:
            said = share["share"].casefold()
            said = "the rest" if said.endswith(("rest", "remaining")) else said
            if self._names.read(f"{said} of {name}") is not None:
                return f"{{{said} of {name}}}", out[: share.start()]
        before = _last(_AMOUNT_BEFORE, out)
        if before is None:
            return f"{{{name}}}", out
        amount = before["amount"].strip()
        if self._names.is_whole(amount, reference.line):
            return f"{{{name}}}", out[: before.start()]
        if not self._names.is_listed(reference.line):
            return name, out
        if not amount.isdigit() and self._names.read(f"{amount} of {name}") is not None:
            return f"{{{amount} of {name}}}", out[: before.start()]
        return f"{{{name}}}", out

    def _unlisted(
        self, out: str, text: str, index: int, ends: Sequence[int], found: Linked
    ) -> tuple[str, int] | None:
        """An amount of something that no line has becomes a line: '50 ml water' in the method alone."""
        before = _last(_AMOUNT_BEFORE, out)
        said = amount_at(before["amount"].strip(), self._lore) if before else None
        if not before or not said or not said[0].unit:
            return None
        for end in reversed(ends):
            name = text[index:end]
            row = self._lore.context.tables.larder.find(name)
            is_new = row is not None and not self._names.has(row.key)
            ingredient = ingredient_of(f"{said[0].text} {name}", self._lore) if is_new else None
            if ingredient is not None and ingredient.known:
                self._add(ingredient, found)
                return f"{out[: before.start()]}{{{ingredient.name}}}", end
        return None

    def _add(self, ingredient: Ingredient, found: Linked) -> None:
        """A line that only the method knows of: later steps may name it."""
        found.new.append(ingredient.line)
        found.taken.add(self._names.add(ingredient.line))

    def _spoken_lines(self, text: str, found: Linked) -> str:
        """'The zest of 2 oranges', 'a pinch of salt' of what no line has, each with a line of its own."""

        def braced(said: re.Match[str]) -> str:
            ingredient = ingredient_of(said["line"], self._lore)
            if ingredient is None or not ingredient.known or self._names.read(ingredient.name) is not None:
                return said[0]
            self._add(ingredient, found)
            part = f"{said['part'].casefold()} of " if said["part"] else ""
            return f"{{{part}{ingredient.name}}}"

        return _spoken_line().sub(braced, text)


def _is_a_deed(text: str, begin: int, end: int) -> bool:
    """'Butter the tin', 'flour the board', 'then zest the lemon': a verb, and no ingredient."""
    if text[begin:end].casefold() not in verb_kinds():
        return False
    before = text[:begin].rstrip()
    if not before or before.endswith((".", "!", ":")):
        return True
    return before.endswith((",", ";", "and", "then", "&")) and bool(_DEED_OBJECT.match(text, end))


def _last(pattern: re.Pattern[str], out: str) -> re.Match[str] | None:
    """Where a pattern that ends with the text is found in its last letters."""
    return pattern.search(out, max(len(out) - _NEAR, 0))


def _word_ends(text: str, index: int) -> list[int]:
    """Where the first word from an index ends, where the second does, and so on."""
    ends: list[int] = []
    begin = index
    for _ in range(_MOST_NAME_WORDS):
        word = _NAME_WORD.match(text, begin)
        if word is None:
            break
        ends.append(word.end())
        if text[word.end() : word.end() + 1] != " ":
            break
        begin = word.end() + 1
    return ends or [index + 1]


@cache
def _spoken_line() -> re.Pattern[str]:
    number = rf"(?:{NUMBER}|{number_word()})"
    return re.compile(
        rf"(?:the )?(?P<line>(?:(?:finely )?grated )?(?P<part>zest|juice) of {number} [a-z]+"
        rf"|{number} (?:pinch|pinches|dash) of (?:fine |sea )?[a-z]+)\b",
        re.IGNORECASE,
    )


@cache
def _common() -> frozenset[str]:
    return frozenset(note_words().common_words)
