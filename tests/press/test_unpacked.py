"""Whatever the bytes of a picture are, a decoder either gives pixels or the baker hears which file it was."""

from contextlib import suppress
from io import BytesIO

import pytest
from PIL import Image

from sitegen.press.picture import PictureUnreadable
from sitegen.press.unpacked import unpacked


def least(size: tuple[int, int]) -> tuple[int, int]:
    return size


def saved(kind: str, **options: object) -> bytes:
    out = BytesIO()
    Image.new("RGB", (40, 30), (90, 20, 60)).save(out, kind, **options)
    return out.getvalue()


@pytest.mark.parametrize("kind", ["GIF", "TIFF", "BMP", "ICO", "PPM", "TGA", "EPS", "PDF", "ICNS"])
def test_a_format_that_bakers_are_not_told_of_is_not_decoded(kind: str) -> None:
    with pytest.raises(PictureUnreadable) as caught:
        unpacked(saved(kind), "odd.jpg", least)
    assert "not a JPEG" in caught.value.reason


@pytest.mark.parametrize("kind", ["JPEG", "PNG", "WEBP"])
def test_a_picture_with_a_byte_turned_round_is_set_or_refused(kind: str) -> None:
    whole = saved(kind)
    for place in range(0, len(whole), 3):
        turned = bytes([*whole[:place], whole[place] ^ 0xFF, *whole[place + 1 :]])
        with suppress(PictureUnreadable):
            assert unpacked(turned, "turned.jpg", least).mode == "RGB"
