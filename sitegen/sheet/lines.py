"""Ingredient lines as printed, in one edition at one batch."""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from fractions import Fraction

from sitegen.kitchen.balance import drift
from sitegen.kitchen.editions import Measuring
from sitegen.kitchen.larder import Ingredient
from sitegen.kitchen.recipe import Amount, Choice, Component, IngredientLine, PartLine, single
from sitegen.kitchen.rounding import rounded_grams, rounded_ounces
from sitegen.sheet.amounts import fraction_text, grams_text, share_text, with_unit
from sitegen.sheet.measured import USUAL_TOLERANCE, Ask, Measured, keeps_fine_step, measured
from sitegen.sheet.setting import Setting
from sitegen.sheet.values import SheetLine

DRIFT_LIMIT = Fraction(4)
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
    tolerance, and by weight where no measure is tight enough. Source: common practice, the
    balance of a formula is kept to about 4 % of the flour.
    """
    tolerances = [0] * len(component.lines)
    lines = [_line(component, i, factor, part_grams, 0, setting) for i in range(len(component.lines))]
    while loosest := _loosest_drifting(lines, tolerances):
        for index in loosest:
            tolerances[index] += 1
            lines[index] = _line(component, index, factor, part_grams, tolerances[index], setting)
    return PrintedComponent(tuple(lines), tuple(TOLERANCES[step] for step in tolerances))


def drift_points(lines: Sequence[SheetLine]) -> tuple[Fraction | None, ...]:
    """How far each line has drifted, in % of the flour (or of the heaviest line); None without a weight."""
    weighed = [i for i, line in enumerate(lines) if line.exact_g is not None and line.printed_g is not None]
    points = drift(
        [lines[i].exact_g or Fraction(0) for i in weighed],
        [lines[i].printed_g or Fraction(0) for i in weighed],
        [lines[i].is_flour for i in weighed],
    )
    found = dict(zip(weighed, points, strict=True))
    return tuple(found.get(i) for i in range(len(lines)))


def _loosest_drifting(lines: Sequence[SheetLine], tolerances: Sequence[int]) -> list[int]:
    """The lines to set tighter: those that drift too far, and the flours they are held against."""
    drifting = [
        i for i, points in enumerate(drift_points(lines)) if points is not None and abs(points) > DRIFT_LIMIT
    ]
    if not drifting:
        return []
    flours = [i for i, line in enumerate(lines) if line.is_flour]
    return [i for i in sorted({*drifting, *flours}) if tolerances[i] < len(TOLERANCES) - 1]


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
    amount, beside = ("all", "") if takes_all else ("", "")
    rounded = None
    if grams is not None and not takes_all:
        rounded = rounded_grams(grams, fine=False)
        amount = grams_text(single(rounded))
        if setting.edition.measuring is Measuring.CUPS:
            beside = with_unit(fraction_text(rounded_ounces(grams)), "oz")
    share = f"{share_text(line.share)} of it" if line.share not in (None, 1) and line.share else ""
    extra = ", ".join(
        part for part in (share, setting.respelled(line.preparation), setting.respelled(line.note)) if part
    )
    return SheetLine(
        amount=amount,
        name=setting.respelled(line.source),
        beside=beside,
        extra=extra,
        exact_g=None if takes_all else grams,
        printed_g=rounded,
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
        extra=_extra(line, figures.rest, setting),
        alternatives=_alternatives(line, factor, setting),
        optional=line.optional,
        allergens=_allergens(row, setting),
        exact_g=figures.exact_g,
        printed_g=figures.printed_g,
        small_step=keeps_fine_step(row),
        is_flour=row is not None and "flour" in row.roles,
        at_line=line.at.line,
    )


def measured_line(line: IngredientLine, factor: Fraction, tolerance: Fraction, setting: Setting) -> Measured:
    """The figures of a line's chosen ingredient; empty where the line has no amount."""
    if line.amount is None:
        return Measured("")
    return measured(Ask(line.amount, line.chosen, setting.row(line.chosen), factor, tolerance), setting)


def printed_name(choice: Choice, row: Ingredient | None, figures: Measured, setting: Setting) -> str:
    """The name as the figure before it wants it: '1 lemon', '1½ lemons'."""
    name = setting.name(choice)
    if row is None or not row.plural or figures.count is None:
        return name
    one, many = row.key, row.plural
    if figures.count > 1 and name == one:
        return many
    return one if figures.count <= 1 and name == many else name


def _extra(line: IngredientLine, rest: str, setting: Setting) -> str:
    part = {"zest": "zest only", "juice": "juice only"}.get(line.chosen.part, "")
    already_said = part.split(" ")[0] in line.preparation if part else False
    parts = (rest, "" if already_said else part, line.preparation, line.note)
    return setting.respelled(", ".join(text for text in parts if text))


def _alternatives(line: IngredientLine, factor: Fraction, setting: Setting) -> str:
    """The other choices: 'or rapeseed oil', 'or 5 g instant yeast'."""
    texts = []
    for choice in line.choices[1:]:
        figures = Measured("")
        if choice.amount is not None:
            figures = measured(Ask(choice.amount, choice, setting.row(choice), factor), setting)
        texts.append(" ".join(part for part in ("or", figures.amount, setting.name(choice)) if part))
    return ", ".join(texts)


def _allergens(row: Ingredient | None, setting: Setting) -> tuple[str, ...]:
    if row is None:
        return ()
    return row.allergens_us if setting.edition.region == "us" else row.allergens_eu


def with_share(line: IngredientLine, share: Fraction) -> IngredientLine:
    """The line at a share of its amount, for what one step takes of it."""
    if line.amount is None or share == 1:
        return line
    return replace(line, amount=Amount(line.amount.span.times(share), line.amount.unit))
