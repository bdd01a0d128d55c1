"""A step's words -> prose of our format: its ingredients, components, temperatures and lengths in braces."""

import re
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, field
from functools import cache

from sitegen.kitchen.amounts import NOWHERE
from sitegen.kitchen.method import Reference, RefKind
from sitegen.kitchen.recipe import IngredientLine, Line, PartLine
from sitegen.notes.amounts_in_notes import amount_at, spaced
from sitegen.notes.ingredients import Ingredient, ingredient_of
from sitegen.notes.names_in_notes import named
from sitegen.notes.prose_marks import heats_and_lengths
from sitegen.notes.values import Desk
from sitegen.notes.verbs import verb_kinds
from sitegen.notes.word_table import note_words
from sitegen.source.context import Context
from sitegen.source.lines import read_line
from sitegen.source.misread import Misread
from sitegen.source.quantities import amount_at as read_amount
from sitegen.source.references import read_reference
from sitegen.source.stretches import Stretch

_MOST_WORDS = 5
_LONGEST = 3_000
"""Letters of a step: what is longer is refused by the format, and stays as it is."""
_NEAR = 60
"""Letters before a name in which its share or its amount may stand."""
_WORD = re.compile(r"[^\W\d_]+(?:[-'][^\W\d_]+)*(?:(?<=s)'(?= ))?|00(?= flour)")
_SHARE = re.compile(
    r"(?P<share>half|a half|one half|a third|one third|two[- ]thirds|a quarter|three[- ]quarters"
    r"|(?:the )?rest|(?:the )?remaining|1/2|1/3|2/3|1/4|3/4|½|⅓|⅔|¼|¾)(?: of)?(?: the| your| that)? $",
    re.IGNORECASE,
)
_AMOUNT_BEFORE = re.compile(
    r"(?P<amount>[\d½¼¾⅓⅔⅛][\d\s./½¼¾⅓⅔⅛–-]*(?: ?[a-zA-Z]+\.?(?: oz)?)?)(?: of)?(?: the| your)? $"
)
_SPOKEN_LINE = re.compile(
    r"(?:the )?(?P<line>(?:(?:finely )?grated )?(?P<part>zest|juice) of "
    r"(?:\d+|½|an?|half an?|one|two|three) [a-z]+"
    r"|(?:an?|two|three|\d) (?:pinch|pinches|dash) of (?:fine |sea )?[a-z]+)\b",
    re.IGNORECASE,
)


@dataclass(frozen=True)
class Named:
    """A line of the component, and other names that the notes use for it."""

    line: Line
    others: tuple[str, ...] = ()


@dataclass
class Linked:
    """text: with braces. taken: indices of the lines that it names. new: lines that only the method has."""

    text: str
    taken: set[int] = field(default_factory=set)
    new: list[str] = field(default_factory=list)
    components: set[str] = field(default_factory=set)


