"""A photo as a camera left it -> plain pixels: upright, in sRGB, on white paper, with nothing else kept."""

from io import BytesIO

from PIL import Image, ImageCms, ImageOps


def plain_pixels(image: Image.Image) -> Image.Image:
    """The picture as RGB pixels and no more.

    Turned as its EXIF says; colours taken to sRGB by the profile that it carries (a profile that is no
    use is left aside); see-through parts white; comments, profile and EXIF gone.
    """
    turned = ImageOps.exif_transpose(image)
    coloured = _in_srgb(turned, image.info.get("icc_profile"))
    bare = _on_white(coloured)
    bare.info.clear()
    return bare


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
