"""What has to be bought for all that is made: every ingredient once, at the exact sum of what goes in."""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction
from math import ceil

from sitegen.kitchen.amounts import Amount, Span, single
from sitegen.kitchen.editions import Edition
from sitegen.kitchen.egg_shopping import EggsToBuy, EggUse, eggs_to_buy
from sitegen.kitchen.eggs import UnknownEggSize, edible_grams
from sitegen.kitchen.prices import Price, PriceList
from sitegen.kitchen.recipe import Choice, IngredientLine
from sitegen.kitchen.shares import MadeComponent
from sitegen.kitchen.weighing import Scales, egg_part, is_hens_egg

NOTHING = Fraction(0)


@dataclass(frozen=True)
class Packs:
    """So many packs, and what is in one."""

    number: int
    each: Amount


@dataclass(frozen=True)
class ToBuy:
    """One ingredient of all components together.

    choice: as first named, without the part that is taken. grams: all of it that can be weighed, exact;
    None where none of it can. rest: what cannot be weighed, one amount a unit, exact. pieces: how many whole
    ones to buy, exact, of what is counted wherever it is used; None else. parts: all that is taken of it,
    'zest', 'juice', '' for the whole. others: what may be taken instead.
    """

    choice: Choice
    grams: Fraction | None
    rest: tuple[Amount, ...] = ()
    pieces: Fraction | None = None
    parts: frozenset[str] = frozenset()
    others: tuple[Choice, ...] = ()
    packs: Packs | None = None


@dataclass(frozen=True)
class Shopping:
    """eggs: hen's eggs by size, whites and yolks with them; None of them stands in `to_buy`.

    optional: what the cook may leave out. unmeasured: what has no amount, 'oil, for the tin'.
    """

    to_buy: tuple[ToBuy, ...]
    eggs: tuple[EggsToBuy, ...]
    egg_packs: tuple[Packs | None, ...]
    optional: tuple[ToBuy, ...]
    unmeasured: tuple[Choice, ...]

    @property
    def grams(self) -> Fraction:
        """All that is bought to go in and can be weighed, exact."""
        weighed = (one.grams for one in self.to_buy if one.grams is not None)
        return sum((*weighed, *(one.grams for one in self.eggs)), NOTHING)


@dataclass(frozen=True)
class _Use:
    """A line as one component takes it. amount: in the batch; grams: None where it cannot be weighed."""

    line: IngredientLine
    amount: Amount
    grams: Fraction | None


def shopping_of(
    made: Sequence[MadeComponent], scales: Scales, edition: Edition, prices: PriceList | None
) -> Shopping:
    """One list for everything that is made, what is spare and left over with it.

    edition: whose eggs are bought, where it has other sizes than the recipes are written in. prices: their
    amounts are taken for packs; None where no price is known. Fruit of which zest and juice are taken is
    counted once. Of a range the middle is taken, as in all weights of a batch. Source: common practice.
    """
    shop = _Shop(scales, edition, prices)
    lines = list(_uses(made, shop))
    needed = [use for use in lines if not use.line.optional]
    eggs = eggs_to_buy(egg for use in needed if (egg := shop.egg_use(use)) is not None)
    return Shopping(
        to_buy=shop.rows(use for use in needed if shop.egg_use(use) is None),
        eggs=eggs,
        egg_packs=tuple(shop.egg_packs(row) for row in eggs),
        optional=shop.rows(use for use in lines if use.line.optional),
        unmeasured=_unmeasured(made),
    )


def _uses(made: Sequence[MadeComponent], shop: "_Shop") -> Iterator[_Use]:
    for one in made:
        for line, grams in zip(one.component.lines, one.line_grams, strict=True):
            if isinstance(line, IngredientLine) and line.amount is not None:
                amount = Amount(line.amount.span.times(one.factor), line.amount.unit)
                yield _Use(line, amount, shop.grams(amount, line.chosen) if line.optional else grams)


def _unmeasured(made: Sequence[MadeComponent]) -> tuple[Choice, ...]:
    """What is taken without an amount, each once."""
    found: dict[str, Choice] = {}
    for one in made:
        for line in one.component.lines:
            if isinstance(line, IngredientLine) and line.amount is None:
                found.setdefault(_key(line.chosen), _whole(line.chosen))
    return tuple(found.values())


