"""What a vessel holds up to a level, by plain geometry of its inside measures.

Each solid is a function (tin, core share, level in cm above its floor) -> ml, exact in the measures given.
`level` runs from 0 to the tin's depth; at the depth it gives the capacity to the rim.
"""

from collections.abc import Callable
from fractions import Fraction

from sitegen.kitchen.recipe import Tin

PI = Fraction(3141592653589793238, 10**18)
Solid = Callable[[Tin, Fraction, Fraction], Fraction]


def round_area(width_cm: Fraction) -> Fraction:
    """Area of a round of that diameter, cm2."""
    return PI * width_cm**2 / 4


def cylinder(tin: Tin, _core: Fraction, level: Fraction) -> Fraction:
    """pi D^2 / 4 x h."""
    return round_area(tin.width_cm) * level


def box(tin: Tin, _core: Fraction, level: Fraction) -> Fraction:
    """a b h."""
    return tin.width_cm * tin.length_cm * level


def frustum(tin: Tin, _core: Fraction, level: Fraction) -> Fraction:
    """A round with sloping sides: pi h / 12 (D^2 + D d + d^2), D being the width at the level."""
    base = tin.base_width_cm
    top = _at_level(base, tin.width_cm, tin.depth_cm, level)
    return PI * level / 12 * (top**2 + top * base + base**2)


def prismoid(tin: Tin, _core: Fraction, level: Fraction) -> Fraction:
    """A box with sloping sides: h / 6 (top + 4 x middle + base), the middle taken half-way up."""
    width, length = tin.base_width_cm, tin.base_length_cm
    top_width = _at_level(width, tin.width_cm, tin.depth_cm, level)
    top_length = _at_level(length, tin.length_cm, tin.depth_cm, level)
    middle = (top_width + width) * (top_length + length) / 4
    return level / 6 * (top_width * top_length + 4 * middle + width * length)


def tube(tin: Tin, core: Fraction, level: Fraction) -> Fraction:
    """A ring with a flat floor: (outer area - core area) x h."""
    return (round_area(tin.width_cm) - round_area(tin.width_cm * core)) * level


def ring(tin: Tin, core: Fraction, level: Fraction) -> Fraction:
    """A ring with a half-round floor: cross-section x pi x mean diameter (Pappus).

    To the rim exact. Below it the band between level and rim is taken off at full width, which is exact
    down to the top of the floor, and a little too much in it: a level there holds rather more than is said.
    """
    core_cm = tin.width_cm * core
    radius = (tin.width_cm - core_cm) / 4
    floor_depth = min(radius, tin.depth_cm)
    section = PI * radius * floor_depth / 2 + 2 * radius * (tin.depth_cm - floor_depth)
    below = max(section - 2 * radius * (tin.depth_cm - level), Fraction(0))
    return below * PI * (tin.width_cm + core_cm) / 2


def hemisphere(tin: Tin, _core: Fraction, level: Fraction) -> Fraction:
    """Half a ball, deepest in the middle: pi h^2 (3 r - h) / 3, to the rim 2/3 pi r^3.

    A mould that is not as deep as half its width is half of a flattened ball: the same share of its depth.
    """
    flattened = (tin.width_cm / 2 / tin.depth_cm) ** 2
    return PI * level**2 * (3 * tin.depth_cm - level) / 3 * flattened


def _at_level(base: Fraction, top: Fraction, depth: Fraction, level: Fraction) -> Fraction:
    """The width of a vessel with sloping sides at a level."""
    return base + (top - base) * level / depth


SOLIDS: dict[str, Solid] = {
    "cylinder": cylinder,
    "box": box,
    "frustum": frustum,
    "prismoid": prismoid,
    "ring": ring,
    "tube": tube,
    "hemisphere": hemisphere,
}
