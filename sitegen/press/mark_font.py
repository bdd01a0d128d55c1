"""The font of a mark inside a PDF (ISO 32000-1, 9.7): a composite font, its cut face, and the way to text."""

from collections.abc import Sequence
from hashlib import sha256

import pikepdf
from pikepdf import Array, Dictionary, Name

from sitegen.press.mark_face import MarkFace

_SYMBOLIC = 4
"""Flags of a font descriptor (table 123): the glyphs are reached by number."""
_STEM = 80
"""StemV, which a reader needs only if it has to do without the face."""
_TO_UNICODE = """\
/CIDInit /ProcSet findresource begin
12 dict begin
begincmap
/CIDSystemInfo <</Registry (Adobe) /Ordering (UCS) /Supplement 0>> def
/CMapName /Adobe-Identity-UCS def
/CMapType 2 def
1 begincodespacerange
<0000> <ffff>
endcodespacerange
{ranges}endcmap
CMapName currentdict /CMap defineresource pop
end
end
"""
_MOST_IN_A_RANGE = 100
"""Rows of one `bfchar` (9.10.3, as in Adobe's technical note 5411)."""


class MarkFont:
    """One font object in one PDF, which is given another cut of the face for each copy."""

    def __init__(self, pdf: pikepdf.Pdf, face: MarkFace) -> None:
        self._face = face
        self._program = pdf.make_stream(b"")
        self._to_unicode = pdf.make_stream(b"")
        self._facts = pdf.make_indirect(
            Dictionary(
                Type=Name.FontDescriptor,
                Flags=_SYMBOLIC,
                FontBBox=Array(face.box),
                ItalicAngle=0,
                Ascent=face.ascent,
                Descent=face.descent,
                CapHeight=face.ascent,
                StemV=_STEM,
                FontFile2=self._program,
            )
        )
        self._within = pdf.make_indirect(
            Dictionary(
                Type=Name.Font,
                Subtype=Name.CIDFontType2,
                CIDSystemInfo=Dictionary(Registry=b"Adobe", Ordering=b"Identity", Supplement=0),
                CIDToGIDMap=Name.Identity,
                FontDescriptor=self._facts,
            )
        )
        self.font = pdf.make_indirect(
            Dictionary(
                Type=Name.Font,
                Subtype=Name.Type0,
                Encoding=Name("/Identity-H"),
                DescendantFonts=Array([self._within]),
                ToUnicode=self._to_unicode,
            )
        )

    def carry(self, text: str, glyphs: Sequence[int]) -> str:
        """Hold the part of the face that a text needs, and no more.

        glyphs: of the whole face, one a character. Returns the text's codes as hexadecimal digits.
        """
        cut = self._face.cut(set(glyphs))
        self._program.write(cut.program)
        self._program.Length1 = len(cut.program)
        name = Name(f"/{_tag(cut.program)}+CopyMark")
        self._facts.FontName = self._within.BaseFont = self.font.BaseFont = name
        advances = {cut.numbers[glyph]: self._face.advance(glyph) for glyph in glyphs}
        self._within.W = Array(part for code in sorted(advances) for part in (code, Array([advances[code]])))
        codes = [cut.numbers[glyph] for glyph in glyphs]
        self._to_unicode.write(_to_unicode(dict(zip(codes, text, strict=True))))
        return "".join(f"{code:04x}" for code in codes)


def _tag(program: bytes) -> str:
    """Six capitals that tell one subset from another (9.6.4)."""
    return "".join(chr(ord("A") + byte % 26) for byte in sha256(program).digest()[:6])


def _to_unicode(letters: dict[int, str]) -> bytes:
    rows = [
        f"<{code:04x}> <{letter.encode('utf-16-be').hex()}>\n" for code, letter in sorted(letters.items())
    ]
    parts = [rows[at : at + _MOST_IN_A_RANGE] for at in range(0, len(rows), _MOST_IN_A_RANGE)]
    ranges = "".join(f"{len(part)} beginbfchar\n{''.join(part)}endbfchar\n" for part in parts)
    return _TO_UNICODE.format(ranges=ranges).encode("ascii")
