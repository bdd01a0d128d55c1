"""Numbered copies of a card: what is drawn, where, and what the file tells."""

import shutil
import subprocess
from io import BytesIO
from itertools import pairwise
from pathlib import Path

import pikepdf
import pytest
from fontTools.ttLib import TTFont

from sitegen.press.ink import ink_of
from sitegen.press.mark_face import MarkFace
from sitegen.press.stamp import CardStamp, CardUnfit, Lock, MarkTooLong, Unfit
from tests.press.plain_pdfs import TIDY, line_of_text, plain_pdf

FACE = MarkFace()
MILLIMETRE = 72 / 25.4
NAMES = (
    "Ada Marrow",
    "Żaneta Łoś-Nguyễn",
    "Ελένη Жанна",
    "O'Brien (Bo) \\ <Ltd> & [Sons] {x}",
    ") Tj ET Q 0 0 999 999 re f",
    "%PDF-1.7 endstream endobj",
    "]]> <x:xmpmeta> &lt; --> <?xpacket",
)


def stamped(*pages: str, number: int = 42, name: str = "Ada Marrow", lock: Lock | None = None) -> bytes:
    return CardStamp(plain_pdf(*pages), FACE).copy(number, name, lock)


def opened(copy: bytes) -> pikepdf.Pdf:
    return pikepdf.open(BytesIO(copy))


def mark_of(page: pikepdf.Page) -> list[pikepdf.ContentStreamInstruction]:
    """The operators from the mark's BDC to its EMC."""
    steps = list(pikepdf.parse_content_stream(page))
    begin = max(at for at, step in enumerate(steps) if str(step.operator) == "BDC")
    assert str(steps[-1].operator) == "EMC"
    return steps[begin:]


@pytest.mark.parametrize("name", NAMES)
def test_the_mark_says_name_and_number_on_every_page_and_nothing_else(name: str, tmp_path: Path) -> None:
    if shutil.which("pdftotext") is None:
        pytest.skip("poppler is not here")
    card = tmp_path / "copy.pdf"
    card.write_bytes(stamped(TIDY, TIDY, number=7, name=name))
    text = subprocess.run(["pdftotext", card, "-"], capture_output=True, check=True).stdout.decode()
    pages = text.split("\f")
    assert len(pages) == 3
    for page in pages[:2]:
        lines = sorted(line for line in page.split("\n") if line)
        assert lines == sorted(["n" * 30, "n" * 10, f"Copy 7 for {name}"])


@pytest.mark.parametrize("name", NAMES)
def test_a_name_brings_no_operator(name: str) -> None:
    with opened(stamped(TIDY, name=name)) as pdf:
        operators = [str(step.operator) for step in mark_of(pdf.pages[0])]
    assert operators == ["BDC", "q", "g", "BT", "Tf", "Tm", "Tj", "ET", "Q", "EMC"]


@pytest.mark.parametrize("name", NAMES)
def test_information_and_xmp_tell_name_and_number(name: str) -> None:
    with opened(stamped(TIDY, name=name)) as pdf, pdf.open_metadata() as xmp:
        assert (pdf.docinfo["/CopyNumber"], pdf.docinfo["/CopyFor"]) == ("42", name)
        assert (xmp["pdfx:CopyNumber"], xmp["pdfx:CopyFor"]) == ("42", name)


def test_the_mark_is_a_pagination_artifact() -> None:
    """ISO 32000-1, 14.8.2.2.2: a watermark is one of the kinds of pagination artifacts."""
    with opened(stamped(TIDY)) as pdf:
        kind, facts = mark_of(pdf.pages[0])[0].operands
        assert kind == pikepdf.Name.Artifact
        assert (facts.Type, facts.Subtype) == (pikepdf.Name.Pagination, pikepdf.Name.Watermark)


