"""What stands in braces: `{eggs}`, `{half of caster sugar}`, `{118 C}`, `{150 C fan}`, `{2 cm}` -> Reference.

reference = temperature | oven | length | [share "of" | amount "of"] name
"""

import re
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from difflib import get_close_matches
from fractions import Fraction

from sitegen.faults import FaultCode, Severity
from sitegen.kitchen.amounts import Amount, Span
from sitegen.kitchen.method import Reference, RefKind
from sitegen.kitchen.recipe import IngredientLine, Line, PartLine
from sitegen.source.context import Context
from sitegen.source.misread import Misread
from sitegen.source.names import title_named
from sitegen.source.numbers import number_at
from sitegen.source.ovens import oven_in, refuse_impossible
from sitegen.source.shares import share_at
from sitegen.source.stretches import Stretch

UNLISTED = FaultCode(
    "unlisted-ingredient",
    Severity.ERROR,
    "A step names something that is neither among its component's ingredients nor a component.",
    "Add the line to the ingredients, or name it as it stands there.",
    good="Whisk {eggs},",
    bad="Whisk {turnips},",
)
AMBIGUOUS = FaultCode(
    "ambiguous-reference",
    Severity.ERROR,
    "A short name that fits more than one ingredient of the component.",
    "Write the whole name.",
)
NO_SUCH_SHARE = FaultCode(
    "no-such-share",
    Severity.ERROR,
    "A step takes more than all of something, or counts what its ingredient line weighs.",
    "Take a share of it (`{half of buttermilk}`) or a weight (`{50 g of buttermilk}`).",
    good="{buttermilk} and",
    bad="{3 of buttermilk} and",
)
CODES = (UNLISTED, AMBIGUOUS, NO_SUCH_SHARE)

REST = Fraction(0)
"""Stands for 'the rest of' until `settled` knows what is left."""
WHOLE = Fraction(1)

_TEMPERATURE = re.compile(
    r"(?P<minus>[-−] ?)?(?P<degrees>.{1,20}?) ?(?:°|degrees )? ?(?P<scale>[CF])", re.IGNORECASE
)
_LENGTH = re.compile(r" ?(cm|mm|in|inch|inches)", re.IGNORECASE)
_LENGTHS = frozenset({"cm", "mm", "in"})
_SCALES = {"C": "celsius", "F": "fahrenheit"}
_OF = re.compile(r" of (?:the )?| ", re.IGNORECASE)


@dataclass(frozen=True)
class _Taken:
    """How much of the thing named is taken: a share of it, or an amount."""

    share: Fraction = WHOLE
    amount: Amount | None = None

    @property
    def is_all(self) -> bool:
        return self.share == WHOLE and self.amount is None


def read_reference(inside: Stretch, lines: Sequence[Line], context: Context) -> Reference:
    """The reference that stands in braces.

    inside: what stands between the braces, not empty. lines: those of the step's component.
    Raises Misread that marks the words at fault.
    """
    try:
        exact = _heat_or_length(inside.text, context)
        taken, name = (_Taken(), inside) if exact else _taken(inside, context)
    except Misread as problem:
        raise problem.moved(inside.start) from problem
    return exact or _target(inside.text, name, taken, lines, context)


def _heat_or_length(text: str, context: Context) -> Reference | None:
    """`{150 C fan}`, `{gas 4}`, `{118 C}`, `{-18 C}`, `{2 cm}`; None for anything else."""
    oven = oven_in(text)
    if oven is not None and not _TEMPERATURE.fullmatch(text):
        refuse_impossible(oven, text, context)
        return Reference(text, RefKind.OVEN, oven=oven)
    heat = _TEMPERATURE.fullmatch(text)
    degrees = number_at(heat["degrees"]) if heat else None
    if heat and degrees and degrees.end == len(heat["degrees"]):
        span = Span(-degrees.span.high, -degrees.span.low) if heat["minus"] else degrees.span
        amount = Amount(span, _SCALES[heat["scale"].upper()])
        return Reference(text, RefKind.TEMPERATURE, amount=amount)
    number = number_at(text)
    length = _LENGTH.fullmatch(text, number.end) if number else None
    unit = context.tables.measures.unit_named(length.group(1)) if length else None
    return Reference(text, RefKind.LENGTH, amount=Amount(number.span, unit)) if number and unit else None


