"""`content/prices.yaml` -> PriceList: what a school pays, for its own kitchen and never for a reader."""

import re
from collections.abc import Callable, Iterator, Mapping
from decimal import Decimal
from fractions import Fraction
from typing import Annotated, TypeVar

from pydantic import Field, StringConstraints

from sitegen import limits
from sitegen.faults import Fault, FaultCode, Severity
from sitegen.kitchen.amounts import Amount, single
from sitegen.kitchen.prices import Charge, Price, PriceList
from sitegen.kitchen.recipe import Choice
from sitegen.kitchen.tables import Tables
from sitegen.source.context import Context
from sitegen.source.file_texts import FileModel, Short
from sitegen.source.misread import Misread, read_or_told
from sitegen.source.names import ingredient_named
from sitegen.source.nodes import Path
from sitegen.source.percents import read_percent
from sitegen.source.quantities import amount_at, size_at
from sitegen.source.reader import Document
from sitegen.source.shapes import shaped
from sitegen.source.stretches import Stretch

BAD_PRICE = FaultCode(
    "bad-price",
    Severity.ERROR,
    "A price says how much money is paid for how much of the ingredient.",
    "Write it as `1.20 per 1.5 kg`, `2.80 per 12` or `0.45 each`, without a sign for the currency.",
    good="plain flour: 1.20 per 1.5 kg",
    bad="plain flour: 1.20",
    file="prices.yaml",
)
BAD_MONEY = FaultCode(
    "bad-money",
    Severity.ERROR,
    "A sum of money is a number with a point before the pence, and nothing else.",
    "Write it as 0.12; what an hour costs as `14.50 per hour`.",
    good="cupcake case: 0.04",
    bad="cupcake case: 4p",
    file="prices.yaml",
)
PRICE_TWICE = FaultCode(
    "price-twice",
    Severity.ERROR,
    "Two prices of the same ingredient: nobody could know which one counts.",
    "Delete one of them.",
    good="plain flour: 1.20 per 1.5 kg\n",
    bad="plain flour: 1.20 per 1.5 kg\n  all-purpose flour: 1.20 per 1.5 kg\n",
    file="prices.yaml",
)
MARGIN_TOO_HIGH = FaultCode(
    "margin-too-high",
    Severity.ERROR,
    "The margin is a share of the price, so that it must stay under 100 %.",
    "Write it as 65 %: of a price of 1.00, 0.65 is kept and 0.35 pays the cost.",
    good="margin: 65 %",
    bad="margin: 100 %",
    file="prices.yaml",
)
CODES = (BAD_PRICE, BAD_MONEY, PRICE_TWICE, MARGIN_TOO_HIGH)

_MONEY = re.compile(r"\d{1,7}(?:\.\d{1,4})?")
_PER = re.compile(r" +(?:per|for) +")
_EACH = re.compile(r" +(?:each|apiece)")
_AN_HOUR = re.compile(r" +(?:per|an) +hour")

PRICE_LIST = "prices.yaml"

Value = TypeVar("Value")


class PricesFile(FileModel):
    """What a school pays. Nothing of it is ever printed for readers."""

    currency: Annotated[str, StringConstraints(pattern=r"^[A-Z]{3}$")] = Field(
        description="ISO 4217.", examples=["GBP"]
    )
    margin: Short | None = Field(
        None, description="Share of the price that is kept, before tax.", examples=["65 %"]
    )
    labour: Short | None = Field(None, description="An hour of hands-on time.", examples=["14.50 per hour"])
    portion_costs: dict[Short, Short] = Field(
        default={}, description="For each piece that is sold.", examples=[{"cupcake case": "0.04"}]
    )
    batch_costs: dict[Short, Short] = Field(
        default={}, description="For each making, whatever its size.", examples=[{"oven": "0.60"}]
    )
    prices: dict[Short, Short] = Field(
        default={},
        max_length=limits.PRICES,
        description="Ingredient -> what is paid for how much.",
        examples=[{"plain flour": "1.20 per 1.5 kg", "eggs": "2.80 per 12"}],
    )


def prices_from(document: Document, tables: Tables) -> tuple[PriceList | None, tuple[Fault, ...]]:
    """The price list; None with every fault of the file where it cannot be told."""
    file, faults = shaped(document, PricesFile)
    if file is None:
        return None, faults
    reading = _PriceReading(document, file, Context(tables))
    prices = reading.price_list()
    return (None if reading.faults else prices), (*faults, *reading.faults)


