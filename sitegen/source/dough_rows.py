"""`data/doughs.yaml`: its shapes, and its rows as the kitchen's frozen values."""

from fractions import Fraction

from sitegen.kitchen.balances import Band
from sitegen.kitchen.dough_temperature import DoughTemperatures
from sitegen.kitchen.doughs import DoughTable
from sitegen.kitchen.formulas import WaterShares
from sitegen.source.balance_rows import ratio, ratios
from sitegen.source.file_texts import FileModel
from sitegen.source.table_rows import figure


class WaterFile(FileModel):
    names: list[str]
    share: str
    source: str


class TemperaturesFile(FileModel):
    source: str
    room: str
    rooms: list[str]
    tap: str
    hottest: str
    coldest: str


class FrictionFile(FileModel):
    adds: str
    source: str


class ShareFile(FileModel):
    usual: str
    ask: str
    source: str


class PrefermentsFile(FileModel):
    prefermented: ShareFile
    inoculation: ShareFile


class PiecesFile(FileModel):
    sticks: str
    left_over: str
    source: str


class DoughsFile(FileModel):
    water: list[WaterFile]
    preferments: PrefermentsFile
    pieces: PiecesFile
    temperatures: TemperaturesFile
    friction: dict[str, FrictionFile]


def dough_table(file: DoughsFile) -> DoughTable:
    """Shares of water, bands of preferments, and temperatures in C. Raises BrokenTable."""
    return DoughTable(
        water=WaterShares({name: ratio(row.share) for row in file.water for name in row.names}),
        temperatures=_temperatures(file),
        prefermented=_band(file.preferments.prefermented, "pre-fermented flour", "flour"),
        inoculation=_band(file.preferments.inoculation, "ripe starter", "other flour"),
        sticks=ratio(file.pieces.sticks),
        left_over=ratio(file.pieces.left_over),
    )


def _band(row: ShareFile, what: str, of: str) -> Band:
    ends = (*ratios(row.usual), *ratios(row.ask))
    return Band((what,), (of,), *ends, row.source, code="preferment-unusual")


def _temperatures(file: DoughsFile) -> DoughTemperatures:
    row = file.temperatures
    return DoughTemperatures(
        friction={mixer: _celsius(one.adds) for mixer, one in file.friction.items()},
        room=_celsius(row.room),
        rooms=tuple(map(_celsius, row.rooms)),
        tap=_celsius(row.tap),
        hottest=_celsius(row.hottest),
        coldest=_celsius(row.coldest),
    )


def _celsius(text: str) -> Fraction:
    return figure(text.removesuffix(" C"))
