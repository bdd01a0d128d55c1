"""A technique page: front matter, Markdown, and the pictures that it shows."""

from pathlib import Path

import pytest
from PIL import Image

from sitegen.faults import Fault
from sitegen.source.photos import Folder
from sitegen.source.school import Tutorial
from sitegen.source.tutorials import tutorial_from

HEAD = "---\ntitle: Whisking\nsummary: In circles.\n---\n"


def read(folder: Path, text: str) -> tuple[Tutorial | None, tuple[Fault, ...]]:
    (folder / "whisking.md").write_text(text, encoding="utf-8")
    Image.new("RGB", (800, 600)).save(folder / "bowl.jpg")
    tutorial, faults, _ = tutorial_from(Folder(folder, "content/tutorials"), "whisking")
    return tutorial, faults


def test_a_page_is_its_title_its_text_and_its_pictures(tmp_path: Path) -> None:
    tutorial, faults = read(tmp_path, HEAD + "\nStand the bowl down.\n\n![A bowl](bowl.jpg)\n")
    assert faults == ()
    assert tutorial is not None
    assert (tutorial.title, tutorial.summary) == ("Whisking", "In circles.")
    assert tutorial.markdown == "Stand the bowl down.\n\n![A bowl](bowl.jpg)\n"
    assert [(photo.file, photo.alt) for photo in tutorial.photos] == [
        ("content/tutorials/bowl.jpg", "A bowl")
    ]
    assert tutorial.at.line == 2


@pytest.mark.parametrize(
    ("text", "code", "line", "column"),
    [
        ("Just words.\n", "front-matter-missing", 1, 1),
        ("---\ntitle: Whisking\n", "front-matter-missing", 1, 1),
        ("---\ntitle: Whisking\nsumary: a\n---\nText.\n", "unknown-key", 3, 1),
        ("---\ntitle: {Whisking}\nsummary: a\n---\nText.\n", "brace-begins-text", 2, 8),
        (HEAD, "empty-page", 5, 1),
        (HEAD + "Text\n\n![A bowl](bowls.jpg)\n", "photo-not-found", 7, 11),
        (HEAD + "![](bowl.jpg)\n", "alt-missing", 5, 5),
        (HEAD + "![A bowl](../bowl.jpg)\n", "outside-folder", 5, 11),
        (HEAD + "![A bowl](https://a.example/bowl.jpg)\n", "outside-folder", 5, 11),
    ],
)
def test_what_is_wrong_is_told_at_its_place(
    tmp_path: Path, text: str, code: str, line: int, column: int
) -> None:
    _, faults = read(tmp_path, text)
    assert (code, line, column) in [(fault.code, fault.place.line, fault.place.column) for fault in faults]


def test_a_picture_inside_a_fenced_block_is_text(tmp_path: Path) -> None:
    _, faults = read(tmp_path, HEAD + "```\n![A bowl](none.jpg)\n```\n")
    assert faults == ()


def test_a_line_of_dashes_in_the_text_is_a_rule(tmp_path: Path) -> None:
    tutorial, faults = read(tmp_path, HEAD + "Above\n\n---\n\nbelow\n")
    assert faults == ()
    assert tutorial is not None
    assert "---" in tutorial.markdown
