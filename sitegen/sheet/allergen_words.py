"""The allergen lines of a sheet, in the form of the edition's region."""

from collections.abc import Iterable, Sequence

from sitegen.kitchen.allergens import Regime, allergens
from sitegen.kitchen.larder import Ingredient
from sitegen.kitchen.recipe import Choice, Component, IngredientLine
from sitegen.sheet.amounts import joined
from sitegen.sheet.setting import Setting

CHECK_LABELS = "Check the label of every packet: makers change what they put in."


def allergen_lines(components: Sequence[Component], setting: Setting) -> tuple[str, ...]:
    """What the recipe contains, what only an alternative or optional line brings, and a line to check labels.

    Regime: the EU/UK fourteen (Regulation (EU) No 1169/2011, Annex II), or in a US edition the US nine
    (FALCPA 2004 and FASTER Act 2021). An ingredient that the larder lacks is named, since nobody has
    looked it up.
    """
    regime: Regime = "us" if setting.edition.region == "us" else "eu"
    lines = [line for part in components for line in part.lines if isinstance(line, IngredientLine)]
    always = [line.chosen for line in lines if not line.optional]
    perhaps = [choice for line in lines for choice in (line.choices if line.optional else line.choices[1:])]
    sure = allergens(_rows(always, setting), regime)
    maybe = tuple(name for name in allergens(_rows(perhaps, setting), regime) if name not in sure)
    texts = [
        f"Contains: {joined(sure)}."
        if sure
        else "None of the allergens that the law lists is among the ingredients."
    ]
    if maybe:
        texts.append(f"An alternative or optional ingredient brings: {joined(maybe)}.")
    unknown = tuple(
        dict.fromkeys(choice.name for choice in (*always, *perhaps) if setting.row(choice) is None)
    )
    if unknown:
        texts.append(f"Not looked up: {joined(unknown)}.")
    labelled = _label_names(always, setting)
    texts.append(f"{CHECK_LABELS} Above all for {joined(labelled)}." if labelled else CHECK_LABELS)
    return tuple(texts)


def _rows(choices: Iterable[Choice], setting: Setting) -> list[Ingredient]:
    return [row for choice in choices if (row := setting.row(choice)) is not None]


def _label_names(choices: Iterable[Choice], setting: Setting) -> tuple[str, ...]:
    names = (setting.name(choice) for choice in choices if (row := setting.row(choice)) and row.label_advice)
    return tuple(dict.fromkeys(names))
