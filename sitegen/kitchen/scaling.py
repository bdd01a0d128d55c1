"""How much of a recipe is made: a factor from a count, a tin, a number of times, or what is in hand.

A recipe is scaled as one: every amount takes the same factor, and a factor taken twice is their product.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from enum import StrEnum
from fractions import Fraction

from sitegen.kitchen.amounts import Span, single
from sitegen.kitchen.balances import BalanceTable
from sitegen.kitchen.editions import Edition
from sitegen.kitchen.eggs import EGG_PARTS
from sitegen.kitchen.pieces import dough_in_piece_g, loss_of_recipe, wanted_piece
from sitegen.kitchen.recipe import BatchAsk, BatchKind, Choice, Makes, PartLine, Recipe, Tin
from sitegen.kitchen.tables import Tables
from sitegen.kitchen.tin_scaling import TinRule, tin_scale, written_fill
from sitegen.kitchen.tins import NoCapacity, vessels
from sitegen.kitchen.weighing import Scales

LARGEST, SMALLEST = Fraction(1000), Fraction(1, 1000)
SAME = Fraction(1)


class WhyNot(StrEnum):
    """Why a batch cannot be made."""

    NOTHING_ASKED = "nothing-asked"
    NOT_ABOVE_ZERO = "not-above-zero"
    ABSURD = "absurd"
    NO_TIN = "no-tin"
    NO_CAPACITY = "no-capacity"
    NOT_IN_RECIPE = "not-in-recipe"
    NO_WEIGHT = "no-weight"
    NO_PIECE_WEIGHT = "no-piece-weight"
    NO_BAKE_LOSS = "no-bake-loss"


@dataclass(eq=False)
class CannotScale(Exception):
    """A batch that the recipe cannot give.

    subject: the ingredient, tin shape or recipe title that it is about. factor: where one was worked out.
    """

    reason: WhyNot
    subject: str
    factor: Fraction | None = None


@dataclass(frozen=True)
class Batch:
    """How much is made.

    ask: as asked; None for the tested batch. factor: of the recipe as written, exact.
    makes: the count of the recipe's noun (grams for a yield by weight), exact.
    tin: the one asked for, in the tested batch the recipe's own; None where the recipe's own is filled
    `factor` times. depth_ratio: depth of batter, new to tested. tin_rule: what another tin was scaled by;
    None where no other tin was asked for.
    """

    ask: BatchAsk | None
    factor: Fraction
    makes: Fraction
    tin: Tin | None
    depth_ratio: Fraction
    tin_rule: TinRule | None = None


def tested_batch(recipe: Recipe) -> Batch:
    """The batch as written."""
    return Batch(None, SAME, recipe.makes.count, recipe.tin, SAME)


def batch_of(
    ask: BatchAsk, recipe: Recipe, bases: Mapping[str, Recipe], tables: Tables, written: Edition
) -> Batch:
    """The batch that is asked for.

    bases: recipes by title, for an ask that uses up a base recipe. written: the edition that the recipe
    files are written in. A tin that the recipe as written fills to within a tenth is not scaled for.
    Raises CannotScale.
    """
    if ask.kind is BatchKind.TIN:
        return _for_tin(ask, recipe, tables)
    if ask.kind is BatchKind.USING:
        factor = _using_factor(ask, recipe, bases, Scales(tables, written))
    else:
        factor = _counted_factor(ask, recipe, tables.balances)
    makes = ask.makes if ask.makes is not None else recipe.makes.count * factor
    return Batch(ask, _sound(factor, recipe.title), makes, None, SAME)


def _counted_factor(ask: BatchAsk, recipe: Recipe, balances: BalanceTable) -> Fraction:
    if ask.kind is BatchKind.MAKES and ask.makes is not None:
        return ask.makes / recipe.makes.count * _heavier(ask, recipe, balances)
    if ask.kind is BatchKind.TIMES and ask.times is not None:
        return ask.times
    raise CannotScale(WhyNot.NOTHING_ASKED, recipe.title)


def _heavier(ask: BatchAsk, recipe: Recipe, balances: BalanceTable) -> Fraction:
    """How much more dough a piece is to have than the recipe's own; what sticks to the bowl grows with it."""
    wanted, own = wanted_piece(ask.each, recipe.makes), recipe.makes.piece
    if ask.each is None:
        return SAME
    if wanted is None or own is None:
        raise CannotScale(WhyNot.NO_PIECE_WEIGHT, recipe.makes.noun)
    if wanted.weighed == own.weighed:
        return wanted.grams / own.grams
    loss = loss_of_recipe(recipe, balances)
    wanted_g, own_g = dough_in_piece_g(wanted, loss), dough_in_piece_g(own, loss)
    if wanted_g is None or own_g is None:
        raise CannotScale(WhyNot.NO_BAKE_LOSS, recipe.makes.noun)
    return wanted_g / own_g