@pytest.mark.parametrize(
    ("content", "expected"),
    [
        ("10 20 30 40 re f", "right"),
        ("300 20 115 40 re f", "left"),
        ("20 20 381 40 re f", "right"),
    ],
)
def test_the_mark_stands_in_the_free_margin_and_touches_nothing(content: str, expected: str) -> None:
    with opened(plain_pdf(content)) as card:
        before = ink_of(card.pages[0]).box
    with opened(stamped(content)) as pdf:
        page = pdf.pages[0]
        page.obj.Contents = page.obj.Contents[-1]  # the mark alone
        page.obj.Contents.write(page.obj.Contents.read_bytes().removeprefix(b"Q\n"))
        mark = ink_of(page).box
    assert before is not None
    assert mark is not None
    if expected == "right":
        assert mark.llx >= before.urx + 0.85 * MILLIMETRE
        assert mark.urx <= 420 - 1.5 * MILLIMETRE
    else:
        assert mark.urx <= before.llx - 0.85 * MILLIMETRE
        assert mark.llx >= 1.5 * MILLIMETRE
    assert mark.lly + 0.01 >= 12 * MILLIMETRE
    assert mark.ury <= 595 - 12 * MILLIMETRE


def test_states_that_a_page_leaves_open_do_not_move_the_mark() -> None:
    tidy, untidy = TIDY, "q q 3 0 0 3 50 50 cm " + line_of_text(10, 20, 3)
    boxes = []
    for content in (tidy, untidy):
        with opened(stamped(content)) as pdf:
            boxes.append(ink_of(pdf.pages[0]).box)
    assert boxes[0].urx == pytest.approx(boxes[1].urx)


def test_a_longer_line_is_set_smaller_and_then_refused() -> None:
    card = CardStamp(plain_pdf(TIDY), FACE)
    sizes = []
    for letters in (20, 130, 150, 170):
        with opened(card.copy(1, "n" * letters)) as pdf:
            step = next(step for step in mark_of(pdf.pages[0]) if str(step.operator) == "Tf")
            sizes.append(float(step.operands[1]))
    assert sizes[0] == 6.5
    assert all(more >= less for more, less in pairwise(sizes))
    assert sizes[-1] < sizes[0]
    with pytest.raises(MarkTooLong):
        card.copy(1, "W" * 200)


def test_a_copy_carries_the_glyphs_of_its_own_mark_alone() -> None:
    with opened(stamped(TIDY, name="Bo")) as pdf:
        font = pdf.pages[0].resources.Font["/CopyMark"]
        program = TTFont(BytesIO(font.DescendantFonts[0].FontDescriptor.FontFile2.read_bytes()))
        letters = set("Copy 42 for Bo")
        assert program["maxp"].numGlyphs == 1 + len(letters)
        assert bytes(font.ToUnicode.read_bytes()).count(b"> <") - 1 == len(letters)
        assert str(font.BaseFont).endswith("+CopyMark")
        widths = {int(code): int(width[0]) for code, width in pairs(font.DescendantFonts[0].W)}
        advances = [program["hmtx"][name][0] for name in program.getGlyphOrder()]
        assert all(advances[code] == width for code, width in widths.items())


def pairs(array: pikepdf.Object) -> list[tuple[pikepdf.Object, pikepdf.Object]]:
    parts = list(array)
    return list(zip(parts[::2], parts[1::2], strict=True))


def test_a_copy_depends_on_nothing_that_was_copied_before() -> None:
    body = plain_pdf(TIDY, TIDY)
    used = CardStamp(body, FACE)
    used.copy(1, "Żaneta Łoś")
    used.copy(2, "Bo", Lock(printing=True))
    assert used.copy(3, "Ada Marrow") == CardStamp(body, MarkFace()).copy(3, "Ada Marrow")


@pytest.mark.parametrize("printing", [True, False])
def test_a_locked_copy_is_aes_256_and_lets_assistive_technology_read(printing: bool) -> None:
    """ISO 32000-2, 7.6.4.2: revision 6; table 22 names what is allowed."""
    with opened(stamped(TIDY, lock=Lock(printing))) as pdf:
        assert pdf.encryption.R == 6
        assert pdf.encryption.stream_method == pikepdf.models.EncryptionMethod.aesv3
        allow = pdf.allow
        assert (allow.print_lowres, allow.print_highres) == (printing, printing)
        changes = (allow.modify_other, allow.modify_annotation, allow.modify_form, allow.modify_assembly)
        assert (allow.accessibility, allow.extract, *changes) == (True, False, False, False, False, False)
        assert not pdf.owner_password_matched


