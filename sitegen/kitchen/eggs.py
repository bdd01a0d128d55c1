"""Eggs by region and size: what they weigh without the shell, and how a weight becomes a count."""

from dataclasses import dataclass
from fractions import Fraction

EGG_PARTS = frozenset({"white", "yolk"})
NEARLY_NOTHING = Fraction(1, 10)
NEARLY_WHOLE = Fraction(9, 10)


@dataclass(eq=False)
class UnknownEggSize(Exception):
    """The table has no such size in that region. known: the sizes that it has."""

    region: str
    size: str
    known: tuple[str, ...]


@dataclass(frozen=True)
class EggRow:
    """One size of egg in one region, grams without the shell.

    shell_from_g: the least weight of the grade in the shell; 0 for the smallest grade.
    """

    region: str
    size: str
    whole_g: Fraction
    white_g: Fraction
    yolk_g: Fraction
    source: str
    shell_from_g: Fraction = Fraction(0)

    def part_g(self, part: str) -> Fraction:
        """Grams of the white ('white'), the yolk ('yolk') or the whole egg ('')."""
        return {"white": self.white_g, "yolk": self.yolk_g}.get(part, self.whole_g)


@dataclass(frozen=True)
class EggTable:
    """All sizes of all regions, the rows of `data/eggs.yaml`."""

    rows: tuple[EggRow, ...]

    def sizes(self, region: str) -> tuple[str, ...]:
        """The sizes of a region, in the table's order."""
        return tuple(row.size for row in self.rows if row.region == region)


@dataclass(frozen=True)
class EggCount:
    """Whole eggs, and grams to be weighed from a beaten one (0 for none), exact."""

    whole: int
    beaten_g: Fraction


def edible_grams(table: EggTable, region: str, size: str, part: str = "") -> Fraction:
    """The weight of one egg, or of its white or yolk, without the shell.

    region: whose grades ('uk', 'us', 'au'). part: '', 'white' or 'yolk'.
    Returns grams, exact. Raises UnknownEggSize.
    """
    for row in table.rows:
        if row.region == region and row.size == size:
            return row.part_g(part)
    raise UnknownEggSize(region, size, table.sizes(region))


def whole_and_beaten(grams: Fraction, one_egg_g: Fraction) -> EggCount:
    """A weight of egg as whole eggs and a weighed part of a beaten one, never as '1.5 eggs'.

    grams: wanted, over 0. one_egg_g: of one egg (or white, or yolk), over 0.
    A rest under a tenth of an egg is dropped beside whole ones, over nine tenths is rounded up.
    Source: common practice.
    """
    whole, rest = divmod(grams / one_egg_g, 1)
    if rest > NEARLY_WHOLE:
        return EggCount(int(whole) + 1, Fraction(0))
    if whole and rest < NEARLY_NOTHING:
        return EggCount(int(whole), Fraction(0))
    return EggCount(int(whole), rest * one_egg_g)


@dataclass(frozen=True)
class ShellGrade:
    """What an egg of a grade weighs in its shell, grams: from, and less than. 0 and None for an open end."""

    from_g: Fraction
    under_g: Fraction | None


def shell_grade(table: EggTable, region: str, size: str) -> ShellGrade:
    """The weights in the shell between which a grade lies, exact. Raises UnknownEggSize.

    Sources: Commission Regulation (EC) No 589/2008, Article 4 (UK); USDA AMS 56, a twelfth of the least
    dozen (US).
    """
    grades = {row.size: row.shell_from_g for row in table.rows if row.region == region}
    if size not in grades:
        raise UnknownEggSize(region, size, table.sizes(region))
    heavier = [from_g for from_g in grades.values() if from_g > grades[size]]
    return ShellGrade(grades[size], min(heavier) if heavier else None)
