"""Tins by shape and inside measure: area, capacity, and the factor from one tin to another.

Capacities are plain geometry of the inside measures. Published cup capacities run 5 to 15 % lower, since
nominal sizes are outside measures and corners are round; in a ratio of two tins that falls out.
"""

from collections.abc import Mapping
from dataclasses import dataclass, field
from fractions import Fraction

from sitegen.kitchen.recipe import Tin

PI = Fraction(3141592653589793238, 10**18)
FITS_FROM, FITS_TO = Fraction(9, 10), Fraction(11, 10)


@dataclass(eq=False)
class NoCapacity(Exception):
    """A vessel that holds no measure of batter, such as a tray."""

    shape: str


@dataclass(eq=False)
class UnknownShape(Exception):
    """No row of the table has this shape. known: the shapes that it has."""

    shape: str
    known: tuple[str, ...]


@dataclass(frozen=True)
class TinWords:
    """What a region calls a shape.

    one, many: patterns with the slots {size}, {depth}, {holes} and, in `many`, {number}:
    '{size} round cake tin', '{number} {size} round cake tins', '{holes}-hole muffin tin'.
    """

    one: str
    many: str


@dataclass(frozen=True)
class TinShape:
    """One shape.

    solid: 'cylinder', 'box', 'frustum', 'prismoid', 'ring' (half-round floor), 'tube' (flat floor), or
    '' for a vessel without capacity (a tray).
    words: how a baker writes the shape in `tin:` ('round', 'sandwich').
    names: region -> its words in print; a region that is missing prints the 'uk' ones.
    depth_cm: the usual depth. taper_cm: how much narrower the base is than the top.
    core_share: the width of a ring's core as a share of the whole width.
    """

    key: str
    solid: str
    words: tuple[str, ...]
    names: Mapping[str, TinWords] = field(hash=False)
    depth_cm: Fraction
    source: str
    taper_cm: Fraction = Fraction(0)
    core_share: Fraction = Fraction(0)

    def words_in(self, region: str) -> TinWords:
        """The words of a region for this shape."""
        return self.names.get(region, self.names["uk"])


@dataclass(frozen=True)
class NamedTin:
    """A tin that the trade knows by name: 'muffin', 'mini-muffin', '900 g loaf'.

    tin: its measures and usual holes. also: other names ('2 lb loaf').
    """

    name: str
    tin: Tin
    source: str
    also: tuple[str, ...] = ()


@dataclass(frozen=True)
class NominalLength:
    """The size in inches that the trade prints for a size in cm, and the other way round: 20 cm = 8 in."""

    cm: Fraction
    inches: Fraction


@dataclass(frozen=True)
class TinTable:
    """The rows of `data/tins.yaml`."""

    shapes: tuple[TinShape, ...]
    named: tuple[NamedTin, ...]
    nominal: tuple[NominalLength, ...]

    def shape(self, key: str) -> TinShape:
        """The row of a shape. Raises UnknownShape."""
        for row in self.shapes:
            if row.key == key:
                return row
        raise UnknownShape(key, tuple(row.key for row in self.shapes))

    def shape_written(self, word: str) -> TinShape | None:
        """The row of a baker's word for a shape, or None."""
        wanted = word.casefold().strip()
        return next((row for row in self.shapes if wanted == row.key or wanted in row.words), None)

    def tin_named(self, name: str) -> NamedTin | None:
        """The row of a tin known by name, or None."""
        wanted = name.casefold().strip()
        return next((row for row in self.named if wanted == row.name or wanted in row.also), None)

    def nominal_inches(self, cm: Fraction) -> Fraction | None:
        """The inches that the trade prints for a size in cm, or None where it has no such size."""
        return next((row.inches for row in self.nominal if row.cm == cm), None)

    def nominal_cm(self, inches: Fraction) -> Fraction | None:
        """The cm that the trade prints for a size in inches, or None where it has no such size."""
        return next((row.cm for row in self.nominal if row.inches == inches), None)


