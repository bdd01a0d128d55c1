"""A picture named in a file: there, inside the folder, truly a picture, of a bearable size."""

import struct
from io import BytesIO
from pathlib import Path

import pytest
from PIL import Image

from sitegen.faults import Place
from sitegen.source.captions import captions_named
from sitegen.source.photos import Folder, photo_named
from sitegen.source.picture_head import picture_head

AT = Place("recipe.yaml", 1, 1, 1)


@pytest.fixture
def folder(tmp_path: Path) -> Folder:
    (tmp_path / "bay").mkdir()
    Image.new("RGB", (800, 600)).save(tmp_path / "bay" / "finished.jpg")
    Image.new("RGB", (800, 600)).save(tmp_path / "outside.jpg")
    return Folder(tmp_path / "bay", "content/recipes/bay")


def codes(folder: Folder, name: str) -> list[str]:
    return [fault.code for fault in photo_named(folder, name, "a bun", AT)[1]]


def test_a_picture_beside_the_recipe_is_named_from_the_folder_that_holds_content(folder: Folder) -> None:
    photo, faults = photo_named(folder, "finished.jpg", "a bun", AT)
    assert faults == ()
    assert photo is not None
    assert (photo.file, photo.alt, photo.at) == ("content/recipes/bay/finished.jpg", "a bun", AT)


@pytest.mark.parametrize(
    "name", ["../outside.jpg", "/etc/hostname", "a/../../outside.jpg", "..\\outside.jpg", "C:a.jpg"]
)
def test_a_name_that_leads_out_of_the_folder_is_a_fault(folder: Folder, name: str) -> None:
    assert codes(folder, name) == ["outside-folder"]


def test_a_link_out_of_the_folder_is_a_fault(folder: Folder) -> None:
    (folder.path / "link.jpg").symlink_to(folder.path.parent / "outside.jpg")
    assert codes(folder, "link.jpg") == ["outside-folder"]


def test_a_link_to_itself_is_a_picture_that_is_not_there(folder: Folder) -> None:
    (folder.path / "loop.jpg").symlink_to(folder.path / "loop.jpg")
    assert codes(folder, "loop.jpg") == ["photo-not-found"]


@pytest.mark.parametrize("name", ["finishd.jpg", "Finished.JPG"])
def test_a_picture_that_is_not_there_is_told_with_its_near_name(folder: Folder, name: str) -> None:
    _, faults = photo_named(folder, name, "a bun", AT)
    assert [(fault.code, fault.way_out) for fault in faults] == [
        ("photo-not-found", "did you mean 'finished.jpg'?")
    ]


@pytest.mark.parametrize("name", ["é" * 200, "."])
def test_a_name_that_no_disk_can_hold_is_a_picture_that_is_not_there(folder: Folder, name: str) -> None:
    assert codes(folder, name) == ["photo-not-found"]


@pytest.mark.parametrize(
    "body",
    [
        b"",
        b"no picture",
        b"GIF89a",
        b"\xff\xd8",
        b"\xff\xd8\xff\xe0\x00",
        b"\x89PNG\r\n\x1a\n",
        b"RIFF1234WEBP",
        b"\xff" * 99,
    ],
)
def test_a_file_that_is_no_picture_is_a_fault(folder: Folder, body: bytes) -> None:
    (folder.path / "odd.jpg").write_bytes(body)
    assert codes(folder, "odd.jpg") == ["not-a-picture"]


def test_a_picture_of_20000_pixels_is_refused_by_its_header_alone(folder: Folder) -> None:
    header = b"\x89PNG\r\n\x1a\n" + struct.pack(">I4sIIBBBBB", 13, b"IHDR", 20_000, 300, 8, 2, 0, 0, 0)
    (folder.path / "wide.png").write_bytes(header)
    assert codes(folder, "wide.png") == ["picture-too-large"]


def test_a_picture_of_too_many_bytes_is_refused_unread(folder: Folder) -> None:
    with (folder.path / "heavy.jpg").open("wb") as file:
        file.truncate(50_000_000)
    assert codes(folder, "heavy.jpg") == ["picture-too-large"]


def test_a_small_picture_is_advice_and_still_a_photo(folder: Folder) -> None:
    Image.new("RGB", (300, 200)).save(folder.path / "small.png")
    photo, faults = photo_named(folder, "small.png", "a bun", AT)
    assert photo is not None
    assert [(fault.code, fault.severity) for fault in faults] == [("picture-small", "advice")]


@pytest.mark.parametrize(
    ("kind", "options"),
    [
        ("JPEG", {}),
        ("JPEG", {"progressive": True, "exif": b"Exif\0\0" + b"x" * 5_000}),
        ("PNG", {}),
        ("WebP", {}),
        ("WebP", {"lossless": True}),
        ("WebP", {"exif": b"Exif\0\0MM\0*\0\0\0\x08\0\0"}),
    ],
)
@pytest.mark.parametrize("size", [(1, 1), (801, 77), (12_000, 3)])
def test_the_size_of_a_picture_is_read_from_its_header(
    kind: str, options: dict[str, object], size: tuple[int, int]
) -> None:
    file = BytesIO()
    Image.new("RGB", size, (90, 60, 30)).save(file, kind, **options)
    file.seek(0)
    found = picture_head(file)
    assert (found.width, found.height, found.kind) == (*size, kind)


def test_captions_lie_beside_the_recipe(folder: Folder) -> None:
    (folder.path / "good.vtt").write_text("WEBVTT - said aloud\n\n")
    assert captions_named(folder, "good.vtt", AT) == ("content/recipes/bay/good.vtt", ())
    assert [fault.code for fault in captions_named(folder, "none.vtt", AT)[1]] == ["captions-not-found"]
