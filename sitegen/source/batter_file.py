"""`data/batters.yaml`: its shape, and its rows as the kitchen takes them."""

from pydantic import RootModel

from sitegen.kitchen.batters import BatterKind
from sitegen.source.file_texts import FileModel
from sitegen.source.table_rows import figure


class BatterFile(FileModel):
    lightest: str
    densest: str
    brim: str
    called: str
    source: str
    words: tuple[str, ...] = ()
    roles: tuple[str, ...] = ()
    most_weight: str | None = None


class BattersFile(RootModel[dict[str, BatterFile]]):
    """Key -> row."""


def batter_kinds(file: BattersFile) -> tuple[BatterKind, ...]:
    """Rows in the file's order."""
    return tuple(
        BatterKind(
            key=key,
            lightest=figure(row.lightest),
            densest=figure(row.densest),
            brim=figure(row.brim),
            called=row.called,
            source=row.source,
            words=row.words,
            roles=frozenset(row.roles),
            most_weight=None if row.most_weight is None else figure(row.most_weight),
        )
        for key, row in file.root.items()
    )
