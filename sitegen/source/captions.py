"""The captions of a film: there, beside the recipe, and read as WebVTT or SubRip (SRT) -> cues."""

import re
from collections.abc import Iterator
from html import unescape
from io import StringIO
from pathlib import Path

import webvtt
from webvtt.errors import MalformedCaptionError, MalformedFileError
from webvtt.models import Timestamp

from sitegen import limits
from sitegen.faults import Fault, FaultCode, Place, Severity
from sitegen.film.values import Cue
from sitegen.source.photos import Folder, beside
from sitegen.source.textfile import read_text

NO_CAPTIONS = FaultCode(
    "captions-not-found",
    Severity.ERROR,
    "The captions that the recipe names do not lie beside it.",
    "Put the WebVTT or SRT file beside the recipe, or mend its name.",
    good="captions: captions.vtt",
    bad="captions: caption.vtt",
)
NOT_CAPTIONS = FaultCode(
    "not-captions",
    Severity.ADVICE,
    "The captions are no WebVTT or SRT file that can be read, so that nothing follows from the film.",
    "Export the captions as WebVTT.",
    good="captions: captions.vtt",
    bad="captions: whisk.jpg",
)

CODES = (NO_CAPTIONS, NOT_CAPTIONS)

_ARROW = "-->"
_SRT_TIME = re.compile(r"^\s*\d{1,2}:\d{1,2}:\d{1,2}[,.]\d{1,3}\s*-->", re.MULTILINE)
_STAMP = re.compile(r"<(\d{1,10}:\d{1,2}:\d{1,2}\.\d{3}|\d{1,2}:\d{1,2}\.\d{3})>")
_TAG = re.compile(r"<[^<>]{0,200}>|\{\\[^{}]{0,80}\}")
_BLANKS = re.compile(r"\s+")


class NoCaptions(Exception):
    """A text is no captions. reason: a sentence that goes on behind the file's name."""

    def __init__(self, reason: str) -> None:
        super().__init__(reason)
        self.reason = reason


def captions_named(folder: Folder, name: str, at: Place) -> tuple[str, tuple[Fault, ...]]:
    """The captions, a path relative to the folder that holds `content/`; '' with a fault for none."""
    path, faults = beside(folder, name, at, NO_CAPTIONS)
    return ("", faults) if path is None else (folder.shown_file(name), ())


def read_captions(path: Path, shown: str, tree: Path, at: Place) -> tuple[tuple[Cue, ...], tuple[Fault, ...]]:
    """The cues of a file; none of what cannot be read, and the one reason why, as advice.

    shown: the path as the baker is told it. tree: the folder that no link may lead out of. at: where the
    file is named, or the file itself.
    """
    text, faults = read_text(path, shown, tree, limits.CAPTION_BYTES)
    if text is None:
        reason = faults[0].sentence if faults else "the file cannot be read"
        return (), (NOT_CAPTIONS.fault(at, f"'{path.name}': {reason}"),)
    try:
        return cues_of(text), ()
    except NoCaptions as problem:
        return (), (NOT_CAPTIONS.fault(at, f"'{path.name}' {problem.reason}"),)


def cues_of(text: str) -> tuple[Cue, ...]:
    """The cues of a WebVTT or SRT text, by their times, markup taken out. Raises NoCaptions.

    Cues that are broken are passed over, as players do. What is no more than limits allow is read.
    Sources: W3C WebVTT, 4.1 (the file begins with 'WEBVTT') and 4.2.2 (times within a cue); SubRip has no
    standard.
    """
    kind = _kind(text)
    if text.count(_ARROW) > limits.CUES:
        raise NoCaptions(f"has more than {limits.CUES:,} cues")
    try:
        found = webvtt.from_buffer(StringIO(text), format=kind)
    except (MalformedFileError, MalformedCaptionError, ValueError) as problem:
        raise NoCaptions("cannot be read as captions") from problem
    cues = sorted(
        (cue for caption in found.captions for cue in _cues(caption)),
        key=lambda cue: (cue.begins_s, cue.ends_s),
    )
    if not cues and _ARROW in text:
        raise NoCaptions("has no cue that can be read")
    if cues and cues[-1].begins_s > limits.FILM_SECONDS:
        raise NoCaptions(f"goes on for more than {limits.FILM_SECONDS // 3600} hours")
    return tuple(cues)


def _kind(text: str) -> str:
    if text.lstrip("\ufeff").split("\n", 1)[0].split(maxsplit=1)[:1] == ["WEBVTT"]:
        return "vtt"
    if _SRT_TIME.search(text):
        return "srt"
    raise NoCaptions("begins neither with WEBVTT nor as an SRT file does")


def _cues(caption: webvtt.Caption) -> Iterator[Cue]:
    """A caption as one cue, or as several where times stand within it."""
    begins_s = caption.start_time.in_milliseconds() / 1000
    ends_s = max(begins_s, caption.end_time.in_milliseconds() / 1000)
    pieces = _STAMP.split(caption.raw_text)
    starts = [begins_s, *(_seconds(stamp, begins_s) for stamp in pieces[1::2])]
    for index, piece in enumerate(pieces[::2]):
        words = _plain(piece)
        if words:
            end_s = starts[index + 1] if index + 1 < len(starts) else ends_s
            yield Cue(starts[index], max(starts[index], end_s), words)


def _seconds(stamp: str, begins_s: float) -> float:
    """A time within a cue; that of the cue where it makes no sense."""
    try:
        return max(begins_s, Timestamp.from_string(stamp).in_milliseconds() / 1000)
    except MalformedCaptionError:
        return begins_s


def _plain(text: str) -> str:
    """A cue's text in one line, without tags, letters in place of their names."""
    return _BLANKS.sub(" ", unescape(_TAG.sub("", text))).strip()
