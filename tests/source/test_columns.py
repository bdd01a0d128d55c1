"""Where a letter of a text stands in its file, whatever quotes or folds it was written with."""

import pytest
import yaml
from hypothesis import given
from hypothesis import strategies as st

from sitegen.source.reader import parse_document

PROSE = st.text(alphabet="ab é½'\"\\:#,{}-\n", min_size=1, max_size=60).map(str.strip).filter(bool)


@pytest.mark.parametrize("style", ["'", '"', "|", ">", ""])
@given(text=PROSE)
def test_each_letter_is_found_where_it_was_written(style: str, text: str) -> None:
    written = yaml.safe_dump({"key": text}, default_style=style or None, allow_unicode=True, width=30)
    document, _ = parse_document(written, "f")
    assert document is not None
    assert document.value(("key",)) == text or not style
    lines = written.split("\n")
    for index, letter in enumerate(text):
        if letter.isspace() or document.value(("key",)) != text:
            continue
        place = document.place_in(("key",), index, index + 1)
        spelt = lines[place.line - 1][place.column - 1 :]
        assert spelt.startswith((letter, "\\" + letter))


def test_a_stretch_over_a_line_end_is_marked_to_the_end_of_its_first_line() -> None:
    document, _ = parse_document("key: one two\n  three\n", "f")
    assert document is not None
    place = document.place_in(("key",), 4, 13)
    assert (place.line, place.column, place.length) == (1, 10, 3)


def test_a_stretch_past_the_end_is_the_end() -> None:
    document, _ = parse_document("key: one\n", "f")
    assert document is not None
    assert document.place_in(("key",), 40, 50).line == 1
