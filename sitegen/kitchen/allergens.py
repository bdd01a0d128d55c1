"""The allergens of a list of ingredients, in the order of the law that names them."""

from collections.abc import Iterable, Mapping, Sequence
from typing import Literal

from sitegen.kitchen.larder import Ingredient

Regime = Literal["eu", "us", "au"]

# Regulation (EU) No 1169/2011, Annex II, as kept in UK law: cereals and nuts by their own names.
EU_ORDER = (
    "wheat",
    "spelt",
    "khorasan wheat",
    "rye",
    "barley",
    "oats",
    "crustaceans",
    "eggs",
    "fish",
    "peanuts",
    "soya",
    "milk",
    "almonds",
    "hazelnuts",
    "walnuts",
    "cashews",
    "pecans",
    "Brazil nuts",
    "pistachios",
    "macadamias",
    "celery",
    "mustard",
    "sesame",
    "sulphites",
    "lupin",
    "molluscs",
)
# FALCPA 2004 and FASTER Act 2021; tree nuts by name, FDA guidance of January 2025.
US_ORDER = (
    "milk",
    "egg",
    "fish",
    "shellfish",
    "almond",
    "Brazil nut",
    "cashew",
    "hazelnut",
    "macadamia",
    "pecan",
    "pine nut",
    "pistachio",
    "walnut",
    "peanut",
    "wheat",
    "soy",
    "sesame",
)
# Australia New Zealand Food Standards Code, Standard 1.2.3 and Schedule 9: the names of its plain English
# labelling. Nuts that are listed, pine nut among them, each by its own name; no celery, no mustard.
AU_ORDER = (
    "wheat",
    "barley",
    "oats",
    "rye",
    "almond",
    "Brazil nut",
    "cashew",
    "hazelnut",
    "macadamia",
    "pecan",
    "pine nut",
    "pistachio",
    "walnut",
    "crustacean",
    "egg",
    "fish",
    "lupin",
    "milk",
    "mollusc",
    "peanut",
    "sesame",
    "soy",
    "sulphites",
)
ORDERS: Mapping[Regime, tuple[str, ...]] = {"eu": EU_ORDER, "us": US_ORDER, "au": AU_ORDER}
REGIMES: Mapping[str, Regime] = {"uk": "eu", "us": "us", "au": "au"}
"""An edition's region -> whose law names the allergens; any other is told the longest list, the EU's."""

# The Australian name of what the EU's law names, where it is another word; spelt and khorasan are wheat.
_AU_OF_EU: Mapping[str, str] = {
    "spelt": "wheat",
    "khorasan wheat": "wheat",
    "crustaceans": "crustacean",
    "eggs": "egg",
    "peanuts": "peanut",
    "soya": "soy",
    "almonds": "almond",
    "hazelnuts": "hazelnut",
    "walnuts": "walnut",
    "cashews": "cashew",
    "pecans": "pecan",
    "Brazil nuts": "Brazil nut",
    "pistachios": "pistachio",
    "macadamias": "macadamia",
    "molluscs": "mollusc",
}
_GLUTEN_CEREALS = frozenset({"wheat", "barley", "oats", "rye"})


def regime_of(region: str) -> Regime:
    """Whose law names the allergens in an edition of that region."""
    return REGIMES.get(region, "eu")


def australian(eu: Sequence[str], us: Sequence[str]) -> tuple[str, ...]:
    """The allergens of the Australian and New Zealand list, in its order, from those of the two others.

    eu, us: names of `EU_ORDER` and `US_ORDER`. All that Schedule 9 names is in the EU's list, but for the
    pine nut, which the US list has.
    """
    found = {_AU_OF_EU.get(name, name) for name in eu} | ({"pine nut"} & set(us))
    return tuple(name for name in AU_ORDER if name in found)


def named_in(row: Ingredient, regime: Regime) -> tuple[str, ...]:
    """What one ingredient contains, in the words of the regulation."""
    return {"eu": row.allergens_eu, "us": row.allergens_us, "au": row.allergens_au}[regime]


def allergens(ingredients: Iterable[Ingredient], regime: Regime) -> tuple[str, ...]:
    """What the ingredients contain, each name once, in the regulation's order.

    regime: 'eu' for the fourteen of the EU and UK, 'us' for the nine of the US, 'au' for the list of
    Australia and New Zealand. A name that the regulation has not comes last.
    """
    found = {name for row in ingredients for name in named_in(row, regime)}
    order = ORDERS[regime]
    known = tuple(name for name in order if name in found)
    return (*known, *sorted(found.difference(order)))


def summary(names: Sequence[str], regime: Regime) -> tuple[str, ...]:
    """The names as a 'Contains' line states them.

    In Australia and New Zealand it says 'gluten' too, after the cereals that bring it.
    Source: Food Standards Code, Schedule 9, names for the summary statement.
    """
    cereals = tuple(name for name in names if name in _GLUTEN_CEREALS)
    if regime != "au" or not cereals:
        return tuple(names)
    return (*cereals, "gluten", *(name for name in names if name not in _GLUTEN_CEREALS))
