"""How warm the water of a dough should be, as notes beside its formula."""

from collections.abc import Iterator
from fractions import Fraction

from sitegen.kitchen.amounts import Amount, single
from sitegen.kitchen.contents import Contents, Held
from sitegen.kitchen.dough_temperature import DoughTemperatures, WaterAdvice, friction_of, water_for
from sitegen.kitchen.editions import Edition
from sitegen.kitchen.recipe import DoughAim
from sitegen.kitchen.temperatures import F_IN_C
from sitegen.sheet.amounts import NO_BREAK, joined
from sitegen.sheet.heat_words import exact_temperature_text
from sitegen.sheet.setting import Setting

WATER = "water"
A_LARGE_PART = Fraction(1, 10)
"""Of all that is poured: a spoonful of cream is not warmed for the dough's sake."""


def temperature_notes(
    aim: DoughAim, contents: Contents, has_preferment: bool, setting: Setting, table: DoughTemperatures
) -> Iterator[str]:
    """What to aim for in the tested kitchen, in others, and how a baker finds her own mixer's friction."""
    liquids = _main_liquids(contents)
    name = joined(tuple(dict.fromkeys(setting.name(held.choice) for held in liquids))) or WATER
    is_water = all(held.key == WATER for held in liquids)
    room = table.room if aim.room is None else aim.room

    def advice(kitchen: Fraction) -> str:
        return _advice_text(
            water_for(aim, kitchen, has_preferment, table), setting.edition, is_water=is_water
        )

    yield (
        f"Aim for a dough of {degrees(aim.temperature, setting.edition)}. In a kitchen at "
        f"{degrees(room, setting.edition)} take the {name} at {advice(room)}."
    )
    others = (
        f"at {degrees(other, setting.edition)}, {advice(other)}" for other in table.rooms if other != room
    )
    yield f"In other kitchens: {'; '.join(others)}. An estimate."
    parts = "4 × dough − kitchen − flour − preferment" if has_preferment else "3 × dough − kitchen − flour"
    rise = _rise(friction_of(aim, table), setting.edition)
    yield (
        f"Mixing is taken to warm the dough by {rise}. To find what your own mixer adds, measure the mixed "
        f"dough: {parts} − {name}, all in one scale."
    )


def _main_liquids(contents: Contents) -> list[Held]:
    """The liquids that decide how warm the dough is, not those that a preferment brought."""
    poured = [held for held in contents if not held.brought_by and "liquid" in held.roles and held.grams]
    total = sum((held.grams or Fraction(0) for held in poured), Fraction(0))
    return [held for held in poured if (held.grams or 0) >= total * A_LARGE_PART]


def _advice_text(advice: WaterAdvice, edition: Edition, *, is_water: bool) -> str:
    text = degrees(advice.degrees, edition)
    if advice.too_hot:
        return f"no more than {text}, with the flour or the bowl warmed"
    if advice.ice and is_water:
        return f"{text}, with {round(advice.ice * 100)}{NO_BREAK}% of it weighed in as ice"
    return f"{text}, with the flour chilled" if advice.ice else text


def degrees(celsius: Fraction, edition: Edition) -> str:
    """A temperature in the edition's order, to a whole degree: '26 °C (79 °F)'."""
    return exact_temperature_text(Amount(single(celsius), "celsius"), edition)


def _rise(celsius: Fraction, edition: Edition) -> str:
    """A difference of temperature, to a whole degree: '3 °C (5 °F)'."""
    texts = {"C": f"{round(celsius)}{NO_BREAK}°C", "F": f"{round(celsius * F_IN_C)}{NO_BREAK}°F"}
    first, second = ("F", "C") if edition.oven_scales[0] == "fahrenheit" else ("C", "F")
    return f"{texts[first]} ({texts[second]})"
