"""The ingredient list and its notes in columns."""

import pytest

from sitegen.press.card_columns import ColumnWidth, card_columns
from sitegen.press.card_notes import CardNote
from sitegen.sheet.values import SheetComponent, SheetLine

TWO = ColumnWidth(columns=2, line=30, run_on=58, note=60)
THREE = ColumnWidth(columns=3, line=26, run_on=38, note=40)


def component(title: str, lines: int) -> SheetComponent:
    return SheetComponent(title, tuple(SheetLine(f"{n}\u00a0g", title) for n in range(lines)), ())


def shape(*sizes: int, width: ColumnWidth = TWO) -> list[list[tuple[str, int, bool]]]:
    columns = card_columns([component(f"part {n}", size) for n, size in enumerate(sizes)], (), width)
    return [[(part.title, len(part.lines), part.is_continued) for part in column.parts] for column in columns]


@pytest.mark.parametrize(
    ("sizes", "columns"),
    [
        ((), []),
        ((3,), [[("part 0", 3, False)]]),
        ((4, 4), [[("part 0", 4, False)], [("part 1", 4, False)]]),
        (
            (6, 5, 4, 3),
            [[("part 0", 6, False), ("part 1", 5, False)], [("part 2", 4, False), ("part 3", 3, False)]],
        ),
        ((12,), [[("part 0", 6, False)], [("part 0", 6, True)]]),
        ((2, 14), [[("part 0", 2, False), ("part 1", 5, False)], [("part 1", 9, True)]]),
        ((0, 2), [[("part 1", 2, False)]]),
    ],
)
def test_whole_components_where_that_is_even_enough(sizes: tuple[int, ...], columns: object) -> None:
    assert shape(*sizes) == columns


@pytest.mark.parametrize("width", [TWO, THREE])
@pytest.mark.parametrize("sizes", [(5,), (1, 9), (9, 1), (3, 3, 30), (2, 2, 2, 14), (40,), (90, 90)])
def test_no_line_is_lost_doubled_or_left_alone(sizes: tuple[int, ...], width: ColumnWidth) -> None:
    columns = shape(*sizes, width=width)
    assert len(columns) <= width.columns
    pieces = [part for column in columns for part in column]
    for number, size in enumerate(sizes):
        own = [lines for title, lines, _ in pieces if title == f"part {number}"]
        assert sum(own) == size
        assert len(own) == 1 or min(own) >= 2


def test_notes_stand_after_the_list_and_fill_the_column_that_has_room() -> None:
    notes = [CardNote("Keep it cold. " * 6), CardNote("Eggs are UK medium.")]
    left, right = card_columns([component("crumb", 8)], notes, TWO)
    assert ([part.title for part in left.parts], left.notes) == (["crumb"], ())
    assert (right.parts, list(right.notes)) == ((), notes)


def test_notes_alone_are_columns_too() -> None:
    notes = [CardNote(f"Note {number}") for number in range(4)]
    columns = card_columns([], notes, TWO)
    assert [note for column in columns for note in column.notes] == notes
    assert len(columns) == 2


def test_parts_of_the_recipe_are_told_apart_from_what_is_weighed() -> None:
    lines = (SheetLine("all of", "Bay sponge", is_part=True), SheetLine("12", "blackcurrants"))
    (column,) = card_columns([SheetComponent("Assembly", lines, ())], (), TWO)
    (part,) = column.parts
    assert [line.name for line in part.parts] == ["Bay sponge"]
    assert [line.name for line in part.plain] == ["blackcurrants"]
