"""Base recipes and divided components: what is made, how much of it, and what each part weighs."""

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass
from fractions import Fraction

from sitegen.kitchen.recipe import Choice, Component, IngredientLine, Line, PartLine, Recipe, Span

Weigh = Callable[[IngredientLine], Span | None]
NOTHING = Fraction(0)


@dataclass(eq=False)
class BaseCircle(Exception):
    """A recipe (or component) is made of itself. titles: the way round, first and last alike."""

    titles: tuple[str, ...]


@dataclass(eq=False)
class UnknownPart(Exception):
    """A part is taken of something that is neither a component of the recipe nor a base recipe."""

    title: str


@dataclass(eq=False)
class SharesDontAddUp(Exception):
    """The shares that are taken of a component of the recipe do not make one whole."""

    title: str
    total: Fraction


@dataclass(eq=False)
class MoreThanIsMade(Exception):
    """More is taken of a component, in grams, than it weighs in the tested batch."""

    title: str
    taken_g: Fraction
    made_g: Fraction


@dataclass(eq=False)
class NoWeight(Exception):
    """A weight is taken of a base recipe whose own weight cannot be known.

    unknown: names of what could not be weighed.
    """

    title: str
    unknown: tuple[str, ...]


@dataclass(frozen=True)
class MadeComponent:
    """A component as it is made for a batch.

    factor: how much of it as written. grams: what it weighs in this batch, exact, None where unknown.
    base: the base recipe that it comes from, None for a component of the recipe itself.
    needed_by: titles of the components that take of it. unknown: names that could not be weighed.
    line_grams: what each line weighs in this batch; None for what is not measured or not known.
    """

    component: Component
    factor: Fraction
    grams: Fraction | None
    base: Recipe | None
    needed_by: tuple[str, ...]
    unknown: tuple[str, ...]
    line_grams: tuple[Fraction | None, ...]


@dataclass(frozen=True)
class _Weight:
    """Grams in the tested batch, and the names that are missing in them."""

    grams: Fraction = NOTHING
    unknown: tuple[str, ...] = ()

    @property
    def known(self) -> Fraction | None:
        return None if self.unknown else self.grams

    def plus(self, other: "_Weight") -> "_Weight":
        return _Weight(self.grams + other.grams, (*self.unknown, *other.unknown))

    def times(self, share: Fraction) -> "_Weight":
        return _Weight(self.grams * share, self.unknown)


def made_components(
    recipe: Recipe, bases: Mapping[str, Recipe], factor: Fraction, weigh: Weigh
) -> tuple[MadeComponent, ...]:
    """All components that a batch needs, in the order of work.

    bases: recipes by title. factor: how much of the recipe is made. weigh: an ingredient line as
    written -> its grams, or None.
    The recipe's components stand as written; the components of a base recipe stand just before the first
    component that needs them, made once for all that need them, to any depth. A weight of a base recipe
    is held against the weight that it says it makes, else against the sum of its ingredients.
    Raises BaseCircle, UnknownPart, SharesDontAddUp, MoreThanIsMade, NoWeight.
    """
    bench = _Bench(recipe, bases, weigh)
    order = tuple(bench.in_order(recipe, (), set()))
    for each in {id(owner): owner for owner, _ in order}.values():
        bench.check_divided(each)
    factors: dict[str, Fraction] = {recipe.title: factor}
    return tuple(bench.made(owner, component, order, factors) for owner, component in order)


def part_grams(made: MadeComponent) -> tuple[Fraction | None, ...]:
    """What each part line of a made component weighs in its batch; None for its ingredient lines."""
    return tuple(
        grams if isinstance(line, PartLine) else None
        for line, grams in zip(made.component.lines, made.line_grams, strict=True)
    )


Order = tuple[tuple[Recipe, Component], ...]


