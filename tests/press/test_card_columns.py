"""The ingredient list in two columns."""

import pytest

from sitegen.press.card_columns import ingredient_columns
from sitegen.sheet.values import SheetComponent, SheetLine


def component(title: str, lines: int) -> SheetComponent:
    return SheetComponent(title, tuple(SheetLine(f"{n}\u00a0g", title) for n in range(lines)), ())


def shape(*sizes: int) -> list[list[tuple[str, int, bool]]]:
    columns = ingredient_columns([component(f"part {n}", size) for n, size in enumerate(sizes)])
    return [[(part.title, len(part.lines), part.is_continued) for part in column] for column in columns]


@pytest.mark.parametrize(
    ("sizes", "columns"),
    [
        ((), [[], []]),
        ((3,), [[("part 0", 3, False)], []]),
        ((4, 4), [[("part 0", 4, False)], [("part 1", 4, False)]]),
        (
            (6, 5, 4, 3),
            [[("part 0", 6, False), ("part 1", 5, False)], [("part 2", 4, False), ("part 3", 3, False)]],
        ),
        ((8,), [[("part 0", 4, False)], [("part 0", 4, True)]]),
        ((2, 8), [[("part 0", 2, False), ("part 1", 2, False)], [("part 1", 6, True)]]),
        ((0, 2), [[("part 1", 2, False)], []]),
    ],
)
def test_whole_components_where_that_is_even_enough(sizes: tuple[int, ...], columns: object) -> None:
    assert shape(*sizes) == columns


@pytest.mark.parametrize("sizes", [(5,), (1, 9), (9, 1), (3, 3, 30), (2, 2, 2, 14), (40,)])
def test_no_line_is_lost_doubled_or_left_alone(sizes: tuple[int, ...]) -> None:
    columns = shape(*sizes)
    pieces = [part for column in columns for part in column]
    for number, size in enumerate(sizes):
        own = [lines for title, lines, _ in pieces if title == f"part {number}"]
        assert sum(own) == size
        assert len(own) == 1 or min(own) >= 2
