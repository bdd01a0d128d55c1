"""The small print on measures: what an egg weighs, how cups are filled, and what is an estimate."""

from collections.abc import Sequence

from sitegen.kitchen.eggs import edible_grams
from sitegen.kitchen.recipe import Component, IngredientLine, single
from sitegen.sheet.amounts import NO_BREAK, grams_text, with_unit
from sitegen.sheet.setting import Setting

ESTIMATES = (
    "Times, yields and keeping times are estimates from our kitchen; yours will differ. Check the labels of "
    "what you use, follow your local food-safety rules, and ask a qualified person where health depends "
    "on it."
)


def egg_note(components: Sequence[Component], setting: Setting) -> str:
    """What the eggs of the edition weigh without their shells; '' where the recipe counts none."""
    lines = [line for part in components for line in part.lines if isinstance(line, IngredientLine)]
    if not any(_counts_eggs(line, setting) for line in lines):
        return ""
    edition, eggs = setting.edition, setting.tables.eggs
    weights = {
        name: grams_text(single(round(edible_grams(eggs, edition.egg_region, edition.egg_size, part))))
        for name, part in (("whole", ""), ("white", "white"), ("yolk", "yolk"))
    }
    return (
        f"Eggs are {edition.region.upper()} {edition.egg_size}: about {weights['whole']} out of the shell, "
        f"white {weights['white']}, yolk {weights['yolk']}."
    )


def _counts_eggs(line: IngredientLine, setting: Setting) -> bool:
    row = setting.row(line.chosen)
    return row is not None and "egg" in row.roles and line.amount is not None and line.amount.unit == ""


def cup_note(setting: Setting) -> str:
    """How the cups of a cup edition are filled, and how large they are."""
    measures, edition = setting.tables.measures, setting.edition
    sizes = {
        word: with_unit(str(round(measures.unit_ml(name))), "ml")
        for word, name in (("cup", edition.cup), ("tbsp", edition.tablespoon), ("tsp", edition.teaspoon))
    }
    return (
        f"1{NO_BREAK}cup is {sizes['cup']}, 1{NO_BREAK}tbsp {sizes['tbsp']}, 1{NO_BREAK}tsp {sizes['tsp']}. "
        "Spoon dry ingredients into the cup and level them with a knife; pack brown sugar; read liquids at "
        "eye level. Where a weight stands alone, no cup measures it well: please weigh it."
    )
