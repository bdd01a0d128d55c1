"""The shopping list in words: by section of the shop, rounded here and nowhere else, up to whole packs."""

from collections.abc import Iterator
from fractions import Fraction
from math import ceil, floor

from sitegen.kitchen.amounts import Amount, single
from sitegen.kitchen.egg_shopping import EggsToBuy
from sitegen.kitchen.rounding import rounded_grams
from sitegen.kitchen.sections import Section
from sitegen.kitchen.shopping import Packs, Shopping, ToBuy
from sitegen.sheet.amounts import NO_BREAK, decimal_text, fraction_text, grams_text, joined, with_unit
from sitegen.sheet.asks import keeps_fine_step
from sitegen.sheet.batches import about_grams, plural
from sitegen.sheet.order_values import ShoppingRow, ShoppingSection
from sitegen.sheet.setting import Setting

KEEP_SEPARATED = "covered in the fridge, to be used within 2 days"
"""Source: FSIS, Cold Food Storage Chart: raw egg whites and yolks keep 2 to 4 days."""
HALF = Fraction(1, 2)
ZEST_ALONE = frozenset({"zest"})


def shopping_sections(shopping: Shopping, setting: Setting) -> tuple[ShoppingSection, ...]:
    """What is bought, by section in the order of the shop; in each the names in the order of the alphabet."""
    sections = setting.tables.sections
    rows: dict[Section, list[ShoppingRow]] = {section: [] for section in sections.rows}
    for one in shopping.to_buy:
        rows[sections.of(setting.row(one.choice))].append(_row(one, shopping, setting))
    for eggs, packs in zip(shopping.eggs, shopping.egg_packs, strict=True):
        rows[sections.of(setting.tables.larder.find("egg"))].append(_egg_row(eggs, packs))
    return tuple(
        ShoppingSection(section.title, tuple(sorted(found, key=lambda row: row.what.casefold())))
        for section, found in rows.items()
        if found
    )


def optional_rows(shopping: Shopping, setting: Setting) -> tuple[ShoppingRow, ...]:
    """What may be left out."""
    return tuple(_row(one, shopping, setting) for one in shopping.optional)


def names_to_hand(shopping: Shopping, setting: Setting) -> tuple[str, ...]:
    """What is taken without an amount, in the order of its first use."""
    return tuple(dict.fromkeys(setting.name(choice) for choice in shopping.unmeasured))


def _row(one: ToBuy, shopping: Shopping, setting: Setting) -> ShoppingRow:
    row, name = setting.row(one.choice), setting.name(one.choice)
    if row is not None and one.pieces is not None:
        name = row.counted(name, Fraction(ceil(one.pieces)), setting.edition.region)
    others = [f"or {setting.name(other)}" for other in one.others]
    notes = [*others, *_zest_note(one, shopping, setting)]
    amounts = " + ".join(_amounts(one, setting))
    size = f"{one.choice.size} " if one.choice.size else ""
    return ShoppingRow(f"{size}{name}", amounts, packs_text(one.packs), "; ".join(notes))


def _amounts(one: ToBuy, setting: Setting) -> Iterator[str]:
    """The figures that make up a row: whole pieces, else grams and what cannot be weighed."""
    if one.pieces is not None:
        yield str(ceil(one.pieces))
        return
    if one.grams is not None:
        yield grams_text(single(rounded_grams(one.grams, keeps_fine_step(setting.row(one.choice)))))
    yield from (_amount_text(amount) for amount in one.rest)


def _amount_text(amount: Amount) -> str:
    """What no scale can tell, up to the next half: '3 sprigs' stays, 2.25 tbsp becomes '2½ tbsp'."""
    number = fraction_text(ceil(amount.span.middle / HALF) * HALF)
    return with_unit(number, amount.unit) if amount.unit else number


def packs_text(packs: Packs | None) -> str:
    """'2 packs of 1.5 kg', '3 packs of 12'; '' for none, and for what is sold one by one."""
    if packs is None:
        return ""
    count, unit = packs.each.span.middle, packs.each.unit
    if not unit and count == 1:
        return ""
    each = with_unit(decimal_text(count), unit) if unit else decimal_text(count)
    return f"{packs.number}{NO_BREAK}pack{'s' if packs.number > 1 else ''} of {each}"


def _zest_note(one: ToBuy, shopping: Shopping, setting: Setting) -> Iterator[str]:
    """What the fruit that is bought for its zest alone gives of a juice on the list."""
    for fruit in shopping.to_buy:
        row = setting.row(fruit.choice)
        if row is None or one.choice.ingredient != f"{row.key} juice" or fruit.parts != ZEST_ALONE:
            continue
        juice = row.piece(fruit.choice.size, "juice")
        if juice is not None and fruit.pieces is not None:
            number = Fraction(ceil(fruit.pieces))
            name = row.counted(setting.name(fruit.choice), number, setting.edition.region)
            grams = grams_text(single(about_grams(number * juice.grams)))
            give = "gives" if number == 1 else "give"
            yield f"the {name} bought for zest {give} about {grams} of it"


def _egg_row(eggs: EggsToBuy, packs: Packs | None) -> ShoppingRow:
    parts = []
    if eggs.separated:
        whole = eggs.number - eggs.separated
        parts.append(f"{whole} whole, {eggs.separated} separated" if whole else "all separated")
    spare = tuple(_spare_texts(eggs))
    if spare:
        parts.append(f"left over: {joined(spare)}, {KEEP_SEPARATED}")
    noun = "egg" if eggs.number == 1 else "eggs"
    return ShoppingRow(f"{eggs.size} {noun}", str(eggs.number), packs_text(packs), "; ".join(parts))


def _spare_texts(eggs: EggsToBuy) -> Iterator[str]:
    """Whole ones that nothing takes; a part of one is not worth a bowl."""
    for noun, spare in (("white", eggs.spare_whites), ("yolk", eggs.spare_yolks)):
        number = floor(spare)
        if number:
            yield f"{number}{NO_BREAK}{noun if number == 1 else plural(noun)}"
