"""The estimate of nutrition as a sheet prints it: the words and the rounding of the edition's region."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction

from sitegen.kitchen.dish import Dish, Missing, dish_of
from sitegen.kitchen.label_rounding import percent_of
from sitegen.kitchen.larder import Composition
from sitegen.kitchen.nutrition import Quantity, quantities
from sitegen.kitchen.nutrition_table import Label, LabelFigure, LabelRow
from sitegen.kitchen.recipe import Choice, IngredientLine, Line, Recipe
from sitegen.kitchen.rounding import to_step
from sitegen.kitchen.scaling import Batch
from sitegen.kitchen.shares import MadeComponent
from sitegen.kitchen.substitutions import differs_in
from sitegen.sheet.amounts import NO_BREAK, decimal_text, joined, with_unit
from sitegen.sheet.batches import about_grams, grams_text_of, singular
from sitegen.sheet.panel_values import NutrientRow, Nutrition
from sitegen.sheet.setting import Setting

LEAST_KNOWN = Fraction(95, 100)
PIECES_FROM = 3
"""A recipe of more pieces than this is eaten by the piece; a whole cake or a few loaves are not."""
COUNTS_FROM = Fraction(1, 100)
"""Share of all that goes in from which another make-up of an ingredient would show."""
SAID_TO_THE_GRAM = 100
"""Grams under which a portion is."""
DECIMAL_PLACES = {10: 1, 100: 2}
ALCOHOL_TOLD = Fraction(5, 1000)
"""Share of the dish from which alcohol is worth a sentence; a spoonful of vanilla extract has less."""
AN_ESTIMATE = "An estimate, worked out from the ingredients; no laboratory has measured it."

Amounts = Mapping[Quantity, Fraction]


@dataclass(frozen=True)
class Portion:
    """name: '1 cupcake'. number: how many the batch gives, exact."""

    name: str
    number: Fraction


def nutrition_of(
    recipe: Recipe, made: Sequence[MadeComponent], batch: Batch, setting: Setting
) -> tuple[Nutrition | None, tuple[str, ...]]:
    """The estimate, and sentences on why there is none.

    made: all components of the batch, base recipes included.
    None where less than 95 % of the weight that goes in has a known composition, where something cannot be
    weighed, or where the region has no table of its own.
    """
    label = setting.tables.nutrition.label(setting.edition.region)
    dish = dish_of(recipe, made, _Compositions(setting), setting.tables.nutrition)
    if label is None or not (dish.grams or dish.missing):
        return None, ()
    if dish.unweighed or dish.known_share < LEAST_KNOWN:
        return None, (_why_none(dish, setting),)
    portion = _portion(recipe, batch, setting)
    return _nutrition(dish, portion, label, tuple(_notes(dish, made, setting)), setting), ()


@dataclass(frozen=True)
class _Compositions:
    """What the larder knows of an ingredient as it is taken: the zest of a lemon is no lemon."""

    setting: Setting

    def __call__(self, choice: Choice) -> Composition | None:
        row = self.setting.row(choice)
        if row is None:
            return None
        part = self.setting.tables.larder.find(f"{row.key} {choice.part}") if choice.part else None
        return part.composition if part else row.composition


def _portion(recipe: Recipe, batch: Batch, setting: Setting) -> Portion | None:
    """What the recipe calls a portion, else one of its pieces; None where it makes one thing to share.

    Of '8-10' portions there are taken to be 8, so that a portion is rather said too large than too small.
    """
    if recipe.serves is not None:
        return Portion(f"1{NO_BREAK}portion", recipe.serves.low * batch.factor)
    if not recipe.makes.noun or recipe.makes.count <= PIECES_FROM:
        return None
    piece = setting.respelled(singular(recipe.makes.noun))
    return Portion(f"1{NO_BREAK}{piece}", batch.makes)


def _nutrition(
    dish: Dish, portion: Portion | None, label: Label, notes: tuple[str, ...], setting: Setting
) -> Nutrition:
    """Where there is no portion, 100 g stand alone, whatever the region's law says of servings."""
    factors = setting.tables.nutrition.factors
    per_100g = quantities(dish.nutrients.times(100 / dish.grams), factors)
    per_portion = quantities(dish.nutrients.times(1 / portion.number), factors) if portion else None
    shown = per_100g if label.per_100g or portion is None else None
    return Nutrition(
        style=label.style,
        portion=f"{portion.name}, {_about(dish.grams / portion.number)}" if portion else "",
        rows=tuple(_row(row, per_portion, shown, label) for row in label.rows),
        notes=notes,
        energy=_energy(label, per_portion or per_100g),
    )


def _about(grams: Fraction) -> str:
    """A portion to the gram where a few grams of it count, as the law says of a serving (101.9(b)(7))."""
    return f"about {grams_text_of(grams if grams < SAID_TO_THE_GRAM else about_grams(grams))}"


def _row(row: LabelRow, per_portion: Amounts | None, per_100g: Amounts | None, label: Label) -> NutrientRow:
    return NutrientRow(
        name=row.name,
        per_portion=_figures(row, per_portion, label) if per_portion else "",
        per_100g=_figures(row, per_100g, label) if per_100g else "",
        daily=_daily(row, per_portion) if per_portion else "",
        is_inner=row.is_inner,
        key=row.key,
    )


def _figures(row: LabelRow, amounts: Amounts, label: Label) -> str:
    return " / ".join(_figure(figure, amounts, label) for figure in row.figures)