@dataclass(frozen=True)
class _Shop:
    """What amounts are weighed and packs are counted with. edition: whose eggs are bought."""

    scales: Scales
    edition: Edition
    prices: PriceList | None

    def grams(self, amount: Amount, choice: Choice) -> Fraction | None:
        weight = self.scales.weigh(amount, choice)
        return weight.middle if weight else None

    def egg_use(self, use: _Use) -> EggUse | None:
        """What a line takes of hen's eggs; None for anything else, and for eggs that cannot be weighed."""
        choice, region = use.line.chosen, self.edition.egg_region
        row = self.scales.row(choice)
        if row is None or not is_hens_egg(row) or use.grams is None:
            return None
        as_written = choice.size if region == self.scales.written.egg_region else ""
        size, part = as_written or self.edition.egg_size, egg_part(choice, row)
        try:
            one = edible_grams(self.scales.tables.eggs, region, size, part)
        except UnknownEggSize:
            return None
        return EggUse(size, part, use.grams / one, use.grams)

    def egg_packs(self, eggs: EggsToBuy) -> Packs | None:
        price = self.prices.price_of("egg", eggs.size) if self.prices else None
        if price is None or price.amount.unit or price.choice.size not in ("", eggs.size):
            return None
        return Packs(ceil(eggs.number / price.amount.span.middle), price.amount)

    def rows(self, uses: Iterable[_Use]) -> tuple[ToBuy, ...]:
        """A row for each ingredient, in the order in which they are first used."""
        gathered: dict[str, list[_Use]] = {}
        for use in uses:
            gathered.setdefault(_key(use.line.chosen), []).append(use)
        return tuple(self.to_buy(each) for each in gathered.values())

    def to_buy(self, uses: Sequence[_Use]) -> ToBuy:
        choice = _whole(uses[0].line.chosen)
        weights = [use.grams for use in uses if use.grams is not None]
        grams = sum(weights, NOTHING) if weights else None
        pieces = _pieces(uses)
        rest = () if pieces is not None else _summed(use.amount for use in uses if use.grams is None)
        others = {_key(other): _whole(other) for use in uses for other in use.line.choices[1:]}
        return ToBuy(
            choice=choice,
            grams=grams,
            rest=rest,
            pieces=pieces,
            parts=frozenset(use.line.chosen.part for use in uses),
            others=tuple(others.values()),
            packs=self.packs(choice, grams, pieces, rest),
        )

    def packs(
        self, choice: Choice, grams: Fraction | None, pieces: Fraction | None, rest: tuple[Amount, ...]
    ) -> Packs | None:
        """Packs that hold all of it; None where no pack is known, or what is in it cannot be compared."""
        price = self.prices.price_of(choice.ingredient, choice.size) if self.prices else None
        if price is None or not price.money:
            return None
        share = self.share_of_pack(price, choice, grams, pieces, rest)
        return None if share is None else Packs(ceil(share), price.amount)

    def share_of_pack(
        self,
        price: Price,
        choice: Choice,
        grams: Fraction | None,
        pieces: Fraction | None,
        rest: tuple[Amount, ...],
    ) -> Fraction | None:
        """How many packs are needed, exact: by the piece, by weight, or in the one unit of both."""
        in_pack = price.amount.span.middle
        if pieces is not None:
            if not price.amount.unit:
                return pieces / in_pack
            grams = self.grams(Amount(single(pieces), ""), choice)
        elif rest:
            alike = grams is None and [amount.unit for amount in rest] == [price.amount.unit]
            return rest[0].span.middle / in_pack if alike else None
        pack_g = self.grams(price.amount, price.choice)
        return grams / pack_g if grams is not None and pack_g else None


def _pieces(uses: Sequence[_Use]) -> Fraction | None:
    """How many whole ones are needed, where every use counts them; None else.

    Zest, juice and other parts are taken of the same ones: the part that needs most decides.
    """
    if any(use.amount.unit for use in uses):
        return None
    by_part: dict[str, Fraction] = {}
    for use in uses:
        part = use.line.chosen.part
        by_part[part] = by_part.get(part, NOTHING) + use.amount.span.middle
    whole = by_part.pop("", NOTHING)
    return whole + max(by_part.values(), default=NOTHING)


def _summed(amounts: Iterable[Amount]) -> tuple[Amount, ...]:
    sums: dict[str, Fraction] = {}
    for amount in amounts:
        sums[amount.unit] = sums.get(amount.unit, NOTHING) + amount.span.middle
    return tuple(Amount(Span(number, number), unit) for unit, number in sums.items())


def _key(choice: Choice) -> str:
    """What makes two lines one row: the larder's key, else the name as written; sizes apart."""
    return f"{choice.size} {choice.ingredient or choice.name.casefold()}".strip()


def _whole(choice: Choice) -> Choice:
    """The choice without the part that is taken of it: a lemon is bought for its zest."""
    return Choice(choice.name, choice.ingredient, choice.size)
