"""A text file from disk: bounded in size, UTF-8, without characters that cannot be seen."""

import re
from pathlib import Path

from sitegen import limits
from sitegen.faults import Fault, FaultCode, Place, Severity
from sitegen.opening import LeadsOutside, TooManyBytes, read_within

NO_FILE = FaultCode(
    "no-file",
    Severity.ERROR,
    "A file that the school needs, or that a recipe names, is not there.",
    "Put the file in its place, or mend its name where it is written.",
    file="",
)
UNREADABLE = FaultCode(
    "unreadable-file",
    Severity.ERROR,
    "The machine does not let us read the file: it is a folder or a device, or its rights forbid it.",
    "Give read rights to the file, or put a file where the folder is.",
    file="",
)
TOO_LARGE = FaultCode(
    "file-too-large",
    Severity.ERROR,
    "A text file of more than 1 MB is no recipe: most likely something else was saved under its name.",
    "Look at what the file holds, and split it if it truly is text.",
    file="",
)
OUTSIDE = FaultCode(
    "outside-folder",
    Severity.ERROR,
    "The name of a file leads out of the folder of its recipe, by '..', '/' or a link.",
    "Put the file beside the recipe and write its name alone.",
    good="file: whisk.jpg",
    bad="file: ../whisk.jpg",
)
LONG_LINE = FaultCode(
    "line-too-long",
    Severity.ERROR,
    f"A line has more than {limits.LINE_CHARACTERS:,} characters, more than any text may have.",
    "Break the line; look at what was pasted into it.",
    file="",
)
NOT_TEXT = FaultCode(
    "not-text",
    Severity.ERROR,
    "The file holds bytes that no text has: a picture or a document was saved under this name.",
    "Save the recipe as plain text (UTF-8).",
    file="",
)
NOT_UTF8 = FaultCode(
    "not-utf-8",
    Severity.ERROR,
    "The file is not encoded as UTF-8, so that letters such as é or ½ cannot be told.",
    "Save the file again with the encoding UTF-8.",
    file="",
)
ODD_CHARACTER = FaultCode(
    "odd-character",
    Severity.ERROR,
    "A character that cannot be seen, or that turns the direction of the text, stands in the file.",
    "Delete the character; it often comes along when text is pasted from a document.",
    good="summary: A buttermilk crumb",
    bad="summary: A\u200e buttermilk\u2028crumb",
)

CODES = (NO_FILE, UNREADABLE, TOO_LARGE, OUTSIDE, LONG_LINE, NOT_TEXT, NOT_UTF8, ODD_CHARACTER)

# Control characters, line ends that editors don't show as such, marks of direction, and halves of
# surrogate pairs. Tab, line feed and carriage return stay; reader.py speaks of tabs.
_ODD = re.compile(
    r"[\x01-\x08\x0b\x0c\x0e-\x1f\x7f-\x9f\u200e\u200f\u2028-\u202e\u2066-\u2069\ufeff\ud800-\udfff]"
)


def read_text(
    path: Path, shown: str, tree: Path | None = None, most_bytes: int = limits.TEXT_BYTES
) -> tuple[str | None, tuple[Fault, ...]]:
    """The text of a file, its line ends made '\\n'; None with one fault where there is no text to be had.

    shown: the path as the baker is told it. tree: the folder that no link may lead out of, its own without.
    """
    try:
        body = read_within(tree or path.parent, path, most_bytes)
    except TooManyBytes:
        sentence = f"the file is larger than {most_bytes // 1_000_000} MB"
        return None, (TOO_LARGE.fault(Place(shown), sentence),)
    except LeadsOutside:
        return None, (OUTSIDE.fault(Place(shown), f"'{shown}' is a link out of its folder"),)
    except (FileNotFoundError, NotADirectoryError):
        return None, (NO_FILE.fault(Place(shown), f"there is no file '{shown}'"),)
    except OSError as problem:
        reason = problem.strerror or "it cannot be opened"
        return None, (UNREADABLE.fault(Place(shown), f"the file cannot be read: {reason}"),)
    return text_of(body, shown)


def text_of(body: bytes, shown: str) -> tuple[str | None, tuple[Fault, ...]]:
    """The bytes of a file as text; None with one fault where they are none."""
    if b"\0" in body:
        line = body.count(b"\n", 0, body.index(b"\0")) + 1
        return None, (NOT_TEXT.fault(Place(shown, line, 1, 1), "the file is not plain text"),)
    try:
        text = body.decode("utf-8-sig")
    except UnicodeDecodeError as problem:
        line = body.count(b"\n", 0, problem.start) + 1
        sentence = f"a letter on line {line} is not written in UTF-8"
        return None, (NOT_UTF8.fault(Place(shown, line, 1, 1), sentence),)
    text = text.replace("\r\n", "\n").replace("\r", "\n")
    return (None, (too_long,)) if (too_long := _long_line(text, shown)) else (text, ())


def _long_line(text: str, shown: str) -> Fault | None:
    for number, line in enumerate(text.split("\n"), start=1):
        if len(line) > limits.LINE_CHARACTERS:
            return LONG_LINE.fault(Place(shown, number, 1, 1), f"this line has {len(line):,} characters")
    return None


def odd_characters(text: str, shown: str) -> tuple[Fault, ...]:
    """A fault for each character that cannot be seen, five at most."""
    faults = []
    for number, line in enumerate(text.split("\n"), start=1):
        for match in _ODD.finditer(line):
            name = f"U+{ord(match[0]):04X}"
            place = Place(shown, number, match.start() + 1, 1)
            faults.append(ODD_CHARACTER.fault(place, f"a hidden character ({name}) stands here"))
            if len(faults) == 5:
                return tuple(faults)
    return tuple(faults)


def hidden_in(value: str) -> str:
    """'U+202E' of the first hidden character of a value, '' for none; an escape of YAML can write any."""
    found = re.search(r"[\0\r]", value) or _ODD.search(value)
    return f"U+{ord(found[0]):04X}" if found else ""


def without_odd_characters(text: str) -> str:
    """The text with each hidden character made a space, so that columns stay."""
    return _ODD.sub(" ", text)
