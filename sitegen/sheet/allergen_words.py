"""The allergen lines of a sheet, in the form of the edition's region."""

from collections.abc import Iterable, Iterator, Sequence

from sitegen.kitchen.allergens import Regime, allergens, regime_of, summary
from sitegen.kitchen.larder import Ingredient
from sitegen.kitchen.recipe import Choice, Component, IngredientLine
from sitegen.sheet.amounts import joined
from sitegen.sheet.setting import Setting

NONE_LISTED = "None of the allergens that the law lists is among the ingredients."
CHECK_LABELS = "Check the label of every packet: makers change what they put in."
Choices = Sequence[Choice]


def allergen_lines(components: Sequence[Component], setting: Setting) -> tuple[str, ...]:
    """What the recipe contains, what each alternative or optional ingredient brings, and what to check.

    Law: the EU/UK fourteen (Regulation (EU) No 1169/2011, Annex II); in a US edition the US nine (FALCPA
    2004 and FASTER Act 2021); in an Australian one the list of Food Standards Code, Schedule 9. What only
    an alternative or optional ingredient brings stands apart under its name. An ingredient that the larder
    lacks, or of which a recipe leaves its allergens open, is named, since nobody has looked it up.
    """
    regime = regime_of(setting.edition.region)
    lines = [line for part in components for line in part.lines if isinstance(line, IngredientLine)]
    always = [line.chosen for line in lines if not line.optional]
    optional = [choice for line in lines if line.optional for choice in line.choices]
    instead = [choice for line in lines if not line.optional for choice in line.choices[1:]]
    named = (*always, *instead, *optional)
    sure = allergens(_rows(always, setting), regime)
    unknown = _unknown_names(named, regime, setting)
    return (
        *_certain(summary(sure, regime), unknown),
        *_brought("If you use the {name}: contains {brought}.", instead, sure, setting),
        *_brought("With the optional {name}: contains {brought}.", optional, sure, setting),
        *([f"Allergens of {joined(unknown)} are not known: read the packet."] if unknown else ()),
        _check_labels(packets_that_decide(components, setting)),
    )


def packets_that_decide(components: Sequence[Component], setting: Setting) -> tuple[str, ...]:
    """The ingredients whose packet may bring what the recipe does not contain anyway, each once.

    The EU's names are compared in every edition, as `packet_may_hold` is written in them.
    """
    lines = [line for part in components for line in part.lines if isinstance(line, IngredientLine)]
    always = [line.chosen for line in lines if not line.optional]
    certain = frozenset(allergens(_rows(always, setting), "eu"))
    choices = (choice for line in lines for choice in line.choices)
    names = (setting.name(choice) for choice in choices if _packet_decides(setting.row(choice), certain))
    return tuple(dict.fromkeys(names))


def _certain(sure: tuple[str, ...], unknown: tuple[str, ...]) -> Iterator[str]:
    if sure:
        yield f"Contains: {joined(sure)}."
    elif not unknown:
        yield NONE_LISTED


def _brought(sentence: str, choices: Choices, sure: Sequence[str], setting: Setting) -> tuple[str, ...]:
    """A sentence for each of the choices that brings what the recipe does not contain anyway."""
    regime = regime_of(setting.edition.region)
    texts = []
    for choice in choices:
        brought = tuple(name for name in allergens(_rows([choice], setting), regime) if name not in sure)
        if brought:
            names = joined(summary(brought, regime))
            texts.append(sentence.format(name=setting.name(choice), brought=names))
    return tuple(dict.fromkeys(texts))


def _rows(choices: Iterable[Choice], setting: Setting) -> list[Ingredient]:
    return [row for choice in choices if (row := setting.row(choice)) is not None]


def _unknown_names(choices: Choices, regime: Regime, setting: Setting) -> tuple[str, ...]:
    rows = ((setting.name(choice), setting.row(choice)) for choice in choices)
    return tuple(dict.fromkeys(name for name, row in rows if row is None or regime in row.allergens_unsaid))


def _check_labels(labelled: tuple[str, ...]) -> str:
    return f"{CHECK_LABELS} Above all for {joined(labelled)}." if labelled else CHECK_LABELS


def _packet_decides(row: Ingredient | None, certain: frozenset[str]) -> bool:
    if row is None or not row.label_advice:
        return False
    return not row.packet_may_hold or not certain.issuperset(row.packet_may_hold)