class Linker:
    """Puts braces into the steps of one component.

    may_name: whether a step may name another component without a circle.
    """

    def __init__(
        self,
        title: str,
        lines: Sequence[Named],
        desk: Desk,
        context: Context,
        may_name: Callable[[str], bool],
    ) -> None:
        self.lines = list(lines)
        self._listed = len(self.lines)
        self._title = title
        self._desk = desk
        self._context = context
        self._may_name = may_name

    def linked(self, text: str) -> Linked:
        found = Linked(text)
        if len(text) > _LONGEST:
            return found
        said = self._spoken_lines(spaced(text, self._desk), found)
        found.text = self._names(heats_and_lengths(said), found)
        return found

    def _names(self, text: str, found: Linked) -> str:
        """Every name in braces, the longest first from the left; what stands in braces already stays."""
        out, index = "", 0
        while index < len(text):
            if text[index] == "{":
                end = text.find("}", index) + 1 or len(text)
                out, index = out + text[index:end], end
                continue
            word = _WORD.match(text, index)
            if word is None or (index and text[index - 1].isalnum()):
                out, index = out + text[index], index + 1
                continue
            out, index = self._name_at(text, index, out, found)
        return out

    def _name_at(self, text: str, index: int, out: str, found: Linked) -> tuple[str, int]:
        ends = _word_ends(text, index)
        for end in reversed(ends):
            name = text[index:end]
            reference = self._reference(name, text, index, end)
            if reference is not None:
                braced, out = self._with_share(out, reference, found)
                return f"{out}{braced}", end
        end = ends[0]
        missing = self._unlisted(out, text, index, ends, found)
        return missing or (out + text[index:end], end)

    def _reference(self, name: str, text: str, index: int, end: int) -> str | None:
        """What stands in the braces for a name; None where it means no line and no component."""
        folded = name.casefold()
        if folded in _common() or self._is_a_deed(text, index, end):
            return None
        reference = self._read(name)
        if reference is not None:
            return self._regional(name, reference)
        return self._other_name(folded)

    def _regional(self, name: str, reference: Reference) -> str:
        """The line's own name for what the notes call by another region's: 'cornstarch'."""
        line = self.lines[reference.line].line if reference.line is not None else None
        own = named(name, self._context.tables.larder, self._desk.region)
        is_foreign = own.row is not None and own.name.casefold() != name.casefold()
        return line.chosen.name if is_foreign and isinstance(line, IngredientLine) else name

    def _is_a_deed(self, text: str, index: int, end: int) -> bool:
        """'Butter the tin', 'flour the board', 'then zest the lemon': a verb, and no ingredient."""
        word = text[index:end].casefold()
        if word not in verb_kinds():
            return False
        before = text[:index].rstrip()
        if not before or before.endswith((".", "!", ":")):
            return True
        at_start = before.endswith((",", ";", "and", "then", "&"))
        return at_start and bool(
            re.match(r" (?:the|a|an|and (?:line|flour|base)|your|each)\b", text[end:], re.IGNORECASE)
        )

    def _read(self, inside: str) -> Reference | None:
        try:
            reference = read_reference(Stretch(inside, 0), [one.line for one in self.lines], self._context)
        except Misread:
            return None
        if reference.kind is RefKind.COMPONENT and reference.line is None:
            is_other = reference.target.casefold() != self._title.casefold()
            return reference if is_other and self._may_name(reference.target) else None
        return reference if reference.kind in (RefKind.INGREDIENT, RefKind.COMPONENT) else None

    def _other_name(self, folded: str) -> str | None:
        """By what the notes called it, by its part alone ('zest'), or by a word that only one line has."""
        fits = [
            one for one in self.lines if folded in (*map(str.casefold, one.others), *_short_names(one.line))
        ]
        fits = fits or self._kin(folded)
        if len(fits) != 1:
            return None
        line = fits[0].line
        name = line.source if isinstance(line, PartLine) else line.chosen.name
        parted = (
            f"{line.chosen.part} of {name}" if isinstance(line, IngredientLine) and line.chosen.part else ""
        )
        if parted and self._read(parted) is not None:
            return parted
        if self._read(name) is not None:
            return name
        sized = f"{line.chosen.size} {name}" if isinstance(line, IngredientLine) else name
        return sized if self._read(sized) is not None else None

    def _kin(self, folded: str) -> list[Named]:
        """The lines of the role that a word stands for: 'salt' for sea salt flakes."""
        role = note_words().kin.get(folded)
        larder = self._context.tables.larder
        rows = [
            (one, larder.find(one.line.chosen.ingredient))
            for one in self.lines
            if isinstance(one.line, IngredientLine)
        ]
        return [one for one, row in rows if role and row is not None and role in row.roles]

    def _with_share(self, out: str, name: str, found: Linked) -> tuple[str, str]:
        """The braces for a name, with the share or the amount before it, and what stands before them."""
        reference = self._read(name)
        if reference is None:
            return name, out
        if reference.line is not None:
            found.taken.add(reference.line)
        elif reference.target:
            found.components.add(reference.target)
        share = _last(_SHARE, out)
        if share and reference.line is not None:
            said = share["share"].casefold()
            said = "the rest" if said.endswith(("rest", "remaining")) else said
            inside = f"{said} of {name}"
            if self._read(inside) is not None:
                return f"{{{inside}}}", out[: share.start()]
        amount = _last(_AMOUNT_BEFORE, out)
        if amount and reference.line is not None:
            inside = f"{amount['amount'].strip()} of {name}"
            if self._is_whole(amount["amount"].strip(), reference.line):
                return f"{{{name}}}", out[: amount.start()]
            if reference.line >= self._listed:
                return name, out
            if self._read(inside) is not None and not amount["amount"].strip().isdigit():
                return f"{{{inside}}}", out[: amount.start()]
        return f"{{{name}}}", out

    def _is_whole(self, amount: str, index: int) -> bool:
        """Whether an amount in the method is the one of the line."""
        line = self.lines[index].line
        said = amount_at(amount, self._desk)
        if said is None or line.amount is None:
            return False
        try:
            read = self._read_amount(said[0].text)
        except Misread:
            return False
        return read == line.amount

    def _read_amount(self, text: str) -> object:
        return read_amount(Stretch(f"{text} water", 0), self._context)[0]

    def _unlisted(
        self, out: str, text: str, index: int, ends: Sequence[int], found: Linked
    ) -> tuple[str, int] | None:
        """An amount of something that no line has becomes a line: '50 ml water' in the method alone."""
        amount = _last(_AMOUNT_BEFORE, out)
        said = amount_at(amount["amount"].strip(), self._desk) if amount else None
        if not amount or not said or not said[0].unit:
            return None
        for end in reversed(ends):
            name = text[index:end]
            row = self._context.tables.larder.find(name)
            ingredient = ingredient_of(f"{said[0].text} {name}", self._desk) if row else None
            if ingredient is not None and ingredient.known:
                self._add(ingredient, found)
                return f"{out[: amount.start()]}{{{ingredient.name}}}", end
        return None

    def _add(self, ingredient: Ingredient, found: Linked) -> None:
        """A line that only the method knows of: later steps may name it."""
        found.new.append(ingredient.line)
        found.taken.add(len(self.lines))
        self.lines.append(Named(read_line(ingredient.line, NOWHERE, self._context)))

    def _spoken_lines(self, text: str, found: Linked) -> str:
        """'The zest of 2 oranges', 'a pinch of salt' of what no line has, each with a line of its own."""

        def braced(said: re.Match[str]) -> str:
            ingredient = ingredient_of(said["line"], self._desk)
            if ingredient is None or not ingredient.known or self._read(ingredient.name) is not None:
                return said.group(0)
            self._add(ingredient, found)
            part = f"{said['part'].casefold()} of " if said["part"] else ""
            return f"{{{part}{ingredient.name}}}"

        return _SPOKEN_LINE.sub(braced, text)


def _last(pattern: re.Pattern[str], out: str) -> re.Match[str] | None:
    """Where a pattern that ends with the text is found in its last letters."""
    return pattern.search(out, max(len(out) - _NEAR, 0))


def _word_ends(text: str, index: int) -> list[int]:
    """Where the first word from an index ends, where the second does, and so on."""
    ends: list[int] = []
    begin = index
    for _ in range(_MOST_WORDS):
        word = _WORD.match(text, begin)
        if word is None:
            break
        ends.append(word.end())
        if text[word.end() : word.end() + 1] != " ":
            break
        begin = word.end() + 1
    return ends or [index + 1]


@cache
def _common() -> frozenset[str]:
    return frozenset(note_words().common_words)


def _short_names(line: Line) -> Iterator[str]:
    """What a step may call a line for short: its last words, or the part that is taken of it."""
    if isinstance(line, PartLine):
        return
    words = line.chosen.name.casefold().split()
    for begin in range(1, len(words)):
        yield " ".join(words[begin:])
    if len(words) > 1 and words[0] not in note_words().weak_words:
        yield words[0]
    if line.chosen.part:
        yield f"{line.chosen.ingredient} {line.chosen.part}"
        yield line.chosen.part
        yield f"{line.chosen.part}s"
