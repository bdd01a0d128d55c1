"""Every text that a file holds, however it is wrapped: archives, compressed parts, metadata, escapes.

Formats by their published descriptions: ZIP (PKWARE's APPNOTE), gzip (RFC 1952), PNG (W3C), JPEG
(ISO 10918-1), WebP (RFC 9649), PDF (ISO 32000-1).
"""

import re
import struct
import zlib
from base64 import b64decode
from collections.abc import Iterator
from html import unescape
from io import BytesIO
from urllib.parse import unquote_to_bytes
from zipfile import BadZipFile, ZipFile

from sitegen.release.bare_words import bare

DEEPEST = 4
"""Archives in archives that are opened."""
MOST_BYTES = 200_000_000
"""That one file may unpack to."""
_TAG = re.compile(rb"(<[a-zA-Z/!?][^>]*>)")
_JSON_ESCAPE = re.compile(rb'\\(?:u([0-9a-fA-F]{4})|[nrtbf"\\/])')
_PERCENT = re.compile(rb"%[0-9a-fA-F]{2}")
_BASE64 = re.compile(rb"base64,\s*([A-Za-z0-9+/]{16,}={0,2})")
_PDF_STREAM = re.compile(rb"stream\r?\n(.*?)\r?\n?endstream", re.DOTALL)
_UTF16 = (b"\xff\xfe", b"\xfe\xff")
_LITTLE = re.compile(rb"(?:[\x20-\x7e\xa0-\xff]\0){4,}")
_BIG = re.compile(rb"(?:\0[\x20-\x7e\xa0-\xff]){4,}")
"""Text in UTF-16 between other bytes, in either order."""
_JPEG_BARE = frozenset({0xC0, 0xC1, 0xC2, 0xC4, 0xDB, 0xDD, 0xE0})
"""Markers before the pixels that tell how to read them; 0xE0 is JFIF's own."""
_WEBP_BARE = frozenset({b"VP8 ", b"VP8L", b"VP8X", b"ALPH"})
_PNG_BARE = frozenset({b"IHDR", b"PLTE", b"tRNS", b"IDAT", b"IEND", b"sRGB", b"gAMA"})
_PNG_PACKED = {b"zTXt": 1, b"iCCP": 1, b"iTXt": 5}
"""Chunk -> at most so many bytes after its keyword, before what is compressed."""


class Sealed(Exception):
    """Something that cannot be read to its end, so that nobody knows what it holds. reason: in words."""

    def __init__(self, reason: str) -> None:
        super().__init__(reason)
        self.reason = reason


def parts_of(body: bytes) -> Iterator[bytes]:
    """A file's bytes, then those of each part that is packed into it: files, streams, notes in pictures.

    Raises Sealed at an archive that is locked, damaged, too deep or too large.
    """
    yield from _parts(body, 0, _Budget())


def notes_in_picture(body: bytes) -> tuple[bytes, ...] | None:
    """What a JPEG, WebP or PNG picture holds beside its pixels; None for another file."""
    if body.startswith(b"\xff\xd8\xff"):
        return tuple(_jpeg_notes(body))
    if body.startswith(b"RIFF") and body[8:12] == b"WEBP":
        return tuple(_webp_notes(body))
    if body.startswith(b"\x89PNG\r\n\x1a\n"):
        return tuple(_png_notes(body))
    return None


def readings(body: bytes) -> Iterator[bytes]:
    """The bare words of bytes, read as plain text and as each way in which a text may be written out."""
    for text in _texts(body):
        yield from _readings(text)


def _texts(body: bytes) -> Iterator[bytes]:
    """Bytes as UTF-8, read in each encoding that they may be in."""
    if body[:2] in _UTF16:
        yield body.decode("utf-16", "replace").encode("utf-8", "replace")
        return
    if b"\0" in body:
        yield " \n ".join(run[0].decode("utf-16-le") for run in _LITTLE.finditer(body)).encode()
        yield " \n ".join(run[0].decode("utf-16-be") for run in _BIG.finditer(body)).encode()
    try:
        body.decode()
        yield body
    except UnicodeDecodeError:
        yield body.decode("utf-8", "replace").replace("\N{REPLACEMENT CHARACTER}", " ").encode()
        yield body.decode("latin-1").encode()


def _readings(text: bytes) -> Iterator[bytes]:
    stage = _tags_apart(text)
    yield bare(stage)
    for open_up in (_without_entities, _without_entities, _without_json, _without_percent):
        opened = open_up(stage)
        if opened != stage:
            yield bare(opened)
            stage = opened


class _Budget:
    """How many bytes may still be unpacked from one file."""

    def __init__(self) -> None:
        self._left = MOST_BYTES

    @property
    def left(self) -> int:
        return self._left

    def spend(self, part: bytes) -> bytes:
        self._left -= len(part)
        if self._left < 0:
            raise Sealed(f"it unpacks to more than {MOST_BYTES // 1_000_000} MB")
        return part


