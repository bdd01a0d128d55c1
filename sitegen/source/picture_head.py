"""What a picture's file says of itself before a pixel is unpacked: its size, and what else it carries.

The work is bounded by `limits.py` whatever the bytes are. What passes here can be given to a decoder.
"""

import zlib
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from typing import BinaryIO, Literal

from sitegen import limits

# ISO/IEC 10918-1, table B.1: the markers that begin a frame; C4, C8 and CC mean other things.
_JPEG_FRAMES = frozenset({0xC0, 0xC1, 0xC2, 0xC3, 0xC5, 0xC6, 0xC7, 0xC9, 0xCA, 0xCB, 0xCD, 0xCE, 0xCF})
_JPEG_BARE_MARKERS = frozenset({0x01, *range(0xD0, 0xD9)})
_PROGRESSIVE = frozenset({0xC2, 0xC6, 0xCA, 0xCE})
_SCAN, _EXIF_OR_XMP, _PROFILE = 0xDA, 0xE1, 0xE2
_MOST_SEGMENTS = 2_000
_BLOCK = 1 << 20

# TIFF 6.0, section 2: bytes that a value of each kind takes.
_EXIF_WIDTHS = {1: 1, 2: 1, 3: 2, 4: 4, 5: 8, 6: 1, 7: 1, 8: 2, 9: 4, 10: 8, 11: 4, 12: 8}


class NoPicture(Exception):
    """The file is no JPEG, PNG or WebP picture, or ends before it says what it is."""


class TooHeavy(Exception):
    """A picture that carries more than a build can hold. what: it, in a baker's words."""

    def __init__(self, what: str) -> None:
        super().__init__(what)
        self.what = what


class Moves(Exception):
    """A picture of several frames, of which a page would show the first."""


class CutShort(Exception):
    """A picture whose file ends before the picture does."""


@dataclass(frozen=True)
class PictureHead:
    """width, height: pixels, as the file stores them. kind: 'JPEG', 'PNG' or 'WebP'."""

    width: int
    height: int
    kind: str


def picture_head(file: BinaryIO) -> PictureHead:
    """The size that a picture states. Raises NoPicture, TooHeavy, Moves, CutShort.

    file: at its beginning; where it is left is not said.
    """
    start = file.read(32)
    for magic, read in _KINDS:
        if start.startswith(magic):
            head = read(start, file)
            if not head.width or not head.height:
                raise NoPicture
            _refuse_many_pixels(head)
            return head
    raise NoPicture


def _refuse_many_pixels(head: PictureHead) -> None:
    many = head.width * head.height > limits.PICTURE_PIXELS
    if many or max(head.width, head.height) > limits.PICTURE_SIDE:
        raise TooHeavy(f"measures {head.width} x {head.height} pixels, which is too many")


def _png(start: bytes, file: BinaryIO) -> PictureHead:
    """PNG (third edition), 11.2.1: the IHDR chunk comes first; the others are looked at, not unpacked."""
    if start[12:16] != b"IHDR" or len(start) < 24:
        raise NoPicture
    head = PictureHead(int.from_bytes(start[16:20], "big"), int.from_bytes(start[20:24], "big"), "PNG")
    _refuse_many_pixels(head)
    words = 0
    for name, length in _png_chunks(file):
        match name:
            case b"IHDR" if file.tell() != 16:
                raise NoPicture
            case b"acTL":
                raise Moves
            case b"eXIf":
                _refuse_heavy_exif(file.read(min(length, limits.PICTURE_EXIF_BYTES + 1)))
            case b"iCCP":
                packed = file.read(length).partition(b"\0")[2][1:]
                _refuse_profile(
                    _unpacked_length(packed, limits.PICTURE_TEXT_BYTES), limits.PICTURE_TEXT_BYTES
                )
            case b"tEXt" | b"zTXt" | b"iTXt":
                words += length + _unpacked_words(name, file, length)
                if words > limits.PICTURE_TEXT_BYTES:
                    raise TooHeavy("carries more words than a book")
    return head


def _png_chunks(file: BinaryIO) -> Iterator[tuple[bytes, int]]:
    """Each chunk's name and length up to IEND; the file stands at its data. Raises CutShort, TooHeavy."""
    at = 8
    for _ in range(limits.PICTURE_PARTS):
        file.seek(at)
        length, name = int.from_bytes(file.read(4), "big"), file.read(4)
        if len(name) < 4:
            raise CutShort
        if name == b"IEND":
            return
        yield name, length
        at += length + 12
    raise TooHeavy(f"is made of more than {limits.PICTURE_PARTS:,} parts")


def _unpacked_words(name: bytes, file: BinaryIO, length: int) -> int:
    """Bytes that the packed words of a chunk unpack to, one more than the limit at most; 0 for plain ones."""
    if name == b"tEXt" or length > limits.PICTURE_TEXT_BYTES:
        return 0
    body = file.read(length).partition(b"\0")[2]
    if name == b"iTXt":
        if body[:1] != b"\1":
            return 0
        body = body[2:].partition(b"\0")[2].partition(b"\0")[2]
    else:
        body = body[1:]
    return _unpacked_length(body, limits.PICTURE_TEXT_BYTES)


def _unpacked_length(packed: bytes, most: int) -> int:
    """Bytes that a zlib stream unpacks to, `most` + 1 at most; 0 for what is none."""
    try:
        return len(zlib.decompressobj().decompress(packed, most + 1))
    except zlib.error:
        return 0


