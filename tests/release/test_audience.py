"""No byte of what is for subscribers is ever in the public tree."""

from dataclasses import replace
from hashlib import sha256
from pathlib import Path

import pytest

from sitegen.kitchen.recipe import PublicShows
from sitegen.release.audience import SOME_PACKET, photos_in, public_revisions, public_view, with_pages_of
from sitegen.sheet.panel_values import SheetSwap
from sitegen.sheet.values import IngredientSide, Sheet, Teaser
from tests.press.sample_sheets import SHEET
from tests.release.conftest import Done
from tests.release.small_school import FIELDS, RELEASES, SECRETS, canary

SWAP = SheetSwap("golden syrup", "80 g honey", "", "few shops sell it", "Common practice.")
SECRET_WORDS = [(slug, field) for slug, fields in SECRETS.items() for field in fields]
OPEN_WORDS = [(slug, field) for slug in RELEASES for field in FIELDS if field not in SECRETS[slug]]


def holders(folder: Path, needle: bytes) -> list[Path]:
    return [
        path
        for path in folder.rglob("*")
        if path.is_file() and (needle in path.read_bytes() or needle.decode() in path.name)
    ]


@pytest.mark.parametrize(("slug", "field"), SECRET_WORDS)
def test_a_word_for_subscribers_is_in_no_public_file(done: Done, slug: str, field: str) -> None:
    assert holders(done.output / "public", canary(slug, field).encode()) == []


@pytest.mark.parametrize(("slug", "field"), OPEN_WORDS)
def test_a_word_for_everyone_is_in_a_public_file(done: Done, slug: str, field: str) -> None:
    assert holders(done.output / "public", canary(slug, field).encode())


@pytest.mark.parametrize("slug", ["ingredient-biscuits", "teaser-biscuits", "coming-biscuits"])
@pytest.mark.parametrize("field", FIELDS)
def test_subscribers_have_every_word(done: Done, slug: str, field: str) -> None:
    assert holders(done.output / "subscribers", canary(slug, field).encode())


def photo_name(done: Done, slug: str, photo: str) -> bytes:
    """What the names of a photo's cuts begin with."""
    source = done.root / "content" / "recipes" / slug / photo
    return sha256(source.read_bytes()).hexdigest()[:16].encode()


@pytest.mark.parametrize(
    ("slug", "photo", "is_public"),
    [
        ("ingredient-biscuits", "finished.jpg", True),
        ("ingredient-biscuits", "step.jpg", False),
        ("teaser-biscuits", "finished.jpg", True),
        ("teaser-biscuits", "step.jpg", False),
        ("open-biscuits", "step.jpg", True),
        ("coming-biscuits", "finished.jpg", False),
        ("draft-biscuits", "finished.jpg", False),
    ],
)
def test_a_photo_is_public_where_its_page_shows_it(
    done: Done, slug: str, photo: str, is_public: bool
) -> None:
    assert bool(holders(done.output / "public", photo_name(done, slug, photo))) is is_public


@pytest.mark.parametrize("slug", ["coming-biscuits", "draft-biscuits"])
def test_what_is_not_public_yet_is_not_even_named(done: Done, slug: str) -> None:
    assert holders(done.output / "public", slug.encode()) == []


def test_a_draft_is_for_nobody(done: Done) -> None:
    assert holders(done.output, b"draft-biscuits") == [done.output / "report.json"]


def test_no_card_is_public(done: Done) -> None:
    assert list((done.output / "public").rglob("*.pdf")) == []
    assert len(list((done.output / "subscribers" / "cards").glob("*.pdf"))) == 8


@pytest.mark.parametrize(
    ("shows", "kind"),
    [
        (PublicShows.TEASER, Teaser),
        (PublicShows.INGREDIENTS, IngredientSide),
        (PublicShows.EVERYTHING, Sheet),
    ],
)
def test_each_public_view_is_a_value_of_its_own(shows: PublicShows, kind: type) -> None:
    assert type(public_view(SHEET, shows)) is kind


def test_a_teaser_is_not_found_by_the_tin_that_it_does_not_tell() -> None:
    groups = {
        shows: {mark.group for mark in public_view(SHEET, shows).head.facets.marks} for shows in PublicShows
    }
    assert "tin" in groups[PublicShows.INGREDIENTS]
    assert groups[PublicShows.TEASER] == groups[PublicShows.EVERYTHING] - {"tin"}


def test_a_teaser_names_no_ingredient_in_the_marks_it_is_found_by() -> None:
    """'Read the label of the brandy' would tell that there is brandy in it; that there is a label it must."""
    assert SHEET.head.facets.labels_of == "brandy"
    assert public_view(SHEET, PublicShows.INGREDIENTS).head.facets.labels_of == "brandy"
    assert public_view(SHEET, PublicShows.TEASER).head.facets.labels_of == SOME_PACKET


def test_a_teaser_does_not_tell_the_tin_as_the_name_of_its_batch() -> None:
    baked = replace(
        SHEET, head=replace(SHEET.head, batch=replace(SHEET.head.batch, tin="a 20 cm square tin"))
    )
    assert "20 cm" not in repr(public_view(baked, PublicShows.TEASER))


def test_a_view_without_steps_shows_the_finished_bake_only() -> None:
    finished = SHEET.head.photo
    assert finished is not None
    assert photos_in(public_view(SHEET, PublicShows.INGREDIENTS)) == (finished.file,)
    assert len(photos_in(SHEET)) > 1


def test_a_correction_is_told_wherever_the_figure_is_shown() -> None:
    assert public_revisions(SHEET, PublicShows.INGREDIENTS) == SHEET.revisions
    assert public_revisions(SHEET, PublicShows.TEASER) == ()


def test_a_base_recipe_without_a_page_is_not_linked() -> None:
    linked = with_pages_of(SHEET, [part.base_slug for part in SHEET.components])
    unlinked = with_pages_of(SHEET, [])
    assert linked == SHEET
    assert isinstance(unlinked, Sheet)
    assert {part.base_slug for part in unlinked.components} == {""}


def test_swaps_and_what_is_unknown_stand_beside_open_ingredients_and_in_no_teaser() -> None:
    """They state amounts, which a teaser keeps for subscribers."""
    sheet = replace(SHEET, swaps=(SWAP,), unknowns=("Allergens of rose syrup are not known.",))
    side = public_view(sheet, PublicShows.INGREDIENTS)
    assert isinstance(side, IngredientSide)
    assert (side.swaps, side.unknowns) == (sheet.swaps, sheet.unknowns)
    assert SWAP.use not in repr(public_view(sheet, PublicShows.TEASER))
