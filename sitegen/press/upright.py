"""A photo as a camera left it -> plain pixels: upright, in sRGB, on white paper, with nothing else kept."""

from io import BytesIO
from typing import Literal

from PIL import Image, ImageCms

_ORIENTATION = 0x0112
# Exif 2.3, table 6: how a picture is turned that the camera held otherwise.
_TURNS = {
    2: Image.Transpose.FLIP_LEFT_RIGHT,
    3: Image.Transpose.ROTATE_180,
    4: Image.Transpose.FLIP_TOP_BOTTOM,
    5: Image.Transpose.TRANSPOSE,
    6: Image.Transpose.ROTATE_270,
    7: Image.Transpose.TRANSVERSE,
    8: Image.Transpose.ROTATE_90,
}
_ON_ITS_SIDE = 5
"""From this one on a picture's sides change places."""
_MOST_ENTRIES = 500


def plain_pixels(image: Image.Image) -> Image.Image:
    """The picture as RGB pixels and no more.

    Turned as its EXIF says; colours taken to sRGB by the profile that it carries (a profile that is no
    use is left aside); see-through parts white; comments, profile and EXIF gone.
    """
    turn = _TURNS.get(_orientation(image.info.get("exif", b"")))
    turned = image if turn is None else image.transpose(turn)
    coloured = _in_srgb(turned, image.info.get("icc_profile"))
    bare = _on_white(coloured)
    bare.info.clear()
    return bare


def upright_size(image: Image.Image) -> tuple[int, int]:
    """Width and height that `plain_pixels` will give, in pixels, told before anything is unpacked."""
    on_its_side = _ON_ITS_SIDE <= _orientation(image.info.get("exif", b"")) <= max(_TURNS)
    return (image.height, image.width) if on_its_side else image.size


def _orientation(exif: bytes) -> int:
    """How the camera was held, 1 to 8; 1 where it does not say.

    TIFF 6.0, section 2. Read here and not by Pillow, which would copy every entry of the directory, however
    large it says that it is.
    """
    exif = exif.removeprefix(b"Exif\0\0")
    order: Literal["little", "big"] = "little" if exif.startswith(b"II") else "big"

    def number(at: int, width: int) -> int:
        return int.from_bytes(exif[at : at + width], order)

    directory = number(4, 4)
    for index in range(min(number(directory, 2), _MOST_ENTRIES)):
        entry = directory + 2 + 12 * index
        if number(entry, 2) == _ORIENTATION:
            return number(entry + 8, 2)
    return 1


def _in_srgb(image: Image.Image, profile: bytes | None) -> Image.Image:
    if profile is None:
        return image
    mode = "RGBA" if "A" in image.getbands() else "RGB"
    try:
        own = ImageCms.ImageCmsProfile(BytesIO(profile))
        return ImageCms.profileToProfile(image, own, ImageCms.createProfile("sRGB"), outputMode=mode) or image
    except (ImageCms.PyCMSError, OSError):
        return image


def _on_white(image: Image.Image) -> Image.Image:
    if not image.has_transparency_data:
        return image.convert("RGB")
    layer = image.convert("RGBA")
    return Image.alpha_composite(Image.new("RGBA", layer.size, "white"), layer).convert("RGB")
