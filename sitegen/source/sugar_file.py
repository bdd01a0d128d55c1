"""`data/sugar_stages.yaml`: its shape, and its rows as the kitchen takes them."""

from pydantic import Field

from sitegen.kitchen.sugar import SugarStage, SugarStages
from sitegen.source.file_texts import FileModel
from sitegen.source.table_rows import figure


class StageFile(FileModel):
    from_: str = Field(alias="from")
    to: str
    source: str


class BoilsFile(FileModel):
    roles: list[str]
    unless_words: list[str]
    source: str


class SugarStagesFile(FileModel):
    stages: dict[str, StageFile]
    boils: BoilsFile


def sugar_stages(file: SugarStagesFile) -> SugarStages:
    """The stages by rising heat, and what tells that sugar is boiled."""
    rows = (
        SugarStage(name, figure(row.from_), figure(row.to), row.source) for name, row in file.stages.items()
    )
    return SugarStages(
        stages=tuple(sorted(rows, key=lambda stage: stage.from_c)),
        roles=frozenset(file.boils.roles),
        unless_words=tuple(file.boils.unless_words),
    )
