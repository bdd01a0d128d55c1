"""Prose with references in braces: `Whisk {eggs} with {half of caster sugar} to {118 C}`.

reference = temperature | oven | length | [share "of" | amount "of"] name
"""

import re
from collections.abc import Callable, Iterator, Sequence
from difflib import get_close_matches
from fractions import Fraction

from sitegen.faults import FaultCode, Place, Severity
from sitegen.kitchen.recipe import Amount, IngredientLine, Line, PartLine, Prose, Reference, RefKind, Words
from sitegen.source.context import Context
from sitegen.source.misread import Misread
from sitegen.source.names import title_named
from sitegen.source.numbers import number_at
from sitegen.source.phrases import oven_in
from sitegen.source.shares import share_at

UNPAIRED_BRACE = FaultCode(
    "unpaired-brace",
    Severity.ERROR,
    "A brace that is opened and not closed, closed and not opened, or that holds nothing.",
    "Write `{caster sugar}`.",
    good="Whisk {eggs},",
    bad="Whisk {eggs,",
)
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
BARE_AMOUNT = FaultCode(
    "bare-amount",
    Severity.ERROR,
    "An amount, a temperature or a length left bare in prose: it would follow neither batch nor edition.",
    "Put it into braces: `{50 g of caster sugar}`, `{118 C}`, `{2 cm}`.",
    good="Whisk {eggs},",
    bad="Whisk 100 g of {eggs},",
)
REST = Fraction(0)
"""Stands for 'the rest of' until `settled` knows what is left."""

CODES = (UNPAIRED_BRACE, UNLISTED, AMBIGUOUS, BARE_AMOUNT)

_BRACES = re.compile(r"\{([^{}]*)\}")
_TEMPERATURE = re.compile(r"(?:°|degrees )? ?([CF])", re.IGNORECASE)
_LENGTH = re.compile(r" ?(cm|mm|in|inch|inches)", re.IGNORECASE)
_SCALES = {"C": "celsius", "F": "fahrenheit"}
_OF = re.compile(r" of (?:the )?", re.IGNORECASE)
_BARE = re.compile(
    r"(?<![\w.])\d[\d.,/]*(?:[-–]\d[\d.,/]*)? ?(?:"
    r"(?:g|kg|mg|ml|cl|dl|l|oz|lb|tsp|tbsp|teaspoons?|tablespoons?|grams?|cups?|cm|mm|inch(?:es)?)\b"
    r"|(?:°|degrees) ?[CF]?\b|[CF]\b|°)"
)


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
        yield _reference(found, lines, context)
        begin = found.end()
    yield from _words(text, begin, len(text))


def _words(text: str, start: int, end: int) -> Iterator[Words]:
    if start == end:
        return
    for mark in re.finditer(r"[{}]", text[start:end]):
        where = (start + mark.start(), start + mark.end())
        raise Misread(UNPAIRED_BRACE, "this brace has no partner", "write `{caster sugar}`", *where)
    bare = _BARE.search(text, start, end)
    if bare:
        raise Misread(BARE_AMOUNT, f"'{bare.group(0)}' is left bare in prose", _in_braces(bare), *bare.span())
    yield Words(text[start:end])


def _in_braces(bare: re.Match[str]) -> str:
    said = bare.group(0).strip()
    if re.search(r"(?:°|degrees|[CF]|cm|mm|inch(?:es)?)[CF]?$", said):
        return f"write '{{{said.replace('°', '')}}}'"
    return f"write '{{{said} of ...}}', or just the ingredient in braces"


def _reference(found: re.Match[str], lines: Sequence[Line], context: Context) -> Reference:
    text = found.group(1).strip()
    start = found.start() + 1
    if not text:
        raise Misread(UNPAIRED_BRACE, "these braces hold nothing", "write `{caster sugar}`", *found.span())
    try:
        return _heat_or_length(text, context) or _named(text, start, lines, context)
    except Misread as problem:
        if problem.code in (UNLISTED, AMBIGUOUS):
            raise
        raise Misread(problem.code, problem.sentence, problem.way_out, *found.span(1)) from problem


