"""Where a page has ink, for content whose places are written down here.

Operators: ISO 32000-1, 8.4 to 8.10 and 9.3 to 9.4.
"""

from io import BytesIO

import pikepdf
import pytest

from sitegen.press.ink import Ink, ink_of
from tests.press.plain_pdfs import A5, line_of_text, plain_pdf

CASES = {
    "filled box": ("10 20 30 40 re f", (10, 20, 40, 60)),
    "box with a width below nought": ("40 60 -30 -40 re f", (10, 20, 40, 60)),
    "path": ("10 20 m 40 20 l 40 60 l h f", (10, 20, 40, 60)),
    "stroke, half of it beyond its path": ("4 w 10 20 m 40 20 l S", (8, 18, 42, 22)),
    "path that is thrown away": ("10 20 30 40 re n 1 1 1 1 re f", (1, 1, 2, 2)),
    "scaled and moved": ("2 0 0 3 5 7 cm 10 20 30 40 re f", (25, 67, 85, 187)),
    "upside down, as printing engines begin": ("1 0 0 -1 0 595 cm 10 20 30 40 re f", (10, 535, 40, 575)),
    "matrix taken back": ("q 2 0 0 2 0 0 cm Q 10 20 30 40 re f", (10, 20, 40, 60)),
    "clipped": ("15 0 10 30 re W n 10 20 30 40 re f", (15, 20, 25, 30)),
    "clip taken back": ("q 15 0 10 30 re W n Q 10 20 30 40 re f", (10, 20, 40, 60)),
    "clipped away": ("0 0 5 5 re W n 10 20 30 40 re f", None),
    "tone of the paper": (f"0 0 {A5[0]} {A5[1]} re f 10 20 30 40 re f", (10, 20, 40, 60)),
    "photo": ("30 0 0 40 10 20 cm /Photo Do", (10, 20, 40, 60)),
    "photo over the whole page, which is no tone": (
        f"{A5[0]} 0 0 {A5[1]} 0 0 cm /Photo Do",
        (0, 0, *A5),
    ),
    "form, cut to its box": ("2 0 0 2 10 20 cm /Frame Do", (10, 20, 210, 120)),
    "unknown thing": ("/Nothing Do 10 20 30 40 re f", (10, 20, 40, 60)),
    "text": (line_of_text(100, 200, 5), (100, 198, 130, 208)),
    "text of two bytes a code": ("BT /Wide 10 Tf 100 200 Td <00010002> Tj ET", (100, 198, 112.5, 208)),
    "text of a range of codes": ("BT /Wide 10 Tf 100 200 Td <00070004> Tj ET", (100, 198, 107.5, 208)),
    "text moved back": ("BT /Mono 10 Tf 100 200 Td [(n) 2000 (n)] TJ ET", (86, 198, 106, 208)),
    "text with spaces set": ("BT /Mono 10 Tf 1 Tc 2 Tw 100 200 Td (n n) Tj ET", (100, 198, 123, 208)),
    "text stretched": ("BT /Mono 10 Tf 200 Tz 100 200 Td (n) Tj ET", (100, 198, 112, 208)),
    "text raised": ("BT /Mono 10 Tf 5 Ts 100 200 Td (n) Tj ET", (100, 203, 106, 213)),
    "text that stands upright": ("BT /Mono 10 Tf 0 1 -1 0 100 200 Tm (nn) Tj ET", (92, 200, 102, 212)),
    "text after text": ("BT /Mono 10 Tf 100 200 Td (nn) Tj (n) Tj ET", (100, 198, 118, 208)),
    "next line": ("BT /Mono 10 Tf 12 TL 100 200 Td (n) Tj T* (nn) Tj ET", (100, 186, 112, 208)),
    "next line in one": ("BT /Mono 10 Tf 12 TL 100 200 Td (n) ' ET", (100, 186, 106, 196)),
    "next line that leads": ("BT /Mono 10 Tf 100 200 TD (n) Tj 0 -9 TD T* (n) Tj ET", (100, 180, 106, 208)),
    "beyond the paper": ("-50 20 100 40 re f", (0, 20, 50, 60)),
    "nothing": ("q Q", None),
}


def ink(content: str) -> Ink:
    with pikepdf.open(BytesIO(plain_pdf(content))) as pdf:
        return ink_of(pdf.pages[0])


@pytest.mark.parametrize("case", CASES)
def test_ink_stands_where_the_operators_put_it(case: str) -> None:
    content, expected = CASES[case]
    box = ink(content).box
    if expected is None:
        assert box is None
    else:
        assert box is not None
        assert (box.llx, box.lly, box.urx, box.ury) == pytest.approx(expected)


def test_states_that_are_never_restored_are_counted() -> None:
    assert ink("q q Q q 10 20 30 40 re f").open_states == 2


def test_a_form_that_draws_itself_comes_to_an_end() -> None:
    with pikepdf.open(BytesIO(plain_pdf("/Frame Do"))) as pdf:
        frame = pdf.pages[0].resources.XObject.Frame
        frame.Resources = pikepdf.Dictionary(XObject=pikepdf.Dictionary(Frame=frame))
        frame.write(b"/Frame Do 0 0 30 20 re f")
        box = ink_of(pdf.pages[0]).box
    assert box is not None
    assert (box.urx, box.ury) == (30, 20)
