"""The list of names: which rows give one, and what is said of the others.

Form of CSV: RFC 4180.
"""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from sitegen.faults import FaultCode
from sitegen.press.mark_face import MarkFace
from sitegen.release import stamp_codes
from sitegen.release.subscriber_list import SubscriberList, read_list

FACE = MarkFace()
SHOWN = tuple(row for row in stamp_codes.CODES if row.good)


def read(text: str | bytes) -> SubscriberList:
    body = text if isinstance(text, bytes) else text.encode("utf-8")
    return read_list(body, "subscribers.csv", FACE.lacking)


def names(text: str | bytes) -> list[str]:
    return [subscriber.name for subscriber in read(text).subscribers]


def faults(text: str | bytes) -> list[tuple[int, str]]:
    return [(fault.place.line, fault.code) for fault in read(text).faults]


@pytest.mark.parametrize("row", SHOWN, ids=lambda row: row.code)
def test_the_bad_example_provokes_its_code_and_the_good_one_none(row: FaultCode) -> None:
    assert faults(row.good) == []
    assert [code for _, code in faults(row.bad)] == [row.code]


@pytest.mark.parametrize(
    "text",
    [
        "Ada Marrow\nBo Quill\n",
        "Ada Marrow\r\n\r\n  Bo   Quill  \r\n",
        "\ufeffname\nAda Marrow\nBo Quill",
        "name,town\nAda Marrow,Wells\nBo Quill,Ely\n",
        "Town;NAME;Since\nWells;Ada Marrow;2026\nEly;Bo\u00a0Quill;2027\n",
        "town\tname\nWells\tAda Marrow\nEly\tBo Quill\n",
        'name,notes\nAda Marrow,"two\nlines, and ""quotes"""\n\nBo Quill,\n',
        "name\rAda Marrow\rBo Quill\r",
    ],
)
def test_the_same_two_names_in_every_form(text: str) -> None:
    found = read(text)
    assert [subscriber.name for subscriber in found.subscribers] == ["Ada Marrow", "Bo Quill"]
    assert found.faults == ()


def test_a_name_with_a_comma_needs_quotes_in_csv_and_none_below_a_plain_name() -> None:
    assert names('name\n"Marrow, Ada"\n') == ["Marrow, Ada"]
    assert names("Bo Quill\nMarrow, Ada\n") == ["Bo Quill", "Marrow, Ada"]


def test_bad_rows_are_told_by_line_and_the_others_are_read() -> None:
    rows = [
        b"name,town",
        b"Ada Marrow,Wells",
        b",Ely",
        b"Bo Quill",
        b"Caf\xe9,Ely",
        b"ADA marrow,Ely",
        b'"Cy Tart,Ely',
        b'"Dot\nBun",Ely',
        b"x" * 81 + b",Ely",
        "名無し,Ely".encode(),
        b"Eve\x07Roll,Ely",
        b"=2+5,Ely",
        b"Fay Crumb,Ely",
    ]
    found = read(b"\n".join(rows))
    assert [subscriber.name for subscriber in found.subscribers] == ["Ada Marrow", "=2+5", "Fay Crumb"]
    assert [(fault.place.line, fault.code) for fault in found.faults] == [
        (3, "name-missing"),
        (4, "row-columns"),
        (5, "row-not-utf-8"),
        (6, "name-twice"),
        (7, "row-quotes"),
        (8, "name-hidden-character"),
        (10, "name-too-long"),
        (11, "name-unprintable"),
        (12, "name-hidden-character"),
    ]


def test_a_fault_marks_the_name_in_its_row() -> None:
    (fault,) = read("town,name\nEly,名無し\n").faults
    assert (fault.place.line, fault.place.column) == (2, 5)
    assert "名 無 し" in fault.sentence


def test_spellings_of_one_letter_are_one_name() -> None:
    found = read("Zoe\u0301 Bun\nZo\u00e9 bun\n")
    assert [subscriber.name for subscriber in found.subscribers] == ["Zo\u00e9 Bun"]
    assert [fault.code for fault in found.faults] == ["name-twice"]


@pytest.mark.parametrize(
    "body", [b"", b"\n \n", b"\xff\xfen\0a\0", b"n\xe9m\nAda\n", b"a\n" * 5_000_001], ids=len
)
def test_a_list_that_cannot_be_read_is_one_fault(body: bytes) -> None:
    assert faults(body) == [(0, "list-unreadable")]
    assert names(body) == []


@settings(max_examples=150, deadline=None)
@given(st.one_of(st.binary(max_size=200), st.text(max_size=80).map(lambda text: f"name,x\n{text}".encode())))
def test_no_list_stops_the_reader_and_every_name_can_be_printed(body: bytes) -> None:
    found = read(body)
    for subscriber in found.subscribers:
        assert 0 < len(subscriber.name) <= 80
        assert FACE.lacking(subscriber.name) == ""
    assert all(0 <= fault.place.line <= len(found.lines) for fault in found.faults)
