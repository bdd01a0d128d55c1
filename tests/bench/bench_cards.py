"""The cards that are measured: those of the demo, and longer ones made of them."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from itertools import chain, cycle, islice
from pathlib import Path

from sitegen.press.card import photos_on
from sitegen.press.card_fetcher import CardFile, card_file
from sitegen.press.card_page import card_html
from sitegen.press.card_photos import boxes_of
from sitegen.press.imprint import Imprint
from sitegen.press.theme import Theme, load_theme
from sitegen.press.theme_folder import find_theme
from sitegen.release.cache import Cache, makers_hash
from sitegen.release.card_work import printed
from sitegen.release.photo_work import CardCutWork, photo_digests
from sitegen.release.sheets import sheet_setter
from sitegen.release.sites import site_imprint
from sitegen.release.theme_work import face_work
from sitegen.sheet.values import Sheet, SheetComponent, SheetStep
from sitegen.sheet.work_values import PlanRow
from sitegen.source.library import read_content

ROOT = Path(__file__).resolve().parents[2]
PAPER, KITCHEN_PAPER = "a4", "a5"


@dataclass(frozen=True)
class PrintedPage:
    """A card before it is printed. files: photos by the addresses that stand in the HTML."""

    html: str
    files: tuple[CardFile, ...]
    address: str


@dataclass(frozen=True)
class Demo:
    """The school's own edition of each recipe, and what its cards are made of. Fonts and photos are cut."""

    theme: Theme
    imprint: Imprint
    sheets: tuple[Sheet, ...]
    cuts: Mapping[str, str]
    cache: Cache

    def work(self, sheet: Sheet, paper: str = PAPER) -> "KeptCard":
        """The card as a build makes it."""
        cuts = {file: self.cuts[file] for file in photos_on(sheet, paper)}
        return KeptCard(self, sheet, paper, self._address(sheet), cuts)

    def page(self, sheet: Sheet) -> PrintedPage:
        """The card's HTML, and its photos."""
        files = {
            file: card_file("photos", self.cache.fetch(self.cuts[file]), "image/jpeg")
            for file in boxes_of(sheet)
        }
        addresses = {file: photo.address for file, photo in files.items()}
        address = self._address(sheet)
        html = card_html(self.theme, sheet, self.imprint, addresses, address)
        return PrintedPage(html, tuple(files.values()), address)

    def _address(self, sheet: Sheet) -> str:
        return f"{self.imprint.address}recipes/{sheet.head.slug}.html"


@dataclass(frozen=True)
class KeptCard:
    """One card, printed and kept. cuts: photo -> key in the cache."""

    demo: Demo
    sheet: Sheet
    paper: str
    address: str
    cuts: Mapping[str, str]

    def made(self) -> None:
        demo = self.demo
        body = printed(self.sheet, demo.imprint, self.paper, self.address, self.cuts, demo.theme, demo.cache)
        demo.cache.put(demo.cache.key("bench", self.sheet.head.slug, self.paper), body)


def demo(folder: Path) -> Demo:
    """The project's demo. folder: for what is cut."""
    content = read_content(ROOT)
    if content.school is None:
        raise SystemExit("the demo has faults: run sitegen proof")
    setter = sheet_setter(content, content.school)
    sheets = tuple(setter.all_sheets(recipe).tested[0] for recipe in content.recipes)
    cache = Cache(folder, makers_hash())
    theme = load_theme(find_theme(ROOT, content.school.theme))
    for work in face_work(theme, cache):
        work.made()
    return Demo(theme, site_imprint(content.school), sheets, _cuts(sheets, cache), cache)


def of_length(sheets: Sequence[Sheet], steps: int) -> Sheet:
    """The demo's longest sheet with so many steps: those of all recipes in turn, with photos and plan rows.

    All else stays as it is, so that only what belongs to steps grows.
    """
    sheet = max(sheets, key=lambda each: len(each.plan))
    every = chain.from_iterable(_steps(each) for each in cycle(sheets))
    chosen = list(enumerate(islice(every, steps), start=1))
    method = SheetComponent("Method", (), tuple(replace(step, number=at) for at, (step, _) in chosen))
    return replace(
        sheet,
        components=(*(replace(part, steps=()) for part in sheet.components), method),
        plan=tuple(replace(row, step=at) for at, (_, row) in chosen),
        cautions=tuple({caution.key: caution for each in sheets for caution in each.cautions}.values()),
    )


def _steps(sheet: Sheet) -> Iterator[tuple[SheetStep, PlanRow]]:
    rows = {row.step: row for row in sheet.plan}
    return ((step, rows[step.number]) for part in sheet.components for step in part.steps)


def _cuts(sheets: Sequence[Sheet], cache: Cache) -> Mapping[str, str]:
    """Photo -> key of its cut; a photo that has several boxes is cut to the last one."""
    boxes = {file: box for sheet in sheets for file, box in boxes_of(sheet).items()}
    digests = photo_digests(ROOT, boxes)
    works = {file: CardCutWork(ROOT, file, digests[file], box, cache) for file, box in boxes.items()}
    for work in works.values():
        work.made()
    return {file: work.key for file, work in works.items()}
