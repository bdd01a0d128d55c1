"""Ingredient lines: `140 g plain flour, sifted` -> IngredientLine, `half of Vanilla batter` -> PartLine.

line         = (part | ingredient) ["(" note ")"] ["," preparation] ["," "optional"]
part         = (share "of" | weight "of") title
ingredient   = [("zest" | "juice") "of"] [amount [unit] ["of"]] [size] name {"or" [amount unit] name}
amount       = a number, a range, "a", "half a", or nothing where the preparation says what it is for
"""

import re
from dataclasses import dataclass
from fractions import Fraction

from sitegen.faults import FaultCode, Place, Severity
from sitegen.kitchen.recipe import Amount, Choice, IngredientLine, Line, PartLine, single
from sitegen.source.context import Context
from sitegen.source.misread import Misread
from sitegen.source.names import ingredient_named, title_named, unknown_part
from sitegen.source.numbers import number_at
from sitegen.source.shares import share_at

OPEN_BRACKET = FaultCode(
    "open-bracket",
    Severity.ERROR,
    "A bracket in an ingredient line that is opened and not closed, or the other way round.",
    "Write notes as `40 g butter (salted), for the tin`.",
    good="150 g plain flour",
    bad="150 g plain flour (sifted",
)
NO_NAME = FaultCode(
    "no-name",
    Severity.ERROR,
    "An ingredient line that names no ingredient.",
    "Write what the amount is of.",
    good="150 g plain flour",
    bad="150 g",
)
NO_AMOUNT = FaultCode(
    "no-amount",
    Severity.ERROR,
    "An ingredient with no amount, and nothing that says what it is for.",
    "Write an amount, or after a comma what it is for: `plain flour, for dusting`.",
    good="150 g plain flour",
    bad="plain flour",
)
UNKNOWN_UNIT = FaultCode(
    "unknown-unit",
    Severity.ERROR,
    "A unit that no kitchen measures with, or that is misspelt.",
    "Use g, kg, ml, l, tsp, tbsp, cup, oz, lb or a count.",
    good="150 g plain flour",
    bad="150 grsm plain flour",
)
PART_NEEDS_WEIGHT = FaultCode(
    "part-needs-weight",
    Severity.ERROR,
    "A part of a component or base recipe is taken by something other than a share or a weight.",
    "Write `half of ...`, `1/3 of ...` or `250 g of ...`.",
    good="420 g of Base buttercream",
    bad="3 tbsp of Base buttercream",
)
CODES = (OPEN_BRACKET, NO_NAME, NO_AMOUNT, UNKNOWN_UNIT, PART_NEEDS_WEIGHT)

_BRACKETS = re.compile(r"\s*\(([^()]*)\)")
_OPTIONAL = re.compile(r"(?:^|, *)optional(?:$|(?=,))", re.IGNORECASE)
_PART_OF = re.compile(r"(?:finely |coarsely )?(?:grated )?(zest|juice)(?: only)? of ", re.IGNORECASE)
_PART_ONLY = re.compile(r"(zest|juice) only", re.IGNORECASE)
_ARTICLE = re.compile(r"(half an?|an?|the) ", re.IGNORECASE)
_OF = re.compile(r"of (?:the )?", re.IGNORECASE)
_FOR = re.compile(r" (?=(?:for|to) )", re.IGNORECASE)
_SIZES = re.compile(r"(extra[- ]large|very large|small|medium|large|xl) ", re.IGNORECASE)
_OR = re.compile(r" or ", re.IGNORECASE)
_WORD = re.compile(r"[^\s,]+")
HALF = single(Fraction(1, 2))
ONE = single(1)
PINCH = "pinch"


@dataclass(frozen=True)
class _Stretch:
    """A stretch of the line, and where it begins in it."""

    text: str
    start: int

    def after(self, index: int) -> "_Stretch":
        """What follows an index, less the blanks at its head."""
        rest = self.text[index:]
        blanks = len(rest) - len(rest.lstrip())
        return _Stretch(rest.strip(), self.start + index + blanks)


