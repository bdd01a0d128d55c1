"""The card of an answer: as a page for the screen, and printed to be sent to who asked for it."""

import re
from collections.abc import Mapping
from datetime import datetime
from hashlib import sha256
from pathlib import Path

from sitegen.desk.one_press import PRESS
from sitegen.press import addresses
from sitegen.press.card import photos_on
from sitegen.press.card_page import CARD_STYLE, card_html
from sitegen.press.fonts import FontFile, short_hash
from sitegen.press.imprint import Imprint
from sitegen.press.paper_press import paper_tokens
from sitegen.press.theme import Theme
from sitegen.release.audience import with_pages_of
from sitegen.release.cache import Cache
from sitegen.release.card_work import printed
from sitegen.release.days import school_day, standing
from sitegen.release.photo_work import CardCutWork, photo_digests
from sitegen.release.sites import imprints
from sitegen.release.theme_work import FaceWork
from sitegen.sheet.values import Sheet
from sitegen.source.school import Content, School

PAPERS = ("a4", "letter")
_SIZES = {"a4": ("210mm", "297mm"), "letter": ("8.5in", "11in")}
_MARGINS = re.compile(r"@page\{margin:([^;}]+)")
_SCREEN = """
@media screen {
  html { background: #fff; }
  body {
    box-sizing: border-box; width: %(width)s; margin: 0; padding: %(top)s %(right)s %(bottom)s %(left)s;
  }
}
@supports (column-wrap: wrap) {
  @media screen {
    /* First and last lines that are kept together move a whole list that has room (Chromium 156). */
    li { break-before: auto !important; break-after: auto !important; }
    body {
      columns: 1; column-fill: auto; column-wrap: wrap; row-gap: calc(%(top)s + %(bottom)s);
      row-rule: 0.4mm dashed #8b9491; row-rule-inset: calc(-1 * %(right)s);
      column-height: calc(%(height)s - %(top)s - %(bottom)s);
    }
  }
}
"""
"""Paper as a screen shows it: the margins of its pages, and where a browser can set them, pages one below the
other. The rules for breaks are those of the card's own style, so they nearly always fall where the press puts
them."""


def card_file_name(sheet: Sheet, paper: str) -> str:
    """What the printed card is called: recipe, batch, edition and paper."""
    head = sheet.head
    return f"{head.slug}-{head.batch.key}-{head.edition.key}-{paper}.pdf"


def card_page(
    theme: Theme, school: School, sheet: Sheet, photos: Mapping[str, str], style_address: str
) -> str:
    """The card as one long page. photos: file -> address. style_address: of `card_style`."""
    with PRESS:
        html = card_html(theme, sheet, _imprint(school), photos, _page_address(school, sheet))
    head = f'<base target="_blank">\n<link rel="stylesheet" href="{style_address}">\n'
    return html.replace("</head>", f"{head}</head>", 1)


def card_mark(theme: Theme, sheet: Sheet, marks: Mapping[str, str]) -> str:
    """What tells one card from another. marks: file -> what tells whether it is still the same."""
    photos = [marks.get(file) for file in photo_files(sheet)]
    return sha256(repr((sheet, theme.paper_digest(CARD_STYLE), photos)).encode()).hexdigest()[:16]


def card_style(theme: Theme, paper: str, face_addresses: Mapping[FontFile, str]) -> str:
    """What the card's page is styled with: the style that is printed with, on a screen."""
    faces = "".join(
        f'@font-face{{font-family:"{font.family}";font-weight:{font.weight};'
        f'font-style:{"italic" if font.italic else "normal"};src:url("{address}")}}\n'
        for font, address in face_addresses.items()
    )
    style = theme.styles[CARD_STYLE]
    width, height = _SIZES.get(paper, _SIZES["a4"])
    top, right, bottom, left = _margins(style)
    screen = _SCREEN % {
        "width": width, "height": height, "top": top, "right": right, "bottom": bottom, "left": left,
    }  # fmt: skip
    return faces + paper_tokens(theme) + style + screen


def _margins(style: str) -> tuple[str, ...]:
    """Top, right, bottom and left margin of a page, as the style says them; CSS Box Model, 'margin'."""
    found = _MARGINS.search(style)
    said = found.group(1).split() if found else ["10mm"]
    top, right = said[0], said[1] if len(said) > 1 else said[0]
    return (top, right, said[2] if len(said) > 2 else top, said[3] if len(said) > 3 else right)


def face_name(font: FontFile) -> str:
    """A file name for a face of the theme."""
    return f"{font.name}-{short_hash(font)}.ttf"


def face(font: FontFile, cache: Cache) -> bytes:
    """A face as cards are set in it, where it is cut by now; else the whole face."""
    return cache.get(FaceWork(font, cache).card_key) or font.read()


def photo_files(sheet: Sheet) -> tuple[str, ...]:
    """The photos that a card shows, in an order that is the same for each batch and edition."""
    return tuple(photos_on(sheet, "a4"))


def photo(root: Path, sheet: Sheet, file: str, cache: Cache) -> bytes:
    """One photo as the card shows it. Raises PictureUnreadable, ChangedMeanwhile, OSError, NotKept."""
    return cache.fetch(_cut(root, sheet, (file,), cache)[file])


def one_off_card(
    root: Path,
    content: Content,
    school: School,
    theme: Theme,
    sheet: Sheet,
    paper: str,
    cache: Cache,
    now: datetime,
) -> bytes:
    """The card as a tagged PDF (PDF/UA-1), as subscribers would have it.

    paper: one of PAPERS. now: aware; a base recipe that is not out by then is not linked to. Raises what
    `card_work.printed` does, and PictureUnreadable, ChangedMeanwhile and OSError for its photos.
    """
    day = school_day(now, school.time_zone)
    out = {each.slug for each in content.recipes if standing(each.release, day).subscribers}
    view = with_pages_of(sheet, out)
    assert isinstance(view, Sheet)
    with PRESS:
        for font in theme.fonts:
            work = FaceWork(font, cache)
            if not work.is_kept():
                work.made()
        cuts = _cut(root, sheet, photo_files(sheet), cache)
        return printed(view, _imprint(school), paper, _page_address(school, sheet), cuts, theme, cache)


def _cut(root: Path, sheet: Sheet, files: tuple[str, ...], cache: Cache) -> dict[str, str]:
    """Photo -> key of its cut, each cut by now."""
    boxes = photos_on(sheet, "a4")
    works = {
        file: CardCutWork(root, file, digest, boxes[file], cache)
        for file, digest in photo_digests(root, files).items()
    }
    for work in works.values():
        if not work.is_kept():
            work.made()
    return {file: work.key for file, work in works.items()}


def _imprint(school: School) -> Imprint:
    return imprints(school).subscribers


def _page_address(school: School, sheet: Sheet) -> str:
    """Of the recipe's page, on which every batch that the school offers can be chosen."""
    return _imprint(school).address + addresses.recipe_page(sheet.head.slug)
