"""Ingredient lines: `140 g plain flour, sifted` -> IngredientLine, `half of Vanilla batter` -> PartLine.

line         = (part | ingredient) ["(" note ")"] ["," preparation] ["," "optional"]
part         = (share "of" | weight "of") title
ingredient   = [("zest" | "juice" | "white" | "yolk") "of"] [amount [unit] ["of"]] [size] name
               {[","] "or" [amount unit] name}
amount       = a number, a range, "a", "half a", or nothing where the preparation says what it is for
"""

import re
from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction

from sitegen.faults import FaultCode, Place, Severity
from sitegen.kitchen.amounts import Amount, single
from sitegen.kitchen.recipe import Choice, IngredientLine, Line, PartLine
from sitegen.source.context import Context
from sitegen.source.cuts import Cut, cut_line
from sitegen.source.misread import Misread
from sitegen.source.names import Title, ingredient_named, known, title_named, unknown_part
from sitegen.source.quantities import NO_AMOUNT, amount_at, refuse_strange_unit, size_at, unit_at
from sitegen.source.shares import share_at
from sitegen.source.stretches import Stretch

NO_NAME = FaultCode(
    "no-name",
    Severity.ERROR,
    "An ingredient line that names no ingredient.",
    "Write what the amount is of.",
    good="150 g plain flour",
    bad="150 g",
)
PART_NEEDS_WEIGHT = FaultCode(
    "part-needs-weight",
    Severity.ERROR,
    "A component or base recipe is named without the share or the weight that is taken of it.",
    "Write `half of ...`, `1/3 of ...`, `all of ...` or `250 g of ...`.",
    good="420 g of Base buttercream",
    bad="3 tbsp of Base buttercream",
)
CODES = (NO_NAME, PART_NEEDS_WEIGHT)

_PART_OF = re.compile(
    r"(?:the )?((?:finely |coarsely )?(?:grated )?)(zest|juice|white|yolk)s?(?: only)? of ", re.IGNORECASE
)
_PART_ONLY = re.compile(r"\b(zest|juice|white|yolk)s? only\b", re.IGNORECASE)
_PART_ALONE = re.compile(r"(?:finely |coarsely )?(?:grated )?(zest|juice)d?", re.IGNORECASE)
_ARTICLE = re.compile(r"(?:an?|the|one) ", re.IGNORECASE)
_OF = re.compile(r"of (?:the )?", re.IGNORECASE)
_FOR = re.compile(r" (?=(?:for|to) )", re.IGNORECASE)
_OR = re.compile(r",? +or +", re.IGNORECASE)


@dataclass(frozen=True)
class _Reading:
    """One line while it is read."""

    text: str
    cut: Cut
    at: Place
    context: Context


def read_line(text: str, at: Place, context: Context) -> Line:
    """One ingredient line.

    text: without blanks around it. Raises Misread that marks the word at fault.
    """
    reading = _Reading(text, cut_line(text, context), at, context)
    head = reading.cut.head
    share = share_at(head.text)
    if share is not None:
        return _shared(share.share, head.after(share.end), reading)
    part = _PART_OF.match(head.text)
    if part:
        said = f"{part.group(1)}{part.group(2)}".casefold() if part.group(1) else ""
        amount, rest = amount_at(head.after(part.end()), context)
        return _ingredient(amount, _without_of(rest), reading, part.group(2).casefold(), said)
    amount, rest = amount_at(head, context)
    return _part_line(amount, rest, reading) or _ingredient(amount, _without_of(rest), reading)


def _without_of(rest: Stretch) -> Stretch:
    of = _OF.match(rest.text)
    return rest.after(of.end()) if of else rest


def _shared(share: Fraction | None, rest: Stretch, reading: _Reading) -> Line:
    """`half of` a component, of a counted thing (`a lemon`), or of a measure (`a teaspoon of salt`)."""
    cut, context = reading.cut, reading.context
    named = title_named(rest.text, context)
    if named is not None:
        source, is_base = named.title, named.is_base
        return PartLine(reading.text, source, share, None, is_base, cut.preparation, cut.note, reading.at)
    article = _ARTICLE.match(rest.text)
    unit, bare = unit_at(rest.after(article.end()) if article else rest, context)
    bare = _without_of(bare) if unit else bare
    if share is None or known(bare, context) is None:
        raise unknown_part(rest, context)
    return _ingredient(Amount(single(share), unit), bare, reading)


