"""Pictures that would fill a machine or keep it busy are refused before a pixel is unpacked."""

import struct
import zlib
from collections.abc import Callable
from io import BytesIO

import pytest
from PIL import Image

from sitegen import limits
from sitegen.source.picture_head import CutShort, Moves, NoPicture, TooHeavy, picture_head


def saved(kind: str, **options: object) -> bytes:
    out = BytesIO()
    Image.new("RGB", (40, 30), (90, 20, 60)).save(out, kind, **options)
    return out.getvalue()


def chunk(name: bytes, body: bytes) -> bytes:
    return struct.pack(">I", len(body)) + name + body + struct.pack(">I", zlib.crc32(name + body))


def png_with(*chunks: bytes) -> bytes:
    """A PNG with more chunks between its head and its pixels."""
    whole = saved("PNG")
    return whole[:33] + b"".join(chunks) + whole[33:]


def png_of(width: int, height: int) -> bytes:
    """A PNG of 57 bytes that promises more."""
    head = chunk(b"IHDR", struct.pack(">IIBBBBB", width, height, 8, 2, 0, 0, 0))
    return b"\x89PNG\r\n\x1a\n" + head + chunk(b"IEND", b"")


def webp_with(name: bytes, length: int) -> bytes:
    """A WebP whose extended head is followed by one chunk more."""
    whole = saved("WEBP", exif=b"MM\0*\0\0\0\x08\0\0")
    body = whole[12:30] + name + struct.pack("<I", length) + bytes(length) + whole[30:]
    return b"RIFF" + struct.pack("<I", len(body) + 4) + b"WEBP" + body


def segment(marker: int, body: bytes) -> bytes:
    return bytes([0xFF, marker]) + struct.pack(">H", len(body) + 2) + body


def jpeg_with(*segments: bytes) -> bytes:
    whole = saved("JPEG")
    return whole[:2] + b"".join(segments) + whole[2:]


def many_scans(times: int) -> bytes:
    """A progressive JPEG whose last pass comes again and again."""
    whole = saved("JPEG", progressive=True)
    last = whole.rindex(b"\xff\xda")
    return whole[:-2] + whole[last:-2] * times + whole[-2:]


def exif_of(entries: int, each: int) -> bytes:
    """A directory whose every entry claims the same bytes."""
    rows = b"".join(struct.pack(">HHII", tag, 7, each, 8) for tag in range(entries))
    return b"MM\0*" + struct.pack(">IH", 8, entries) + rows + bytes(4)


WORDS = zlib.compress(bytes(limits.PICTURE_TEXT_BYTES + 1))
HEAVY: dict[str, Callable[[], bytes]] = {
    "PNG of 60,000 x 60,000": lambda: png_of(60_000, 60_000),
    "PNG of 12,001 x 2": lambda: png_of(12_001, 2),
    "PNG of 12,000 x 12,000": lambda: png_of(12_000, 12_000),
    "words that unpack to a megabyte, zTXt": lambda: png_with(chunk(b"zTXt", b"a\0\0" + WORDS)),
    "the same, iTXt": lambda: png_with(chunk(b"iTXt", b"a\0\1\0\0\0" + WORDS)),
    "plain words of a megabyte": lambda: png_with(chunk(b"tEXt", bytes(limits.PICTURE_TEXT_BYTES + 1))),
    "many small words": lambda: png_with(*[chunk(b"zTXt", b"a\0\0" + zlib.compress(bytes(90_000)))] * 12),
    "a profile that unpacks to a megabyte": lambda: png_with(chunk(b"iCCP", b"a\0\0" + WORDS)),
    "a directory of a camera, PNG": lambda: png_with(chunk(b"eXIf", exif_of(500, 60_000))),
    "a directory of a camera, JPEG": lambda: jpeg_with(segment(0xE1, b"Exif\0\0" + exif_of(500, 60_000))),
    "a camera that writes much": lambda: png_with(chunk(b"eXIf", bytes(limits.PICTURE_EXIF_BYTES + 1))),
    "a JPEG's profile in many parts": lambda: jpeg_with(
        *[segment(0xE2, b"ICC_PROFILE\0" + bytes(65_000))] * 62
    ),
    "a WebP's profile": lambda: webp_with(b"ICCP", limits.PICTURE_PROFILE_BYTES + 2),
    "many chunks": lambda: png_with(chunk(b"teSt", b"") * limits.PICTURE_PARTS),
    "many passes": lambda: many_scans(limits.PICTURE_SCANS),
}


@pytest.mark.parametrize("what", HEAVY)
def test_a_heavy_picture_is_refused_by_its_head(what: str) -> None:
    with pytest.raises(TooHeavy):
        picture_head(BytesIO(HEAVY[what]()))


@pytest.mark.parametrize("kind", ["PNG", "WEBP"])
def test_a_picture_that_moves_is_refused(kind: str) -> None:
    frames = [Image.new("RGB", (40, 30), shade) for shade in ("white", "plum")]
    out = BytesIO()
    frames[0].save(out, kind, save_all=True, append_images=frames[1:])
    with pytest.raises(Moves):
        picture_head(BytesIO(out.getvalue()))


@pytest.mark.parametrize("kind", ["PNG", "WEBP"])
def test_a_file_that_ends_before_its_picture_is_refused(kind: str) -> None:
    with pytest.raises(CutShort):
        picture_head(BytesIO(saved(kind)[:-9]))


def test_a_second_size_behind_the_first_is_no_picture() -> None:
    """Decoders go by the last one that they meet."""
    frame = segment(0xC0, struct.pack(">BHHB", 8, 60_000, 60_000, 3) + bytes(9))
    whole = saved("JPEG")
    scan = whole.index(b"\xff\xda")
    with pytest.raises(NoPicture):
        picture_head(BytesIO(whole[:scan] + frame + whole[scan:]))
    second = chunk(b"IHDR", struct.pack(">IIBBBBB", 60_000, 60_000, 8, 2, 0, 0, 0))
    with pytest.raises(NoPicture):
        picture_head(BytesIO(png_with(second)))


@pytest.mark.parametrize(
    "body",
    [
        saved("JPEG", progressive=True),
        many_scans(20),
        jpeg_with(segment(0xE1, b"Exif\0\0" + exif_of(30, 500))),
        jpeg_with(*[segment(0xE2, b"ICC_PROFILE\0" + bytes(65_000))] * 10),
        png_with(chunk(b"zTXt", b"a\0\0" + zlib.compress(b"at home")), chunk(b"iCCP", b"a\0\0")),
        webp_with(b"ICCP", 500),
    ],
    ids=["progressive", "twenty passes", "a camera's notes", "a printer's profile", "words", "WebP profile"],
)
def test_what_cameras_and_programs_write_passes(body: bytes) -> None:
    head = picture_head(BytesIO(body))
    assert (head.width, head.height) == (40, 30)


def test_no_bytes_at_all_make_the_look_fail_otherwise() -> None:
    """Every picture of three kinds, cut at every place and with every byte turned round."""
    for kind in ("JPEG", "PNG", "WEBP"):
        whole = saved(kind, exif=exif_of(2, 4))
        for place in range(len(whole)):
            turned = bytes([*whole[:place], whole[place] ^ 0xFF, *whole[place + 1 :]])
            for body in (whole[:place], turned):
                try:
                    picture_head(BytesIO(body))
                except (NoPicture, TooHeavy, Moves, CutShort):
                    continue
