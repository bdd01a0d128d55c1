"""Base recipes and divided components: what is made, how much of it, and what each part weighs.

A recipe is made once; a base recipe is made once for all that take of it, or once for each component
that takes of it where the recipe says so (`Recipe.base_uses`). A making is known by its recipe's title and
by whom it is for.
"""

from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from fractions import Fraction

from sitegen.kitchen.declared import with_bases
from sitegen.kitchen.part_errors import BaseCircle, UnknownPart
from sitegen.kitchen.part_weights import NOTHING, PartScale, Weigh, Weight, own_parts, parts
from sitegen.kitchen.recipe import BaseUse, Component, PartLine, Recipe


@dataclass(frozen=True)
class MadeComponent:
    """A component as it is made for a batch.

    title: what tells it from all others of the batch, and what others call it by. factor: how much of it as
    written. grams: what it weighs in this batch, exact, None where unknown.
    base: the base recipe that it comes from, None for a component of the recipe itself.
    needed_by: titles of the components that take of it. unknown: names that could not be weighed.
    line_grams: what each line weighs in this batch; None for what is not measured or not known.
    made_for: the title of the one component that it is made for, '' where it is made for all.
    calls: each title that its lines and steps may name -> the title of the made component that is meant.
    left_share: what nothing takes of it, as a share of it as written; left_g: the same in grams, None where
    unknown.
    """

    component: Component
    factor: Fraction
    grams: Fraction | None
    base: Recipe | None
    needed_by: tuple[str, ...]
    unknown: tuple[str, ...]
    line_grams: tuple[Fraction | None, ...]
    made_for: str = ""
    calls: Mapping[str, str] = field(default_factory=dict, hash=False)
    left_share: Fraction = NOTHING
    left_g: Fraction | None = NOTHING
    title: str = ""


def made_components(
    recipe: Recipe, bases: Mapping[str, Recipe], factor: Fraction, weigh: Weigh
) -> tuple[MadeComponent, ...]:
    """All components that a batch needs, in the order of work.

    bases: recipes by title. factor: how much of the recipe is made. weigh: an ingredient line as
    written -> its grams, or None.
    The recipe's components stand as written; the components of a base recipe stand just before the first
    component that needs them, to any depth. A weight of a base recipe is held against the weight that it
    says it makes, else against the sum of its ingredients. What a recipe wants to spare of a base recipe
    is made on top of what it takes, and left over.
    Raises BaseCircle, UnknownPart, SharesDontAddUp, MoreThanIsMade, NoWeight.
    """
    scale = PartScale(bases, weigh)
    bench = _Bench(recipe, scale, _titles_of_several(recipe, bases))
    order = tuple(bench.in_order(_Making(recipe.title), (), set()))
    for title in dict.fromkeys(one.making.title for one in order):
        bench.check_divided(title)
    amounts = bench.amounts(order, factor)
    return tuple(bench.made(one, order, amounts) for one in order)


def part_grams(made: MadeComponent) -> tuple[Fraction | None, ...]:
    """What each part line of a made component weighs in its batch; None for its ingredient lines."""
    return tuple(
        grams if isinstance(line, PartLine) else None
        for line, grams in zip(made.component.lines, made.line_grams, strict=True)
    )


@dataclass(frozen=True)
class _Making:
    """One making of a recipe. made_for: the title of the component that it is for, '' for all."""

    title: str
    made_for: str = ""


@dataclass(frozen=True)
class _Task:
    """One component of one making, and the makings that its lines take of (None: of no base recipe)."""

    making: _Making
    owner: Recipe
    component: Component
    draws: tuple[_Making | None, ...]


@dataclass
class _Amount:
    """How much of a recipe is made and taken, as a factor of it as written."""

    made: Fraction = NOTHING
    taken: Fraction = NOTHING


Order = Sequence[_Task]
Amounts = Mapping[_Making, _Amount]


