"""PDFs written operator by operator, of which a test knows where everything stands."""

from io import BytesIO

import pikepdf
from pikepdf import Array, Dictionary, Name

A5 = (420, 595)
"""Width and height in points."""


def plain_pdf(*pages: str, size: tuple[float, float] = A5) -> bytes:
    """A PDF with these content streams.

    Fonts: /Mono, whose letters are all 600 thousandths wide and reach from -200 to 800. /Wide, with codes of
    two bytes, of which 1 is 1000 wide, 5 to 9 are 500, and all others 250. XObjects: /Photo, and the form
    /Frame, 100 by 50, with a black field that is larger than itself.
    """
    pdf = pikepdf.new()
    reach = Dictionary(Ascent=800, Descent=-200)
    mono = Dictionary(
        Type=Name.Font,
        Subtype=Name.TrueType,
        BaseFont=Name.Mono,
        FirstChar=0,
        Widths=Array([600] * 256),
        FontDescriptor=pdf.make_indirect(reach),
    )
    within = Dictionary(
        Subtype=Name.CIDFontType2,
        DW=250,
        W=Array([1, Array([1000]), 5, 9, 500]),
        FontDescriptor=pdf.make_indirect(reach),
    )
    wide = Dictionary(Type=Name.Font, Subtype=Name.Type0, DescendantFonts=Array([pdf.make_indirect(within)]))
    photo = pdf.make_stream(b"\0", Subtype=Name.Image, Width=1, Height=1, BitsPerComponent=8)
    frame = pdf.make_stream(b"-500 -500 2000 2000 re f", Subtype=Name.Form, BBox=Array([0, 0, 100, 50]))
    resources = pdf.make_indirect(
        Dictionary(Font=Dictionary(Mono=mono, Wide=wide), XObject=Dictionary(Photo=photo, Frame=frame))
    )
    for content in pages:
        page = pdf.add_blank_page(page_size=size)
        page.obj.Resources = resources
        page.obj.Contents = pdf.make_stream(content.encode("ascii"))
    out = BytesIO()
    pdf.save(out, deterministic_id=True)
    return out.getvalue()


def line_of_text(left: float, up: float, letters: int, size: float = 10) -> str:
    """Operators for a line of /Mono: it is 6/10 of the size wide for each letter."""
    return f"BT /Mono {size} Tf {left} {up} Td ({'n' * letters}) Tj ET\n"


TIDY = line_of_text(60, 300, 30) + line_of_text(60, 60, 10)
"""A page whose ink stands from 60 to 240 across and from 58 to 308 up."""
