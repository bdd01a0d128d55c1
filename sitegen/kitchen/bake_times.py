"""What another depth does to a bake, as a window to look in, never as a minute."""

from dataclasses import dataclass
from fractions import Fraction

from sitegen.kitchen.amounts import Span

FIRST_LOOK = Fraction(4, 5)


@dataclass(frozen=True)
class BakeWindow:
    """expected: minutes in which the bake may be done. first_look: when to begin to look. Exact."""

    expected: Span
    first_look: Fraction


def bake_window(tested: Span, depth_ratio: Fraction) -> BakeWindow:
    """When a bake may be done that lies deeper or shallower than the tested one.

    tested: minutes of the tested bake. depth_ratio: depth of the batter, new to tested, over 0.
    The middle of a layer is done when heat has gone through half of its thickness, which takes the square of
    the way; crust, rise and the oven's recovery pull the time towards the plain proportion. The window runs
    from the first to the second power of the ratio, and the first look stands at four fifths of its start.
    Sources: American Journal of Physics 74 (6), 2006, for the square; common practice for the window.
    """
    ends = tuple(end * depth_ratio**power for end in (tested.low, tested.high) for power in (1, 2))
    expected = Span(min(ends), max(ends))
    return BakeWindow(expected, expected.low * FIRST_LOOK)