def _parts(body: bytes, depth: int, budget: _Budget) -> Iterator[bytes]:
    if depth > DEEPEST:
        raise Sealed(f"it holds archives in archives, more than {DEEPEST} deep")
    yield body
    notes = notes_in_picture(body)
    for inner in _packed(body, budget) if notes is None else notes:
        yield from _parts(inner, depth + 1, budget)


def _packed(body: bytes, budget: _Budget) -> Iterator[bytes]:
    if b"PK\x05\x06" in body:
        yield from _zipped(body, budget)
    if body.startswith(b"\x1f\x8b"):
        yield from _gunzipped(body, budget)
    if b"%PDF-" in body[:1024]:
        yield from _pdf_streams(body, budget)
    for found in _BASE64.finditer(body):
        yield budget.spend(b64decode(found[1] + b"=" * (-len(found[1]) % 4)))


def _zipped(body: bytes, budget: _Budget) -> Iterator[bytes]:
    try:
        with ZipFile(BytesIO(body)) as archive:
            yield archive.comment
            for member in archive.infolist():
                yield member.filename.encode() + b" " + member.comment
                with archive.open(member) as packed:
                    yield budget.spend(packed.read(budget.left + 1))
    except (
        BadZipFile,
        RuntimeError,
        NotImplementedError,
        OSError,
        ValueError,
        zlib.error,
        EOFError,
    ) as problem:
        raise Sealed("it holds an archive that is locked or damaged") from problem


def _gunzipped(body: bytes, budget: _Budget) -> Iterator[bytes]:
    """Each member of the file, and what stands behind the last."""
    while body.startswith(b"\x1f\x8b"):
        part, body = _inflated(body, budget, zlib.MAX_WBITS | 16)
        yield part
    yield body


def _inflated(body: bytes, budget: _Budget, window: int = zlib.MAX_WBITS) -> tuple[bytes, bytes]:
    """What was compressed, and the bytes behind it."""
    machine = zlib.decompressobj(window)
    try:
        part = budget.spend(machine.decompress(body, budget.left + 1))
    except zlib.error as problem:
        raise Sealed("it holds a compressed part that is damaged") from problem
    if not machine.eof:
        raise Sealed("it holds a compressed part that is cut short")
    return part, machine.unused_data


def _pdf_streams(body: bytes, budget: _Budget) -> Iterator[bytes]:
    """Those that are compressed; the others were read with the file."""
    for found in _PDF_STREAM.finditer(body):
        if found[1][:1] == b"\x78":
            yield from _inflated(found[1], budget)


def _jpeg_notes(body: bytes) -> Iterator[bytes]:
    """Segments that are for programs or for people, and what follows the picture's end."""
    at = 2
    while at + 4 <= len(body) and body[at] == 0xFF and body[at + 1] != 0xDA:
        length = int.from_bytes(body[at + 2 : at + 4])
        if body[at + 1] not in _JPEG_BARE:
            yield body[at + 4 : at + 2 + length]
        at += 2 + length
    end = body.find(b"\xff\xd9", at)
    after = body[end + 2 :] if end >= 0 else body[at:]
    if after:
        yield after


def _webp_notes(body: bytes) -> Iterator[bytes]:
    at = 12
    while at + 8 <= len(body):
        kind, length = body[at : at + 4], int.from_bytes(body[at + 4 : at + 8], "little")
        if kind not in _WEBP_BARE:
            yield body[at + 8 : at + 8 + length]
        at += 8 + length + length % 2


def _png_notes(body: bytes) -> Iterator[bytes]:
    at = 8
    while at + 8 <= len(body):
        length, kind = struct.unpack(">I4s", body[at : at + 8])
        if kind not in _PNG_BARE:
            note = body[at + 8 : at + 8 + length]
            yield note
            if kind in _PNG_PACKED:
                yield from _png_unpacked(note, _PNG_PACKED[kind])
        at += 12 + length
        if kind == b"IEND" and body[at:]:
            yield body[at:]
            return


def _png_unpacked(note: bytes, between: int) -> Iterator[bytes]:
    """The compressed text of a note: it begins with the mark of zlib, a few bytes behind the keyword."""
    start = note.find(b"\x78", note.find(b"\0") + between)
    if start >= 0:
        yield from _inflated(note[start:], _Budget())


def _tags_apart(body: bytes) -> bytes:
    """The text between tags, then the tags, each once: so a word in bold does not part its sentence."""
    if b"<" not in body:
        return body
    parts = _TAG.split(body)
    tags = sorted(set(parts[1::2]))
    return b" ".join((*parts[::2], *tags))


def _without_entities(body: bytes) -> bytes:
    if b"&" not in body:
        return body
    opened = unescape(body.decode("utf-8", "surrogateescape"))
    return _tags_apart(opened.encode("utf-8", "surrogateescape" if opened.isascii() else "replace"))


def _without_json(body: bytes) -> bytes:
    return _JSON_ESCAPE.sub(_json_letter, body) if b"\\" in body else body


def _json_letter(found: re.Match[bytes]) -> bytes:
    return chr(int(found[1], 16)).encode("utf-8", "replace") if found[1] else b" "


def _without_percent(body: bytes) -> bytes:
    return unquote_to_bytes(body) if _PERCENT.search(body) else body