def _figure(figure: LabelFigure, amounts: Amounts, label: Label) -> str:
    rounded = figure.rule.rounded(amounts[figure.quantity])
    number = _number(rounded.figure, rounded.step)
    text = with_unit(number, figure.unit) if figure.unit else number
    return f"{label.less_than}{text}" if rounded.is_less_than else text


def _number(figure: Fraction, step: Fraction | None) -> str:
    """As many places as the step has, so that 4.0 g is told from 4 g; halves only where there is one."""
    places = DECIMAL_PLACES.get(step.denominator) if step else None
    return f"{float(figure):.{places}f}" if places else decimal_text(figure)


def _daily(row: LabelRow, amounts: Amounts) -> str:
    """Of the exact amount, but none where none is declared: '0 g' and '1 %' would gainsay each other."""
    if row.daily is None:
        return ""
    figure = row.figures[0]
    amount = amounts[figure.quantity]
    share = percent_of(amount, row.daily) if figure.rule.rounded(amount).figure else 0
    return f"{share}{NO_BREAK}%"


def _energy(label: Label, amounts: Amounts) -> str:
    """The last figure of the line on energy, its unit written out."""
    figure = next(row.figures[-1] for row in label.rows if row.key == "energy")
    text = _figure(figure, amounts, label)
    return text if figure.unit else with_unit(text, "kcal")


def _why_none(dish: Dish, setting: Setting) -> str:
    if dish.unweighed:
        names = joined(tuple(dict.fromkeys(setting.name(choice) for choice in dish.unweighed)))
        return f"Nutrition is left out, as nothing says what {names} would weigh."
    return f"Nutrition is left out, as too little is known of what is in {_named(dish.missing, setting)}."


def _named(missing: Sequence[Missing], setting: Setting) -> str:
    """'rose syrup (12 % of the weight) and meringue powder (0.4 %)'."""
    names = [f"{setting.name(one.choice)} ({_percent(one.share)}" for one in missing]
    return joined((f"{names[0]} of the weight)", *(f"{name})" for name in names[1:])))


def _percent(share: Fraction) -> str:
    percent = share * 100
    if percent < Fraction(1, 10):
        return f"under 0.1{NO_BREAK}%"
    return f"{decimal_text(to_step(percent, Fraction(1, 10)))}{NO_BREAK}%"


def _notes(dish: Dish, made: Sequence[MadeComponent], setting: Setting) -> Iterator[str]:
    yield AN_ESTIMATE
    if dish.missing:
        yield f"Left out, as nothing is known of what is in it: {_named(dish.missing, setting)}."
    yield from _loss_notes(dish, setting)
    yield from _line_notes([line for one in made for line in one.component.lines], setting)
    yield from _region_notes(made, setting)
    if dish.nutrients.alcohol >= ALCOHOL_TOLD * dish.grams:
        yield "Alcohol counts towards the energy; heat is taken to have driven off part of it."
    yield f"Figures on the ingredients: {_sources(made, setting)}. Energy by the European Union's factors."


def _loss_notes(dish: Dish, setting: Setting) -> Iterator[str]:
    """What is counted as gone off in heat: what the recipe says, and what is assumed by kind."""
    for is_assumed, words in ((False, "By the recipe, water lost"), (True, "Assumed water lost in heat")):
        lost = [
            f"{setting.respelled(title)} {_percent(loss.water)}"
            for title, loss in dish.losses.items()
            if loss.water and loss.is_assumed == is_assumed
        ]
        if lost:
            yield f"{words}: {', '.join(lost)}."


def _line_notes(lines: Sequence[Line], setting: Setting) -> Iterator[str]:
    bought = [line for line in lines if isinstance(line, IngredientLine)]
    steeped = [line.chosen for line in bought if not setting.tables.nutrition.is_eaten(line)]
    if steeped:
        names = joined(tuple(dict.fromkeys(setting.name(choice) for choice in steeped)))
        yield f"Not counted, as it is steeped and taken out: {names}."
    if any(line.optional or line.amount is None for line in bought):
        yield "What is optional or has no amount is not counted."
    if any(len(line.choices) > 1 for line in bought):
        yield "Where a line gives a choice, the first is counted."


def _region_notes(made: Sequence[MadeComponent], setting: Setting) -> Iterator[str]:
    """What the region sells with another make-up under its name: the figures are of what was tested."""
    region, written = setting.edition.region, setting.written.region
    lines = [pair for one in made for pair in zip(one.component.lines, one.line_grams, strict=True)]
    bought = [(line.chosen, grams) for line, grams in lines if isinstance(line, IngredientLine) and grams]
    total = sum(grams for _, grams in bought)
    keys = [choice.ingredient for choice, grams in bought if grams >= COUNTS_FROM * total]
    for key in dict.fromkeys(keys):
        how = differs_in(setting.tables.swaps, key, region, written)
        if how:
            yield f"Worked out for the ingredients that the recipe was tested with: {how}."


def _sources(made: Sequence[MadeComponent], setting: Setting) -> str:
    """Where the compositions come from, in short, each once."""
    find = _Compositions(setting)
    lines = (line for one in made for line in one.component.lines if isinstance(line, IngredientLine))
    found = [composition.source for line in lines if (composition := find(line.chosen)) is not None]
    shorts = sorted({setting.tables.source_in_short(source) for source in found})
    return "; ".join(shorts)
