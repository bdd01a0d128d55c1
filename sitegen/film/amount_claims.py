"""Amounts and counts of ingredients as said, held against the lines of the recipe."""

from collections.abc import Iterable, Iterator, Sequence
from fractions import Fraction

from sitegen.film.attribution import IMPLIED_GRAMS, Attributed
from sitegen.film.figures import amount_text
from sitegen.film.marks import NOT_THIS_BAKE, About
from sitegen.film.names import LineKey, Mention
from sitegen.film.scene import Scene
from sitegen.film.spoken_amounts import Said
from sitegen.film.values import Finding, FindingKind
from sitegen.kitchen.amounts import Amount, Span
from sitegen.kitchen.recipe import IngredientLine, Line
from sitegen.kitchen.weighing import grams_of

SAME_UNIT = Fraction(1, 200)
"""Of a weight said and written in metric: what rounding to a whole gram leaves of a large amount."""
OTHER_UNIT = Fraction(6, 100)
"""Between units: cups within 3 %, ounces to a quarter, and how a cup is filled (sheet's own rules)."""
ABOUT = Fraction(8, 100)
"""Of a figure that is said as about right."""
QUARTER_OUNCE_G, HALF_GRAM = Fraction(4), Fraction(1, 2)
FAR_FOR = 3
DOUBTFUL = Fraction(2)
"""So many times the tolerance is doubtful between units, and certain beyond."""


def amount_findings(scene: Scene, said: Sequence[Attributed]) -> Iterator[Finding]:
    """Every amount or count that differs from all lines which it can be of."""
    for one in said:
        if one.amount.what not in (Said.MEASURE, Said.BARE) or one.mention is None or one.amount.is_part:
            continue
        if scene.about(one.amount.begin) & NOT_THIS_BAKE or not one.mention.name.lines:
            continue
        if (one.mention.name.doubtful and not one.sure) or _is_of_a_piece(scene, one, one.mention):
            continue
        finding = _finding(scene, one, one.mention)
        if finding is not None:
            yield finding


def _finding(scene: Scene, one: Attributed, mention: Mention) -> Finding | None:
    here, there = candidates(scene, one.amount.begin, mention)
    spoken = tuple(Amount(part.span, part.unit) for part in one.parts)
    amounts = _implied(scene, spoken, [*here, *there])
    if amounts is None:
        return None
    offs_here = _offs(scene, amounts, here, one)
    offs_there = _offs(scene, amounts, there, one)
    if any(off <= 1 for off in offs_here.values()) or not (offs_here or offs_there):
        return None
    if any(_line(scene, key).amount is None for key in here if isinstance(_line(scene, key), IngredientLine)):
        return None
    is_elsewhere = any(off <= 1 for off in offs_there.values())
    speaks_of_others = bool(
        scene.about(one.amount.begin) & (About.AHEAD | About.BACK | About.LISTING | About.LIST)
    )
    if is_elsewhere and (speaks_of_others or not offs_here):
        return None
    offs = offs_here or offs_there
    key = min(offs, key=lambda key: offs[key])
    line = _line(scene, key)
    certain = (
        one.sure
        and not is_elsewhere
        and (len(offs) == 1 or key in mention.name.full)
        and offs[key] > DOUBTFUL
        and not (speaks_of_others and not offs_here)
    )
    count = line.amount is not None and line.amount.unit == "" and amounts[0].unit == ""
    return Finding(
        kind=FindingKind.COUNT if count else FindingKind.AMOUNT,
        about=name_of(line),
        moment_s=scene.second(one.amount.begin),
        said=" + ".join(map(amount_text, amounts)),
        written=amount_text(line.amount) if line.amount else "",
        certain=certain,
        at=line.at,
    )


def fits(scene: Scene, one: Attributed, key: LineKey) -> bool:
    """Whether an amount as said is that of a line, or of a part of it."""
    amounts = tuple(Amount(part.span, part.unit) for part in one.parts)
    return any(off <= 1 for off in _offs(scene, amounts, [key], one).values())


def _is_of_a_piece(scene: Scene, one: Attributed, mention: Mention) -> bool:
    """'fifty grams each': what a piece weighs is no amount of a line."""
    ends = {one.parts[-1].end, mention.end}
    return any(scene.words[end : end + 1] in (("each",), ("apiece",)) for end in ends)


def candidates(scene: Scene, word: int, mention: Mention) -> tuple[list[LineKey], list[LineKey]]:
    """The lines that a name can mean: those of the component in hand, and the others.

    A whole name means its own lines where the component in hand has one of them.
    """
    lines, full = mention.name.lines, mention.name.full
    steps = (scene.step_at(word), scene.next_step(word))
    in_hand = [*_said_to_be_for(scene, mention), *(step.component for step in steps if step is not None)]
    for number in in_hand:
        here = [key for key in sorted(lines) if key[0] == number]
        whole = [key for key in here if key in full]
        if here:
            return whole or here, [key for key in sorted(lines) if key[0] != number]
    return [], sorted(full or lines)


