"""Photos cut for print: one JPEG a photo, in the exact box that the card gives it."""

from collections.abc import Iterator, Mapping
from io import BytesIO

from PIL import Image, ImageOps

from sitegen.press.unpacked import Size, unpacked
from sitegen.sheet.values import Sheet, SheetPhoto

Box = tuple[float, float]
"""Width and height in mm."""

CARD_BOXES: Mapping[str, Box] = {"finished": (72.0, 54.0), "step": (36.0, 27.0)}
"""The boxes of the card. Both have the shape 4 to 3, so that a photo used twice needs one cut only."""

PRINT_DPI = 220
QUALITY = 80
_MM_IN_INCH = 25.4


class PhotoMissing(Exception):
    """The sheet shows a photo that the press was not given. file: the photo's path."""

    def __init__(self, file: str) -> None:
        super().__init__(file)
        self.file = file


def boxes_of(sheet: Sheet) -> Mapping[str, Box]:
    """The photos that a card shows: file -> box in mm. The larger box wins where one is used twice."""
    boxes = {photo.file: CARD_BOXES["step"] for photo in _step_photos(sheet)}
    if sheet.head.photo is not None:
        boxes[sheet.head.photo.file] = CARD_BOXES["finished"]
    return boxes


def cut_for_card(source: bytes, box_mm: Box, file: str = "") -> bytes:
    """A photo upright, cropped about its middle to the shape of the box, at PRINT_DPI or its own resolution.

    source: a JPEG, PNG or WebP file. file: its path, for who is told that it cannot be read. The JPEG carries
    no metadata; the same source gives the same bytes. Raises PictureUnreadable.
    """
    width, height = (round(side / _MM_IN_INCH * PRINT_DPI) for side in box_mm)
    upright = unpacked(source, file, lambda size: _no_smaller(size, max(width, height)))
    cut = ImageOps.fit(upright, _no_larger(upright.size, (width, height)), Image.Resampling.LANCZOS)
    out = BytesIO()
    cut.save(out, "JPEG", quality=QUALITY, optimize=True)
    return out.getvalue()


def _step_photos(sheet: Sheet) -> Iterator[SheetPhoto]:
    return (step.photo for part in sheet.components for step in part.steps if step.photo is not None)


def _no_smaller(size: Size, longer: int) -> Size:
    """What a photo may be shrunk to while it is read: both sides stay above the box's longer one."""
    shrink = min(1.0, longer / min(size))
    return round(size[0] * shrink), round(size[1] * shrink)


def _no_larger(size: tuple[int, int], box: tuple[int, int]) -> tuple[int, int]:
    """The box in pixels, shrunk in proportion where the picture has fewer."""
    scale = min(1.0, size[0] / box[0], size[1] / box[1])
    return max(1, round(box[0] * scale)), max(1, round(box[1] * scale))
