"""The allergens of a list of ingredients, in the order of the law that names them."""

from collections.abc import Iterable
from typing import Literal

from sitegen.kitchen.larder import Ingredient

Regime = Literal["eu", "us"]

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
ORDERS: dict[Regime, tuple[str, ...]] = {"eu": EU_ORDER, "us": US_ORDER}


def allergens(ingredients: Iterable[Ingredient], regime: Regime) -> tuple[str, ...]:
    """What the ingredients contain, each name once, in the regulation's order.

    regime: 'eu' for the fourteen of the EU and UK, 'us' for the nine of the US.
    A name that the regulation has not comes last.
    """
    found = {
        name for row in ingredients for name in (row.allergens_us if regime == "us" else row.allergens_eu)
    }
    order = ORDERS[regime]
    known = tuple(name for name in order if name in found)
    return (*known, *sorted(found.difference(order)))
