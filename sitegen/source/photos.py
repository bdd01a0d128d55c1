"""Pictures and captions named in a file: there, inside the folder, truly a picture, of a bearable size."""

from dataclasses import dataclass
from difflib import get_close_matches
from os import SEEK_END
from os.path import isfile, realpath
from pathlib import Path, PurePosixPath
from typing import BinaryIO

from sitegen import limits
from sitegen.faults import Fault, FaultCode, Place, Severity
from sitegen.kitchen.method import Photo
from sitegen.opening import LeadsOutside, open_within
from sitegen.source.picture_head import CutShort, Moves, NoPicture, PictureHead, TooHeavy, picture_head
from sitegen.source.textfile import OUTSIDE, UNREADABLE

SMALLEST_WIDTH = 640

NO_PICTURE = FaultCode(
    "photo-not-found",
    Severity.ERROR,
    "A picture that the file names does not lie beside it.",
    "Put the picture beside the file, or mend its name; capital letters count.",
    good="file: whisk.jpg",
    bad="file: wisk.jpg",
)
NOT_A_PICTURE = FaultCode(
    "not-a-picture",
    Severity.ERROR,
    "The file is no JPEG, PNG or WebP picture, whatever its name says.",
    "Save the picture as JPEG.",
    good="file: whisk.jpg",
    bad="file: captions.vtt",
)
PICTURE_TOO_LARGE = FaultCode(
    "picture-too-large",
    Severity.ERROR,
    "A picture has more pixels or bytes, or carries more beside them, than a build can hold.",
    "Save it smaller: 4,000 pixels on the longer side are plenty for print.",
    file="",
)
PICTURE_MOVES = FaultCode(
    "picture-moves",
    Severity.ERROR,
    "An animated picture, of which pages and cards would show the first frame alone.",
    "Save the frame that you want as JPEG.",
    file="",
)
PICTURE_CUT_SHORT = FaultCode(
    "picture-cut-short",
    Severity.ERROR,
    "The file ends before the picture does: it was not copied whole.",
    "Copy the picture again.",
    file="",
)
PICTURE_SMALL = FaultCode(
    "picture-small",
    Severity.ADVICE,
    "A picture is narrower than a phone's screen shows, so that it looks soft.",
    "Use a picture of at least 1,600 pixels in width.",
    file="",
)

CODES = (NO_PICTURE, NOT_A_PICTURE, PICTURE_TOO_LARGE, PICTURE_MOVES, PICTURE_CUT_SHORT, PICTURE_SMALL)


@dataclass(frozen=True)
class Folder:
    """A folder of the school. path: on this machine; shown: relative to the folder that holds `content/`."""

    path: Path
    shown: str

    def shown_file(self, name: str) -> str:
        return f"{self.shown}/{PurePosixPath(name)}"


def beside(
    folder: Folder, name: str, at: Place, missing: FaultCode = NO_PICTURE
) -> tuple[Path | None, tuple[Fault, ...]]:
    """The file of that name in a folder; None with a fault where it is not there or lies elsewhere.

    missing: the code for a file that is not there.
    """
    written = PurePosixPath(name)
    if written.is_absolute() or ".." in written.parts or "\\" in name or ":" in name:
        return None, (OUTSIDE.fault(at, f"'{name}' leads out of the folder"),)
    path = folder.path / written
    if not isfile(path):  # Path.is_file raises for a name that is too long
        sentence = f"there is no file '{name}' in {folder.shown}"
        return None, (missing.fault(at, sentence, _near_file(folder, name)),)
    if not Path(realpath(path)).is_relative_to(realpath(folder.path)):
        return None, (OUTSIDE.fault(at, f"'{name}' is a link out of the folder"),)
    return path, ()


def picture_faults(folder: Folder, path: Path, name: str, at: Place) -> tuple[Fault, ...]:
    """What is wrong with a picture of a folder, told without unpacking it."""
    try:
        with open_within(folder.path, path) as file:
            return trouble_with(file, name, at)
    except LeadsOutside:
        return (OUTSIDE.fault(at, f"'{name}' is a link out of the folder"),)
    except OSError as problem:
        return (UNREADABLE.fault(at, f"'{name}' cannot be read: {problem.strerror}"),)


def trouble_with(file: BinaryIO, name: str, at: Place) -> tuple[Fault, ...]:
    """The same of an open file, at its beginning. Raises OSError."""
    size_bytes = file.seek(0, SEEK_END)
    file.seek(0)
    if size_bytes > limits.PICTURE_BYTES:
        sentence = (
            f"'{name}' has {size_bytes // 1_000_000} MB; {limits.PICTURE_BYTES // 1_000_000} MB is the most"
        )
        return (PICTURE_TOO_LARGE.fault(at, sentence),)
    try:
        return _size_faults(picture_head(file), name, at)
    except NoPicture:
        return (NOT_A_PICTURE.fault(at, f"'{name}' is no JPEG, PNG or WebP picture"),)
    except TooHeavy as problem:
        return (PICTURE_TOO_LARGE.fault(at, f"'{name}' {problem.what}"),)
    except Moves:
        return (PICTURE_MOVES.fault(at, f"'{name}' is an animated picture"),)
    except CutShort:
        return (PICTURE_CUT_SHORT.fault(at, f"'{name}' is not whole"),)


def _size_faults(head: PictureHead, name: str, at: Place) -> tuple[Fault, ...]:
    if head.width >= SMALLEST_WIDTH:
        return ()
    measured = f"'{name}' measures {head.width} x {head.height} pixels"
    return (PICTURE_SMALL.fault(at, f"{measured} and will look soft"),)


def _near_file(folder: Folder, name: str) -> str:
    if not folder.path.is_dir():
        return ""
    known = {path.name.casefold(): path.name for path in sorted(folder.path.iterdir()) if path.is_file()}
    near = get_close_matches(name.casefold(), known, n=1, cutoff=0.6)
    return f"did you mean '{known[near[0]]}'?" if near else ""


def photo_named(folder: Folder, name: str, alt: str, at: Place) -> tuple[Photo | None, tuple[Fault, ...]]:
    """The photo of that name beside a file, and what is wrong with it.

    None where the name leads out of the folder. A picture that is not there, or is none, stays what the
    baker wrote, so that no check says that the recipe has no picture.
    """
    path, faults = beside(folder, name, at)
    if path is not None:
        faults = picture_faults(folder, path, name, at)
    is_outside = any(fault.code == OUTSIDE.code for fault in faults)
    return (None if is_outside else Photo(folder.shown_file(name), alt, at)), faults
