"""Prose with references in braces: `Whisk {eggs} with {half of caster sugar} to {118 C}`."""

import re
from collections.abc import Iterator, Sequence

from sitegen.faults import FaultCode, Place, Severity
from sitegen.kitchen.method import Prose, Reference, Words
from sitegen.kitchen.recipe import Line
from sitegen.source.bare_amounts import bare_amount_in
from sitegen.source.context import Context
from sitegen.source.misread import Misread
from sitegen.source.references import read_reference
from sitegen.source.stretches import Stretch

UNPAIRED_BRACE = FaultCode(
    "unpaired-brace",
    Severity.ERROR,
    "A brace that is opened and not closed, closed and not opened, or that holds nothing.",
    "Write `{caster sugar}`.",
    good="Whisk {eggs},",
    bad="Whisk {eggs,",
)
BARE_AMOUNT = FaultCode(
    "bare-amount",
    Severity.ERROR,
    "An amount, a temperature or a length left bare in prose: it would follow neither batch nor edition.",
    "Put it into braces: `{50 g of caster sugar}`, `{118 C}`, `{2 cm}`.",
    good="Whisk {eggs},",
    bad="Whisk 100 g of {eggs},",
)
CODES = (UNPAIRED_BRACE, BARE_AMOUNT)

_BRACES = re.compile(r"\{([^{}]*)\}")
_BRACE = re.compile(r"[{}]")


def read_prose(text: str, _at: Place, lines: Sequence[Line], context: Context) -> Prose:
    """The words and references of a step.

    lines: those of the step's component. 'The rest of' has the share REST until `settled` is called.
    Raises Misread that marks the reference, brace or amount at fault.
    """
    return tuple(_parts(text, lines, context))


def _parts(text: str, lines: Sequence[Line], context: Context) -> Iterator[Words | Reference]:
    begin = 0
    for found in _BRACES.finditer(text):
        yield from _words(text, begin, found.start())
        inside = Stretch(text, 0).between(*found.span(1))
        if not inside.text:
            sentence = "these braces hold nothing"
            raise Misread(UNPAIRED_BRACE, sentence, "write `{caster sugar}`", *found.span())
        yield read_reference(inside, lines, context)
        begin = found.end()
    yield from _words(text, begin, len(text))


def _words(text: str, start: int, end: int) -> Iterator[Words]:
    if start == end:
        return
    mark = _BRACE.search(text, start, end)
    if mark:
        raise Misread(UNPAIRED_BRACE, "this brace has no partner", "write `{caster sugar}`", *mark.span())
    bare = bare_amount_in(text, start, end)
    if bare:
        way_out = f"write '{bare.in_braces}'"
        if bare.in_braces.endswith("...}"):
            way_out += ", or just the ingredient in braces"
        raise Misread(BARE_AMOUNT, f"'{bare.text}' is left bare in prose", way_out, bare.start, bare.end)
    yield Words(text[start:end])
