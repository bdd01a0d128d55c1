"""Oven settings in the scales that the trade prints: fan C, conventional C, F, gas mark."""

from dataclasses import dataclass
from fractions import Fraction

from sitegen.kitchen.method import OvenSetting
from sitegen.kitchen.rounding import to_step
from sitegen.kitchen.temperatures import celsius_of, fahrenheit_of


@dataclass(eq=False)
class OvenOutOfRange(Exception):
    """No oven is set so, or gas has no such mark.

    degrees, scale: as written. lowest_c, highest_c: the conventional span allowed.
    """

    degrees: Fraction
    scale: str
    lowest_c: Fraction
    highest_c: Fraction


@dataclass(frozen=True)
class GasMark:
    """One mark of a British gas oven: as printed ('1/4', '4'), and its degrees F, conventional."""

    mark: str
    fahrenheit: Fraction


@dataclass(frozen=True)
class PrintedRow:
    """A line of the printed charts: what stands beside a conventional setting in C."""

    conventional_c: Fraction
    fahrenheit: Fraction
    gas: str


@dataclass(frozen=True)
class OvenTable:
    """The rows of `data/ovens.yaml`.

    printed: the charts' lines, by rising C; a mark with several lines is printed by its first.
    fan_offset_c, fan_offset_f: how much lower a fan oven is set, degrees C and F.
    lowest_c, highest_c: the conventional setting allowed.
    step_c, step_f: the steps of a dial, for a figure worked out from the other scale.
    """

    gas_marks: tuple[GasMark, ...]
    printed: tuple[PrintedRow, ...]
    fan_offset_c: Fraction
    fan_offset_f: Fraction
    lowest_c: Fraction
    highest_c: Fraction
    step_c: Fraction
    step_f: Fraction

    def mark_named(self, degrees: Fraction) -> GasMark | None:
        """The mark given as a number (1/4, 4), or None."""
        return next((row for row in self.gas_marks if Fraction(row.mark) == degrees), None)

    def mark_nearest(self, fahrenheit: Fraction) -> str:
        """The mark nearest to a conventional F; '' where that is further off than half a dial step."""
        nearest = min(self.gas_marks, key=lambda row: abs(row.fahrenheit - fahrenheit))
        return nearest.mark if abs(nearest.fahrenheit - fahrenheit) <= self.step_f / 2 else ""

    def row_at(self, conventional_c: Fraction) -> PrintedRow | None:
        """The charts' line for a conventional C, or None where they have none."""
        return next((row for row in self.printed if row.conventional_c == conventional_c), None)

    def row_of_mark(self, mark: str) -> PrintedRow | None:
        """The charts' first line for a gas mark, or None."""
        return next((row for row in self.printed if row.gas == mark), None)


@dataclass(frozen=True)
class OvenReading:
    """One setting in all scales as printed. fahrenheit: conventional. gas: '4', '1/2', '' for none.

    fahrenheit_fan: the setting of a US convection oven.
    """

    fan_c: Fraction
    conventional_c: Fraction
    fahrenheit: Fraction
    fahrenheit_fan: Fraction
    gas: str


def read_oven(setting: OvenSetting, table: OvenTable) -> OvenReading:
    """A setting in every scale, each worked out once from the figure that the baker wrote.

    The written figure stays as it is, and so does its partner in the same degrees (fan and conventional).
    Raises OvenOutOfRange.
    Sources: common practice (fan 20 C or 25 F lower); published UK gas-mark charts.
    """
    reading = _READERS[setting.scale](setting, table)
    if not table.lowest_c <= reading.conventional_c <= table.highest_c:
        raise OvenOutOfRange(setting.degrees, setting.scale, table.lowest_c, table.highest_c)
    return reading


def _from_celsius(setting: OvenSetting, table: OvenTable) -> OvenReading:
    """F and gas as the charts print them beside that C; between their lines by the exact F."""
    conventional = setting.degrees + (table.fan_offset_c if setting.fan else 0)
    exact_f = fahrenheit_of(conventional)
    row = table.row_at(conventional)
    fahrenheit = row.fahrenheit if row else to_step(exact_f, table.step_f)
    return OvenReading(
        fan_c=conventional - table.fan_offset_c,
        conventional_c=conventional,
        fahrenheit=fahrenheit,
        fahrenheit_fan=fahrenheit - table.fan_offset_f,
        gas=row.gas if row else table.mark_nearest(exact_f),
    )


def _from_fahrenheit(setting: OvenSetting, table: OvenTable) -> OvenReading:
    """C from the exact figure; a convection setting is turned into fan C without the offset between."""
    conventional = setting.degrees + (table.fan_offset_f if setting.fan else 0)
    exact_c = celsius_of(conventional)
    fan_exact_c = celsius_of(setting.degrees) if setting.fan else exact_c - table.fan_offset_c
    return OvenReading(
        fan_c=to_step(fan_exact_c, table.step_c),
        conventional_c=to_step(exact_c, table.step_c),
        fahrenheit=conventional,
        fahrenheit_fan=conventional - table.fan_offset_f,
        gas=table.mark_nearest(conventional),
    )


def _from_gas(setting: OvenSetting, table: OvenTable) -> OvenReading:
    """The figures that the charts print beside the mark; beyond the charts by the mark's F."""
    mark = table.mark_named(setting.degrees)
    if mark is None:
        raise OvenOutOfRange(setting.degrees, setting.scale, table.lowest_c, table.highest_c)
    row = table.row_of_mark(mark.mark)
    celsius = row.conventional_c if row else to_step(celsius_of(mark.fahrenheit), table.step_c)
    return OvenReading(
        fan_c=celsius - table.fan_offset_c,
        conventional_c=celsius,
        fahrenheit=mark.fahrenheit,
        fahrenheit_fan=mark.fahrenheit - table.fan_offset_f,
        gas=mark.mark,
    )


_READERS = {"celsius": _from_celsius, "fahrenheit": _from_fahrenheit, "gas": _from_gas}