class _PriceReading:
    """One walk through a price list; faults grow."""

    def __init__(self, document: Document, file: PricesFile, context: Context) -> None:
        self.faults: list[Fault] = []
        self._document = document
        self._file = file
        self._context = context

    def price_list(self) -> PriceList:
        file = self._file
        prices = tuple(self._prices())
        self._refuse_twice(prices)
        return PriceList(
            currency=file.currency,
            prices=prices,
            per_piece=self._charges("portion-costs", file.portion_costs),
            per_batch=self._charges("batch-costs", file.batch_costs),
            labour_per_hour=self._read(("labour",), file.labour, _an_hour),
            margin=self._read(("margin",), file.margin, read_margin),
        )

    def _charges(self, key: str, written: Mapping[str, str]) -> tuple[Charge, ...]:
        read = ((name, self._read((key, name), text, read_money)) for name, text in written.items())
        return tuple(Charge(name, money) for name, money in read if money is not None)

    def _prices(self) -> Iterator[Price]:
        for name, text in self._file.prices.items():
            path: Path = ("prices", name)
            choice = self._choice(path, name)
            paid = self._read(path, text, lambda words: _paid(words, self._context))
            if choice is not None and paid is not None:
                yield Price(choice, *paid, at=self._document.key_place(path))

    def _choice(self, path: Path, name: str) -> Choice | None:
        try:
            size, bare = size_at(Stretch(name, 0), self._context)
            return Choice(bare.words, ingredient_named(bare, self._context).key, size)
        except Misread as problem:
            place = self._document.key_place(path)
            self.faults.append(problem.code.fault(place, problem.sentence, problem.way_out))
            return None

    def _refuse_twice(self, prices: tuple[Price, ...]) -> None:
        seen: dict[tuple[str, str], str] = {}
        for price in prices:
            first = seen.setdefault((price.choice.ingredient, price.choice.size), price.choice.name)
            if first is not price.choice.name:
                sentence = f"'{price.choice.name}' has a price already, as '{first}'"
                self.faults.append(PRICE_TWICE.fault(price.at, sentence))

    def _read(self, path: Path, text: str | None, read: Callable[[str], Value]) -> Value | None:
        return read_or_told(text, self._document.place(path), read, self.faults)


def read_money(text: str) -> Fraction:
    """A sum, exact: '0.12' -> 3/25. Raises Misread."""
    if not _MONEY.fullmatch(text):
        raise Misread(BAD_MONEY, f"'{text}' is no sum of money", "write it as 0.12", 0, max(len(text), 1))
    return Fraction(Decimal(text))


def read_margin(text: str) -> Fraction:
    """A margin as a share of the price: '65 %' -> 13/20. Raises Misread."""
    margin = read_percent(text)
    if margin >= 1:
        way_out = "write it as 65 %: the share of the price that is kept"
        raise Misread(MARGIN_TOO_HIGH, f"no price keeps {text} of itself", way_out, 0, len(text))
    return margin


def _an_hour(text: str) -> Fraction:
    hour = _AN_HOUR.search(text)
    if hour is None or hour.end() != len(text):
        way_out = "write it as 14.50 per hour"
        raise Misread(BAD_MONEY, f"'{text}' does not say what an hour costs", way_out, 0, max(len(text), 1))
    return read_money(text[: hour.start()])


def _paid(text: str, context: Context) -> tuple[Fraction, Amount]:
    """'1.20 per 1.5 kg': the money, and what it buys. A price of 0 is free, as tap water is."""
    each = _EACH.search(text)
    if each and each.end() == len(text):
        return read_money(text[: each.start()]), Amount(single(1), "")
    per = _PER.search(text)
    if per is None:
        way_out = "say for how much: `1.20 per 1.5 kg`, `2.80 per 12`, `0.45 each`"
        raise Misread(BAD_PRICE, f"'{text}' does not say for how much", way_out, 0, max(len(text), 1))
    money = read_money(text[: per.start()])
    amount, rest = amount_at(Stretch(text[per.end() :], per.end()), context)
    if amount is None or amount.span.is_range or rest.text:
        bought = text[per.end() :]
        raise Misread(BAD_PRICE, f"'{bought}' is no amount", "write `1.5 kg`, `2 l` or a count", 0, len(text))
    return money, amount