@dataclass(frozen=True)
class _Bench:
    """The recipe in work, the base recipes at hand, and the scale."""

    recipe: Recipe
    bases: Mapping[str, Recipe]
    weigh: Weigh

    def in_order(
        self, owner: Recipe, path: tuple[str, ...], done: set[str]
    ) -> Iterator[tuple[Recipe, Component]]:
        """Each recipe's components in written order, base recipes before the first that needs them."""
        path = (*path, owner.title)
        for component in owner.components:
            for line in _parts(component):
                if not line.from_base:
                    continue
                base = self.base(line.source)
                if base.title in path:
                    raise BaseCircle((*path[path.index(base.title) :], base.title))
                if base.title not in done:
                    done.add(base.title)
                    yield from self.in_order(base, path, done)
            yield owner, component

    def base(self, title: str) -> Recipe:
        """The base recipe of that title. Raises UnknownPart."""
        if title not in self.bases:
            raise UnknownPart(title)
        return self.bases[title]

    def made(
        self, owner: Recipe, component: Component, order: Order, factors: dict[str, Fraction]
    ) -> MadeComponent:
        """One component with its factor and weights."""
        factor = self.factor_of(owner, order, factors)
        weight = self.component_weight(owner, component)
        if owner is not self.recipe and len(owner.components) == 1 and owner.makes.grams is not None:
            weight = _Weight(owner.makes.grams)
        lines = [self.line_weight(owner, line) for line in component.lines]
        return MadeComponent(
            component=component,
            factor=factor,
            grams=weight.times(factor).known,
            base=None if owner is self.recipe else owner,
            needed_by=_needed_by(owner, component, order),
            unknown=tuple(dict.fromkeys(weight.unknown)),
            line_grams=tuple(line.times(factor).known if line else None for line in lines),
        )

    def factor_of(self, owner: Recipe, order: Order, factors: dict[str, Fraction]) -> Fraction:
        """How much of a recipe all its users need together; kept in `factors`."""
        if owner.title not in factors:
            needs = (
                self.whole_share(line) * self.factor_of(user, order, factors)
                for user, component in order
                for line in _parts(component)
                if line.from_base and line.source == owner.title
            )
            factors[owner.title] = sum(needs, NOTHING)
        return factors[owner.title]

    def whole_share(self, line: PartLine) -> Fraction:
        """How much of its base recipe a line takes, as a share of the whole as written."""
        if line.share is not None:
            return line.share
        base = self.base(line.source)
        whole = self.recipe_weight(base)
        if whole.known is None or not whole.grams:
            raise NoWeight(base.title, whole.unknown)
        taken = self.weigh(_as_ingredient(line))
        if taken is None:
            raise NoWeight(base.title, (line.text,))
        return taken.middle / whole.grams

    def recipe_weight(self, recipe: Recipe) -> _Weight:
        """What a recipe makes: the weight that it states, else all that goes into it."""
        if recipe.makes.grams is not None:
            return _Weight(recipe.makes.grams)
        lines = (line for component in recipe.components for line in component.lines)
        return _sum(self.line_weight(recipe, line) for line in lines if not _is_own_part(line))

    def component_weight(self, owner: Recipe, component: Component, path: tuple[str, ...] = ()) -> _Weight:
        """All that goes into a component. path: titles on the way here, to find a circle."""
        if component.title in path:
            raise BaseCircle((*path[path.index(component.title) :], component.title))
        path = (*path, component.title)
        return _sum(self.line_weight(owner, line, path) for line in component.lines)

    def line_weight(self, owner: Recipe, line: Line, path: tuple[str, ...] = ()) -> _Weight | None:
        """One line as written; None for what is not measured or is left to the cook."""
        if isinstance(line, IngredientLine):
            return None if line.amount is None or line.optional else self._weighed(line)
        if line.amount is not None:
            return self._weighed(_as_ingredient(line))
        share = line.share or NOTHING
        if line.from_base:
            return self.recipe_weight(self.base(line.source)).times(share)
        return self.component_weight(owner, _own_part(owner, line), path).times(share)

    def _weighed(self, line: IngredientLine) -> _Weight:
        grams = self.weigh(line)
        return _Weight(unknown=(line.chosen.name,)) if grams is None else _Weight(grams.middle)

    def check_divided(self, owner: Recipe) -> None:
        """Whether what is taken of each component of a recipe is there to be taken."""
        taken: dict[str, list[PartLine]] = {}
        for component in owner.components:
            for line in _parts(component):
                if not line.from_base:
                    taken.setdefault(_own_part(owner, line).title, []).append(line)
        for title, lines in taken.items():
            self._check_one(owner, title, lines)

    def _check_one(self, owner: Recipe, title: str, lines: list[PartLine]) -> None:
        shares = sum((line.share for line in lines if line.share is not None), NOTHING)
        by_weight = [line for line in lines if line.amount is not None]
        if shares > 1 or (not by_weight and shares != 1):
            raise SharesDontAddUp(title, shares)
        source = owner.component(title)
        whole = self.component_weight(owner, source).known if source and by_weight else None
        taken = _sum(self.line_weight(owner, line) for line in by_weight).grams
        if whole is not None and taken > whole * (1 - shares):
            raise MoreThanIsMade(title, taken, whole * (1 - shares))


def _parts(component: Component) -> Iterator[PartLine]:
    return (line for line in component.lines if isinstance(line, PartLine))


def _is_own_part(line: Line) -> bool:
    return isinstance(line, PartLine) and not line.from_base


def _own_part(owner: Recipe, line: PartLine) -> Component:
    component = owner.component(line.source)
    if component is None:
        raise UnknownPart(line.source)
    return component


def _as_ingredient(line: PartLine) -> IngredientLine:
    """A part line with a weight, as the scale takes it."""
    return IngredientLine(line.text, line.amount, (Choice(line.source, ""),), at=line.at)


def _needed_by(owner: Recipe, component: Component, order: Order) -> tuple[str, ...]:
    """Who takes of a component: inside its recipe, or of the whole recipe where it is the last one."""
    finishes = component is owner.components[-1]
    users = (
        user.title
        for recipe, user in order
        for line in _parts(user)
        if (not line.from_base and recipe is owner and line.source == component.title)
        or (finishes and line.from_base and line.source == owner.title)
    )
    return tuple(dict.fromkeys(users))


def _sum(weights: Iterator[_Weight | None]) -> _Weight:
    total = _Weight()
    for weight in weights:
        total = total.plus(weight) if weight else total
    return total