@dataclass(frozen=True)
class _Cut:
    """A line cut into its head, its preparation and its notes."""

    head: _Stretch
    preparation: str
    note: str
    optional: bool


def read_line(text: str, at: Place, context: Context) -> Line:
    """One ingredient line.

    text: without blanks around it. Raises Misread that marks the word at fault.
    """
    cut = _cut(text)
    share = share_at(cut.head.text)
    if share is not None:
        return _shared(text, cut, share.share, cut.head.after(share.end), at, context)
    part = _PART_OF.match(cut.head.text)
    head = cut.head.after(part.end()) if part else cut.head
    amount, rest = _amount(head, context)
    of = _OF.match(rest.text) if amount is not None else None
    if of is not None:
        rest = rest.after(of.end())
        named = title_named(rest.text, context)
        if named is not None and amount is not None:
            return _weighed_part(text, cut, amount, named, rest, at, context)
        if context.tables.larder.find(rest.text) is None and rest.text[:1].isupper():
            raise unknown_part(rest.text, rest.start, context)
    return _ingredient(text, cut, amount, rest, part.group(1).casefold() if part else "", at, context)


def _cut(text: str) -> _Cut:
    """The line without its brackets, split at the first comma."""
    notes = [note.strip() for note in _BRACKETS.findall(text)]
    bare = _BRACKETS.sub(lambda found: " " * len(found.group(0)), text)
    stray = re.search(r"[()]", bare)
    if stray:
        raise Misread(OPEN_BRACKET, "this bracket has no partner", "close it, or take it out", *stray.span())
    comma = _comma(bare)
    head, preparation = bare[:comma].rstrip(), bare[comma + 1 :].strip()
    optional = bool(_OPTIONAL.search(preparation)) or "optional" in (note.casefold() for note in notes)
    return _Cut(
        head=_Stretch(head.strip(), len(head) - len(head.lstrip())),
        preparation=re.sub(r" {2,}", " ", _OPTIONAL.sub("", preparation)).strip(" ,"),
        note=", ".join(note for note in notes if note.casefold() != "optional"),
        optional=optional,
    )


def _comma(text: str) -> int:
    """The first comma that is not inside a number; the text's end where there is none."""
    found = re.search(r",(?!\d)", text)
    return found.start() if found else len(text)


def _shared(
    text: str, cut: _Cut, share: Fraction | None, rest: _Stretch, at: Place, context: Context
) -> Line:
    """`half of X`: a part of a component, or half of a counted thing (`half of a lemon`)."""
    named = title_named(rest.text, context)
    if named is not None:
        title, is_base = named
        return PartLine(text, title, share, None, is_base, cut.preparation, cut.note, at)
    article = _ARTICLE.match(rest.text)
    bare = rest.after(article.end()) if article else rest
    if share is None or context.tables.larder.find(bare.text) is None:
        raise unknown_part(rest.text, rest.start, context)
    return _ingredient(text, cut, Amount(single(share), ""), bare, "", at, context)


def _weighed_part(
    text: str,
    cut: _Cut,
    amount: Amount,
    named: tuple[str, bool],
    rest: _Stretch,
    at: Place,
    context: Context,
) -> PartLine:
    title, is_base = named
    if not context.tables.measures.is_weight(amount.unit):
        sentence = f"a part of '{title}' is taken by share or by weight"
        way_out = "write `half of ...`, or a weight: `250 g of ...`"
        raise Misread(PART_NEEDS_WEIGHT, sentence, way_out, 0, rest.start + len(rest.text))
    return PartLine(text, title, None, amount, is_base, cut.preparation, cut.note, at)


def _amount(head: _Stretch, context: Context) -> tuple[Amount | None, _Stretch]:
    """The amount at the head of a line with its unit, and what follows; None where there is no number."""
    article = _ARTICLE.match(head.text)
    if article:
        span = HALF if article.group(1).casefold().startswith("half") else ONE
        unit, rest = _unit(head.after(article.end()), context)
        return Amount(span, unit), rest
    found = number_at(head.text)
    if found is None:
        unit, rest = _unit(head, context)
        return (Amount(ONE, unit), rest) if unit == PINCH else (None, head)
    unit, rest = _unit(head.after(found.end), context)
    return Amount(found.span, unit), rest


