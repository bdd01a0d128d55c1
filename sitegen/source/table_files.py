"""The shapes of the project's own tables but the larder, as they stand in `data/`.

Figures stay text here; `table_rows.py` reads them.
"""

from typing import Literal

from pydantic import RootModel

from sitegen.kitchen.editions import Measuring
from sitegen.source.file_texts import FileModel, YesNo


class EggFile(FileModel):
    edible: str
    white: str
    yolk: str
    source: str
    shell_from: str = "0 g"


class EditionFile(FileModel):
    title: str
    language: str
    region: str
    measuring: Measuring
    teaspoon: str
    tablespoon: str
    cup: str
    oven_scales: list[Literal["fan", "conventional", "fahrenheit", "convection", "gas"]]
    lengths: Literal["cm", "in"]
    egg_region: str
    egg_size: str
    paper: Literal["a4", "letter"]
    source: str
    sticks: YesNo = False
    ounces: YesNo = False
    cup_fill: Literal["spooned", "scooped"] = "spooned"


class GasMarksFile(FileModel):
    source: str
    fahrenheit: dict[str, str]


class DegreesFile(FileModel):
    celsius: str
    fahrenheit: str
    source: str


class PossibleFile(FileModel):
    lowest: str
    highest: str
    source: str


class PrintedRowFile(FileModel):
    celsius: str
    fahrenheit: str
    gas: str


class PrintedFile(FileModel):
    source: str
    rows: list[PrintedRowFile]


class OvensFile(FileModel):
    gas_marks: GasMarksFile
    fan_lower_by: DegreesFile
    steps: DegreesFile
    possible: PossibleFile
    printed: PrintedFile


class TinWordsFile(FileModel):
    one: str
    many: str
    one_with_holes: str = ""
    many_with_holes: str = ""


class TinShapeFile(FileModel):
    solid: str
    family: str
    words: list[str]
    names: dict[str, TinWordsFile]
    depth: str
    source: str
    taper: str = "0 cm"
    core_share: str = "0"
    depth_share: str = "0"
    holds: str = "1"
    keeps: Literal["depth", "fill"] = "fill"


class NamedTinFile(FileModel):
    shape: str
    width: str
    depth: str
    source: str
    length: str | None = None
    base_width: str | None = None
    base_length: str | None = None
    holes: int = 1
    also: tuple[str, ...] = ()


class NominalInchesFile(FileModel):
    source: str
    sizes: dict[str, str]


class SoldWidthsFile(FileModel):
    source: str
    cm: list[str]
    inches: list[str]


class TinsFile(FileModel):
    shapes: dict[str, TinShapeFile]
    named: dict[str, NamedTinFile]
    nominal_inches: NominalInchesFile
    sold_widths: SoldWidthsFile


class EggsFile(RootModel[dict[str, dict[str, EggFile]]]):
    """Region -> size -> row."""


class EditionsFile(RootModel[dict[str, EditionFile]]):
    """Key -> row."""


class UnitNamesFile(RootModel[dict[str, list[str]]]):
    """Unit -> spellings."""


class SpellingFile(RootModel[dict[str, dict[str, str]]]):
    """Region -> British word or phrase -> the region's."""


class SourceFile(FileModel):
    full: str
    short: str


class SourcesFile(RootModel[dict[str, str | SourceFile]]):
    """Key -> published source in words; also in few words where sheets print it."""
