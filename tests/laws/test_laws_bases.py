"""What holds for any nest of base recipes: nothing lost and nothing made of nothing, at every level."""

from collections.abc import Iterable
from dataclasses import dataclass
from fractions import Fraction

from hypothesis import given
from hypothesis import strategies as some

from sitegen.kitchen.amounts import Amount, Span, single
from sitegen.kitchen.leftovers import leftovers
from sitegen.kitchen.recipe import BaseUse, Choice, Component, IngredientLine, Line, Makes, PartLine, Recipe
from sitegen.kitchen.shares import MadeComponent, made_components

NONE = Fraction(0)
FACTORS = some.fractions(min_value=Fraction(1, 12), max_value=20, max_denominator=12)
SHARES = some.fractions(min_value=Fraction(1, 12), max_value=3, max_denominator=12)
SPARES = some.sampled_from([NONE, NONE, Fraction(1, 20), Fraction(1, 10), Fraction(1)])
WEIGHTS = some.integers(min_value=1, max_value=900)


@dataclass(frozen=True)
class Nest:
    """A recipe and the base recipes under it, the deepest first."""

    recipe: Recipe
    bases: tuple[Recipe, ...]

    def made(self, factor: Fraction) -> tuple[MadeComponent, ...]:
        return made_components(self.recipe, {base.title: base for base in self.bases}, factor, weigh)


def weigh(line: IngredientLine) -> Span | None:
    return line.amount.span if line.amount else None


def ingredient(grams: int, index: int) -> IngredientLine:
    return IngredientLine(
        f"{grams} g", Amount(single(grams), "g"), (Choice(f"food {index}", f"food {index}"),)
    )


def of_base(title: str, share: Fraction | None, grams: int) -> PartLine:
    amount = None if share is not None else Amount(single(grams), "g")
    return PartLine(f"of {title}", title, share, amount, True)


def of_own(title: str, share: Fraction | None, grams: Fraction) -> PartLine:
    amount = None if share is not None else Amount(Span(grams, grams), "g")
    return PartLine(f"of {title}", title, share, amount, False)


@some.composite
def component_lines(draw: some.DrawFn, bases: tuple[str, ...]) -> tuple[Line, ...]:
    lines: list[Line] = [
        ingredient(grams, i) for i, grams in enumerate(draw(some.lists(WEIGHTS, min_size=1, max_size=3)))
    ]
    for title in draw(some.lists(some.sampled_from(bases), max_size=2)) if bases else ():
        lines.append(of_base(title, draw(some.none() | SHARES), draw(WEIGHTS)))
    return tuple(lines)


@some.composite
def recipes(draw: some.DrawFn, title: str, bases: tuple[str, ...]) -> Recipe:
    """Two or three components; the last takes of the first by share and, often, the rest is left over."""
    lines = draw(some.lists(component_lines(bases), min_size=2, max_size=3))
    parts = [Component(f"{title} {index}", own, ()) for index, own in enumerate(lines)]
    if draw(some.booleans()):
        own = [one for one in parts[0].lines if isinstance(one, IngredientLine)]
        grams = sum((one.amount.span.low for one in own if one.amount), NONE)
        taken = of_own(parts[0].title, *draw(some.sampled_from([(Fraction(1), NONE), (None, grams / 2)])))
        parts[-1] = Component(parts[-1].title, (*parts[-1].lines, taken), ())
    uses = tuple(BaseUse(base, draw(some.booleans()), draw(SPARES)) for base in bases)
    return Recipe(title, title, "", Makes(Fraction(1), "cake"), tuple(parts), base_uses=uses)


@some.composite
def nests(draw: some.DrawFn) -> Nest:
    """One to four levels; each may draw on all that lie below."""
    made: list[Recipe] = []
    for level in range(draw(some.integers(min_value=1, max_value=4))):
        made.append(draw(recipes(f"R{level}", tuple(one.title for one in made))))
    return Nest(made[-1], tuple(made[:-1]))


def total(weights: Iterable[Fraction | None]) -> Fraction:
    return sum((weight or NONE for weight in weights), NONE)


def goes_in(made: tuple[MadeComponent, ...]) -> Fraction:
    """All ingredients of a batch, grams."""
    return total(
        grams
        for one in made
        for line, grams in zip(one.component.lines, one.line_grams, strict=True)
        if isinstance(line, IngredientLine)
    )


def taken_of(made: tuple[MadeComponent, ...]) -> dict[str, Fraction]:
    """Title in the batch -> grams that lines take of it; of a whole base recipe under its last component."""
    taken: dict[str, Fraction] = {}
    for one in made:
        for line, grams in zip(one.component.lines, one.line_grams, strict=True):
            if isinstance(line, PartLine):
                title = one.calls[line.source]
                taken[title] = taken.get(title, NONE) + (grams or NONE)
    return taken


@given(nests(), FACTORS)
def test_all_that_goes_in_is_in_the_piece_or_left_over(nest: Nest, factor: Fraction) -> None:
    made = nest.made(factor)
    in_the_piece = total(one.grams for one in made if one.base is None and not one.needed_by)
    assert goes_in(made) == in_the_piece + total(one.grams for one in leftovers(made))


@given(nests(), FACTORS)
def test_at_every_level_what_is_made_is_taken_or_left(nest: Nest, factor: Fraction) -> None:
    made = nest.made(factor)
    taken = taken_of(made)
    for one in made:
        if one.base is None and one.needed_by:
            assert one.grams == taken[one.title] + (one.left_g or NONE)
        elif one.base is not None and one.component is one.base.components[-1]:
            ends = [
                other.grams
                for other in made
                if other.base is one.base
                and other.made_for == one.made_for
                and (other is one or not other.needed_by)
            ]
            assert total(ends) == taken[one.title] + (one.left_g or NONE)


@given(nests(), FACTORS)
def test_a_factor_times_all_of_it(nest: Nest, factor: Fraction) -> None:
    for one, more in zip(nest.made(Fraction(1)), nest.made(factor), strict=True):
        assert more.factor == one.factor * factor
        assert more.grams == (one.grams or NONE) * factor
        assert more.left_g == (one.left_g or NONE) * factor


@given(nests())
def test_no_two_components_of_a_batch_bear_one_title(nest: Nest) -> None:
    titles = [one.title for one in nest.made(Fraction(1))]
    assert len(titles) == len(set(titles))


@given(nests())
def test_what_others_take_of_stands_before_them(nest: Nest) -> None:
    made = nest.made(Fraction(1))
    place = {one.title: index for index, one in enumerate(made)}
    for one in made:
        for line in one.component.lines:
            if isinstance(line, PartLine):
                assert place[one.calls[line.source]] < place[one.title]


@given(nests(), FACTORS)
def test_nothing_is_negative(nest: Nest, factor: Fraction) -> None:
    for one in nest.made(factor):
        assert one.factor > 0
        assert one.left_share >= 0
        assert all(grams > 0 for grams in one.line_grams if grams is not None)