def _part_line(amount: Amount | None, rest: Stretch, reading: _Reading) -> PartLine | None:
    """`250 g of X`; None where the line speaks of an ingredient."""
    context, cut = reading.context, reading.cut
    bare = _without_of(rest)
    named = title_named(bare.text, context)
    if known(bare, context) is not None:
        return None
    if named is None:
        if bare != rest and bare.text[:1].isupper():
            raise unknown_part(bare, context)
        return None
    if amount is None or bare == rest or not context.tables.measures.is_weight(amount.unit):
        raise _needs_weight(named, amount, rest, reading)
    source, is_base = named.title, named.is_base
    return PartLine(reading.text, source, None, amount, is_base, cut.preparation, cut.note, reading.at)


def _needs_weight(named: Title, amount: Amount | None, rest: Stretch, reading: _Reading) -> Misread:
    sentence = f"a part of '{named.title}' is taken by share or by weight"
    way_out = f"write `half of {named.title}`, or a weight: `250 g of {named.title}`"
    if amount is None:
        way_out = f"write `all of {named.title}`, or a weight: `250 g of {named.title}`"
    elif reading.context.tables.measures.is_weight(amount.unit):
        way_out = f"write `{reading.text[: rest.start].strip()} of {named.title}`"
    return Misread(PART_NEEDS_WEIGHT, sentence, way_out, reading.cut.head.start, rest.end)


def _ingredient(
    amount: Amount | None, rest: Stretch, reading: _Reading, part: str = "", said: str = ""
) -> IngredientLine:
    """part: what is taken of it, where the words before it said so; said: these words, for print."""
    cut, context = reading.cut, reading.context
    rest, purpose = _purpose(rest)
    preparation = ", ".join(words for words in (said, purpose, cut.preparation) if words)
    if not rest.text:
        length = max(len(reading.text), 1)
        raise Misread(NO_NAME, "this line names no ingredient", "write what it is", 0, length)
    if amount is not None and amount.unit == "":
        refuse_strange_unit(rest, context)
    choices = tuple(_choices(rest, part or _part_said(preparation) or _part_said(cut.note), context))
    if amount is None and not preparation:
        way_out = f"write an amount, or what it is for: '{rest.words}, for dusting'"
        raise Misread(NO_AMOUNT, f"how much {rest.words}?", way_out, rest.start, rest.end)
    return IngredientLine(reading.text, amount, choices, preparation, cut.note, cut.optional, reading.at)


def _purpose(rest: Stretch) -> tuple[Stretch, str]:
    """'butter for the tin' -> 'butter' and 'for the tin'."""
    found = _FOR.search(rest.text)
    if not found:
        return rest, ""
    return rest.between(0, found.start()), rest.after(found.end()).words


def _part_said(words: str) -> str:
    """The part that a preparation or note takes: 'zest only', 'yolks only', 'grated zest', 'juiced'."""
    found = _PART_ONLY.search(words) or _PART_ALONE.fullmatch(words)
    return found.group(1).casefold() if found else ""


def _choices(rest: Stretch, part: str, context: Context) -> Iterator[Choice]:
    """The ingredient and its alternatives."""
    if known(rest, context) is not None:
        yield _choice(rest, part, context)
        return
    begin = 0
    for found in _OR.finditer(rest.text):
        yield _option(rest.between(begin, found.start()), begin > 0, part, context)
        begin = found.end()
    yield _option(rest.after(begin), begin > 0, part, context)


def _option(stretch: Stretch, is_alternative: bool, part: str, context: Context) -> Choice:
    amount, name = amount_at(stretch, context) if is_alternative else (None, stretch)
    return _choice(_without_of(name) if amount else name, part, context, amount)


def _choice(stretch: Stretch, part: str, context: Context, amount: Amount | None = None) -> Choice:
    size, name = size_at(stretch, context)
    row = ingredient_named(name, context)
    return Choice(name.words, row.key, size, part, amount)
