"""Photos cut for pages."""

from collections.abc import Mapping
from io import BytesIO

import pytest
from PIL import ExifTags, Image, ImageCms, ImageFile

from sitegen import limits
from sitegen.press.picture import Cut, PictureUnreadable
from sitegen.press.pictures import cut_picture
from tests.press.sample_parts import drawn_photo

PLUM = (110, 42, 77)


def opened(files: Mapping[str, bytes], cut: Cut) -> Image.Image:
    return Image.open(BytesIO(files[cut.path]))


def test_a_photo_comes_in_three_widths_and_two_formats() -> None:
    picture, leaves = cut_picture(drawn_photo(2000, 1500), "a/b.jpg")
    assert picture.file == "a/b.jpg"
    assert [(cut.width, cut.height) for cut in picture.webp] == [(480, 360), (960, 720), (1600, 1200)]
    assert [(cut.width, cut.height) for cut in picture.jpeg] == [(480, 360), (960, 720), (1600, 1200)]
    files = dict(leaves)
    for cut, kind in [*((cut, "WEBP") for cut in picture.webp), *((cut, "JPEG") for cut in picture.jpeg)]:
        image = opened(files, cut)
        assert (image.format, image.size, image.mode) == (kind, (cut.width, cut.height), "RGB")


@pytest.mark.parametrize(("width", "widths"), [(1000, [480, 960, 1000]), (960, [480, 960]), (300, [300])])
def test_a_photo_is_never_made_larger(width: int, widths: list[int]) -> None:
    picture, _ = cut_picture(drawn_photo(width, 200), "x.jpg")
    assert [cut.width for cut in picture.jpeg] == widths


@pytest.mark.parametrize(
    ("orientation", "plum_at"),
    [(1, "top left"), (3, "bottom right"), (6, "top right"), (8, "bottom left")],
)
def test_a_photo_stands_upright_as_the_camera_held_it(orientation: int, plum_at: str) -> None:
    """Orientation is tag 274 of Exif 2.3; 6 and 8 are a camera held on its side."""
    exif = Image.Exif()
    exif[ExifTags.Base.Orientation] = orientation
    picture, leaves = cut_picture(drawn_photo(800, 600, exif=exif.tobytes()), "x.jpg")
    image = opened(dict(leaves), picture.jpeg[-1])
    assert image.size == ((800, 600) if orientation in (1, 3) else (600, 800))
    width, height = image.size
    corners = {
        "top left": (20, 20),
        "top right": (width - 20, 20),
        "bottom left": (20, height - 20),
        "bottom right": (width - 20, height - 20),
    }
    assert [name for name, place in corners.items() if _near(image.getpixel(place), PLUM)] == [plum_at]


def _near(found: object, wanted: tuple[int, ...]) -> bool:
    assert isinstance(found, tuple)
    return all(abs(one - other) < 12 for one, other in zip(found, wanted, strict=True))


def test_nothing_of_the_camera_is_left() -> None:
    exif = Image.Exif()
    exif[ExifTags.Base.Make] = "A camera"
    exif.get_ifd(ExifTags.IFD.GPSInfo)[ExifTags.GPS.GPSLatitudeRef] = "N"
    source = drawn_photo(600, 400, exif=exif.tobytes(), comment=b"home kitchen", icc_profile=_wide_profile())
    assert b"A camera" in source
    assert b"home kitchen" in source
    picture, leaves = cut_picture(source, "x.jpg")
    for cut in (*picture.webp, *picture.jpeg):
        image = opened(dict(leaves), cut)
        image.load()
        assert {"exif", "icc_profile", "comment", "xmp"}.isdisjoint(image.info)
        assert b"camera" not in dict(leaves)[cut.path]


def _wide_profile() -> bytes:
    return ImageCms.ImageCmsProfile(ImageCms.createProfile("XYZ")).tobytes()


def test_colours_are_converted_by_the_photo_s_own_profile() -> None:
    """L*a*b* 50, 0, 0 is a middle grey in sRGB: 119 (IEC 61966-2-1)."""
    lab = Image.new("LAB", (200, 100), (128, 128, 128))
    srgb = ImageCms.profileToProfile(
        lab, ImageCms.createProfile("LAB"), ImageCms.createProfile("sRGB"), outputMode="RGB"
    )
    assert srgb is not None
    out = BytesIO()
    profile = ImageCms.ImageCmsProfile(ImageCms.createProfile("sRGB")).tobytes()
    srgb.save(out, "PNG", icc_profile=profile)
    picture, leaves = cut_picture(out.getvalue(), "grey.png")
    assert _near(opened(dict(leaves), picture.jpeg[0]).getpixel((50, 50)), (119, 119, 119))


def test_what_is_see_through_becomes_white_paper() -> None:
    out = BytesIO()
    Image.new("RGBA", (100, 100), (200, 0, 0, 0)).save(out, "PNG")
    picture, leaves = cut_picture(out.getvalue(), "x.png")
    assert _near(opened(dict(leaves), picture.jpeg[0]).getpixel((50, 50)), (255, 255, 255))


def test_the_same_photo_gives_the_same_names_and_bytes() -> None:
    source = drawn_photo(1000, 700)
    assert cut_picture(source, "x.jpg") == cut_picture(source, "x.jpg")
    other, _ = cut_picture(drawn_photo(1000, 700, colour="#112233"), "x.jpg")
    assert other.jpeg[0].path != cut_picture(source, "x.jpg")[0].jpeg[0].path


@pytest.mark.parametrize(
    ("source", "reason"),
    [
        (b"not a picture at all", "not a JPEG"),
        (b"", "not a JPEG"),
        (b"<svg xmlns='http://www.w3.org/2000/svg'/>", "not a JPEG"),
        (drawn_photo(800, 600)[:3000], "damaged or cut short"),
    ],
)
def test_what_cannot_be_read_is_refused_with_its_name(source: bytes, reason: str) -> None:
    with pytest.raises(PictureUnreadable) as caught:
        cut_picture(source, "content/recipes/x/bad.jpg")
    assert caught.value.file == "content/recipes/x/bad.jpg"
    assert reason in caught.value.reason


def test_a_file_that_is_cut_short_is_refused_although_the_printing_engine_would_let_it_pass(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    monkeypatch.setattr(ImageFile, "LOAD_TRUNCATED_IMAGES", True)
    with pytest.raises(PictureUnreadable):
        cut_picture(drawn_photo(800, 600)[:3000], "short.jpg")
    assert ImageFile.LOAD_TRUNCATED_IMAGES is True


def test_a_picture_that_would_fill_the_memory_is_refused_before_it_is_unpacked(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    monkeypatch.setattr(limits, "PICTURE_PIXELS", 10_000)
    with pytest.raises(PictureUnreadable) as caught:
        cut_picture(drawn_photo(200, 100), "huge.png")
    assert "pixels" in caught.value.reason
