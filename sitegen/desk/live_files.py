"""Files of the live site that take long to make, or none at all: faces, styles and scripts, printed cards.

What is made is kept where a build keeps it, so that a publish that follows finds it there.
"""

from dataclasses import dataclass

from jinja2 import TemplateError

from sitegen.desk.bench import Bench
from sitegen.desk.live_pictures import LivePictures
from sitegen.desk.live_site import NotMade
from sitegen.desk.one_press import PRESS
from sitegen.desk.reading import Reading
from sitegen.desk.shown_faults import faults_here
from sitegen.press.imprint import Imprint
from sitegen.press.picture import PictureUnreadable
from sitegen.press.theme import Theme, font_path, theme_texts
from sitegen.press.tokens import ThemeUnusable
from sitegen.release.cache import Cache, NotKept
from sitegen.release.card_work import CardFailed, MachineLacks, card_key, printed
from sitegen.release.parcel import CardRow
from sitegen.release.photo_work import CardCutWork, ChangedMeanwhile, Work
from sitegen.release.theme_work import FaceWork, face_work
from sitegen.sheet.values import Sheet

_NOT_PRINTED = "This card cannot be printed"


def theme_file(bench: Bench, path: str) -> bytes | None:
    """A file that pages load of the theme; a face is cut if it was not yet, which takes a second or two."""
    if bench.theme is None:
        return None
    for font in bench.theme.fonts:
        if font_path(font) == path:
            return _face(FaceWork(font, bench.cache))
    return dict(theme_texts(bench.theme)).get(path)


def _face(work: FaceWork) -> bytes:
    """Raises OSError where what was cut cannot be kept."""
    with PRESS:
        body = work.cache.get(work.page_key)
        if body is None:
            work.made()
            body = work.cache.fetch(work.page_key)
        return body


@dataclass(frozen=True)
class CardAsked:
    """All that one card is printed from. digests: photo -> hash of its bytes."""

    bench: Bench
    theme: Theme
    imprint: Imprint
    sheet: Sheet
    row: CardRow
    digests: dict[str, str]


def card_asked(reading: Reading, pictures: LivePictures, path: str) -> CardAsked | None:
    """The card at a path of the subscribers' tree; None where there is none.

    Called from the thread that reads. Raises NotMade where a photo of it cannot be read.
    """
    bench = reading.bench
    rows = ((slug, row) for slug, state in bench.states.items() for row in state.parcel.cards)
    slug, row = next((found for found in rows if found[1].path == path), ("", None))
    hand = reading.at_hand(slug)
    if row is None or hand is None or hand.shown is None or hand.shown.subscribers is None:
        return None
    if bench.theme is None or bench.imprints is None:
        return None
    views = hand.shown.subscribers.rows[0]
    sheet = next(
        (view for view in views if isinstance(view, Sheet) and view.head.edition.key == row.edition), None
    )
    if sheet is None:
        return None
    try:
        digests = {file: pictures.digest(file, bench.marks.get(file, "")) for file, _ in row.photos}
    except (PictureUnreadable, OSError) as problem:
        faults = faults_here(problem, bench.root)
        raise NotMade(_NOT_PRINTED, faults[0].sentence, faults, slug) from problem
    return CardAsked(bench, bench.theme, bench.imprints.subscribers, sheet, row, digests)


def printed_card(asked: CardAsked) -> bytes:
    """The card as PDF: from kept work, else printed now. Raises NotMade."""
    cache = asked.bench.cache
    works = {
        file: CardCutWork(asked.bench.root, file, asked.digests[file], box, cache)
        for file, box in asked.row.photos
    }
    cuts = {file: work.key for file, work in works.items()}
    key = card_key(cache, asked.theme, asked.row, cuts)
    slug = asked.sheet.head.slug
    with PRESS:
        kept = cache.get(key)
        if kept is not None:
            return kept
        try:
            return _newly_printed(asked, cache, tuple(works.values()), cuts, key)
        except MachineLacks as lack:
            raise NotMade(_NOT_PRINTED, f"The machine lacks a library that prints: {lack.library}") from lack
        except (
            CardFailed, ChangedMeanwhile, NotKept, OSError, PictureUnreadable, TemplateError, ThemeUnusable,
        ) as problem:  # fmt: skip
            faults = faults_here(problem, asked.bench.root)
            raise NotMade(_NOT_PRINTED, faults[0].sentence, faults, slug) from problem


def _newly_printed(
    asked: CardAsked, cache: Cache, photos: tuple[CardCutWork, ...], cuts: dict[str, str], key: str
) -> bytes:
    wanted: list[Work] = [*face_work(asked.theme, cache), *photos]
    for work in wanted:
        if not work.is_kept():
            work.made()
    page = asked.imprint.address + asked.row.page
    body = printed(asked.sheet, asked.imprint, asked.row.paper, page, cuts, asked.theme, cache)
    cache.put(key, body)
    return body
