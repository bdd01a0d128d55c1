"""Ingredient lines as printed, in one edition at one batch."""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from fractions import Fraction

from sitegen.kitchen.allergens import named_in, regime_of
from sitegen.kitchen.amounts import Amount
from sitegen.kitchen.eggs import EGG_PARTS
from sitegen.kitchen.larder import Ingredient
from sitegen.kitchen.recipe import Choice, Component, IngredientLine, PartLine
from sitegen.sheet.amounts import share_text
from sitegen.sheet.asks import USUAL_TOLERANCE, Ask, Measured, keeps_fine_step
from sitegen.sheet.drift import DRIFT_LIMIT, base_lines, drift_points
from sitegen.sheet.leaf_words import name_beside
from sitegen.sheet.measured import measured
from sitegen.sheet.setting import Setting
from sitegen.sheet.values import SheetAlternative, SheetLine
from sitegen.sheet.weights import weight_texts

TOLERANCES = (USUAL_TOLERANCE, Fraction(2, 100), Fraction(1, 100), Fraction(0))


@dataclass(frozen=True)
class PrintedComponent:
    """lines: one a line of the component. tolerances: how far cups may be off, to keep the balance."""

    lines: tuple[SheetLine, ...]
    tolerances: tuple[Fraction, ...]


def printed_lines(
    component: Component, factor: Fraction, part_grams: Sequence[Fraction | None], setting: Setting
) -> PrintedComponent:
    """All lines of a component, with cups tight enough that its balance holds.

    factor: how much of the component is made. part_grams: the weight of each line that is a part line.
    A line whose share of the flour would drift by over 4 points is set again within a tighter
    tolerance, and by weight where no measure is tight enough; an egg is split only where that is not enough.
    Source: common practice, the balance of a formula is kept to about 4 % of the flour.
    """
    tolerances = [0] * len(component.lines)
    lines = [_line(component, i, factor, part_grams, 0, setting) for i in range(len(component.lines))]
    eggs = _egg_lines(component, setting)
    while loosest := _loosest_drifting(lines, tolerances, eggs):
        for index in loosest:
            tolerances[index] += 1
            lines[index] = _line(component, index, factor, part_grams, tolerances[index], setting)
    return PrintedComponent(tuple(lines), tuple(TOLERANCES[step] for step in tolerances))


def _egg_lines(component: Component, setting: Setting) -> frozenset[int]:
    return frozenset(
        i
        for i, line in enumerate(component.lines)
        if isinstance(line, IngredientLine) and (row := setting.row(line.chosen)) and "egg" in row.roles
    )


def _loosest_drifting(
    lines: Sequence[SheetLine], tolerances: Sequence[int], eggs: frozenset[int]
) -> Sequence[int]:
    """The lines to set tighter: those that drift too far, and the flours they are held against; eggs last."""
    drifting = [
        i for i, points in enumerate(drift_points(lines)) if points is not None and abs(points) > DRIFT_LIMIT
    ]
    if not drifting:
        return []
    loose = [i for i in sorted({*drifting, *base_lines(lines)}) if tolerances[i] < len(TOLERANCES) - 1]
    return [i for i in loose if i not in eggs] or loose


def _line(
    component: Component,
    index: int,
    factor: Fraction,
    part_grams: Sequence[Fraction | None],
    tolerance_step: int,
    setting: Setting,
) -> SheetLine:
    line = component.lines[index]
    if isinstance(line, PartLine):
        return _part(line, part_grams[index], setting)
    return _ingredient(line, factor, TOLERANCES[tolerance_step], setting)


def _part(line: PartLine, grams: Fraction | None, setting: Setting) -> SheetLine:
    """A part by weight, since a bowl of buttercream or batter is divided on the scale.

    All of a component is just that: what it weighs once baked nobody has to know.
    """
    takes_all = line.share == 1 and not line.from_base
    figures = Measured("all of" if takes_all else "")
    if grams and not takes_all:
        figures = weight_texts(grams, setting.edition)
    share = f"{share_text(line.share)} of it" if line.share not in (None, 1) and line.share else ""
    extra = ", ".join(
        part for part in (share, setting.respelled(line.preparation), setting.respelled(line.note)) if part
    )
    return SheetLine(
        amount=figures.amount,
        name=setting.respelled(line.source),
        beside=figures.beside,
        extra=extra,
        exact_g=figures.exact_g,
        printed_g=figures.printed_g,
        is_part=True,
        at_line=line.at.line,
    )


def _ingredient(line: IngredientLine, factor: Fraction, tolerance: Fraction, setting: Setting) -> SheetLine:
    chosen, row = line.chosen, setting.row(line.chosen)
    figures = measured_line(line, factor, tolerance, setting)
    return SheetLine(
        amount=figures.amount,
        name=printed_name(chosen, row, figures, setting),
        beside=figures.beside,
        extra=_extra(line, figures, setting),
        optional=line.optional,
        allergens=_allergens(row, setting),
        exact_g=figures.exact_g,
        printed_g=figures.printed_g,
        small_step=keeps_fine_step(row),
        is_flour=row is not None and "flour" in row.roles,
        at_line=line.at.line,
        others=_others(line, factor, setting),
    )


def measured_line(line: IngredientLine, factor: Fraction, tolerance: Fraction, setting: Setting) -> Measured:
    """The figures of a line's chosen ingredient; empty where the line has no amount."""
    if line.amount is None:
        return Measured("")
    return measured(Ask(line.amount, line.chosen, setting.row(line.chosen), factor, tolerance), setting)


def printed_name(choice: Choice, row: Ingredient | None, figures: Measured, setting: Setting) -> str:
    """The name as the figure before it wants it: '1 lemon', '1½ lemons'."""
    name = name_beside(figures.amount, setting.name(choice))
    if row is None or figures.count is None:
        return name
    return row.counted(name, figures.count, setting.edition.region)


def _extra(line: IngredientLine, figures: Measured, setting: Setting) -> str:
    rest, taken = figures.rest, line.chosen.part
    already_said = taken in line.preparation
    part = f"{taken}{'s' if taken in EGG_PARTS and figures.count != 1 else ''} only" if taken else ""
    if "beaten" in line.preparation:
        rest = rest.removesuffix(", beaten")
    parts = (rest, "" if already_said else part, line.preparation, line.note)
    return setting.respelled(", ".join(text for text in parts if text))


def _others(line: IngredientLine, factor: Fraction, setting: Setting) -> tuple[SheetAlternative, ...]:
    """The other choices: 'or rapeseed oil', 'or 5 g instant yeast'."""
    others = []
    for choice in line.choices[1:]:
        row, lead = setting.row(choice), "or"
        if choice.amount is not None:
            lead = f"or {measured(Ask(choice.amount, choice, row, factor), setting).amount}"
        others.append(SheetAlternative(lead, setting.name(choice), _allergens(row, setting)))
    return tuple(others)


def _allergens(row: Ingredient | None, setting: Setting) -> tuple[str, ...]:
    return named_in(row, regime_of(setting.edition.region)) if row else ()


def with_share(line: IngredientLine, share: Fraction) -> IngredientLine:
    """The line at a share of its amount, for what one step takes of it."""
    if line.amount is None or share == 1:
        return line
    return replace(line, amount=Amount(line.amount.span.times(share), line.amount.unit))
