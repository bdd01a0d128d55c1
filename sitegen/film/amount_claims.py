"""Amounts and counts of ingredients as said, held against the lines of the recipe."""

from collections.abc import Iterator, Sequence
from fractions import Fraction

from sitegen.film.amount_distance import line_at, name_of, offs_by, times_by
from sitegen.film.attribution import IMPLIED_GRAMS, Attributed
from sitegen.film.figures import amount_text
from sitegen.film.marks import NOT_THIS_BAKE, About
from sitegen.film.names import LineKey, Mention
from sitegen.film.repairs import FAR_REPAIR
from sitegen.film.scene import Scene
from sitegen.film.spoken_amounts import Said
from sitegen.film.values import Finding, FindingKind
from sitegen.kitchen.amounts import Amount
from sitegen.kitchen.recipe import IngredientLine

FAR_FOR = 3
MANY = 6
"""Of as many of a thing, one is said of one piece of the bake."""
MOST_TIMES = Fraction(3)
"""Who has said an amount right, speaks of other bakes next or works at another step means something else by
so many times it."""
DOUBTFUL = Fraction(2)
"""So many times the tolerance is doubtful between units, and certain beyond."""


def amount_findings(scene: Scene, said: Sequence[Attributed]) -> Iterator[Finding]:
    """Every amount or count that differs from all lines which it can be of."""
    for one in said:
        if one.amount.what not in (Said.MEASURE, Said.BARE) or one.mention is None or one.amount.is_part:
            continue
        if scene.about_in_clause(one.amount.begin) & NOT_THIS_BAKE or not one.mention.name.lines:
            continue
        if (one.mention.name.doubtful and not one.sure) or _is_of_a_piece(scene, one, one.mention):
            continue
        if _is_more(scene, one, one.mention):
            continue
        finding = _finding(scene, one, one.mention, said)
        if finding is not None:
            yield finding


def _finding(scene: Scene, one: Attributed, mention: Mention, said: Sequence[Attributed]) -> Finding | None:
    here, there = candidates(scene, one.amount.begin, mention)
    spoken = tuple(Amount(part.span, part.unit) for part in one.parts)
    amounts = _implied(scene, spoken, [*here, *there])
    if amounts is None:
        return None
    offs_here = offs_by(scene, amounts, here, one)
    offs_there = offs_by(scene, amounts, there, one)
    if any(off <= 1 for off in offs_here.values()) or not (offs_here or offs_there):
        return None
    if any(
        line_at(scene, key).amount is None for key in here if isinstance(line_at(scene, key), IngredientLine)
    ):
        return None
    is_elsewhere = any(off <= 1 for off in offs_there.values())
    speaks_of_others = bool(
        scene.about(one.amount.begin) & (About.AHEAD | About.BACK | About.LISTING | About.LIST)
    )
    if is_elsewhere and (speaks_of_others or not offs_here):
        return None
    offs = offs_here or offs_there
    key = min(offs, key=lambda key: offs[key])
    line = line_at(scene, key)
    again = _said_right(scene, key, one, said)
    is_doubted = again is not None or scene.is_doubted(one.amount.begin)
    if again is not None and 0 < again.amount.begin - one.amount.end <= FAR_REPAIR:
        return None
    is_far = not _is_in_hand(scene, one, key)
    if (is_far and is_doubted) or ((is_far or is_doubted) and times_by(scene, amounts, key) > MOST_TIMES):
        return None
    certain = (
        one.sure
        and not is_doubted
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
    return any(off <= 1 for off in offs_by(scene, amounts, [key], one).values())


def _said_right(scene: Scene, key: LineKey, one: Attributed, said: Sequence[Attributed]) -> Attributed | None:
    """Where the amount of a line is said as written, before another of it or as a repair of that."""
    for other in said:
        gap = other.amount.begin - one.amount.end
        if gap > FAR_REPAIR:
            return None
        is_of_line = key in other.mention.name.lines if other.mention is not None else gap > 0
        units = {one.amount.unit, other.amount.unit}
        is_of_line = is_of_line and (gap < 0 or len(units - {""}) < 2)
        if other is one or not is_of_line or other.amount.is_part:
            continue
        if not scene.about(other.amount.begin) and fits(scene, other, key):
            return other
    return None


def _is_in_hand(scene: Scene, one: Attributed, key: LineKey) -> bool:
    """Whether the step in hand, or the next, uses a line."""
    return any(
        step.component == key[0] and any(reference.line == key[1] for reference in step.step.references)
        for step in scene.steps_about(one.amount.begin)
    )


def _is_more(scene: Scene, one: Attributed, mention: Mention) -> bool:
    """'another tablespoon of flour', 'thirty more grams': beside what the line has."""
    words = scene.words[max(0, one.amount.begin - 1) : mention.begin]
    return not scene.known.more.isdisjoint(words)


def _is_of_a_piece(scene: Scene, one: Attributed, mention: Mention) -> bool:
    """'fifty grams each', 'one blackcurrant to finish': what a piece weighs or has is no amount of a line."""
    is_one = len(one.parts) == 1 and one.amount.what is Said.BARE and one.amount.span.high == 1
    counts = [line.amount for key in mention.name.lines if (line := line_at(scene, key)).amount is not None]
    if is_one and any(amount.unit == "" and amount.span.low >= MANY for amount in counts):
        return True
    ends = {one.parts[-1].end, mention.end}
    return any(scene.words[end : end + 1] in (("each",), ("apiece",)) for end in ends)


def candidates(scene: Scene, word: int, mention: Mention) -> tuple[list[LineKey], list[LineKey]]:
    """The lines that a name can mean: those of the component in hand, and the others.

    A whole name means its own lines where the component in hand has one of them.
    """
    lines, full = mention.name.lines, mention.name.full
    in_hand = [*_said_to_be_for(scene, mention), *(step.component for step in scene.steps_about(word))]
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
    units = {line.amount.unit for key in keys if (line := line_at(scene, key)).amount is not None}
    if "" in units:
        return amounts
    measures = scene.tables.measures
    if amounts[0].span.low >= IMPLIED_GRAMS and any(measures.is_weight(unit) for unit in units):
        return (Amount(amounts[0].span, "g"),)
    return None