def _webp(start: bytes, file: BinaryIO) -> PictureHead:
    """RFC 9649, 2.5 to 2.7: the first chunk is VP8, VP8L or VP8X."""
    if start[8:12] != b"WEBP" or len(start) < 30:
        raise NoPicture
    chunk, body = start[12:16], start[20:]
    if chunk == b"VP8X":
        if body[0] & 0x02:
            raise Moves
        width, height = int.from_bytes(body[4:7], "little") + 1, int.from_bytes(body[7:10], "little") + 1
    elif chunk == b"VP8L" and body[0] == 0x2F:
        bits = int.from_bytes(body[1:5], "little")
        width, height = (bits & 0x3FFF) + 1, (bits >> 14 & 0x3FFF) + 1
    elif chunk == b"VP8 " and body[3:6] == b"\x9d\x01\x2a":
        width = int.from_bytes(body[6:8], "little") & 0x3FFF
        height = int.from_bytes(body[8:10], "little") & 0x3FFF
    else:
        raise NoPicture
    _look_at_webp_chunks(file, 8 + int.from_bytes(start[4:8], "little"))
    return PictureHead(width, height, "WebP")


def _look_at_webp_chunks(file: BinaryIO, end: int) -> None:
    """Raises CutShort, TooHeavy and Moves. end: where the file says that it ends."""
    at = 12
    for _ in range(limits.PICTURE_PARTS):
        if at >= end:
            break
        file.seek(at)
        name, length = file.read(4), int.from_bytes(file.read(4), "little")
        match name:
            case b"ICCP":
                _refuse_profile(length)
            case b"EXIF":
                _refuse_heavy_exif(file.read(min(length, limits.PICTURE_EXIF_BYTES + 1)))
            case b"ANIM" | b"ANMF":
                raise Moves
        at += 8 + length + length % 2
    else:
        raise TooHeavy(f"is made of more than {limits.PICTURE_PARTS:,} parts")
    if file.seek(0, 2) < end:
        raise CutShort


def _jpeg(_start: bytes, file: BinaryIO) -> PictureHead:
    """ISO/IEC 10918-1, B.1 and B.2: segment after segment until the first scan, with one frame before it."""
    file.seek(2)
    head: PictureHead | None = None
    in_scans, components, exif, profile = False, 0, b"", 0
    for _ in range(_MOST_SEGMENTS):
        marker = _next_marker(file)
        if marker is None:
            raise NoPicture if head is None else CutShort
        if marker in _JPEG_BARE_MARKERS:
            continue
        length = int.from_bytes(file.read(2), "big") - 2
        if length < 0:
            raise NoPicture
        after = file.tell() + length
        if marker in _JPEG_FRAMES:
            frame = file.read(6)
            if len(frame) < 6 or head is not None:
                raise NoPicture
            height, width = int.from_bytes(frame[1:3], "big"), int.from_bytes(frame[3:5], "big")
            head = PictureHead(width, height, "JPEG")
            in_scans, components = marker in _PROGRESSIVE, frame[5]
        elif marker == _EXIF_OR_XMP:
            body = file.read(length)
            exif += body[6:] if body.startswith(b"Exif\0") else b""
        elif marker == _PROFILE:
            profile += length if file.read(12) == b"ICC_PROFILE\0" else 0
        elif marker == _SCAN:
            if head is None:
                raise NoPicture
            _refuse_heavy_exif(exif)
            _refuse_profile(profile)
            if in_scans or file.read(1) < bytes([components]):
                _refuse_many_scans(file)
            return head
        file.seek(after)
    raise NoPicture


def _refuse_many_scans(file: BinaryIO) -> None:
    """Raises TooHeavy. Within a scan no byte FF stands before DA but where the next scan begins (B.1.1.5)."""
    scans, last = 1, b""
    while block := file.read(_BLOCK):
        scans += (last + block).count(b"\xff\xda")
        last = block[-1:] if block[-1:] == b"\xff" else b""
        if scans > limits.PICTURE_SCANS:
            raise TooHeavy(f"comes in more than {limits.PICTURE_SCANS} passes")


def _next_marker(file: BinaryIO) -> int | None:
    """The marker that stands here; any number of fill bytes may come before it."""
    if file.read(1) != b"\xff":
        return None
    for _ in range(_MOST_SEGMENTS):
        code = file.read(1)
        if code != b"\xff":
            return code[0] if code else None
    return None


def _refuse_profile(length: int, most: int = limits.PICTURE_PROFILE_BYTES) -> None:
    if length > most:
        raise TooHeavy(f"carries a colour profile of more than {most // 1_000_000} MB")


def _refuse_heavy_exif(exif: bytes) -> None:
    """Raises TooHeavy where the entries of the first directory are larger, in sum, than all of it may be.

    Entries may point at the same bytes, so that a small file is read as a large one.
    """
    if len(exif) > limits.PICTURE_EXIF_BYTES or _exif_load(exif) > limits.PICTURE_EXIF_BYTES:
        raise TooHeavy("carries more notes of a camera than a camera writes")


def _exif_load(exif: bytes) -> int:
    """Bytes that the entries of the first directory take; TIFF 6.0, section 2."""
    exif = exif.removeprefix(b"Exif\0\0")
    order: Literal["little", "big"] = "little" if exif.startswith(b"II") else "big"

    def number(start: int, width: int) -> int:
        return int.from_bytes(exif[start : start + width], order)

    directory = number(4, 4)
    entries = range(directory + 2, directory + 2 + 12 * number(directory, 2), 12)
    return sum(
        _EXIF_WIDTHS.get(number(at + 2, 2), 1) * number(at + 4, 4) for at in entries if at + 12 <= len(exif)
    )


_KINDS: tuple[tuple[bytes, Callable[[bytes, BinaryIO], PictureHead]], ...] = (
    (b"\x89PNG\r\n\x1a\n", _png),
    (b"RIFF", _webp),
    (b"\xff\xd8", _jpeg),
)
