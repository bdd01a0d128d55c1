"""A photo is looked at once more in the very bytes that a decoder is about to be given."""

import struct
import zlib
from hashlib import sha256
from pathlib import Path

import pytest
from PIL import Image

from sitegen.opening import LeadsOutside
from sitegen.press.picture import PictureUnreadable
from sitegen.release.cache import Cache
from sitegen.release.photo_work import CardCutWork, ChangedMeanwhile, CutWork, photo_digests

PHOTO = "content/recipes/bay/finished.jpg"


@pytest.fixture
def root(tmp_path: Path) -> Path:
    (tmp_path / "school" / "content" / "recipes" / "bay").mkdir(parents=True)
    Image.new("RGB", (700, 500)).save(tmp_path / "school" / PHOTO)
    (tmp_path / "elsewhere.jpg").write_bytes((tmp_path / "school" / PHOTO).read_bytes())
    return tmp_path / "school"


def works(root: Path, digest: str) -> tuple[CutWork, CardCutWork]:
    cache = Cache(root / ".sitegen", "maker")
    return CutWork(root, PHOTO, digest, cache), CardCutWork(root, PHOTO, digest, (36.0, 27.0), cache)


def test_a_photo_whose_place_a_link_took_is_not_followed(root: Path) -> None:
    """Not even where it leads to the same bytes."""
    digest = photo_digests(root, [PHOTO])[PHOTO]
    (root / PHOTO).unlink()
    (root / PHOTO).symlink_to(root.parent / "elsewhere.jpg")
    for work in works(root, digest):
        with pytest.raises(LeadsOutside):
            work.made()
    with pytest.raises(LeadsOutside):
        photo_digests(root, [PHOTO])


def test_a_photo_that_was_saved_since_is_told(root: Path) -> None:
    digest = photo_digests(root, [PHOTO])[PHOTO]
    Image.new("RGB", (700, 500), "plum").save(root / PHOTO)
    for work in works(root, digest):
        with pytest.raises(ChangedMeanwhile):
            work.made()


def test_a_picture_that_promises_too_much_never_reaches_a_decoder(root: Path) -> None:
    head = b"IHDR" + struct.pack(">IIBBBBB", 11_000, 11_000, 8, 2, 0, 0, 0)
    bomb = b"\x89PNG\r\n\x1a\n" + struct.pack(">I", 13) + head + struct.pack(">I", zlib.crc32(head))
    (root / PHOTO).write_bytes(bomb)
    for work in works(root, sha256(bomb).hexdigest()):
        with pytest.raises(PictureUnreadable) as caught:
            work.made()
        assert "11000 x 11000" in caught.value.reason
