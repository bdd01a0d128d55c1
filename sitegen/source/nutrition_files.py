"""The shapes of `data/nutrition.yaml` and `data/bake_losses.yaml`.

Figures stay text here; `nutrition_rows.py` reads them.
"""

from typing import Literal

from pydantic import Field

from sitegen.kitchen.nutrition import Quantity
from sitegen.source.file_texts import FileModel, YesNo


class EnergyFactorFile(FileModel):
    kj: str
    kcal: str


class EnergyFile(FileModel):
    source: str
    factors: dict[str, EnergyFactorFile]


class BandFile(FileModel):
    from_: str | None = Field(None, alias="from")
    above: str | None = None
    step: str | None = None
    less_than: str | None = None


class RoundingFile(FileModel):
    source: str
    bands: list[BandFile] = Field(min_length=1)


class FigureFile(FileModel):
    quantity: Quantity
    unit: str
    rounding: str


class LabelRowFile(FileModel):
    name: str
    of: list[FigureFile] = Field(min_length=1)
    inner: YesNo = False
    daily: str | None = None


class LabelFile(FileModel):
    source: str
    regions: tuple[str, ...]
    less_than: str
    per_100g: YesNo
    rows: dict[str, LabelRowFile]


class NutritionFile(FileModel):
    energy: EnergyFile
    roundings: dict[str, RoundingFile]
    labels: dict[str, LabelFile]


class LossFile(FileModel):
    heat: Literal["oven", "hob"]
    words: tuple[str, ...]
    share: str
    source: str


class HobFile(FileModel):
    words: tuple[str, ...]
    unless_words: tuple[str, ...]


class TakenOutFile(FileModel):
    names: tuple[str, ...]
    source: str


class AlcoholLeftFile(FileModel):
    oven: str
    hob: str
    source: str


class BakeLossesFile(FileModel):
    losses: dict[str, LossFile]
    hob: HobFile
    taken_out: TakenOutFile
    alcohol_left: AlcoholLeftFile
