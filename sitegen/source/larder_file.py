"""The shape of `content/larder.yaml` and of the project's own larder: which keys a row has.

The same models make the JSON Schema that editors complete from. Weights and measures stay text here;
`larder_rows.py` reads them.
"""

from typing import Literal

from pydantic import Field, RootModel

from sitegen.source.file_texts import FileModel, Short, YesNo

Method = Literal[
    "spooned", "scooped", "sifted", "packed", "level", "liquid", "whole", "chopped", "sliced", "grated",
    "mashed", "crushed", "crumbled",
]  # fmt: skip


class DensityFile(FileModel):
    """What fills a measure."""

    method: Method = Field(description="How the measure is filled.", examples=["spooned"])
    weight: Short = Field(description="What is in it.", examples=["125 g"])
    fills: Short = Field(description="The measure.", examples=["1 us_cup", "1 metric_tablespoon"])
    source: Short = Field(description="A key of sources.yaml, with a number.", examples=["own-scales"])


class PieceFile(FileModel):
    """What one of a counted thing weighs."""

    weight: Short = Field(description="Without what is thrown away.", examples=["118 g"])
    size: Short | None = Field(None, description="Where sizes differ.", examples=["medium"])
    part: Short | None = Field(None, description="Where a part is taken.", examples=["zest", "juice"])
    source: Short = Field(description="A key of sources.yaml, with a number.", examples=["own-scales"])


class AllergensFile(FileModel):
    """What the laws of the regions name."""

    eu: list[Short] | None = Field(
        None, description="Of the EU and UK fourteen.", examples=[["wheat", "eggs"]]
    )
    us: list[Short] | None = Field(None, description="Of the US nine.", examples=[["wheat", "egg"]])
    au: list[Short] | None = Field(
        None,
        description="Of the Australian and New Zealand list, where it does not follow from the others.",
        examples=[["wheat", "egg"]],
    )


class CompositionFile(FileModel):
    """Grams in 100 g, as the packet prints them: carbohydrate without fibre."""

    fat: Short = Field(description="All fat.", examples=["1.2", "<0.5"])
    saturates: Short = Field(description="Of the fat.")
    carbohydrate: Short = Field(description="Without the fibre.")
    sugars: Short = Field(description="Of the carbohydrate.")
    protein: Short = Field(description="Protein.")
    salt: Short = Field(description="Salt; sodium times 2.5.")
    fibre: Short | None = Field(None, description="Where the packet gives it.")
    alcohol: Short | None = Field(None, description="Grams, not the percentage by volume.")
    water: Short | None = Field(None, description="Where it is known.")
    source: Short = Field(description="A key of sources.yaml.", examples=["packet"])


class PluralsFile(FileModel):
    """The region's name of more than one."""

    us: Short | None = Field(None, description="In the United States.", examples=["vanilla beans"])
    au: Short | None = Field(None, description="In Australia.", examples=["vanilla beans"])


class LarderRowFile(FileModel):
    """What a baker knows of one ingredient."""

    us: Short | None = Field(None, description="Its name in the United States.")
    au: Short | None = Field(None, description="Its name in Australia.")
    plural: Short | None = Field(None, description="Of what is counted.", examples=["lemons"])
    plurals: PluralsFile | None = Field(
        None, description="Of what is counted, where the region's name is another."
    )
    also: list[Short] = Field(default=[], description="Other spellings that are read as it.")
    density: list[DensityFile] | None = Field(None, description="The usual way of filling first.")
    pieces: list[PieceFile] | None = Field(None, description="What one weighs.")
    allergens: AllergensFile | None = Field(None, description="Empty lists where it has none.")
    roles: list[Short] | None = Field(None, description="What it does in a recipe.", examples=[["flour"]])
    measured_by: Literal["cup", "stick", "spoon", "weight", "piece"] | None = Field(
        None, description="The honest measure of a cup edition."
    )
    composition: CompositionFile | None = Field(None, description="What 100 g hold.")
    label_advice: YesNo | None = Field(None, description="Whether the packet decides what is in it.")
    packet_may_hold: list[Short] | None = Field(
        None,
        description="With label-advice: of the EU and UK fourteen, all that some makers' packets add.",
        examples=[["wheat"]],
    )


class LarderFile(RootModel[dict[Short, LarderRowFile]]):
    """Ingredients of the school's own: British name -> row."""