def unfit(body: bytes) -> CardUnfit:
    with pytest.raises(CardUnfit) as found:
        CardStamp(body, FACE)
    return found.value


def saved(pdf: pikepdf.Pdf, encryption: pikepdf.Encryption | None = None) -> bytes:
    out = BytesIO()
    pdf.save(out, encryption=encryption, fix_metadata_version=False, preserve_pdfa=False)
    return out.getvalue()


def test_what_is_no_card_is_refused() -> None:
    card = plain_pdf(TIDY)
    assert unfit(b"").why is Unfit.NOT_PDF
    assert unfit(b"Flour 200 g").why is Unfit.NOT_PDF
    assert unfit(card[: len(card) // 2]).why is Unfit.NOT_PDF
    assert unfit(saved(pikepdf.new())).why is Unfit.NOT_PDF
    for user in ("", "secret"):
        locked = saved(opened(card), pikepdf.Encryption(owner="owner", user=user))
        assert unfit(locked).why is Unfit.ENCRYPTED


@pytest.mark.parametrize("content", ["10 20 re", "BT /Mono Tf", "/Frame Do 1 2 3 cm"])
def test_a_page_whose_content_is_broken_is_refused(content: str) -> None:
    assert unfit(plain_pdf(content)).why is Unfit.NOT_PDF


def test_metadata_that_are_no_xmp_are_refused_and_missing_ones_are_made(
    capfd: pytest.CaptureFixture[str],
) -> None:
    with opened(plain_pdf(TIDY)) as pdf:
        pdf.Root.Metadata = pdf.make_stream(b"<broken")
        assert unfit(saved(pdf)).why is Unfit.NOT_PDF
        assert "Traceback" not in capfd.readouterr().err
        del pdf.Root.Metadata
        with opened(CardStamp(saved(pdf), FACE).copy(42, "Ada Marrow")) as copy:
            assert b"Ada Marrow" in copy.Root.Metadata.read_bytes()


def test_resources_that_pages_inherit_keep_what_they_hold() -> None:
    """ISO 32000-1, 7.7.3.4."""
    with opened(plain_pdf(TIDY, TIDY)) as pdf:
        pdf.Root.Pages.Resources = pdf.pages[0].obj.Resources
        for page in pdf.pages:
            del page.obj["/Resources"]
        with opened(CardStamp(saved(pdf), FACE).copy(42, "Ada Marrow")) as copy:
            assert all({"/Mono", "/CopyMark"} <= set(page.resources.Font.keys()) for page in copy.pages)


def test_a_copy_is_not_copied_whichever_metadata_tells_it() -> None:
    copy = stamped(TIDY)
    assert unfit(copy).why is Unfit.STAMPED
    with opened(copy) as pdf:
        del pdf.docinfo["/CopyNumber"]
        assert unfit(saved(pdf)).why is Unfit.STAMPED
    with opened(copy) as pdf:
        del pdf.Root.Metadata
        assert unfit(saved(pdf)).why is Unfit.STAMPED


def test_a_page_without_a_side_margin_is_named() -> None:
    found = unfit(plain_pdf(TIDY, "5 20 410 40 re f"))
    assert (found.why, found.page) == (Unfit.NO_MARGIN, 2)


def test_the_face_tells_what_it_lacks() -> None:
    assert FACE.lacking("Żaneta Łoś, Ελένη, Жанна, Nguyễn") == ""
    assert FACE.lacking("名無し & 名") == "名無し"
    assert FACE.lacking("q\u0302") == "\u0302"
    assert FACE.lacking("a\nb\u200e") == "\n\u200e"
