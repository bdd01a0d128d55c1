"""A photo's bytes -> plain pixels. The only place where a decoder meets what somebody uploaded."""

from collections.abc import Callable, Iterator
from contextlib import contextmanager
from io import BytesIO
from warnings import catch_warnings, simplefilter

from PIL import Image, ImageFile, UnidentifiedImageError

from sitegen import limits
from sitegen.press.picture import PictureUnreadable
from sitegen.press.upright import plain_pixels, upright_size

_FORMATS = ("JPEG", "PNG", "WEBP")
Size = tuple[int, int]


def unpacked(source: bytes, file: str, least: Callable[[Size], Size]) -> Image.Image:
    """The photo upright and in sRGB, as `plain_pixels` gives it.

    source: a JPEG, PNG or WebP file. file: its path. least: from the photo's size in pixels, how large it
    must be at least, so that a JPEG is unpacked no larger than needed. Raises PictureUnreadable, whatever the
    decoder makes of the bytes.
    """
    with _opened(source, file, least) as image:
        image.load()
        return plain_pixels(image)


def unpacked_size(source: bytes, file: str, least: Callable[[Size], Size]) -> Size:
    """Width and height of what `unpacked` gives, in pixels, told by its head. Raises PictureUnreadable."""
    with _opened(source, file, least) as image:
        return upright_size(image)


@contextmanager
def _opened(source: bytes, file: str, least: Callable[[Size], Size]) -> Iterator[Image.Image]:
    """The photo, read as far as its head; what goes wrong with it meanwhile becomes PictureUnreadable."""
    try:
        with catch_warnings(), _whole_files_only():
            simplefilter("error", Image.DecompressionBombWarning)
            image = Image.open(BytesIO(source), formats=_FORMATS)
            _refuse_huge(image, file)
            image.draft("RGB", least(image.size))
            yield image
    except PictureUnreadable:
        raise
    except UnidentifiedImageError as error:
        raise PictureUnreadable(file, "it is not a JPEG, PNG or WebP picture") from error
    except (Image.DecompressionBombWarning, Image.DecompressionBombError) as error:
        raise PictureUnreadable(file, _too_large()) from error
    except Exception as error:  # decoders raise whatever they trip over: the baker hears which file it was
        raise PictureUnreadable(file, "the file is damaged or cut short") from error


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
    if width * height > limits.PICTURE_PIXELS or max(width, height) > limits.PICTURE_SIDE:
        raise PictureUnreadable(file, _too_large())


def _too_large() -> str:
    return f"it holds more than {limits.PICTURE_PIXELS // 1_000_000} million pixels"
