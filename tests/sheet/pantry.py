"""Short words for the values that the tests of this room need."""

from fractions import Fraction
from functools import cache

from sitegen.kitchen.amounts import Amount, Span
from sitegen.kitchen.method import Reference, RefKind, Step, Words
from sitegen.kitchen.recipe import Choice, Component, IngredientLine, Makes, PartLine, Recipe
from sitegen.kitchen.tables import Tables
from sitegen.sheet.setting import Setting
from sitegen.source.tables import read_tables


@cache
def tables() -> Tables:
    """The project's own tables."""
    return read_tables()[0]


def setting(edition: str = "british-metric") -> Setting:
    """A sheet in that edition of a recipe written in British metric."""
    return Setting(tables(), tables().editions["british-metric"], tables().editions[edition])


def amount(number: str | int, unit: str = "g", high: str | int | None = None) -> Amount:
    return Amount(Span(Fraction(number), Fraction(number if high is None else high)), unit)


def choice(name: str, size: str = "", part: str = "", own: Amount | None = None) -> Choice:
    row = tables().larder.find(name)
    return Choice(name, row.key if row else "", size, part, own)


def line(
    number: str | int | None, unit: str, name: str, size: str = "", preparation: str = "", part: str = ""
) -> IngredientLine:
    """'165', 'g', 'plain flour'; None for what is not measured."""
    how_much = None if number is None else amount(number, unit)
    return IngredientLine(f"{number} {unit} {name}", how_much, (choice(name, size, part),), preparation)


def part(
    source: str, share: str | int | None = None, grams: int | None = None, base: bool = False
) -> PartLine:
    """A share, or a weight, of a component or base recipe."""
    return PartLine(
        f"of {source}",
        source,
        None if share is None else Fraction(share),
        None if grams is None else amount(grams),
        base,
    )


def says(*parts: str | Reference, **more: object) -> Step:
    """A step of words and references."""
    prose = tuple(Words(one) if isinstance(one, str) else one for one in parts)
    return Step(prose, **more)  # type: ignore[arg-type]


def takes(index: int, text: str = "", share: str | int = 1, own: Amount | None = None) -> Reference:
    """A reference to a line of the component."""
    return Reference(text, RefKind.INGREDIENT, line=index, share=Fraction(share), amount=own)


def minutes(low: int, high: int | None = None) -> Span:
    return Span(Fraction(low), Fraction(low if high is None else high))


def recipe(*components: Component, title: str = "Test cakes", makes: Makes | None = None) -> Recipe:
    return Recipe("test", title, "A cake.", makes or Makes(Fraction(12), "cakes"), components)
