"""Pictures and captions named in a file: there, inside the folder, truly a picture, of a bearable size."""

from dataclasses import dataclass
from difflib import get_close_matches
from os.path import isfile
from pathlib import Path, PurePosixPath

from sitegen.faults import Fault, FaultCode, Place, Severity
from sitegen.kitchen.method import Photo
from sitegen.source.picture_size import PictureSize, picture_size

LARGEST_BYTES = 40_000_000
LONGEST_SIDE = 12_000
MOST_PIXELS = 80_000_000
SMALLEST_WIDTH = 640

OUTSIDE = FaultCode(
    "outside-folder",
    Severity.ERROR,
    "The name of a file leads out of the folder of its recipe, by '..', '/' or a link.",
    "Put the file beside the recipe and write its name alone.",
    good="file: whisk.jpg",
    bad="file: ../whisk.jpg",
)
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
    "A picture has more pixels or bytes than a build can hold.",
    "Save it smaller: 4,000 pixels on the longer side are plenty for print.",
    file="",
)
PICTURE_SMALL = FaultCode(
    "picture-small",
    Severity.ADVICE,
    "A picture is narrower than a phone's screen shows, so that it looks soft.",
    "Use a picture of at least 1,600 pixels in width.",
    file="",
)

CODES = (OUTSIDE, NO_PICTURE, NOT_A_PICTURE, PICTURE_TOO_LARGE, PICTURE_SMALL)


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
    if not path.resolve().is_relative_to(folder.path.resolve()):
        return None, (OUTSIDE.fault(at, f"'{name}' is a link out of the folder"),)
    return path, ()


def picture_faults(path: Path, name: str, at: Place) -> tuple[Fault, ...]:
    """What is wrong with a picture, told from its size and its first bytes alone."""
    size_bytes = path.stat().st_size
    if size_bytes > LARGEST_BYTES:
        sentence = f"'{name}' has {size_bytes // 1_000_000} MB; {LARGEST_BYTES // 1_000_000} MB is the most"
        return (PICTURE_TOO_LARGE.fault(at, sentence),)
    with path.open("rb") as file:
        size = picture_size(file)
    if size is None or not size.width or not size.height:
        return (NOT_A_PICTURE.fault(at, f"'{name}' is no JPEG, PNG or WebP picture"),)
    return _size_faults(size, name, at)


def _size_faults(size: PictureSize, name: str, at: Place) -> tuple[Fault, ...]:
    measured = f"'{name}' measures {size.width} x {size.height} pixels"
    if max(size.width, size.height) > LONGEST_SIDE or size.width * size.height > MOST_PIXELS:
        return (PICTURE_TOO_LARGE.fault(at, f"{measured}, which is too many"),)
    if size.width < SMALLEST_WIDTH:
        return (PICTURE_SMALL.fault(at, f"{measured} and will look soft"),)
    return ()


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
        faults = picture_faults(path, name, at)
    is_outside = any(fault.code == OUTSIDE.code for fault in faults)
    return (None if is_outside else Photo(folder.shown_file(name), alt, at)), faults
