"""Writing out beforehand saves time and changes nothing."""

from collections.abc import Callable

import pydyf
from weasyprint import HTML

from sitegen.press.written_once import write_out

PAGE = '<html lang="en"><title>Plum jam</title><h1>Plum jam</h1><p>Stone <a href="https://jam.example/">plums</a>.'
IDENTIFIER = b"0123456789abcdef0123456789abcdef"


def printed(finisher: Callable[[object, pydyf.PDF], None] | None) -> bytes:
    return HTML(string=PAGE).write_pdf(pdf_variant="pdf/ua-1", pdf_identifier=IDENTIFIER, finisher=finisher)


def test_the_file_has_the_same_bytes() -> None:
    assert printed(lambda _, pdf: write_out(pdf)) == printed(None)


def test_no_object_is_put_into_words_again() -> None:
    seen: list[bytes] = []

    class Told(pydyf.String):
        @property
        def data(self) -> bytes:
            seen.append(b"told")
            return super().data

    def told(_: object, pdf: pydyf.PDF) -> None:
        pdf.add_object(Told("Plum jam"))
        write_out(pdf)

    printed(told)
    assert len(seen) == 1
