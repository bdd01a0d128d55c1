"""Tins by shape and inside measure: area, capacity, and how full they are.

Capacities are plain geometry of the inside measures. Published cup capacities run 5 to 15 % lower, since
nominal sizes are outside measures and corners are round; in a ratio of two tins that falls out.
"""

from collections.abc import Mapping
from dataclasses import dataclass, field
from fractions import Fraction

from sitegen.kitchen.recipe import Tin
from sitegen.kitchen.solids import SOLIDS

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

    one, many: patterns with the slots {size}, {depth}, {capacity}, {holes} and, in `many`, {number}:
    '{size} round cake tin', '{number} {size} round cake tins', '{holes}-hole muffin tin'.
    one_with_holes, many_with_holes: for a shape that is sold with one hole and with several; '' for others.
    """

    one: str
    many: str
    one_with_holes: str = ""
    many_with_holes: str = ""

    def pattern(self, holes: int, number: int) -> str:
        """The pattern for tins with so many holes each, and so many tins."""
        if holes > 1 and self.one_with_holes:
            return self.one_with_holes if number == 1 else self.many_with_holes
        return self.one if number == 1 else self.many


@dataclass(frozen=True)
class TinShape:
    """One shape.

    solid: 'cylinder', 'box', 'frustum', 'prismoid', 'ring' (half-round floor), 'tube' (flat floor),
    'hemisphere', or '' for a vessel without capacity (a flat tray).
    words: how a baker writes the shape in `tin:` ('round', 'sandwich').
    names: region -> its words in print; a region that is missing prints the 'uk' ones.
    depth_cm: the usual depth; depth_share: for a shape whose depth goes with its width, that share of the
    width (1/2 for half a ball), else 0. taper_cm: how much narrower the base is than the top.
    core_share: the width of a ring's core as a share of the whole width.
    holds: the share of the plain solid that is there to be filled (flutes take some of it).
    family: a key of the families that readers choose by (`finding.py`).
    keeps: what stays the same in another tin of such a shape: 'depth' of the batter (cakes, traybakes,
    tarts) or 'fill', the share of the tin that is full (loaves, puddings, rings, holes).
    """

    key: str
    solid: str
    words: tuple[str, ...]
    names: Mapping[str, TinWords] = field(hash=False)
    depth_cm: Fraction
    source: str
    taper_cm: Fraction = Fraction(0)
    core_share: Fraction = Fraction(0)
    depth_share: Fraction = Fraction(0)
    holds: Fraction = Fraction(1)
    keeps: str = "fill"
    family: str = ""

    def usual_depth_cm(self, width_cm: Fraction) -> Fraction:
        """How deep a tin of that width is, where nothing else is said."""
        return width_cm * self.depth_share if self.depth_share else self.depth_cm

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
    """The rows of `data/tins.yaml`.

    nominal: sizes that the trade prints for one another. sold_cm, sold_inches: widths in which round and
    square tins are sold, where the trade counts in cm or in inches; rising.
    """

    shapes: tuple[TinShape, ...]
    named: tuple[NamedTin, ...]
    nominal: tuple[NominalLength, ...]
    sold_cm: tuple[Fraction, ...] = ()
    sold_inches: tuple[Fraction, ...] = ()

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

    def sold_near(self, width: Fraction, sold: tuple[Fraction, ...]) -> Fraction | None:
        """The nearest width in which such tins are sold, where a tin of it takes the recipe as it is.

        width: of the tin, in the unit of `sold` (`sold_cm` or `sold_inches`), exact. None where it is sold
        itself, or where the area of the nearest is over a tenth off.
        """
        if not sold or width in sold:
            return None
        nearest = min(sold, key=lambda other: abs(other - width))
        return nearest if fits_as_it_is((nearest / width) ** 2) else None

    def nominal_cm(self, inches: Fraction) -> Fraction | None:
        """The cm that the trade prints for a size in inches, or None where it has no such size."""
        return next((row.cm for row in self.nominal if row.inches == inches), None)


def filled_ml(tin: Tin, fill: Fraction, table: TinTable) -> Fraction:
    """What one hole (or one plain tin) holds up to a share of its depth, ml. Raises NoCapacity, UnknownShape.

    fill: 0 to 1. Where sides slope, half of the depth is less than half of the capacity.
    """
    shape = table.shape(tin.shape)
    if not shape.solid:
        raise NoCapacity(tin.shape)
    return SOLIDS[shape.solid](tin, shape.core_share, tin.depth_cm * fill) * shape.holds


def hole_ml(tin: Tin, table: TinTable) -> Fraction:
    """What one hole (or one plain tin) holds to the rim, ml, exact. Raises NoCapacity, UnknownShape."""
    return filled_ml(tin, Fraction(1), table)


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


def fits_as_it_is(factor: Fraction) -> bool:
    """Whether a factor is near enough to 1 that nothing need be scaled. Source: common practice."""
    return FITS_FROM <= factor <= FITS_TO
