"""The width and height of a picture, from the first bytes of its file: nothing is decoded."""

from collections.abc import Callable
from dataclasses import dataclass
from typing import BinaryIO

# ISO/IEC 10918-1, table B.1: the markers that begin a frame; C4, C8 and CC mean other things.
_JPEG_FRAMES = frozenset({0xC0, 0xC1, 0xC2, 0xC3, 0xC5, 0xC6, 0xC7, 0xC9, 0xCA, 0xCB, 0xCD, 0xCE, 0xCF})
_JPEG_BARE_MARKERS = frozenset({0x01, *range(0xD0, 0xD9)})
_MOST_SEGMENTS = 2_000


@dataclass(frozen=True)
class PictureSize:
    """width, height: pixels. kind: 'JPEG', 'PNG' or 'WebP'."""

    width: int
    height: int
    kind: str


def picture_size(file: BinaryIO) -> PictureSize | None:
    """The size that the header states; None where the file is no JPEG, PNG or WebP picture."""
    start = file.read(32)
    for magic, measure in _KINDS:
        if start.startswith(magic):
            return measure(start, file)
    return None


def _png(start: bytes, _file: BinaryIO) -> PictureSize | None:
    """PNG (third edition), 11.2.1: the IHDR chunk comes first."""
    if start[12:16] != b"IHDR" or len(start) < 24:
        return None
    return PictureSize(int.from_bytes(start[16:20], "big"), int.from_bytes(start[20:24], "big"), "PNG")


def _webp(start: bytes, _file: BinaryIO) -> PictureSize | None:
    """RFC 9649, 2.5 to 2.7: the first chunk is VP8, VP8L or VP8X."""
    if start[8:12] != b"WEBP" or len(start) < 30:
        return None
    chunk, body = start[12:16], start[20:]
    if chunk == b"VP8X":
        width, height = int.from_bytes(body[4:7], "little") + 1, int.from_bytes(body[7:10], "little") + 1
    elif chunk == b"VP8L" and body[0] == 0x2F:
        bits = int.from_bytes(body[1:5], "little")
        width, height = (bits & 0x3FFF) + 1, (bits >> 14 & 0x3FFF) + 1
    elif chunk == b"VP8 " and body[3:6] == b"\x9d\x01\x2a":
        width = int.from_bytes(body[6:8], "little") & 0x3FFF
        height = int.from_bytes(body[8:10], "little") & 0x3FFF
    else:
        return None
    return PictureSize(width, height, "WebP")


def _jpeg(_start: bytes, file: BinaryIO) -> PictureSize | None:
    """ISO/IEC 10918-1, B.1 and B.2: segment after segment until one begins a frame."""
    file.seek(2)
    for _ in range(_MOST_SEGMENTS):
        marker = _next_marker(file)
        if marker is None:
            return None
        if marker in _JPEG_BARE_MARKERS:
            continue
        length = int.from_bytes(file.read(2), "big")
        if length < 2:
            return None
        if marker in _JPEG_FRAMES:
            frame = file.read(5)
            if len(frame) < 5:
                return None
            height, width = int.from_bytes(frame[1:3], "big"), int.from_bytes(frame[3:5], "big")
            return PictureSize(width, height, "JPEG")
        file.seek(length - 2, 1)
    return None


def _next_marker(file: BinaryIO) -> int | None:
    """The marker that stands here; any number of fill bytes may come before it."""
    if file.read(1) != b"\xff":
        return None
    for _ in range(_MOST_SEGMENTS):
        code = file.read(1)
        if code != b"\xff":
            return code[0] if code else None
    return None


_KINDS: tuple[tuple[bytes, Callable[[bytes, BinaryIO], PictureSize | None]], ...] = (
    (b"\x89PNG\r\n\x1a\n", _png),
    (b"RIFF", _webp),
    (b"\xff\xd8", _jpeg),
)
