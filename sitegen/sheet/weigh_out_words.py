"""Weigh-out sheets: what each component takes, in grams, and who takes of it when it is made."""

from collections.abc import Iterator, Sequence
from math import ceil

from sitegen.kitchen.amounts import single
from sitegen.kitchen.eggs import NEARLY_NOTHING, edible_grams
from sitegen.kitchen.leftovers import leftovers
from sitegen.kitchen.recipe import IngredientLine, Line, PartLine
from sitegen.kitchen.rounding import rounded_grams
from sitegen.kitchen.weighing import egg_part, is_hens_egg
from sitegen.sheet.amounts import NO_BREAK, fraction_text, grams_text, share_text
from sitegen.sheet.asks import COUNT_UNITS, SPOON_UNITS
from sitegen.sheet.batches import about_grams
from sitegen.sheet.counted_eggs import egg_size
from sitegen.sheet.keeping_words import keeps_text
from sitegen.sheet.making import MadePart, Making
from sitegen.sheet.order_values import WeighLine, WeighOut
from sitegen.sheet.setting import Setting
from sitegen.sheet.values import SheetLine

LEAST_BESIDE_G = 5
"""Under it the weight of what is counted says nothing: a bay leaf."""
LEAST_LEFT_G = 1
COUNTER = "the counter"


def weigh_outs(making: Making, order_title: str) -> tuple[WeighOut, ...]:
    """A sheet for each component of an order that takes anything, in the order of work.

    making: of the order as one recipe. order_title: of its own component, which has no work of its own.
    """
    parts = [part for part in making.parts if part.made.base is not None]
    return tuple(_weigh_out(part, making, order_title) for part in parts if part.component.lines)


def product_of(part: MadePart) -> str:
    """The recipe that a component is part of; '' where its own title says so."""
    base = part.made.base
    return base.title if base is not None and base.title not in part.made.title else ""


def _weigh_out(part: MadePart, making: Making, order_title: str) -> WeighOut:
    setting, grams = making.setting, part.made.grams
    return WeighOut(
        title=setting.respelled(part.made.title),
        product=setting.respelled(product_of(part)),
        makes=f"about {grams_text(single(about_grams(grams)))}" if grams and part.is_mixed else "",
        lines=tuple(
            _weigh_line(line, printed, setting)
            for line, printed in zip(part.component.lines, part.printed.lines, strict=True)
        ),
        divided=_divided(part, making.parts, order_title, setting),
        left=_left(part, setting),
    )


def _left(part: MadePart, setting: Setting) -> str:
    """What nothing takes, and how long it keeps."""
    for left in leftovers([part.made]):
        if left.grams is None:
            text = f"about {fraction_text(left.share)} of the recipe for {left.title}"
        elif left.grams < LEAST_LEFT_G:
            return ""
        else:
            text = f"about {grams_text(single(about_grams(left.grams) or left.grams))} of {left.title}"
        keeps = keeps_text(part.component)
        return setting.respelled(f"{text}; keeps {keeps}" if keeps else text)
    return ""


def _divided(
    wanted: MadePart, parts: Sequence[MadePart], order_title: str, setting: Setting
) -> tuple[tuple[str, str], ...]:
    """How a component is weighed out to those that take of it; nothing where only one does."""
    if len(wanted.made.needed_by) < 2:
        return ()
    return tuple(
        (amount, setting.respelled(COUNTER if user.made.title == order_title else _user(user)))
        for user in parts
        for amount in _taken(wanted, user)
    )


def _user(part: MadePart) -> str:
    """'Finish (Iced buns)': a component and the product that it is part of."""
    product = product_of(part)
    return f"{part.made.title} ({product})" if product else part.made.title


def _taken(wanted: MadePart, user: MadePart) -> Iterator[str]:
    for line, grams in zip(user.made.component.lines, user.made.line_grams, strict=True):
        if isinstance(line, PartLine) and user.made.calls.get(line.source) == wanted.made.title:
            if grams is not None:
                yield grams_text(single(rounded_grams(grams, fine=False)))
            else:
                yield share_text(line.share) if line.share else ""


def _weigh_line(line: Line, printed: SheetLine, setting: Setting) -> WeighLine:
    amount, beside = (
        (_part_amount(printed), "") if isinstance(line, PartLine) else _amount(line, printed, setting)
    )
    return WeighLine(
        amount=amount,
        name=printed.name,
        beside=beside,
        others=printed.alternatives,
        extra=_extra(line, printed, setting),
        allergens=printed.allergens,
    )


def _extra(line: Line, printed: SheetLine, setting: Setting) -> str:
    """What is done to it, and whether it may be left out."""
    if isinstance(line, PartLine):
        return printed.extra
    part = f"{line.chosen.part} only" if line.chosen.part and line.chosen.part not in line.preparation else ""
    texts = (part, setting.respelled(line.preparation), setting.respelled(line.note))
    return ", ".join([text for text in texts if text] + (["optional"] if printed.optional else []))


def _part_amount(printed: SheetLine) -> str:
    if printed.exact_g is None:
        return printed.amount
    return grams_text(single(rounded_grams(printed.exact_g, fine=False)))


def _amount(line: IngredientLine, printed: SheetLine, setting: Setting) -> tuple[str, str]:
    """The weight, and beside it the eggs or spoons that it is; the count first of what is counted."""
    if line.amount is None or printed.exact_g is None:
        return printed.amount, ""
    weight = grams_text(single(rounded_grams(printed.exact_g, fine=printed.small_step)))
    row = setting.row(line.chosen)
    if row is not None and is_hens_egg(row):
        return weight, _eggs(line, printed, setting)
    if line.amount.unit in COUNT_UNITS:
        return printed.amount, weight if printed.exact_g >= LEAST_BESIDE_G else ""
    is_spooned = line.amount.unit in SPOON_UNITS and printed.amount != weight
    return weight, printed.amount if is_spooned else ""


def _eggs(line: IngredientLine, printed: SheetLine, setting: Setting) -> str:
    """How many eggs of the edition's size give the weight: '5 medium'."""
    row, size = setting.row(line.chosen), egg_size(line.chosen, setting)
    if row is None or printed.exact_g is None:
        return ""
    one = edible_grams(setting.tables.eggs, setting.edition.egg_region, size, egg_part(line.chosen, row))
    return f"{max(ceil(printed.exact_g / one - NEARLY_NOTHING), 1)}{NO_BREAK}{size}"
