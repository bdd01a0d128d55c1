"""What an amount of an ingredient weighs, by whichever way it is measured."""

from dataclasses import dataclass

from sitegen.kitchen.amounts import Amount, Span
from sitegen.kitchen.editions import Edition
from sitegen.kitchen.eggs import UnknownEggSize, edible_grams
from sitegen.kitchen.larder import Ingredient
from sitegen.kitchen.recipe import Choice, IngredientLine
from sitegen.kitchen.tables import Tables

USUAL_SIZE = "medium"
HENS_EGG = "egg"


@dataclass(frozen=True)
class Scales:
    """The scales of the kitchen that recipes are written in. written: for its spoons, cups and eggs."""

    tables: Tables
    written: Edition

    def row(self, choice: Choice) -> Ingredient | None:
        """The larder's row of an ingredient, or None where the larder has none."""
        return self.tables.larder.find(choice.ingredient) if choice.ingredient else None

    def grams(self, line: IngredientLine) -> Span | None:
        """What a line weighs as written, grams, exact; None where it cannot be known."""
        return self.weigh(line.amount, line.chosen)

    def weigh(self, amount: Amount | None, choice: Choice) -> Span | None:
        """What an amount of an ingredient weighs, as `grams_of` says."""
        return grams_of(amount, choice, self.row(choice), self.written, self.tables)


def grams_of(
    amount: Amount | None, choice: Choice, ingredient: Ingredient | None, edition: Edition, tables: Tables
) -> Span | None:
    """The weight of an amount in grams, exact; None where it cannot be known.

    amount: as written; None weighs nothing that is known. choice: for its size and part. ingredient: its
    row in the larder. edition: the one the recipe is written in (its spoons, cups and eggs).
    Weights as they are; volumes by the density of the edition's method; hen's eggs by the egg table; other
    counts, leaves and packets by the larder's pieces.
    """
    if amount is None:
        return None
    if tables.measures.is_weight(amount.unit):
        return tables.measures.grams(amount)
    if ingredient is None:
        return None
    if tables.measures.is_volume(amount.unit):
        return _volume_grams(amount, choice, ingredient, edition, tables)
    if amount.unit == "" and is_hens_egg(ingredient):
        return _egg_grams(amount, choice, ingredient, edition, tables)
    return _piece_grams(amount, choice, ingredient)


def is_hens_egg(ingredient: Ingredient) -> bool:
    """Whether it is weighed by the egg table: 'egg', 'egg white', 'egg yolk', not 'duck egg'."""
    return "egg" in ingredient.roles and ingredient.key.split(" ")[0] == HENS_EGG


def egg_part(choice: Choice, ingredient: Ingredient) -> str:
    """Which part of an egg is meant: 'white', 'yolk', or '' for the whole."""
    if choice.part:
        return choice.part
    return next((part for part in ("white", "yolk") if part in ingredient.key), "")


def _volume_grams(
    amount: Amount, choice: Choice, ingredient: Ingredient, edition: Edition, tables: Tables
) -> Span | None:
    """By the density of the edition's way to fill a cup, which is the whole thing's: zest has another."""
    density = ingredient.density_by(edition.cup_fill)
    if density is None or choice.part:
        return None
    return tables.measures.millilitres(amount, edition).times(density.grams_per_ml)


def _egg_grams(
    amount: Amount, choice: Choice, ingredient: Ingredient, edition: Edition, tables: Tables
) -> Span | None:
    size = choice.size or edition.egg_size
    try:
        one = edible_grams(tables.eggs, edition.egg_region, size, egg_part(choice, ingredient))
    except UnknownEggSize:
        return None
    return amount.span.times(one)


def _piece_grams(amount: Amount, choice: Choice, ingredient: Ingredient) -> Span | None:
    """By a piece of the written size, or of the unit's name ('leaf', 'packet'), or of the usual size."""
    piece = ingredient.piece(choice.size or amount.unit, choice.part)
    if piece is None and not choice.size and not amount.unit:
        piece = ingredient.piece(USUAL_SIZE, choice.part)
    return amount.span.times(piece.grams) if piece else None
