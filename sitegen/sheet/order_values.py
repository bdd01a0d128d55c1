"""An order as printed for the kitchen: frozen and fully computed, as a Sheet is.

It is for the kitchen's own wall and never for a reader: it may carry what things cost.
"""

from dataclasses import dataclass

from sitegen.sheet.values import EditionLabel, SheetCaution
from sitegen.sheet.work_values import DayPlan


@dataclass(frozen=True)
class OrderProduct:
    """One recipe of the order.

    makes: '48 cupcakes'. how_much: '4 times the recipe'. tin: all tins that it fills; oven: its settings;
    loads: '4 oven loads'; '' where there is none. keeps: how long the finished piece keeps, '' unknown.
    """

    title: str
    makes: str
    how_much: str
    tin: str = ""
    oven: str = ""
    loads: str = ""
    keeps: str = ""


@dataclass(frozen=True)
class ShoppingRow:
    """what: 'plain flour'. amount: '1.2 kg', '4'. packs: '1 pack of 1.5 kg', '' unknown. note: or ''."""

    what: str
    amount: str
    packs: str = ""
    note: str = ""


@dataclass(frozen=True)
class ShoppingSection:
    """A section of the shop with what is bought there."""

    title: str
    rows: tuple[ShoppingRow, ...]


@dataclass(frozen=True)
class WeighLine:
    """One line of a weigh-out.

    amount: grams, or a count where it cannot be weighed. beside: '5 medium'. others: 'or rapeseed oil'.
    """

    amount: str
    name: str
    beside: str = ""
    others: str = ""
    extra: str = ""
    allergens: tuple[str, ...] = ()


@dataclass(frozen=True)
class WeighOut:
    """All that one component takes.

    product: the recipe that it is part of; '' where that is its own title. makes: 'about 3.96 kg', ''.
    divided: ('600 g', 'Blackcurrant buttercream'), where several take of it. left: what nothing takes, with
    how long it keeps, ''.
    """

    title: str
    product: str
    makes: str
    lines: tuple[WeighLine, ...]
    divided: tuple[tuple[str, str], ...] = ()
    left: str = ""


@dataclass(frozen=True)
class CounterRow:
    """Allergens of one product: a mark for each column, 'yes', 'may' (an option or alternative), or ''."""

    product: str
    marks: tuple[str, ...]


@dataclass(frozen=True)
class Counter:
    """Allergens across the counter. columns: names as the region's law gives them. notes: sentences."""

    columns: tuple[str, ...]
    rows: tuple[CounterRow, ...]
    notes: tuple[str, ...]


@dataclass(frozen=True)
class ProductCost:
    """ingredients: of the whole batch; each: of a piece (of a kilogram for a yield by weight)."""

    product: str
    ingredients: str
    each: str


@dataclass(frozen=True)
class OrderCost:
    """currency: ISO 4217. totals: (what, money). missing: what has no price; sums then begin 'at least'."""

    currency: str
    rows: tuple[ProductCost, ...]
    totals: tuple[tuple[str, str], ...]
    missing: tuple[str, ...]
    notes: tuple[str, ...]


@dataclass(frozen=True)
class OrderSheet:
    """The whole production day.

    shopping: by section. optional: what may be left out; to_hand: what has no amount. egg_note: what an egg
    weighs. plan: the joint work; its rows name the product with the component.
    """

    title: str
    edition: EditionLabel
    products: tuple[OrderProduct, ...]
    shopping: tuple[ShoppingSection, ...]
    optional: tuple[ShoppingRow, ...]
    to_hand: tuple[str, ...]
    egg_note: str
    weigh_outs: tuple[WeighOut, ...]
    plan: DayPlan
    counter: Counter
    cautions: tuple[SheetCaution, ...]
    estimates_note: str
    cost: OrderCost | None = None
