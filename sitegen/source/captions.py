"""The captions of a film: there, beside the recipe, and WebVTT."""

from sitegen.faults import Fault, FaultCode, Place, Severity
from sitegen.source.photos import Folder, beside
from sitegen.source.textfile import read_text

NO_CAPTIONS = FaultCode(
    "captions-not-found",
    Severity.ERROR,
    "The captions that the recipe names do not lie beside it.",
    "Put the WebVTT file beside the recipe, or mend its name.",
    good="captions: captions.vtt",
    bad="captions: caption.vtt",
)
NOT_CAPTIONS = FaultCode(
    "not-captions",
    Severity.ERROR,
    "The captions are no WebVTT file: such a file begins with the word WEBVTT.",
    "Export the captions as WebVTT.",
    good="captions: captions.vtt",
    bad="captions: whisk.jpg",
)

CODES = (NO_CAPTIONS, NOT_CAPTIONS)


def captions_named(folder: Folder, name: str, at: Place) -> tuple[str, tuple[Fault, ...]]:
    """The captions, a path relative to the folder that holds `content/`; '' with a fault for none.

    Source: W3C WebVTT, 4.1: the file begins with 'WEBVTT', alone or before a blank.
    """
    path, faults = beside(folder, name, at, NO_CAPTIONS)
    if path is None:
        return "", faults
    text, _ = read_text(path, folder.shown_file(name), folder.path)
    first = (text or "").split("\n", 1)[0]
    if first.split(maxsplit=1)[:1] != ["WEBVTT"]:
        return "", (NOT_CAPTIONS.fault(at, f"'{name}' does not begin with WEBVTT"),)
    return folder.shown_file(name), ()