def round_area(width_cm: Fraction) -> Fraction:
    """Area of a round of that diameter, cm2."""
    return PI * width_cm**2 / 4


def cylinder(tin: Tin, _shape: TinShape) -> Fraction:
    """pi D^2 / 4 x h, ml."""
    return round_area(tin.width_cm) * tin.depth_cm


def box(tin: Tin, _shape: TinShape) -> Fraction:
    """a b h, ml."""
    return tin.width_cm * tin.length_cm * tin.depth_cm


def frustum(tin: Tin, _shape: TinShape) -> Fraction:
    """A round with sloping sides: pi h / 12 (D^2 + D d + d^2), ml."""
    top, base = tin.width_cm, tin.base_width_cm
    return PI * tin.depth_cm / 12 * (top**2 + top * base + base**2)


def prismoid(tin: Tin, _shape: TinShape) -> Fraction:
    """A box with sloping sides: h / 6 (top + 4 x middle + base), the middle taken half-way up, ml."""
    top = tin.width_cm * tin.length_cm
    base = tin.base_width_cm * tin.base_length_cm
    middle = (tin.width_cm + tin.base_width_cm) * (tin.length_cm + tin.base_length_cm) / 4
    return tin.depth_cm / 6 * (top + 4 * middle + base)


def tube(tin: Tin, shape: TinShape) -> Fraction:
    """A ring with a flat floor: (outer area - core area) x h, ml."""
    return (round_area(tin.width_cm) - round_area(tin.width_cm * shape.core_share)) * tin.depth_cm


def ring(tin: Tin, shape: TinShape) -> Fraction:
    """A ring with a half-round floor: cross-section x pi x mean diameter (Pappus), ml."""
    core = tin.width_cm * shape.core_share
    radius = (tin.width_cm - core) / 4
    floor_depth = min(radius, tin.depth_cm)
    section = PI * radius * floor_depth / 2 + 2 * radius * (tin.depth_cm - floor_depth)
    return section * PI * (tin.width_cm + core) / 2


SOLIDS = {
    "cylinder": cylinder,
    "box": box,
    "frustum": frustum,
    "prismoid": prismoid,
    "ring": ring,
    "tube": tube,
}


def hole_ml(tin: Tin, table: TinTable) -> Fraction:
    """What one hole (or one plain tin) holds to the rim, ml, exact. Raises NoCapacity, UnknownShape."""
    shape = table.shape(tin.shape)
    if not shape.solid:
        raise NoCapacity(tin.shape)
    return SOLIDS[shape.solid](tin, shape)


def capacity_ml(tin: Tin, table: TinTable) -> Fraction:
    """What all holes of all tins hold to the rim, ml, exact. Raises NoCapacity, UnknownShape."""
    return hole_ml(tin, table) * vessels(tin)


def vessels(tin: Tin) -> int:
    """How many pieces come out of one filling: holes times tins."""
    return tin.holes * tin.number


def area_cm2(tin: Tin, table: TinTable) -> Fraction:
    """The area of all holes of all tins, taken half-way up, cm2, exact. Raises NoCapacity, UnknownShape.

    Capacity over depth: the area that turns a volume of batter into its depth.
    """
    return capacity_ml(tin, table) / tin.depth_cm


def tin_factor(tested: Tin, wanted: Tin, table: TinTable) -> Fraction:
    """How much of the recipe fills the wanted tin as full as the tested one, exact.

    The ratio of capacities; where both are equally deep that is the ratio of areas.
    Raises NoCapacity, UnknownShape.
    """
    return capacity_ml(wanted, table) / capacity_ml(tested, table)


def depth_ratio(tested: Tin, wanted: Tin) -> Fraction:
    """How much deeper the batter lies in the wanted tin, filled by `tin_factor`, exact."""
    return wanted.depth_cm / tested.depth_cm


def fits_as_it_is(factor: Fraction) -> bool:
    """Whether a factor is near enough to 1 that nothing need be scaled. Source: common practice."""
    return FITS_FROM <= factor <= FITS_TO