def _said_to_be_for(scene: Scene, mention: Mention) -> Iterator[int]:
    """The component for which an amount is said to be: 'four teaspoons of juice for the icing'."""
    titles = [component.title for component in scene.recipe.components]
    for other in scene.mentions_from(mention.end)[:1]:
        between = scene.words[mention.end : other.begin]
        if len(between) <= FAR_FOR and between[:1] == ("for",) and other.name.components:
            yield from (titles.index(title) for title in sorted(other.name.components) if title in titles)


def _implied(scene: Scene, amounts: tuple[Amount, ...], keys: Sequence[LineKey]) -> tuple[Amount, ...] | None:
    """The amounts with the unit that a bare figure leaves out; None for a figure that is no amount."""
    if amounts[0].unit:
        return amounts
    units = {line.amount.unit for key in keys if (line := _line(scene, key)).amount is not None}
    if "" in units:
        return amounts
    measures = scene.tables.measures
    if amounts[0].span.low >= IMPLIED_GRAMS and any(measures.is_weight(unit) for unit in units):
        return (Amount(amounts[0].span, "g"),)
    return None


def _offs(
    scene: Scene, amounts: tuple[Amount, ...], keys: Sequence[LineKey], one: Attributed
) -> dict[LineKey, Fraction]:
    """Line -> how far the amount is off, in tolerances; lines that it cannot be held against are left out."""
    found = {}
    for key in keys:
        offs = [
            off
            for amount in _written(scene, key)
            if (off := off_by(scene, amounts, amount, key, one.amount.is_about)) is not None
        ]
        if offs:
            found[key] = min(offs)
    return found


def _written(scene: Scene, key: LineKey) -> Iterator[Amount]:
    """The amount of a line, and those of its parts that steps take."""
    line = _line(scene, key)
    if line.amount is None:
        return
    yield line.amount
    for step in scene.recipe.components[key[0]].steps:
        for reference in step.references:
            if reference.line == key[1] and reference.amount is not None:
                yield reference.amount
            elif reference.line == key[1] and 0 < reference.share < 1:
                yield Amount(line.amount.span.times(reference.share), line.amount.unit)


def off_by(
    scene: Scene, amounts: tuple[Amount, ...], written: Amount, key: LineKey, is_about: bool
) -> Fraction | None:
    """How far an amount as said is off one as written, in tolerances; None where they cannot be compared."""
    if len(amounts) == 1 and amounts[0].unit == written.unit:
        return _off(amounts[0].span, written.span, ABOUT if is_about else SAME_UNIT, Fraction(0))
    line = _line(scene, key)
    grams = _grams(scene, written, line)
    offs = []
    for edition in scene.tables.editions.values():
        spans = [_grams_in(scene, amount, line, edition.key) for amount in amounts]
        if grams is None or any(span is None for span in spans):
            continue
        total = Span(_sum(span.low for span in spans if span), _sum(span.high for span in spans if span))
        share = SAME_UNIT if _are_metric(amounts, written) else OTHER_UNIT
        least = QUARTER_OUNCE_G if amounts[0].unit in ("oz", "lb") else HALF_GRAM
        offs.append(_off(total, grams, ABOUT if is_about else share, least))
    return min(offs, default=None)


def _sum(figures: Iterable[Fraction]) -> Fraction:
    return sum(figures, Fraction(0))


def _are_metric(amounts: tuple[Amount, ...], written: Amount) -> bool:
    return all(amount.unit in ("g", "kg") for amount in (*amounts, written))


def _off(said: Span, written: Span, share: Fraction, least: Fraction) -> Fraction:
    """0 where one lies in the other; else how far apart they are, in tolerances, over 1 where it counts."""
    if written.low <= said.low and said.high <= written.high:
        return Fraction(0)
    apart = max(abs(said.low - written.low), abs(said.high - written.high))
    tolerance = max(share * written.high, least)
    return apart / tolerance if tolerance else Fraction(99)


def _grams(scene: Scene, amount: Amount, line: Line) -> Span | None:
    return _grams_in(scene, amount, line, scene.written.key)


def _grams_in(scene: Scene, amount: Amount, line: Line, edition: str) -> Span | None:
    if not isinstance(line, IngredientLine):
        measures = scene.tables.measures
        return measures.grams(amount) if measures.is_weight(amount.unit) else None
    row = scene.tables.larder.find(line.chosen.ingredient) if line.chosen.ingredient else None
    return grams_of(amount, line.chosen, row, scene.tables.editions[edition], scene.tables)


def _line(scene: Scene, key: LineKey) -> Line:
    return scene.recipe.components[key[0]].lines[key[1]]


def name_of(line: Line) -> str:
    """What a line is of, as written."""
    return line.chosen.name if isinstance(line, IngredientLine) else line.source