def _sound(factor: Fraction, subject: str) -> Fraction:
    """The factor, where somebody could mean it. Raises CannotScale."""
    if factor <= 0:
        raise CannotScale(WhyNot.NOT_ABOVE_ZERO, subject, factor)
    if not SMALLEST <= factor <= LARGEST:
        raise CannotScale(WhyNot.ABSURD, subject, factor)
    return factor


def _for_tin(ask: BatchAsk, recipe: Recipe, tables: Tables) -> Batch:
    """Another tin, by area or by capacity; one of nearly the same size takes the recipe as it is."""
    tested, wanted = recipe.tin, ask.tin
    if tested is None or wanted is None:
        raise CannotScale(WhyNot.NO_TIN, recipe.title)
    try:
        scale = tin_scale(tested, wanted, written_fill(recipe), tables.tins)
    except NoCapacity as no:
        raise CannotScale(WhyNot.NO_CAPACITY, no.shape) from no
    factor = _sound(scale.factor, wanted.shape)
    makes = _makes_in(wanted, recipe.makes, tested, factor)
    return Batch(ask, factor, makes, wanted, scale.depth_ratio, scale.rule)


def _makes_in(wanted: Tin, makes: Makes, tested: Tin, factor: Fraction) -> Fraction:
    """What comes out of other tins.

    A yield by weight goes by the factor. One piece a tin or hole (or several loads of them) goes by their
    number; one cake out of several tins stays one cake; of portions cut from a tin there are as many as
    its size gives, a whole number and at least one. Source: common practice.
    """
    each = makes.count / vessels(tested)
    if not makes.noun:
        return makes.count * factor
    if each < 1:
        return makes.count
    if each == 1 or tested.holes > 1:
        return each * vessels(wanted)
    return Fraction(max(round(makes.count * factor), 1))


def _using_factor(ask: BatchAsk, recipe: Recipe, bases: Mapping[str, Recipe], scales: Scales) -> Fraction:
    """What is in hand against all of it in the recipe's own components."""
    hand = ask.using
    if hand is None:
        raise CannotScale(WhyNot.NOTHING_ASKED, recipe.title)
    name = hand.chosen.name
    in_hand = scales.grams(hand)
    needed = list(_needs(hand.chosen, recipe, bases, scales))
    if not needed:
        raise CannotScale(WhyNot.NOT_IN_RECIPE, name)
    known = [span.middle for span in needed if span is not None]
    if in_hand is None or len(known) < len(needed) or not sum(known):
        raise CannotScale(WhyNot.NO_WEIGHT, name)
    return in_hand.middle / sum(known, Fraction(0))


def _needs(
    wanted: Choice, recipe: Recipe, bases: Mapping[str, Recipe], scales: Scales
) -> Iterator[Span | None]:
    """The weight of each line that takes of what is in hand; None for one that cannot be weighed."""
    for line in (line for component in recipe.components for line in component.lines):
        if isinstance(line, PartLine):
            if line.from_base and line.source.casefold() == wanted.name.casefold():
                yield _part_weight(line, bases, scales)
        elif line.amount is not None and _is_same(line.chosen, wanted):
            yield scales.grams(line)


def _part_weight(line: PartLine, bases: Mapping[str, Recipe], scales: Scales) -> Span | None:
    if line.amount is not None and scales.tables.measures.is_weight(line.amount.unit):
        return scales.tables.measures.grams(line.amount)
    base = bases.get(line.source)
    if base is None or base.makes.grams is None or line.share is None:
        return None
    return single(base.makes.grams).times(line.share)


def _is_same(one: Choice, other: Choice) -> bool:
    """Whether two choices are one ingredient: by the larder's key, else by name; egg parts kept apart.

    'egg whites' and 'eggs, whites only' are one.
    """
    return _key_and_part(one) == _key_and_part(other)


def _key_and_part(choice: Choice) -> tuple[str, str]:
    """The larder's key (else the name) and the part; an egg's part stands in the key, as in the larder."""
    if choice.ingredient and choice.part in EGG_PARTS:
        return f"{choice.ingredient} {choice.part}", ""
    return choice.ingredient or choice.name.casefold(), choice.part
