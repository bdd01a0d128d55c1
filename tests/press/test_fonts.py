"""The faces of pages and cards, cut down."""

from io import BytesIO

import pytest
from fontTools.ttLib import TTFont

from sitegen.press.fonts import FontFile, FontMissing, licence, short_hash, subset
from sitegen.press.theme import load_theme
from tests.press.sample_sheets import THEME_FOLDER

FACES = load_theme(THEME_FOLDER).fonts
ROMAN = FACES[0]


@pytest.fixture(scope="module")
def roman() -> TTFont:
    return TTFont(BytesIO(subset(ROMAN)))


@pytest.mark.parametrize("font", FACES, ids=lambda font: font.name)
def test_each_face_has_what_recipes_are_set_with(font: FontFile) -> None:
    characters = TTFont(BytesIO(subset(font))).getBestCmap()
    wanted = "aZ09é £€½⅓⅔¼¾⅛⅜⅝⅞°−–—‘’“”…×\N{NO-BREAK SPACE}"
    assert [letter for letter in wanted if ord(letter) not in characters] == []


def test_the_serif_keeps_small_capitals_old_style_and_tabular_figures(roman: TTFont) -> None:
    features = {record.FeatureTag for record in roman["GSUB"].table.FeatureList.FeatureRecord}
    assert {"smcp", "onum", "lnum", "tnum", "pnum", "frac"} <= features


def test_a_subset_bears_no_reserved_name_and_keeps_copyright_and_licence(roman: TTFont) -> None:
    """SIL Open Font Licence 1.1, clauses 2 and 3: 'Source' is reserved."""
    names = {record.nameID: str(record) for record in roman["name"].names}
    assert names[1] == ROMAN.family
    assert not any("Source" in names[key] for key in (1, 2, 3, 4, 6))
    assert "with Reserved Font Name ‘Source’" in names[0]
    assert "Open Font License" in names[13]


def test_a_page_font_is_woff2_and_a_third_of_the_whole_face_at_most() -> None:
    page_font = subset(ROMAN, "woff2")
    assert page_font[:4] == b"wOF2"
    assert 3 * len(page_font) < len(ROMAN.read())


def test_the_same_face_gives_the_same_bytes() -> None:
    first = subset(ROMAN, "woff2")
    subset.cache_clear()
    assert subset(ROMAN, "woff2") == first


def test_a_subset_keeps_the_date_of_the_foundry(roman: TTFont) -> None:
    assert roman["head"].modified == TTFont(BytesIO(ROMAN.read()))["head"].modified


def test_faces_have_names_of_their_own() -> None:
    assert len({font.name for font in FACES}) == len({short_hash(font) for font in FACES}) == len(FACES)


@pytest.mark.parametrize("font", FACES, ids=lambda font: font.name)
def test_each_licence_begins_with_the_notice_of_the_face(font: FontFile) -> None:
    """SIL Open Font Licence 1.1, clause 2: each copy contains the copyright notice and this licence."""
    notice = TTFont(BytesIO(font.read()))["name"].getDebugName(0)
    text = licence(font).decode()
    assert text.startswith(notice)
    assert "SIL OPEN FONT LICENSE Version 1.1 - 26 February 2007" in text


@pytest.mark.parametrize(
    ("package", "file"),
    [("font_source_serif_pro", "SourceSerifPro-Chalk.ttf"), ("font_of_nobody", "Nobody-Regular.ttf")],
)
def test_a_face_that_is_not_there_is_named(package: str, file: str) -> None:
    missing = FontFile("School Serif", 400, False, package, file)
    with pytest.raises(FontMissing) as caught:
        missing.read()
    assert caught.value.font == missing
