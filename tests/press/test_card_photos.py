"""Photos cut for print."""

from io import BytesIO

import pytest
from PIL import Image, ImageCms

from sitegen.press.card_photos import CARD_BOXES, boxes_of, cut_for_card
from sitegen.press.picture import PictureUnreadable
from sitegen.press.upright import plain_pixels
from tests.press.sample_cards import FOLDER, painted, sample_sheet

SIDEWAYS = 6
"""The EXIF orientation of a camera held upright: the picture must be turned a quarter to the right."""


def opened(photo: bytes) -> Image.Image:
    return Image.open(BytesIO(photo))


def saved(picture: Image.Image, kind: str, **options: object) -> bytes:
    out = BytesIO()
    picture.save(out, kind, **options)
    return out.getvalue()


@pytest.mark.parametrize(
    ("box", "pixels"),
    [((72.0, 54.0), (624, 468)), ((36.0, 27.0), (312, 234)), ((27.0, 36.0), (234, 312))],
)
def test_cut_has_220_dots_an_inch(box: tuple[float, float], pixels: tuple[int, int]) -> None:
    assert opened(cut_for_card(painted("finished.jpg"), box)).size == pixels


def test_tall_photo_is_cropped_about_its_middle() -> None:
    tall = Image.new("RGB", (800, 1600), "white")
    tall.paste((90, 20, 60), (0, 500, 800, 1100))
    cut = opened(cut_for_card(saved(tall, "JPEG"), CARD_BOXES["step"]))
    assert all(abs(a - b) < 8 for a, b in zip(cut.getpixel((156, 10)), (90, 20, 60), strict=True))


def test_photo_taken_sideways_stands_upright() -> None:
    lying = Image.new("RGB", (1200, 1600), "white")
    lying.paste((90, 20, 60), (0, 0, 600, 1600))
    turned = Image.Exif()
    turned[0x0112] = SIDEWAYS
    cut = opened(cut_for_card(saved(lying, "JPEG", exif=turned), CARD_BOXES["step"]))
    assert cut.getpixel((156, 20))[1] < 60
    assert cut.getpixel((156, 215))[1] > 240


def test_nothing_of_the_camera_is_left() -> None:
    kept = Image.Exif()
    kept[0x010F] = "Box camera"
    source = saved(Image.new("RGB", (900, 700)), "JPEG", exif=kept, comment=b"at home")
    cut = cut_for_card(source, CARD_BOXES["step"])
    assert b"Box camera" not in cut
    assert b"at home" not in cut
    assert not opened(cut).getexif()


def test_small_photo_is_never_blown_up() -> None:
    small = saved(Image.new("RGB", (320, 240)), "JPEG")
    assert opened(cut_for_card(small, CARD_BOXES["finished"])).size == (320, 240)


def test_see_through_parts_are_white_paper() -> None:
    clear = saved(Image.new("RGBA", (800, 600), (200, 0, 0, 0)), "PNG")
    assert opened(cut_for_card(clear, CARD_BOXES["step"])).getpixel((9, 9)) == (255, 255, 255)


def test_colours_follow_the_profile_that_the_photo_carries() -> None:
    lab_white = ImageCms.ImageCmsProfile(ImageCms.createProfile("LAB"))
    source = Image.new("LAB", (400, 300), (255, 128, 128))
    source.info["icc_profile"] = lab_white.tobytes()
    bare = plain_pixels(source)
    assert all(level > 250 for level in bare.getpixel((9, 9)))
    assert "icc_profile" not in bare.info


def test_profile_that_is_no_profile_is_left_aside() -> None:
    tagged = saved(Image.new("RGB", (400, 300), (90, 20, 60)), "JPEG", icc_profile=b"no profile")
    red, green, blue = opened(cut_for_card(tagged, CARD_BOXES["step"])).getpixel((9, 9))
    assert abs(red - 90) + abs(green - 20) + abs(blue - 60) < 12


def test_same_photo_gives_the_same_bytes() -> None:
    source = painted("twice.jpg")
    assert cut_for_card(source, CARD_BOXES["step"]) == cut_for_card(source, CARD_BOXES["step"])


def test_what_is_no_picture_is_refused() -> None:
    with pytest.raises(PictureUnreadable):
        cut_for_card(b"a recipe", CARD_BOXES["step"])


def test_finished_photo_gets_the_larger_box_though_a_step_shows_it_too() -> None:
    boxes = boxes_of(sample_sheet(steps=4, photos=2))
    assert boxes == {
        f"{FOLDER}/finished.jpg": CARD_BOXES["finished"],
        f"{FOLDER}/step-1.jpg": CARD_BOXES["step"],
        f"{FOLDER}/step-2.jpg": CARD_BOXES["step"],
    }
