"""What a build cannot do without: WeasyPrint on the HTML of each card, Pillow on each photo, nothing else."""

from collections.abc import Iterator, Mapping, Sequence
from datetime import date
from functools import cached_property
from io import BytesIO
from pathlib import Path
from time import process_time

from PIL import Image, ImageOps

from sitegen.press.card import photos_on
from sitegen.press.card_fetcher import card_file
from sitegen.press.card_page import CARD_STYLE, card_html
from sitegen.press.card_photos import PRINT_DPI, QUALITY, Box, cut_for_card
from sitegen.press.paper_press import PaperPress
from sitegen.press.pictures import JPEG, WEBP, WIDTHS
from sitegen.press.theme import load_theme
from sitegen.press.theme_folder import find_theme
from sitegen.release.audience import with_pages_of
from sitegen.release.days import standing
from sitegen.release.sheets import sheet_setter
from sitegen.release.sites import imprints
from sitegen.sheet.values import Sheet
from sitegen.source.library import read_content
from tests.bench.bench_cards import PrintedPage
from tests.bench.card_peers import BareCall
from tests.bench.library import ON

_MM_IN_INCH = 25.4


class BareCalls:
    """All calls for one school, in this process. What they are given is made beforehand, and not counted."""

    def __init__(self, root: Path) -> None:
        content = read_content(root)
        if content.school is None:
            raise SystemExit(f"{root} cannot be read: run sitegen proof")
        self._root = root
        self._content = content
        self._school = content.school
        self._setter = sheet_setter(content, content.school)
        self._theme = load_theme(find_theme(root, content.school.theme))
        self._press = BareCall(PaperPress(self._theme, CARD_STYLE))

    @cached_property
    def slugs(self) -> tuple[str, ...]:
        """Of all recipes that are printed on the day."""
        day = date.fromisoformat(ON)
        return tuple(each.slug for each in self._content.recipes if standing(each.release, day).subscribers)

    def seconds(self, slugs: Sequence[str]) -> float:
        """Processor time of the calls for some recipes: their cards and their photos."""
        photos = sum(_seconds_of_photos(self._photos(slug)) for slug in slugs)
        return self.seconds_of_cards(slugs) + photos

    def seconds_of_cards(self, slugs: Sequence[str]) -> float:
        """The same for their cards alone."""
        spent = 0.0
        for slug in slugs:
            pages = list(self._pages(slug))
            begun = process_time()
            for page in pages:
                for paper in self._school.papers:
                    self._press.pdf(page, paper)
            spent += process_time() - begun
        return spent

    def seconds_in_common(self) -> float:
        """The same for the photos of technique pages."""
        photos = sorted((self._root / "content" / "tutorials").glob("*.jpg"))
        return _seconds_of_photos(dict.fromkeys(photos, ()))

    def _pages(self, slug: str) -> Iterator[PrintedPage]:
        """The HTML of the tested batch's card in each edition."""
        imprint = imprints(self._school).subscribers
        address = f"{imprint.address}recipes/{slug}.html"
        for sheet in self._sheets(slug):
            photos = {
                file: card_file("photos", cut_for_card((self._root / file).read_bytes(), box), "image/jpeg")
                for file, box in photos_on(sheet, "a4").items()
            }
            addresses = {file: photo.address for file, photo in photos.items()}
            html = card_html(self._theme, sheet, imprint, addresses, address)
            yield PrintedPage(html, tuple(photos.values()), address)

    def _photos(self, slug: str) -> Mapping[Path, Sequence[Box]]:
        """Each photo of a recipe -> its boxes on cards."""
        boxes: dict[str, dict[Box, None]] = {}
        for sheet in self._sheets(slug):
            for file, box in photos_on(sheet, "a4").items():
                boxes.setdefault(file, {})[box] = None
        return {self._root / file: tuple(each) for file, each in boxes.items()}

    def _sheets(self, slug: str) -> Iterator[Sheet]:
        recipe = next(each for each in self._content.recipes if each.slug == slug)
        for sheet in self._setter.all_sheets(recipe).tested:
            shown = with_pages_of(sheet, self.slugs)
            assert isinstance(shown, Sheet)
            yield shown


def _seconds_of_photos(photos: Mapping[Path, Sequence[Box]]) -> float:
    spent = 0.0
    for path, boxes in photos.items():
        source = path.read_bytes()
        begun = process_time()
        _cut_for_pages(source)
        for box in boxes:
            _cut_for_card(source, box)
        spent += process_time() - begun
    return spent


def _cut_for_pages(source: bytes) -> None:
    with Image.open(BytesIO(source)) as photo:
        cut = photo.convert("RGB")
    for width in sorted(WIDTHS, reverse=True):
        if width < cut.width:
            height = round(cut.height * width / cut.width)
            cut = cut.resize((width, height), Image.Resampling.LANCZOS)
        cut.save(BytesIO(), "WEBP", **WEBP)
        cut.save(BytesIO(), "JPEG", **JPEG)


def _cut_for_card(source: bytes, box: Box) -> None:
    width, height = (round(side / _MM_IN_INCH * PRINT_DPI) for side in box)
    with Image.open(BytesIO(source)) as photo:
        photo.draft("RGB", (width, height))
        fitted = ImageOps.fit(photo, (width, height), Image.Resampling.LANCZOS)
    fitted.save(BytesIO(), "JPEG", quality=QUALITY, optimize=True)
