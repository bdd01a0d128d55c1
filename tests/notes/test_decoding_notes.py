"""Notes in any encoding, and files that are no notes."""

from pathlib import Path

import pytest

from sitegen import limits
from sitegen.notes.decoding import decoded
from sitegen.notes.reading import draft_of, read_notes
from sitegen.notes.values import Lore

TEXT = "Crème loaf\n\n½ tsp salt\n150 g plain flour\n"


@pytest.mark.parametrize(
    "encoding", ["utf-8", "utf-8-sig", "utf-16", "utf-16-le", "utf-16-be", "cp1252", "latin-1"]
)
@pytest.mark.parametrize("ends", ["\n", "\r\n", "\r"])
def test_every_encoding_gives_the_same_words(encoding: str, ends: str) -> None:
    text, faults = decoded(TEXT.replace("\n", ends).encode(encoding), "notes.txt")
    assert (text, faults) == (TEXT, ())


BAD = {
    "junk": (bytes(range(256)) * 40, "not-notes"),
    "picture": (b"\xff\xd8\xff\xe0\x00\x10JFIF\x00\x01" + bytes(500), "not-notes"),
    "large": (b"150 g flour\n" * 1_000_000, "file-too-large"),
    "lines": (b"a b\n" * (limits.NOTE_LINES + 1), "too-many-lines"),
    "long": (b"a" * (limits.LINE_CHARACTERS + 1), "line-too-long"),
    "empty": (b"", "no-recipe-found"),
    "blank": (b"\n \t\n", "no-recipe-found"),
    "heading": (b"Lemon cake\n", "no-recipe-found"),
}


@pytest.mark.parametrize("name", BAD)
def test_what_is_no_recipe_is_told_as_one_fault(name: str, tmp_path: Path, lore: Lore) -> None:
    body, code = BAD[name]
    path = tmp_path / "notes.txt"
    path.write_bytes(body)
    draft, faults, _ = read_notes(path, "notes.txt", lore)
    assert draft is None
    assert [fault.code for fault in faults] == [code]


def test_a_file_that_is_not_there_and_a_folder_are_told(tmp_path: Path, lore: Lore) -> None:
    assert read_notes(tmp_path / "no.txt", "no.txt", lore)[1][0].code == "no-file"
    (tmp_path / "folder").mkdir()
    assert read_notes(tmp_path / "folder", "folder", lore)[1][0].code == "unreadable-file"


FOREIGN = """Kirschkuchen

Zutaten
200 g Mehl
4 Eier
125 g Zucker

Zubereitung
Alles verrühren und 40 Minuten backen.
"""


def test_notes_in_another_language_are_kept_line_by_line(lore: Lore) -> None:
    draft, faults = draft_of(FOREIGN, "kuchen.txt", "kuchen.txt", lore)
    assert faults == ()
    assert draft is not None
    for line in ("Mehl", "Eier", "Zucker", "verrühren"):
        assert line in draft.text
