"""How many pieces, or how much, the recipe is said to make."""

from collections.abc import Iterator, Sequence
from fractions import Fraction

from sitegen.film.amount_distance import ABOUT, SAME_UNIT
from sitegen.film.attribution import Attributed
from sitegen.film.figures import amount_text, number_text, span_text
from sitegen.film.marks import NOT_THIS_BAKE, About
from sitegen.film.scene import Scene
from sitegen.film.spoken_amounts import Said, SpokenAmount
from sitegen.film.stems import stem
from sitegen.film.values import Finding, FindingKind
from sitegen.film.words import tokens
from sitegen.kitchen.amounts import Amount, single

EACH = frozenset({"each", "apiece", "per"})
"""'Two bites each' is what a guest gets, or a piece."""
FAR_MAKING = 7
"""Words between 'makes' and how many."""
MORE_BY_FAR = Fraction(5, 4)
"""A number said as about right is certainly another from here on."""


def yield_findings(scene: Scene, said: Sequence[Attributed]) -> Iterator[Finding]:
    """'You will get sixteen slices from that', 'it makes nine hundred grams', where the recipe makes another
    number, or weight.
    """
    last = 0
    for one in said:
        amount = one.amount
        if not scene.about_in_clause(amount.begin) & (NOT_THIS_BAKE | About.BACK):
            is_counted = bool(scene.recipe.makes.noun)
            finding = _counted(scene, amount) if is_counted else _weighed(scene, one, last)
            if finding is not None:
                yield finding
        last = amount.end


def _counted(scene: Scene, amount: SpokenAmount) -> Finding | None:
    makes, tin = scene.recipe.makes, scene.recipe.tin
    nouns = {stem(word) for word in tokens(makes.noun)[-1:]}
    if amount.what is not Said.BARE or amount.is_part or amount.span.low < 2:
        return None
    behind = scene.norms[amount.end : amount.end + 3]
    if not nouns.intersection(behind) or not EACH.isdisjoint(behind):
        return None
    begin = amount.begin - FAR_MAKING
    if not any(
        words.any_in(scene.words, begin, amount.begin) for words in (scene.known.making, scene.known.has)
    ):
        return None
    if amount.span.low <= makes.count <= amount.span.high or (
        tin and amount.span.low == tin.holes * tin.number
    ):
        return None
    return Finding(
        kind=FindingKind.COUNT,
        about=makes.noun,
        moment_s=scene.second(amount.begin),
        said=f"{span_text(amount.span)} {makes.noun}",
        written=f"{number_text(makes.count)} {makes.noun}",
        certain=not amount.is_about or amount.span.low > makes.count * MORE_BY_FAR,
        at=makes.at,
    )


def _weighed(scene: Scene, one: Attributed, last: int) -> Finding | None:
    """last: the end of the figure before it: 'makes twelve buns with fifty grams to spare' is no yield."""
    amount, makes, measures = one.amount, scene.recipe.makes, scene.tables.measures
    if amount.what is not Said.MEASURE or not measures.is_weight(amount.unit):
        return None
    if one.mention is not None and (one.mention.name.lines or one.mention.name.row):
        return None
    if not scene.known.making.any_in(scene.words, max(last, amount.begin - FAR_MAKING), amount.begin):
        return None
    grams = measures.grams(Amount(amount.span, amount.unit))
    slack = makes.count * (ABOUT if amount.is_about else SAME_UNIT)
    if grams.low - slack <= makes.count <= grams.high + slack:
        return None
    return Finding(
        kind=FindingKind.AMOUNT,
        about=scene.recipe.title,
        moment_s=scene.second(amount.begin),
        said=amount_text(Amount(amount.span, amount.unit)),
        written=amount_text(Amount(single(makes.count), "g")),
        certain=True,
        at=makes.at,
    )
