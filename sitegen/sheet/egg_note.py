"""The small print on eggs: which grade is meant, and what one weighs in its shell and out of it."""

from collections.abc import Sequence

from sitegen.kitchen.amounts import single
from sitegen.kitchen.eggs import ShellGrade, edible_grams, shell_grade
from sitegen.kitchen.recipe import Component, IngredientLine
from sitegen.kitchen.weighing import is_hens_egg
from sitegen.sheet.amounts import grams_text, span_text
from sitegen.sheet.counted_eggs import egg_size
from sitegen.sheet.setting import Setting

REGION_WORDS = {"uk": "UK", "us": "US", "au": "Australian"}


def egg_note(components: Sequence[Component], setting: Setting) -> str:
    """What the eggs of a recipe weigh, each size once; '' where it takes none.

    'Eggs are UK medium (53–63 g in the shell): about 51 g without it, white 34 g, yolk 17 g.'
    """
    lines = [line for part in components for line in part.lines if isinstance(line, IngredientLine)]
    sizes = dict.fromkeys(egg_size(line.chosen, setting) for line in lines if _takes_eggs(line, setting))
    return f"Eggs are {'; '.join(_size_text(size, setting) for size in sizes)}." if sizes else ""


def _takes_eggs(line: IngredientLine, setting: Setting) -> bool:
    """By the count or by weight: a spoonful of beaten egg is taken of whichever egg there is."""
    row, amount = setting.row(line.chosen), line.amount
    if row is None or amount is None or not is_hens_egg(row):
        return False
    return amount.unit == "" or setting.tables.measures.is_weight(amount.unit)


def _size_text(size: str, setting: Setting) -> str:
    region, eggs = setting.edition.egg_region, setting.tables.eggs
    whole, white, yolk = (
        grams_text(single(round(edible_grams(eggs, region, size, part)))) for part in ("", "white", "yolk")
    )
    in_shell = _shell_text(shell_grade(eggs, region, size))
    return f"{REGION_WORDS[region]} {size} ({in_shell}): about {whole} without it, white {white}, yolk {yolk}"


def _shell_text(grade: ShellGrade) -> str:
    """'53–63 g in the shell', with an open end '73 g or more in the shell'."""
    least = grams_text(single(round(grade.from_g)))
    if grade.under_g is None:
        return f"{least} or more in the shell"
    most = grams_text(single(round(grade.under_g)))
    if not grade.from_g:
        return f"under {most} in the shell"
    return f"{span_text(str(round(grade.from_g)), most)} in the shell"
