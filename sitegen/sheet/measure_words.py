"""The small print on measures: what an egg weighs, how cups are filled, and what is an estimate."""

import re
from collections.abc import Callable, Iterable, Mapping

from sitegen.kitchen.editions import Measuring
from sitegen.sheet.amounts import NO_BREAK, with_unit
from sitegen.sheet.setting import Setting
from sitegen.sheet.values import SheetLine

ESTIMATES = (
    "Times, yields and keeping times are estimates from our kitchen; yours will differ. Check the labels of "
    "what you use, follow your local food-safety rules, and ask a qualified person where health depends "
    "on it."
)

SMALL_WEIGHT = re.compile(rf"\d\.\d+{NO_BREAK}g$")
SMALL_SCALE = "Weights such as 2.5 g want a small scale, one that shows tenths of a gram or less."


def measure_note(setting: Setting) -> str:
    """How an edition's measures are filled and read, and how large they are; '' where grams come first."""
    note = _NOTES.get(setting.edition.measuring)
    return note(setting) if note else ""


def small_scale_note(lines: Iterable[SheetLine]) -> str:
    """What a reader needs to weigh '2.15 g'; '' where no line asks for so little. Source: common practice."""
    return SMALL_SCALE if any(SMALL_WEIGHT.match(line.amount) for line in lines) else ""


def _cup_note(setting: Setting) -> str:
    measures, edition = setting.tables.measures, setting.edition
    cup = with_unit(str(round(measures.unit_ml(edition.cup))), "ml")
    return (
        f"1{NO_BREAK}cup is {cup}, {_spoon_sizes(setting)}; all are level. {_CUP_FILLS[edition.cup_fill]}; "
        "pack brown sugar; read liquids at eye level. Where a weight comes first, no cup measures it well: "
        "please weigh it."
    )


def _ounce_note(setting: Setting) -> str:
    return (
        f"Ounces are by weight, for liquids too: 1{NO_BREAK}oz is about 28{NO_BREAK}g, 1{NO_BREAK}lb is "
        f"16{NO_BREAK}oz. Where grams come first, a quarter of an ounce is too coarse a step: set the scale "
        f"to grams. Spoons are level: {_spoon_sizes(setting)}."
    )


def _spoon_sizes(setting: Setting) -> str:
    measures, edition = setting.tables.measures, setting.edition
    spoons = (("tbsp", edition.tablespoon), ("tsp", edition.teaspoon))
    return ", ".join(
        f"1{NO_BREAK}{word} {with_unit(str(round(measures.unit_ml(name))), 'ml')}" for word, name in spoons
    )


_CUP_FILLS = {
    "spooned": "Spoon dry ingredients into the cup and level them with a knife",
    "scooped": "Dip the cup into dry ingredients, do not shake it down, and level it with a knife",
}
_NOTES: Mapping[Measuring, Callable[[Setting], str]] = {
    Measuring.CUPS: _cup_note,
    Measuring.OUNCES: _ounce_note,
}
