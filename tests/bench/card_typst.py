"""The same sheet set by Typst: a like layout of the same words, photos and faces, in its own language.

It carries what the card carries but for the QR codes and the picture of the plan. Typst keeps what it has
laid out between calls, so each page bears a number that no page before it had.
"""

from collections.abc import Iterator
from pathlib import Path

import font_source_sans_pro
import font_source_serif_pro
import typst

from sitegen.press.card_fetcher import ORIGIN
from sitegen.press.card_photos import CARD_BOXES
from sitegen.sheet.values import Sheet, SheetComponent, SheetPhoto, SheetStep
from tests.bench.bench_cards import PrintedPage

_HEAD = """
#set page(paper: "a4", margin: (x: 19mm, top: 11mm, bottom: 14mm), footer: context [
  #set text(size: 7.5pt, font: "Source Sans Pro")
  Page #counter(page).display() of #counter(page).final().first()])
#set text(font: "Source Serif Pro", size: 10pt, lang: "en", region: "GB")
#set table(stroke: 0.4pt, inset: 1.5mm)
"""


class Typst:
    """A warm compiler. folder: for the photos."""

    def __init__(self, folder: Path) -> None:
        self._folder = folder
        self._number = 0
        faces = [
            str(Path(package.__path__[0]) / "files")
            for package in (font_source_serif_pro, font_source_sans_pro)
        ]
        fonts = typst.Fonts(include_system_fonts=False, include_embedded_fonts=False, font_paths=faces)
        self._compiler = typst.Compiler(root=str(folder), font_paths=fonts)

    def place(self, page: PrintedPage) -> None:
        """Lay the photos where Typst finds them."""
        for file in page.files:
            path = self._folder / file.address.removeprefix(ORIGIN)
            path.parent.mkdir(exist_ok=True)
            path.write_bytes(file.body)

    def pdf(self, source: str) -> bytes:
        self._number += 1
        text = f"{source}\n\nNumber {self._number}"
        pdf = self._compiler.compile(input=text.encode(), format="pdf", pdf_standards=["ua-1"], timestamp=0)
        if not isinstance(pdf, bytes):
            raise TypeError("Typst gave no file")
        return pdf


def typst_source(sheet: Sheet, photos: dict[str, str]) -> str:
    """The sheet as Typst is written. photos: by file, their paths below the compiler's folder."""
    return "\n".join([_HEAD, *_opening(sheet, photos), *_lists(sheet), *_method(sheet, photos), *_end(sheet)])


def _text(words: str) -> str:
    """Words as a string of Typst, so that no character of theirs is read as a command."""
    escaped = words.replace("\\", "\\\\").replace('"', '\\"').replace("\n", " ")
    return f'#"{escaped}"'


def _photo(photo: SheetPhoto, photos: dict[str, str], kind: str) -> str:
    width, height = CARD_BOXES[kind]
    alt = photo.alt.replace('"', "'")
    return f'#image("{photos[photo.file]}", width: {width}mm, height: {height}mm, fit: "cover", alt: "{alt}")'


def _grid(columns: str, *cells: str) -> str:
    return f"#grid(columns: ({columns}), gutter: 4mm, {', '.join(f'[{cell}]' for cell in cells)})"


def _table(heads: tuple[str, ...], rows: list[tuple[str, ...]]) -> str:
    header = "table.header(" + ", ".join(f"[{_text(head)}]" for head in heads) + ")"
    cells = ", ".join(f"[{_text(cell)}]" for row in rows for cell in row)
    return f"#table(columns: {len(heads)}, {header}, {cells})"


def _opening(sheet: Sheet, photos: dict[str, str]) -> Iterator[str]:
    head = sheet.head
    yield f"#set document(title: [{_text(head.title)}])"
    words = f"= {_text(head.title)}\n{_text(head.summary)}\n\n{_text(head.edition.title)}"
    picture = [_photo(head.photo, photos, "finished")] if head.photo else []
    yield _grid("1fr, 72mm", words, *picture)
    facts = {"Makes": head.makes, "Tin": sheet.tin, "Oven": sheet.oven, "Hands-on": head.times.hands_on}
    yield _table(tuple(facts), [tuple(facts.values())])
    for caution in sheet.cautions:
        yield f"*{_text(caution.title)}* {_text(caution.text)} {_text(caution.source)}\n"


def _lists(sheet: Sheet) -> Iterator[str]:
    yield "== Ingredients"
    parts = [_list(part) for part in sheet.components if part.lines]
    half = (len(parts) + 1) // 2
    yield _grid("1fr, 1fr", "\n".join(parts[:half]), "\n".join(parts[half:]))
    told = (*sheet.allergens, *sheet.batch_notes, sheet.egg_note, sheet.measure_note)
    yield from (f"{_text(words)}\n" for words in told if words)


def _list(part: SheetComponent) -> str:
    lines = (
        f"[{_text(line.amount)}], [{_text(' '.join((line.name, line.alternatives, line.extra)))}]"
        for line in part.lines
    )
    return f"=== {_text(part.title)}\n#grid(columns: (20mm, 1fr), gutter: 1mm, {', '.join(lines)})"


def _method(sheet: Sheet, photos: dict[str, str]) -> Iterator[str]:
    yield "== Method"
    for part in sheet.components:
        if part.steps:
            yield f"=== {_text(part.title)}"
        yield from (_step(step, photos) for step in part.steps)


def _step(step: SheetStep, photos: dict[str, str]) -> str:
    uses = "; ".join(f"{use.amount} {use.name}" for use in step.uses)
    margin = f"*{step.number}* {_text(f'{step.hands_on} {step.wait}')}\n\n{_text(uses)}"
    told = (step.text, step.oven, step.fill, step.until, step.then)
    body = "\n\n".join(_text(words) for words in told if words)
    picture = [_photo(step.photo, photos, "step")] if step.photo else []
    columns = "46mm, 1fr, 36mm" if picture else "46mm, 1fr"
    return f"#block(breakable: false)[{_grid(columns, margin, body, *picture)}]"


def _end(sheet: Sheet) -> Iterator[str]:
    if sheet.plan:
        yield "== Work plan"
        rows = [(row.start, str(row.step), f"{row.summary} {row.wait}") for row in sheet.plan]
        yield _table(("Start", "Step", "What"), rows)
    if sheet.nutrition:
        yield "== Nutrition"
        facts = [(row.name, row.per_portion, row.per_100g) for row in sheet.nutrition.rows]
        yield _table(("", "A portion", "100 g"), facts)
    for what, how_long in sheet.keeping:
        yield f"*{_text(what)}* {_text(how_long)}\n"
    yield f"{_text(sheet.notes)}\n\n{_text(sheet.estimates_note)}"