def _heat_or_length(text: str, context: Context) -> Reference | None:
    """`{150 C fan}`, `{gas 4}`, `{118 C}`, `{2 cm}`; None for anything else."""
    oven = oven_in(text)
    if oven is not None and (oven.scale != "fahrenheit" or "F " in text.upper()):
        return Reference(text, RefKind.OVEN, oven=oven)
    number = number_at(text)
    if number is None:
        return None
    heat = _TEMPERATURE.fullmatch(text[number.end :].strip())
    if heat:
        amount = Amount(number.span, _SCALES[heat.group(1).upper()])
        return Reference(text, RefKind.TEMPERATURE, amount=amount)
    length = _LENGTH.fullmatch(text[number.end :])
    unit = context.tables.measures.unit_named(length.group(1)) if length else None
    return Reference(text, RefKind.LENGTH, amount=Amount(number.span, unit)) if unit else None


def _named(text: str, start: int, lines: Sequence[Line], context: Context) -> Reference:
    """An ingredient or component, whole or in part."""
    share = share_at(text)
    if share is not None:
        return _target(
            text, share.end, share.share if share.share is not None else REST, None, start, lines, context
        )
    number = number_at(text)
    of = _OF.search(text, number.end) if number else None
    if number is not None and of is not None:
        unit = context.tables.measures.unit_named(text[number.end : of.start()].strip())
        if unit is not None:
            amount = Amount(number.span, unit)
            return _target(text, of.end(), Fraction(1), amount, start, lines, context)
    return _target(text, 0, Fraction(1), None, start, lines, context)


def _target(
    text: str,
    begin: int,
    share: Fraction,
    amount: Amount | None,
    start: int,
    lines: Sequence[Line],
    context: Context,
) -> Reference:
    name = text[begin:].strip()
    index = _line_named(name, start + begin, lines, context)
    if index is not None:
        line = lines[index]
        is_part = isinstance(line, PartLine)
        kind = RefKind.COMPONENT if is_part else RefKind.INGREDIENT
        target = line.source if isinstance(line, PartLine) else ""
        return Reference(text, kind, target, index, share, amount, short="" if is_part else name)
    titled = title_named(name, context)
    if titled is not None:
        return Reference(text, RefKind.COMPONENT, titled[0])
    raise _unlisted(name, start + begin, lines)


def _line_named(name: str, start: int, lines: Sequence[Line], context: Context) -> int | None:
    """The line that a name means: by its whole name, by what the larder knows, by its last words."""
    wanted = name.casefold()
    ways: tuple[Callable[[Line], bool], ...] = (
        lambda line: wanted in _names(line),
        lambda line: _same_row(wanted, line, context),
        lambda line: any(known.endswith(f" {wanted}") for known in _names(line)),
    )
    for fits in ways:
        found = [index for index, line in enumerate(lines) if fits(line)]
        if len(found) == 1:
            return found[0]
        if found:
            raise _ambiguous(name, start, [lines[index] for index in found])
    return None


def _names(line: Line) -> tuple[str, ...]:
    if isinstance(line, PartLine):
        return (line.source.casefold(),)
    return tuple(choice.name.casefold() for choice in line.choices)


def _same_row(wanted: str, line: Line, context: Context) -> bool:
    row = context.tables.larder.find(wanted)
    if row is None or not isinstance(line, IngredientLine):
        return False
    return row.key == line.chosen.ingredient


def _ambiguous(name: str, start: int, lines: Sequence[Line]) -> Misread:
    texts = " or ".join(f"'{line.text}'" for line in lines)
    way_out = f"say which: {texts}"
    return Misread(
        AMBIGUOUS, f"'{name}' could be more than one ingredient", way_out, start, start + len(name)
    )


def _unlisted(name: str, start: int, lines: Sequence[Line]) -> Misread:
    names = [known for line in lines for known in _names(line)]
    near = get_close_matches(name.casefold(), names, n=1, cutoff=0.6)
    way_out = f"did you mean '{near[0]}'?" if near else "add it to the ingredients of this component"
    sentence = f"'{name}' is not among the ingredients of this component"
    return Misread(UNLISTED, sentence, way_out, start, start + len(name))
