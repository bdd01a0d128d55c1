"""An ingredient line cut into its head, its preparation and its notes."""

import re
from dataclasses import dataclass
from itertools import pairwise

from sitegen.faults import FaultCode, Severity
from sitegen.source.bare_amounts import bare_amount_in
from sitegen.source.context import Context
from sitegen.source.misread import Misread
from sitegen.source.names import known
from sitegen.source.quantities import SECOND_AMOUNT, amount_at
from sitegen.source.stretches import Stretch

OPEN_BRACKET = FaultCode(
    "open-bracket",
    Severity.ERROR,
    "A bracket in an ingredient line that is opened and not closed, or the other way round.",
    "Write notes as `40 g butter (salted), for the tin`.",
    good="150 g plain flour",
    bad="150 g plain flour (sifted",
)
CODES = (OPEN_BRACKET,)

_BRACKETS = re.compile(r"\(([^()]*)\)")
_STRAY = re.compile(r"[()]")
_COMMA = re.compile(r",(?!\d)")
_OPTIONAL = re.compile(r"(?:^|, *)optional(?:$|(?=,))", re.IGNORECASE)
_OR = re.compile(r"\s*or ", re.IGNORECASE)
_PLUS = re.compile(r"(?:^|, *)plus (?=[\d½¼¾⅓⅔]|an? |extra|more)", re.IGNORECASE)


@dataclass(frozen=True)
class Cut:
    """head: what stands before the comma that begins the preparation, brackets blanked out.

    preparation, note: with single blanks; '' for none. optional: whether either said so.
    """

    head: Stretch
    preparation: str
    note: str
    optional: bool


def cut_line(text: str, context: Context) -> Cut:
    """The line without its brackets, split at the comma that begins the preparation.

    A comma before 'or' and a known ingredient belongs to the head: `15 g fresh yeast, or 5 g instant yeast`.
    Raises Misread for a bracket alone, and for a second amount in preparation or notes.
    """
    notes = [" ".join(note.split()) for note in _BRACKETS.findall(text)]
    bare = _BRACKETS.sub(lambda found: " " * len(found.group(0)), text)
    stray = _STRAY.search(bare)
    if stray:
        raise Misread(OPEN_BRACKET, "this bracket has no partner", "close it, or take it out", *stray.span())
    comma = _preparation_comma(bare, context)
    for found in _BRACKETS.finditer(text):
        _refuse_amount(text, found.start(), found.end())
    _refuse_amount(bare, comma, len(bare))
    preparation = " ".join(bare[comma + 1 :].split())
    said = [note.casefold() for note in notes]
    return Cut(
        head=Stretch(bare, 0).between(0, comma),
        preparation=_OPTIONAL.sub("", preparation).strip(" ,"),
        note=", ".join(note for note in notes if note and note.casefold() != "optional"),
        optional=bool(_OPTIONAL.search(preparation)) or "optional" in said,
    )


def _preparation_comma(bare: str, context: Context) -> int:
    """The index of the comma that begins the preparation; the text's end where there is none."""
    commas = [found.start() for found in _COMMA.finditer(bare)]
    for comma, following in pairwise([*commas, len(bare)]):
        alternative = _OR.match(bare, comma + 1)
        if not alternative or not _is_known(Stretch(bare, 0).between(alternative.end(), following), context):
            return comma
    return len(bare)


def _is_known(option: Stretch, context: Context) -> bool:
    return known(amount_at(option, context)[1], context) is not None


def _refuse_amount(text: str, start: int, end: int) -> None:
    """Raises Misread for an amount where it would follow neither batch nor edition."""
    bare = bare_amount_in(text, start, end)
    plus = _PLUS.search(text[start + 1 : end].strip())
    if not bare and not plus:
        return
    said = bare.text if bare else "plus"
    way_out = "give what else goes in a line of its own; say sizes and temperatures in the step, in braces"
    where = (bare.start, bare.end) if bare else (start, end)
    raise Misread(SECOND_AMOUNT, f"'{said}' stands beside the amount of this line", way_out, *where)
