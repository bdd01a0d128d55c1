"""What is left over once a batch has taken what it needs."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction

from sitegen.kitchen.shares import MadeComponent


@dataclass(frozen=True)
class Leftover:
    """What nothing takes of a base recipe or a component.

    share: of it as written, exact. grams: the same in this batch, exact; None where it cannot be weighed.
    """

    title: str
    share: Fraction
    grams: Fraction | None


def leftovers(made: Sequence[MadeComponent]) -> tuple[Leftover, ...]:
    """Everything left over of a batch, in the order of work.

    Of a base recipe as a whole, under its title; where it is made for each, of each making.
    """
    return tuple(_leftovers(made))


def _leftovers(made: Sequence[MadeComponent]) -> Iterator[Leftover]:
    for one in made:
        if one.left_share or one.left_g:
            is_whole = one.base is not None and one.component is one.base.components[-1]
            title = one.base.title if one.base is not None and is_whole else one.title
            whose = f"{title}, for {one.made_for}" if is_whole and one.made_for else title
            yield Leftover(whose, one.left_share, one.left_g)
