"""Numbered copies of a finished card: a name and a number in the margin of each page and in the metadata.

The mark deters and does not prevent: whoever wants to can cut it off. It is drawn over nothing that the card
prints, carries its own font, and is an artifact, so that a copy of a card that keeps PDF/UA-1 (ISO 14289-1)
keeps it too.
"""

import secrets
from dataclasses import dataclass
from enum import Enum, auto
from io import BytesIO
from xml.sax.saxutils import escape

import pikepdf
from pikepdf import Dictionary, Encryption, Permissions, String

from sitegen.press.ink import ink_of
from sitegen.press.mark_face import EM, MarkFace
from sitegen.press.mark_font import MarkFont
from sitegen.press.mark_place import SIZE, SMALLEST, MarkPlace, mark_place

FONT = "/CopyMark"
"""The font's name among a page's resources."""
NUMBER, HOLDER = "CopyNumber", "CopyFor"
"""Keys of the document information (ISO 32000-1, 14.3.3), which XMP repeats in the namespace pdfx."""
_UNREADABLE = (pikepdf.PdfError, AttributeError, LookupError, SyntaxError, TypeError, ValueError)
"""What a PDF raises whose parts are not what they should be; lxml's errors of XML are SyntaxErrors."""
_NUMBER_HERE, _HOLDER_HERE = "copy-number-stands-here", "name-of-copy-stands-here"


class Unfit(Enum):
    """Why a file cannot be stamped."""

    NOT_PDF = auto()
    ENCRYPTED = auto()
    STAMPED = auto()
    NO_MARGIN = auto()


class CardUnfit(Exception):
    """A file that is no card to be stamped. page: where it shows, from 1; 0 where it is the whole file."""

    def __init__(self, why: Unfit, page: int = 0) -> None:
        super().__init__(why, page)
        self.why = why
        self.page = page


class MarkTooLong(Exception):
    """A name that does not fit into the margin of a page, however small it may be set."""


@dataclass(frozen=True)
class Lock:
    """AES-256: anyone opens the copy, no one may change it or take text out of it but to read it aloud.

    printing: whether it may be printed.
    """

    printing: bool


def mark_text(number: int, name: str) -> str:
    """What stands in the margin."""
    return f"Copy {number} for {name}"


class CardStamp:
    """One card, opened once for all of its copies.

    card: a PDF. Raises CardUnfit.
    """

    def __init__(self, card: bytes, face: MarkFace) -> None:
        self._face = face
        self._pdf = _opened(card)
        try:
            self._font = MarkFont(self._pdf, face)
            self._marks = [self._laid(page, number) for number, page in enumerate(self._pdf.pages, start=1)]
            self._xmp = _xmp_to_fill(self._pdf)
        except _UNREADABLE as problem:
            raise CardUnfit(Unfit.NOT_PDF) from problem
        self._longest = min(mark.place.longest for mark in self._marks)

    def copy(self, number: int, name: str, lock: Lock | None = None) -> bytes:
        """A copy as a PDF. The same arguments give the same bytes, but with a lock: its keys are random.

        name: of characters that the face can set. Raises MarkTooLong.
        """
        text = mark_text(number, name)
        glyphs = self._face.glyphs(text)
        size = self._size(sum(map(self._face.advance, glyphs)) / EM)
        codes = self._font.carry(text, glyphs)
        for mark in self._marks:
            mark.stream.write(mark.before + mark.place.drawn(codes, size, FONT))
        self._tell(number, name)
        return self._written(lock)

    def _laid(self, page: pikepdf.Page, number: int) -> "_Mark":
        """Make room for a mark behind all that a page draws, in a graphics state of its own."""
        ink = ink_of(page)
        place = mark_place(page, ink, self._face)
        if place is None:
            raise CardUnfit(Unfit.NO_MARGIN, number)
        stream = self._pdf.make_stream(b"")
        page.contents_add(self._pdf.make_stream(b"q\n"), prepend=True)
        page.contents_add(stream)
        resources = page.resources
        page.obj.Resources = resources
        fonts = resources.get("/Font", Dictionary())
        fonts[FONT] = self._font.font
        resources.Font = fonts
        return _Mark(stream, b"Q\n" * (1 + ink.open_states), place)

    def _size(self, length: float) -> float:
        """Of type, for a line that is so long at a size of 1."""
        size = min(SIZE, self._longest / length)
        if size < SMALLEST:
            raise MarkTooLong
        return size

    def _tell(self, number: int, name: str) -> None:
        """In the document information and in XMP."""
        self._pdf.docinfo[f"/{NUMBER}"] = String(str(number))
        self._pdf.docinfo[f"/{HOLDER}"] = String(name)
        filled = self._xmp.replace(_NUMBER_HERE, str(number)).replace(_HOLDER_HERE, escape(name))
        self._pdf.Root.Metadata.write(filled.encode("utf-8"))

    def _written(self, lock: Lock | None) -> bytes:
        out = BytesIO()
        if lock is None:
            self._pdf.save(out, fix_metadata_version=False, deterministic_id=True)
        else:
            self._pdf.save(out, fix_metadata_version=False, encryption=_encryption(lock))
        return out.getvalue()


@dataclass(frozen=True)
class _Mark:
    """A page's mark. before: what closes the page's own graphics states."""

    stream: pikepdf.Stream
    before: bytes
    place: MarkPlace


def _opened(card: bytes) -> pikepdf.Pdf:
    try:
        pdf = pikepdf.open(BytesIO(card), attempt_recovery=False)
    except pikepdf.PasswordError as problem:
        raise CardUnfit(Unfit.ENCRYPTED) from problem
    except pikepdf.PdfError as problem:
        raise CardUnfit(Unfit.NOT_PDF) from problem
    if pdf.is_encrypted:
        raise CardUnfit(Unfit.ENCRYPTED)
    if not pdf.pages:
        raise CardUnfit(Unfit.NOT_PDF)
    return pdf


def _xmp_to_fill(pdf: pikepdf.Pdf) -> str:
    """The card's own XMP (ISO 16684-1) with two places to be filled in. Raises CardUnfit for a copy."""
    with pdf.open_metadata(set_pikepdf_as_editor=False, update_docinfo=False, strict=True) as xmp:
        if f"/{NUMBER}" in pdf.docinfo or f"pdfx:{NUMBER}" in xmp:
            raise CardUnfit(Unfit.STAMPED)
        xmp[f"pdfx:{NUMBER}"] = _NUMBER_HERE
        xmp[f"pdfx:{HOLDER}"] = _HOLDER_HERE
    return pdf.Root.Metadata.read_bytes().decode("utf-8")


def _encryption(lock: Lock) -> Encryption:
    """ISO 32000-2, 7.6: revision 6, which is AES-256, opened without a password.

    The owner's password is random and told to nobody: the card itself is there to be changed.
    """
    allowed = Permissions(
        accessibility=True,
        extract=False,
        modify_annotation=False,
        modify_assembly=False,
        modify_form=False,
        modify_other=False,
        print_lowres=lock.printing,
        print_highres=lock.printing,
    )
    return Encryption(owner=secrets.token_urlsafe(32), user="", R=6, allow=allowed)
