"""Dough by the piece: how much of it is wanted, how much flour that takes, and what comes out of the oven."""

from collections.abc import Iterable
from dataclasses import replace
from fractions import Fraction

from sitegen.kitchen.balances import DOUGH, BalanceTable, Kind
from sitegen.kitchen.part_weights import parts
from sitegen.kitchen.recipe import Component, Makes, PieceWeight, Recipe

BAKED = "baked"


def baking_loss(component: Component, becomes: Iterable[Component], kind: Kind | None) -> Fraction | None:
    """What of a dough goes off in baking, as a share; None where nobody knows.

    becomes: the components that take of it. As the baker says of it or of what it becomes, else the middle of
    what its kind loses. Source: common practice.
    """
    for one in (component, *becomes):
        if one.bake_loss is not None:
            return one.bake_loss
    return sum(kind.loses, Fraction(0)) / 2 if kind and kind.loses else None


def baked_g(dough_g: Fraction, loss: Fraction) -> Fraction:
    """What a dough weighs once baked and cooled, grams, exact. loss: as a share, 0 to under 1."""
    return dough_g * (1 - loss)


def loss_of_recipe(recipe: Recipe, balances: BalanceTable) -> Fraction | None:
    """What of a recipe's dough goes off in baking; None where it has no dough by kind, or several."""
    kinds = ((part, balances.kind(part.kind)) for part in recipe.components)
    doughs = [(part, kind) for part, kind in kinds if kind is not None and kind.family == DOUGH]
    if len(doughs) != 1:
        return None
    (dough, kind) = doughs[0]
    becomes = (part for part in recipe.components if dough.title in {line.source for line in parts(part)})
    return baking_loss(dough, becomes, kind)


def wanted_piece(each: PieceWeight | None, makes: Makes) -> PieceWeight | None:
    """The piece that is asked for, else the recipe's own; one that does not say so is weighed as that is."""
    if each is None or each.weighed:
        return each or makes.piece
    return replace(each, weighed=makes.weighed)


def dough_in_piece_g(piece: PieceWeight, loss: Fraction | None) -> Fraction | None:
    """What a piece weighs as dough, grams, exact; None where it is weighed baked and no loss is known.

    loss: in baking, None unknown. A weight that does not say which it is, is of dough.
    """
    if piece.weighed != BAKED:
        return piece.grams
    return piece.grams / (1 - loss) if loss is not None else None


def flour_for_pieces(
    pieces: Fraction, piece_g: Fraction, percentages: Fraction, sticks: Fraction
) -> Fraction:
    """The total flour for so many pieces of dough, grams, exact.

    piece_g: of dough, grams. percentages: the sum of all baker's percentages as a ratio (1.68 for 168 %).
    sticks: what stays on bowl, hands and table, 0.01 to 0.03. Source: common practice.
    """
    return pieces * piece_g / percentages * (1 + sticks)
