"""Short phrases of a step and of a reader: ovens, fills and batches."""

from fractions import Fraction

from sitegen.faults import FaultCode, Place, Severity
from sitegen.kitchen.method import OvenSetting
from sitegen.kitchen.recipe import BatchAsk, BatchKind, IngredientLine, Makes, Tin
from sitegen.source.context import Context
from sitegen.source.lines import read_line
from sitegen.source.misread import Misread
from sitegen.source.numbers import whole_number
from sitegen.source.ovens import no_oven, oven_in, refuse_impossible
from sitegen.source.shares import WORDS
from sitegen.source.vessels import read_tin
from sitegen.source.yields import NOUN, Pieces, is_same_noun, pieces_in, weight_in

FILL = FaultCode(
    "fill",
    Severity.ERROR,
    "How full a tin is: a share of its depth, no more than all of it.",
    "Write `2/3` or `1/2`.",
    good="fill: 2/3",
    bad="fill: 3/2",
)
BATCH = FaultCode(
    "batch",
    Severity.ERROR,
    "A batch that says neither a count of what the recipe makes, nor a tin, nor how many times.",
    "Write `24 cupcakes`, `23 cm round`, `half`, `double`, `times 3/2` or `using 200 g butter`.",
    good="batches: [6 cupcakes,",
    bad="batches: [a heap,",
)
CODES = (FILL, BATCH)

TIMES = {"half": Fraction(1, 2), "double": Fraction(2), "treble": Fraction(3), "triple": Fraction(3)}
_TIMES, _USING = "times ", "using "
_PLAIN_WORDS = "write `24 cupcakes`, `23 cm round`, `half`, `double`, `times 3/2` or `using 200 g butter`"


def read_oven(text: str, _at: Place, context: Context) -> OvenSetting:
    """An oven setting: '150 C fan', '350 F', 'gas 4'. Raises Misread."""
    setting = oven_in(text)
    if setting is None:
        raise no_oven(text)
    refuse_impossible(setting, text, context)
    return setting


def read_fill(text: str, _at: Place | None = None) -> Fraction:
    """How full a tin is: over 0, at most 1. Raises Misread."""
    value = WORDS.get(text.casefold()) or whole_number(text)
    if value is None or not 0 < value <= 1:
        raise Misread(FILL, f"'{text}' is no share of a tin's depth", "write `2/3`", 0, max(len(text), 1))
    return value


def read_batch(text: str, at: Place, context: Context, makes: Makes | None = None) -> BatchAsk:
    """A batch in the words of a baker: '24 cupcakes', 'half', 'times 3/2', a tin, 'using 200 g butter'.

    text: without blanks around it. makes: what the recipe makes, so that '24 buns' is not taken for
    cupcakes; None where any noun will do. Raises Misread.
    """
    folded = text.casefold()
    if folded in TIMES:
        return BatchAsk(BatchKind.TIMES, times=TIMES[folded])
    if folded.startswith(_TIMES):
        return BatchAsk(BatchKind.TIMES, times=_times(text))
    if folded.startswith(_USING):
        return BatchAsk(BatchKind.USING, using=_in_hand(text, at, context))
    pieces = _pieces(text, context, makes)
    if pieces is not None:
        return BatchAsk(BatchKind.MAKES, makes=pieces.count, each=pieces.each)
    return BatchAsk(BatchKind.TIN, tin=_tin(text, at, context))


def _times(text: str) -> Fraction:
    value = whole_number(text, len(_TIMES))
    if value is None:
        raise _no_batch(text)
    return value


def _in_hand(text: str, at: Place, context: Context) -> IngredientLine:
    rest = text[len(_USING) :]
    try:
        line = read_line(rest.strip(), at, context)
    except Misread as problem:
        raise problem.moved(len(text) - len(rest.lstrip())) from problem
    if not isinstance(line, IngredientLine) or line.amount is None:
        raise _no_batch(text)
    return line


def _pieces(text: str, context: Context, makes: Makes | None) -> Pieces | None:
    """'24 cupcakes', '24 rolls of 60 g', '1.2 kg' as 1,200; None where a tin is meant."""
    grams = weight_in(text, context.tables.measures)
    if grams is not None:
        if makes is not None and makes.noun:
            raise _no_batch(text, f"this recipe makes {makes.noun}: write '24 {makes.noun}'")
        return Pieces(grams, "")
    pieces = pieces_in(text, context.tables.measures)
    if pieces is None or not NOUN.fullmatch(pieces.noun):
        return None
    if makes is not None and is_same_noun(pieces.noun, makes.noun):
        return _held_against(pieces, makes, text)
    if _names_a_tin(text, pieces.noun, context):
        return None
    if makes is not None:
        made = f"{makes.noun}: write '24 {makes.noun}'" if makes.noun else "a weight: write '500 g' or 'half'"
        raise _no_batch(text, f"this recipe makes {made}")
    return pieces


def _held_against(pieces: Pieces, makes: Makes, text: str) -> Pieces:
    """The pieces, where the recipe says what its own weigh. Raises Misread."""
    if pieces.each is not None and makes.piece is None:
        raise _no_batch(text, f"let the recipe say what one weighs: `makes: 12 {makes.noun} of 85 g dough`")
    return pieces


def _names_a_tin(text: str, noun: str, context: Context) -> bool:
    """Whether the words after a number begin with a unit, or are those of a tin."""
    tables = context.tables
    is_size = tables.measures.unit_named(noun.partition(" ")[0]) is not None
    return is_size or bool(tables.tins.shape_written(noun) or tables.tins.tin_named(text))


def _tin(text: str, at: Place, context: Context) -> Tin:
    try:
        return read_tin(text, at, context)
    except Misread as problem:
        has_size = any(letter.isdigit() for letter in text)
        raise _no_batch(text, problem.way_out if has_size else _PLAIN_WORDS) from problem


def _no_batch(text: str, way_out: str = _PLAIN_WORDS) -> Misread:
    return Misread(BATCH, f"'{text}' is no batch of this recipe", way_out, 0, max(len(text), 1))
