"""`data/keeping.yaml`: its shape, and its rows as the kitchen takes them."""

from pydantic import Field

from sitegen.kitchen.keeping import PLACES, KeepingRow, KeepingTable, OutLimit
from sitegen.source.file_texts import FileModel, YesNo
from sitegen.source.keepings import read_keeps


class OutFile(FileModel):
    hours: str
    source: str


class KeepingRowFile(FileModel):
    source: str
    kinds: tuple[str, ...] = ()
    words: tuple[str, ...] = ()
    roles: tuple[str, ...] = ()
    lacks: tuple[str, ...] = ()
    baked: YesNo | None = None
    room: str | None = None
    fridge: str | None = None
    freezer: str | None = None


class KeepingFile(FileModel):
    out: dict[str, OutFile]
    rows: dict[str, KeepingRowFile] = Field(min_length=1)


def keeping_table(file: KeepingFile) -> KeepingTable:
    """The rows in the file's order, which counts. Raises Misread for a time that is none."""
    return KeepingTable(
        rows=tuple(_row(key, row) for key, row in file.rows.items()),
        out={
            region: OutLimit(read_keeps(row.hours, "room").hours.high, row.source)
            for region, row in file.out.items()
        },
    )


def _row(key: str, row: KeepingRowFile) -> KeepingRow:
    written = {place: getattr(row, place) for place in PLACES}
    return KeepingRow(
        key=key,
        keeping=tuple(read_keeps(text, place) for place, text in written.items() if text),
        source=row.source,
        kinds=row.kinds,
        words=row.words,
        roles=frozenset(row.roles),
        lacks=frozenset(row.lacks),
        baked=row.baked,
    )
