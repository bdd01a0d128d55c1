"""The bytes of a notes file -> text, whatever encoding an old program saved them in."""

import re

from sitegen import limits
from sitegen.faults import Fault, Place
from sitegen.source.note_codes import NOT_NOTES, TOO_MANY_LINES

_MOST_UNSEEN = 0.05
"""The share of characters that no text has, above which a file is taken for something else."""

_MARKED = ((b"\xff\xfe", "utf-16-le"), (b"\xfe\xff", "utf-16-be"))
_CONTROL = re.compile(r"[\x00-\x08\x0e-\x1a\x1c-\x1f\x7f\ufffd]")


def decoded(body: bytes, shown: str) -> tuple[str | None, tuple[Fault, ...]]:
    """The text, its line ends made '\\n'; None with one fault where there is none to be had.

    UTF-16 is told by its mark or by its zeros, UTF-8 by its form; what is neither is read as Windows-1252,
    in which every byte is a letter.
    """
    text = _text(body)
    if text is None or len(_CONTROL.findall(text)) > _MOST_UNSEEN * len(text):
        return None, (NOT_NOTES.fault(Place(shown, 1, 1, 1), "this is no plain text"),)
    text = re.sub(r"\r\n?|[\x0b\x0c\x85\u2028\u2029]", "\n", _CONTROL.sub(" ", text).replace("\x1b", " "))
    lines = text.count("\n") + 1
    if lines > limits.NOTE_LINES:
        return None, (TOO_MANY_LINES.fault(Place(shown), f"it has {lines:,} lines"),)
    return text.encode("utf-8", "replace").decode("utf-8"), ()


def _text(body: bytes) -> str | None:
    for mark, encoding in _MARKED:
        if body.startswith(mark):
            return body[2:].decode(encoding, "replace")
    if b"\0" in body:
        return _without_mark(body)
    try:
        return body.decode("utf-8-sig")
    except UnicodeDecodeError:
        return body.decode("cp1252", "replace")


def _without_mark(body: bytes) -> str | None:
    """UTF-16 whose mark was lost: Latin letters have a zero at every other byte. None for anything else."""
    sample = body[:4000]
    for encoding, first in (("utf-16-le", 1), ("utf-16-be", 0)):
        zeros = sample[first::2].count(0)
        others = sample[1 - first :: 2].count(0)
        if zeros > len(sample) // 2 * 0.7 and not others:
            return body.decode(encoding, "replace")
    return None