@dataclass(frozen=True)
class _Bench:
    """The recipe in work, and the scale with the base recipes at hand.

    of_several: titles that several components bear.
    """

    recipe: Recipe
    scale: PartScale
    of_several: frozenset[str]

    def recipe_of(self, title: str) -> Recipe:
        return self.recipe if title == self.recipe.title else self.scale.base(title)

    def base_of(self, owner: Recipe) -> Recipe | None:
        return None if owner is self.recipe else owner

    def title(self, owner: Recipe, component: Component, made_for: str) -> str:
        """What tells a component from all others: its base recipe's name where needed, and whom it is for."""
        title = _plain_title(owner, component, is_base=owner is not self.recipe)
        if title in self.of_several and owner is not self.recipe:
            title = f"{title} of {owner.title}"
        return f"{title}, for {made_for}" if made_for else title

    def in_order(self, making: _Making, path: tuple[str, ...], begun: set[_Making]) -> Iterator[_Task]:
        """Each making's components in written order, base recipes before the first that needs them."""
        owner = self.recipe_of(making.title)
        path = (*path, owner.title)
        for component in owner.components:
            draws = tuple(self.drawn_on(making, owner, component))
            for drawn in draws:
                if drawn is None:
                    continue
                if drawn.title in path:
                    raise BaseCircle((*path[path.index(drawn.title) :], drawn.title))
                if drawn not in begun:
                    begun.add(drawn)
                    yield from self.in_order(drawn, path, begun)
            yield _Task(making, owner, component, draws)

    def drawn_on(self, making: _Making, owner: Recipe, component: Component) -> Iterator[_Making | None]:
        """The making that each line takes of; None for an ingredient or a component of the recipe itself."""
        for line in component.lines:
            if not isinstance(line, PartLine) or not line.from_base:
                yield None
                continue
            base = self.scale.base(line.source)
            is_shared = base_use(owner, base.title).made_once
            user = self.title(owner, component, making.made_for)
            yield _Making(base.title, "" if is_shared else user)

    def check_divided(self, title: str) -> None:
        """Whether what is taken of each component of a recipe is there to be taken."""
        owner = self.recipe_of(title)
        for line in own_parts(owner):
            if owner.component(line.source) is None:
                raise UnknownPart(line.source)
        for component in owner.components:
            self.scale.left_of(owner, component)

    def amounts(self, order: Order, factor: Fraction) -> Amounts:
        """How much of each recipe its users need together.

        Read from the end: all that take of a making stand behind the last of its components.
        """
        amounts = {one.making: _Amount() for one in order}
        amounts[_Making(self.recipe.title)] = _Amount(factor, factor)
        for one in reversed(order):
            for line, drawn in zip(one.component.lines, one.draws, strict=True):
                if isinstance(line, PartLine) and drawn is not None:
                    needed = self.scale.whole_share(line) * amounts[one.making].made
                    amounts[drawn].taken += needed
                    amounts[drawn].made += needed * (1 + base_use(one.owner, drawn.title).spare)
        return amounts

    def made(self, one: _Task, order: Order, amounts: Amounts) -> MadeComponent:
        """One component with its factor and weights."""
        owner, component, factor = one.owner, one.component, amounts[one.making].made
        weight = self.scale.component(owner, component)
        if self.base_of(owner) and len(owner.components) == 1 and owner.makes.grams is not None:
            weight = Weight(owner.makes.grams)
        lines = [self.scale.line(owner, line) for line in component.lines]
        left_share, left = self.left(one, amounts[one.making])
        return MadeComponent(
            component=component,
            factor=factor,
            grams=weight.times(factor).known,
            base=self.base_of(owner),
            needed_by=self.needed_by(one, order),
            unknown=tuple(dict.fromkeys(weight.unknown)),
            line_grams=tuple(line.times(factor).known if line else None for line in lines),
            made_for=one.making.made_for,
            calls=self.calls(one),
            left_share=left_share,
            left_g=left.known,
            title=self.title(owner, component, one.making.made_for),
        )

    def left(self, one: _Task, amount: _Amount) -> tuple[Fraction, Weight]:
        """What nothing takes of a component; of the last one of a base recipe, what is spare of the whole."""
        if self.base_of(one.owner) and one.component is one.owner.components[-1]:
            share = amount.made - amount.taken
            return share, self.scale.recipe(one.owner).times(share)
        left = (self.scale.left_of(one.owner, one.component) or Weight()).times(amount.made)
        whole = self.scale.component(one.owner, one.component)
        return (left.grams / whole.grams if left.known and whole.known else NOTHING), left

    def calls(self, one: _Task) -> Mapping[str, str]:
        """Each title that a component may name -> the title by which the batch knows it."""
        made_for = one.making.made_for
        calls = {other.title: self.title(one.owner, other, made_for) for other in one.owner.components}
        for drawn in filter(None, one.draws):
            source = self.recipe_of(drawn.title)
            calls[drawn.title] = self.title(source, source.components[-1], drawn.made_for)
        return calls

    def needed_by(self, wanted: _Task, order: Order) -> tuple[str, ...]:
        """Who takes of a component: inside its making, or of the whole making where it is the last one."""
        title = self.calls(wanted)[wanted.component.title]
        users = []
        for one in order:
            calls = self.calls(one)
            if title in [calls.get(line.source) for line in parts(one.component)]:
                users.append(calls[one.component.title])
        return tuple(dict.fromkeys(users))


def base_use(recipe: Recipe, title: str) -> BaseUse:
    """How a recipe uses a base recipe: made once and nothing spare, unless it says otherwise."""
    return next((use for use in recipe.base_uses if use.title == title), BaseUse(title))


def _plain_title(owner: Recipe, component: Component, *, is_base: bool) -> str:
    """All of a base recipe bears that recipe's title, as others call it."""
    return owner.title if is_base and len(owner.components) == 1 else component.title


def _titles_of_several(recipe: Recipe, bases: Mapping[str, Recipe]) -> frozenset[str]:
    """Titles that components of the recipe and of its base recipes share."""
    counted = Counter(
        _plain_title(owner, component, is_base=owner is not recipe)
        for owner in with_bases(recipe, bases)
        for component in owner.components
    )
    return frozenset(title for title, count in counted.items() if count > 1)
