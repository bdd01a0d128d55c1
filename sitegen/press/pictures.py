"""A photo as bytes -> the cuts that pages use, in two formats, with nothing of the camera left in them."""

from collections.abc import Iterator
from contextlib import contextmanager
from hashlib import sha256
from io import BytesIO
from warnings import catch_warnings, simplefilter

from PIL import Image, ImageFile, UnidentifiedImageError

from sitegen.press.picture import Cut, Picture
from sitegen.press.upright import plain_pixels

WIDTHS = (480, 960, 1600)
MOST_PIXELS = 100_000_000
_FORMATS = {"JPEG", "PNG", "WEBP"}
_JPEG = {"quality": 82, "optimize": True, "subsampling": "4:2:0"}
_WEBP = {"quality": 80, "method": 2}
"""Method 4, Pillow's usual one, takes two and a half times as long for files that are 4 % smaller."""


class PictureUnreadable(Exception):
    """A picture that cannot be printed. file: its path; reason: in a baker's words."""

    def __init__(self, file: str, reason: str) -> None:
        super().__init__(file, reason)
        self.file = file
        self.reason = reason


def cut_picture(source: bytes, file: str) -> tuple[Picture, tuple[tuple[str, bytes], ...]]:
    """The cuts of a photo, and the files that hold them: (path, bytes).

    source: a JPEG, PNG or WebP file. file: the key that pages find it by. Cuts are WIDTHS wide in
    pixels, or as wide as the photo where it is narrower; upright, in sRGB, without metadata. The same
    source gives the same bytes. Raises PictureUnreadable.
    """
    image = _opened(source, file)
    stem = f"pictures/{sha256(source).hexdigest()[:16]}"
    webp: list[Cut] = []
    jpeg: list[Cut] = []
    leaves: list[tuple[str, bytes]] = []
    for cut in sorted(_cuts(image), key=lambda each: each.width):
        for format_name, ending, cuts in (("WEBP", "webp", webp), ("JPEG", "jpg", jpeg)):
            path = f"{stem}-{cut.width}.{ending}"
            cuts.append(Cut(path, cut.width, cut.height))
            leaves.append((path, _saved(cut, format_name)))
    return Picture(file, tuple(webp), tuple(jpeg)), tuple(leaves)


def _opened(source: bytes, file: str) -> Image.Image:
    """The photo upright and in sRGB, no larger than the widest cut needs it."""
    try:
        with catch_warnings(), _whole_files_only():
            simplefilter("error", Image.DecompressionBombWarning)
            image = Image.open(BytesIO(source), formats=sorted(_FORMATS))
            _refuse_huge(image, file)
            image.draft("RGB", (WIDTHS[-1], WIDTHS[-1]))
            image.load()
    except UnidentifiedImageError as error:
        raise PictureUnreadable(file, "it is not a JPEG, PNG or WebP picture") from error
    except (Image.DecompressionBombWarning, Image.DecompressionBombError) as error:
        raise PictureUnreadable(file, _too_large()) from error
    except (OSError, SyntaxError, ValueError) as error:
        raise PictureUnreadable(file, "the file is damaged or cut short") from error
    return plain_pixels(image)


@contextmanager
def _whole_files_only() -> Iterator[None]:
    """Refuse a file that is cut short, also after the printing engine was loaded.

    WeasyPrint tells Pillow, for the whole process, to fill what is missing with grey.
    """
    before = ImageFile.LOAD_TRUNCATED_IMAGES
    ImageFile.LOAD_TRUNCATED_IMAGES = False
    try:
        yield
    finally:
        ImageFile.LOAD_TRUNCATED_IMAGES = before


def _refuse_huge(image: Image.Image, file: str) -> None:
    width, height = image.size
    if width * height > MOST_PIXELS:
        raise PictureUnreadable(file, _too_large())


def _too_large() -> str:
    return f"it holds more than {MOST_PIXELS // 1_000_000} million pixels"


def _cuts(image: Image.Image) -> Iterator[Image.Image]:
    """The picture at each width up to its own, the widest first: each is made of the one before it."""
    widest = min(image.width, WIDTHS[-1])
    shape, cut = image.size, image
    for width in (widest, *(width for width in reversed(WIDTHS) if width < widest)):
        if width != cut.width:
            height = max(1, round(shape[1] * width / shape[0]))
            cut = cut.resize((width, height), Image.Resampling.LANCZOS)
        yield cut


def _saved(image: Image.Image, format_name: str) -> bytes:
    out = BytesIO()
    image.save(out, format_name, **(_JPEG if format_name == "JPEG" else _WEBP))
    return out.getvalue()