def _unit(rest: _Stretch, context: Context) -> tuple[str, _Stretch]:
    """The unit that a stretch begins with ('' for a count), and what follows. Two words first: 'fl oz'."""
    words = list(_WORD.finditer(rest.text))[:2]
    for word in reversed(words):
        unit = context.tables.measures.unit_named(rest.text[: word.end()])
        if unit is not None and context.tables.larder.find(rest.text) is None:
            return unit, rest.after(word.end())
    return "", rest


def _ingredient(
    text: str,
    cut: _Cut,
    amount: Amount | None,
    rest: _Stretch,
    part: str,
    at: Place,
    context: Context,
) -> IngredientLine:
    rest, purpose = _purpose(rest)
    preparation = ", ".join(words for words in (purpose, cut.preparation) if words)
    if not rest.text:
        raise Misread(NO_NAME, "this line names no ingredient", "write what it is", 0, max(len(text), 1))
    if amount is not None and amount.unit == "":
        _refuse_strange_unit(rest, context)
    choices = _choices(rest, part or _part_only(preparation), context)
    if amount is None and not preparation:
        way_out = f"write an amount, or what it is for: '{rest.text}, for dusting'"
        raise Misread(NO_AMOUNT, f"how much {rest.text}?", way_out, rest.start, rest.start + len(rest.text))
    return IngredientLine(text, amount, choices, preparation, cut.note, cut.optional, at)


def _purpose(rest: _Stretch) -> tuple[_Stretch, str]:
    """'butter for the tin' -> 'butter' and 'for the tin'."""
    found = _FOR.search(rest.text)
    if not found:
        return rest, ""
    return _Stretch(rest.text[: found.start()].rstrip(), rest.start), rest.text[found.end() :]


def _part_only(preparation: str) -> str:
    found = _PART_ONLY.search(preparation)
    return found.group(1).casefold() if found else ""


def _refuse_strange_unit(rest: _Stretch, context: Context) -> None:
    """Raises Misread where a word that is no unit stands before an ingredient that the larder has."""
    word = _WORD.match(rest.text)
    if word is None or context.tables.larder.find(rest.text) is not None:
        return
    behind = rest.text[word.end() :].strip()
    if behind and context.tables.larder.find(behind) is not None and not _SIZES.match(rest.text):
        start = rest.start
        sentence = f"'{word.group(0)}' is no unit that we know"
        raise Misread(UNKNOWN_UNIT, sentence, _near_unit(word.group(0), context), start, start + word.end())


def _near_unit(word: str, context: Context) -> str:
    near = context.tables.measures.near_unit(word)
    return f"did you mean '{near}'?" if near else "use g, ml, tsp, tbsp, cup, oz, lb or a count"


def _choices(rest: _Stretch, part: str, context: Context) -> tuple[Choice, ...]:
    """The ingredient and its alternatives."""
    if context.tables.larder.find(rest.text) is not None:
        return (_choice(rest, part, context),)
    choices: list[Choice] = []
    begin = 0
    for found in [*_OR.finditer(rest.text), None]:
        stretch = rest.after(begin)
        end = found.start() - begin if found else len(rest.text)
        option = _Stretch(rest.text[begin : begin + end].strip(), stretch.start)
        choices.append(_choice(option, part, context) if not choices else _alternative(option, part, context))
        begin = found.end() if found else 0
    return tuple(choices)


def _alternative(option: _Stretch, part: str, context: Context) -> Choice:
    amount, rest = _amount(option, context)
    return _choice(rest, part, context, amount)


def _choice(stretch: _Stretch, part: str, context: Context, amount: Amount | None = None) -> Choice:
    size = _SIZES.match(stretch.text)
    if size and context.tables.larder.find(stretch.text) is None:
        stretch = stretch.after(size.end())
    name = stretch.text
    row = ingredient_named(name, stretch.start, context)
    said = size.group(1).casefold().replace("-", " ") if size else ""
    return Choice(name, row.key, said, part, amount)
