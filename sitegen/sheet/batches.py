"""Which batches a page offers, and what they are called."""

import re
from fractions import Fraction

from sitegen.kitchen.amounts import single
from sitegen.kitchen.pieces import wanted_piece
from sitegen.kitchen.recipe import BatchAsk, BatchKind, Makes, PieceWeight, Recipe, Tin
from sitegen.sheet.amounts import NO_BREAK, fraction_text, grams_text
from sitegen.sheet.setting import Setting
from sitegen.sheet.tin_words import tin_text
from sitegen.sheet.values import BatchLabel

HALF = BatchAsk(BatchKind.TIMES, times=Fraction(1, 2))
DOUBLE = BatchAsk(BatchKind.TIMES, times=Fraction(2))
TIMES_WORDS = {
    Fraction(1, 2): "half the recipe",
    Fraction(2): "double the recipe",
    Fraction(3): "three times the recipe",
    Fraction(3, 2): "one and a half times the recipe",
}
IRREGULAR_PLURALS = {"loaf": "loaves"}
FEW = 3
"""Below so many pieces a half of one is still a figure to bake by: '1½ loaves'."""


def offered(recipe: Recipe) -> tuple[BatchAsk | None, ...]:
    """The batches of a recipe's page: the tested one first (None), then the baker's, else half and double."""
    return (None, *(recipe.batches or (HALF, DOUBLE)))


def counted(makes: Makes, count: Fraction, each: PieceWeight | None = None) -> str:
    """A yield in words: '24 cupcakes', '1 loaf', '2 loaves', '900 g', '12 rolls of 85 g dough'.

    count: of the recipe's own noun, or grams for a recipe that makes a weight. each: what one weighs, where
    that is another weight than the recipe's own. Of many pieces nobody counts a part: 16.8 is 'about 17'.
    """
    if not makes.noun:
        return grams_text_of(count)
    noun = makes.noun
    if makes.count <= 1 < count:
        noun = plural(noun)
    if makes.count > 1 >= count:
        noun = singular(noun)
    piece = wanted_piece(each, makes)
    of = f" of {grams_text_of(piece.grams)} {piece.weighed}".rstrip() if piece else ""
    is_whole = count.denominator == 1 or count < FEW
    number = fraction_text(count) if is_whole else f"about {round(count)}"
    return f"{number}{NO_BREAK}{noun}{of}"


def grams_text_of(grams: Fraction) -> str:
    """One weight as text, to the gram."""
    return grams_text(single(Fraction(round(grams))))


def about_grams(grams: Fraction) -> Fraction:
    """A weight that is said with 'about': to 5 g below 250 g, to 10 below 1 kg, to 50 above."""
    step = 5 if grams < 250 else 10 if grams < 1000 else 50
    return Fraction(round(grams / step) * step)


def plural(noun: str) -> str:
    """The last word of a noun phrase made plural: 'loaf' -> 'loaves', 'layer cake' -> 'layer cakes'."""
    head, _, last = noun.rpartition(" ")
    if last in IRREGULAR_PLURALS:
        last = IRREGULAR_PLURALS[last]
    elif re.search(r"(s|x|ch|sh)$", last):
        last += "es"
    else:
        last += "s"
    return f"{head} {last}".strip()


def singular(noun: str) -> str:
    """The last word of a noun phrase made singular: 'cupcakes' -> 'cupcake'."""
    for one, many in IRREGULAR_PLURALS.items():
        if noun.endswith(many):
            return noun.removesuffix(many) + one
    return re.sub(r"(?<=x|h)es$|(?<!s)s$", "", noun)


def batch_label(ask: BatchAsk | None, recipe: Recipe, made: Fraction, setting: Setting) -> BatchLabel:
    """What a batch is called, and its key in addresses.

    made: the count (or grams) that the batch makes, exact.
    """
    tin = recipe.tin if ask is None else ask.tin
    title = _batch_title(ask, recipe, made, setting)
    return BatchLabel(
        _key(ask, title), title, is_tested=ask is None, tin=tin_text(tin, setting) if tin else ""
    )


def _batch_title(ask: BatchAsk | None, recipe: Recipe, made: Fraction, setting: Setting) -> str:
    if ask is None:
        return setting.respelled(counted(recipe.makes, recipe.makes.count))
    if ask.kind is BatchKind.TIN and ask.tin is not None:
        return f"for {tin_text(ask.tin, setting)}"
    if made.denominator == 1 or not recipe.makes.noun:
        return setting.respelled(counted(recipe.makes, made, ask.each))
    factor = made / recipe.makes.count
    return TIMES_WORDS.get(factor, f"{fraction_text(factor)} times the recipe")


def _key(ask: BatchAsk | None, title: str) -> str:
    if ask is not None and ask.tin is not None:
        return _tin_key(ask.tin)
    plain = (
        title.replace("½", "-and-a-half").replace("¼", "-and-a-quarter").replace("¾", "-and-three-quarters")
    )
    return re.sub(r"[^a-z0-9]+", "-", plain.casefold()).strip("-")


def _tin_key(tin: Tin) -> str:
    """The same key in every edition: by shape and inside measure, to the centimetre."""
    size = f"{round(tin.width_cm)}"
    if tin.length_cm != tin.width_cm:
        size = f"{round(tin.length_cm)}x{size}"
    number = f"{tin.number}x" if tin.number > 1 else ""
    holes = f"{tin.holes}-holes-" if tin.holes > 1 else ""
    return f"{number}{holes}{size}cm-{tin.shape}"