def _taken(inside: Stretch, context: Context) -> tuple[_Taken, Stretch]:
    """How much is taken, and the name behind it: `half of`, `50 g of`, `2 of`."""
    share = share_at(inside.text)
    if share is not None:
        return _Taken(REST if share.share is None else share.share), inside.after(share.end)
    number = number_at(inside.text)
    if number is None:
        return _Taken(), inside
    rest = inside.text[number.end :]
    blanks = len(rest) - len(rest.lstrip())
    word = rest.lstrip().partition(" ")[0]
    unit = "" if word == "of" else context.tables.measures.unit_named(word)
    begin = number.end + blanks + len(word) if unit else number.end
    of = _OF.match(inside.text, begin)
    if unit is None or unit in _LENGTHS or of is None:
        return _Taken(), inside
    return _Taken(amount=Amount(number.span, unit)), inside.after(of.end())


def _target(text: str, name: Stretch, taken: _Taken, lines: Sequence[Line], context: Context) -> Reference:
    index = _line_named(name, lines, context)
    if index is None:
        return _mentioned(text, name, taken, lines, context)
    line = lines[index]
    amount = _amount_of(line, taken.amount, name, context) if taken.amount else None
    if isinstance(line, PartLine):
        return Reference(text, RefKind.COMPONENT, line.source, index, taken.share, amount)
    return Reference(text, RefKind.INGREDIENT, "", index, taken.share, amount, short=name.words)


def _amount_of(line: Line, taken: Amount, name: Stretch, context: Context) -> Amount:
    """The amount taken of a line, in the line's own unit where both are weights. Raises Misread."""
    measures = context.tables.measures
    whole = line.amount.unit if line.amount else None
    counts_what_is_weighed = taken.unit == "" and whole != ""
    if counts_what_is_weighed or (isinstance(line, PartLine) and not measures.is_weight(taken.unit)):
        sentence = f"'{name.words}' is not taken by {'the piece' if taken.unit == '' else taken.unit}"
        way_out = f"write '{{half of {name.words}}}' or '{{50 g of {name.words}}}'"
        raise Misread(NO_SUCH_SHARE, sentence, way_out, name.start, name.end)
    if whole is None or not (measures.is_weight(whole) and measures.is_weight(taken.unit)):
        return taken
    return Amount(taken.span.times(measures.gram_factor(taken.unit) / measures.gram_factor(whole)), whole)


def _mentioned(text: str, name: Stretch, taken: _Taken, lines: Sequence[Line], context: Context) -> Reference:
    """A component of the recipe that is spoken of and not taken from. Raises Misread for anything else."""
    named = title_named(name.words, context)
    if named is None:
        raise _unlisted(name, lines)
    if named.is_base or not taken.is_all:
        sentence = f"'{named.title}' is not among the ingredients of this component"
        way_out = f"add a line `250 g of {named.title}` to its ingredients"
        if not named.is_base:
            way_out = f"add a line `half of {named.title}` to its ingredients"
        raise Misread(UNLISTED, sentence, way_out, name.start, name.end)
    return Reference(text, RefKind.COMPONENT, named.title)


def _line_named(name: Stretch, lines: Sequence[Line], context: Context) -> int | None:
    """The line that a name means: by its whole name, by what the larder knows, by its last words."""
    wanted = name.words.casefold()
    row = context.tables.larder.find(wanted)
    key = row.key if row else None
    ways: tuple[Callable[[Line], bool], ...] = (
        lambda line: wanted in _names(line),
        lambda line: isinstance(line, IngredientLine) and line.chosen.ingredient == key,
        lambda line: any(known.endswith(f" {wanted}") for known in _names(line)),
    )
    for fits in ways:
        found = [index for index, line in enumerate(lines) if fits(line)]
        if len(found) == 1:
            return found[0]
        if found:
            raise _ambiguous(name, [lines[index] for index in found])
    return None


def _names(line: Line) -> tuple[str, ...]:
    """How a step may call a line: its name, with its size, or by the part that is taken of it."""
    if isinstance(line, PartLine):
        return (line.source.casefold(),)
    names = [choice.name.casefold() for choice in line.choices]
    chosen, name = line.chosen, names[0]
    sized = [f"{chosen.size} {name}"] if chosen.size else []
    parted = [f"{name} {chosen.part}", f"{chosen.part} of {name}"] if chosen.part else []
    return (*names, *sized, *parted)


def _ambiguous(name: Stretch, lines: Sequence[Line]) -> Misread:
    texts = " or ".join(f"'{line.text}'" for line in lines)
    sentence = f"'{name.words}' could be more than one ingredient"
    return Misread(AMBIGUOUS, sentence, f"say which: {texts}", name.start, name.end)


def _unlisted(name: Stretch, lines: Sequence[Line]) -> Misread:
    names = [known for line in lines for known in _names(line)]
    near = get_close_matches(name.words.casefold(), names, n=1, cutoff=0.6)
    way_out = f"did you mean '{near[0]}'?" if near else "add it to the ingredients of this component"
    sentence = f"'{name.words}' is not among the ingredients of this component"
    return Misread(UNLISTED, sentence, way_out, name.start, name.end)
