"""Text as a row of bare words, the same however a page, a feed, a script or a file name writes it.

Letters are made small; figures, marks, quotes and every kind of space become one space. Figures go, so that a
sentence is one row of words in each batch. Both sides of the leak check are brought to this form.
"""

import re
from collections.abc import Iterator
from html import unescape

_SMALL = bytes(
    byte | 0x20 if 65 <= byte <= 90 else byte if 97 <= byte <= 122 or byte >= 0x80 else 0x20
    for byte in range(256)
)
_MARKS = re.compile(rb"\xc2[\x80-\xbf]|\xc3[\x97\xb7]|\xe2[\x80-\x8f][\x80-\xbf]|\xef\xbb\xbf")
"""UTF-8 of U+0080 to U+00BF, the signs for times and for division, U+2000 to U+23FF, the byte order mark."""
_UNSEEN = re.compile(rb"\xc2\xad|\xe2\x80[\x8b-\x8d]|\xe2\x81\xa0")
"""Soft hyphen, zero-width space and joiners, word joiner: they part no word."""
_LINK_TARGET = re.compile(r"\]\([^)\s]*\)")
_TAG = re.compile(r"</?[a-zA-Z][^>]*>")
_ENDS = re.compile(r"[.!?:;]+(?=\s|$)|\n")
LEAST_WORDS, LEAST_LETTERS = 4, 18
"""Shorter sentences ('Bake until golden.') say nothing that is anybody's own."""
_CHUNK_WORDS = 6


def bare(body: bytes) -> bytes:
    """The words of UTF-8 text, with a space before the first and after the last; other bytes are letters."""
    if not body.isascii():
        body = _MARKS.sub(b" ", _UNSEEN.sub(b"", body))
    return b" %b " % b" ".join(body.translate(_SMALL).split())


def bare_text(text: str) -> str:
    """The same of a text in which a baker may have written Markdown: its words as a page shows them."""
    shown = _TAG.sub(" ", _LINK_TARGET.sub("]", unescape(text)))
    return bare(shown.encode("utf-8", "replace")).decode("utf-8", "replace")


def phrases(text: str) -> Iterator[str]:
    """What a text is known by: its sentences, long ones in pieces of 6 to 11 words.

    So 21 words in a row that are taken out of it hold one whole piece, wherever they are cut.
    """
    for sentence in _ENDS.split(text):
        words = bare_text(sentence).split()
        if len(words) >= LEAST_WORDS and sum(map(len, words)) >= LEAST_LETTERS:
            yield from _pieces(words)


def _pieces(words: list[str]) -> Iterator[str]:
    pieces = max(1, len(words) // _CHUNK_WORDS)
    for number in range(pieces):
        piece = words[number * len(words) // pieces : (number + 1) * len(words) // pieces]
        yield f" {' '.join(piece)} "
