"""ZIP files, read back by the standard library."""

from io import BytesIO
from zipfile import ZIP_STORED, ZipFile

from sitegen.press.zip_pieces import FIXED_TIME, zip_pieces

FILES = {"b/plum.pdf": b"%PDF" * 5_000, "b/bay.pdf": b"%PDF", "a/contents.pdf": b""}


def pieces(*names: str) -> list[bytes]:
    return list(zip_pieces((name, lambda name=name: FILES[name]) for name in names))  # type: ignore[misc]


def test_every_entry_comes_out_whole_and_sorted() -> None:
    file = ZipFile(BytesIO(b"".join(pieces(*FILES))))
    assert file.testzip() is None
    assert file.namelist() == sorted(FILES)
    assert {name: file.read(name) for name in FILES} == FILES


def test_entries_tell_no_time_and_are_stored() -> None:
    rows = ZipFile(BytesIO(b"".join(pieces(*FILES)))).infolist()
    assert {(row.date_time, row.compress_type, row.flag_bits) for row in rows} == {
        (FIXED_TIME, ZIP_STORED, 0)
    }


def test_the_same_entries_give_the_same_bytes_in_any_order() -> None:
    assert pieces(*FILES) == pieces(*reversed(FILES))


def test_a_piece_holds_one_entry() -> None:
    found = pieces(*FILES)
    assert len(found) == len(FILES) + 1
    assert sum(FILES["b/plum.pdf"] in piece for piece in found) == 1
    assert max(map(len, found)) < len(FILES["b/plum.pdf"]) + 200


def test_what_makes_an_entry_is_called_when_it_is_its_turn() -> None:
    called: list[str] = []
    made = zip_pieces([(name, lambda name=name: called.append(name) or b"") for name in ("a", "b")])  # type: ignore[misc,func-returns-value]
    next(made)
    assert called == ["a"]
