"""Cards, each printed once and kept until something that made it changes."""

import functools
import gc
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field

from jinja2 import TemplateError

from sitegen.press.card import CardPress, style_on
from sitegen.press.imprint import Imprint
from sitegen.press.theme import Theme
from sitegen.press.tokens import ThemeUnusable
from sitegen.release.cache import Cache
from sitegen.release.commission import CommissionFile
from sitegen.release.parcel import CardRow
from sitegen.release.recipe_work import shown_recipe
from sitegen.release.steps import Progress
from sitegen.release.theme_work import card_faces
from sitegen.release.workers import Workers
from sitegen.sheet.values import Sheet


class MachineLacks(Exception):
    """The machine has no library that prints. library: as the system names it."""

    def __init__(self, library: str) -> None:
        super().__init__(library)
        self.library = library


class CardFailed(Exception):
    """One card could not be printed. slug, edition, paper: which; reason: the press's own words."""

    def __init__(self, slug: str, edition: str, paper: str, reason: str) -> None:
        super().__init__(slug, edition, paper, reason)
        self.slug = slug
        self.edition = edition
        self.paper = paper
        self.reason = reason


_CARDS_OF_A_SHIFT = 500
"""Then other processes take over: of what WeasyPrint asks of Pango for a card it does not give all back."""


@dataclass(frozen=True)
class CardWork:
    """Prints one card. drawn_on: see `SetWork`. cuts: photo -> key of its cut in the cache."""

    commission: CommissionFile
    slug: str
    drawn_on: tuple[str, ...]
    card: CardRow
    cuts: Mapping[str, str] = field(hash=False)
    key: str

    def made(self) -> None:
        commission = self.commission.read()
        imprint = commission.imprints.subscribers
        body = printed(
            self._sheet(),
            imprint,
            self.card.paper,
            imprint.address + self.card.page,
            self.cuts,
            commission.theme,
            commission.cache,
        )
        commission.cache.put(self.key, body)

    def _sheet(self) -> Sheet:
        shown = shown_recipe(self.commission, self.slug, self.drawn_on).subscribers
        views = shown.rows[0] if shown else ()
        return next(
            view for view in views if isinstance(view, Sheet) and view.head.edition.key == self.card.edition
        )


def printed(
    sheet: Sheet,
    imprint: Imprint,
    paper: str,
    page_address: str,
    cuts: Mapping[str, str],
    theme: Theme,
    cache: Cache,
) -> bytes:
    """One card by the press of this process.

    Raises CardFailed, MachineLacks, NotKept, TemplateError and ThemeUnusable.
    """
    photos = {file: cache.fetch(key) for file, key in cuts.items()}
    press = _warm_press(theme, cache)
    try:
        return press.print_card(sheet, imprint, paper, photos, page_address)
    except (TemplateError, ThemeUnusable):
        raise
    except Exception as problem:  # a press that trips over one card must name it, whatever it raises
        head, reason = sheet.head, f"{type(problem).__name__}: {problem}"
        raise CardFailed(head.slug, head.edition.key, paper, reason) from problem


def card_key(cache: Cache, theme: Theme, card: CardRow, cuts: Mapping[str, str]) -> str:
    """The key of a printed card: of all that it shows, the theme, and its photos as they are cut."""
    return cache.key(
        "card", theme.paper_digest(style_on(card.paper)), card.made_of, repr(sorted(cuts.items()))
    )


def print_all(work: Sequence[CardWork], cache: Cache, workers: Workers, progress: Progress) -> None:
    """Have every card in the cache, those with most steps first so that no worker ends long after the rest.

    Raises CardFailed, MachineLacks, OSError, WorkerDied.
    """
    missing = [each for each in work if not cache.has(each.key)]
    progress.reuse(len(work) - len(missing))
    longest_first = sorted(missing, key=lambda each: each.card.steps, reverse=True)
    for start in range(0, len(longest_first), _CARDS_OF_A_SHIFT):
        if start:
            workers.rest()
        workers.worked_off(longest_first[start : start + _CARDS_OF_A_SHIFT], progress.advance)


@functools.lru_cache(maxsize=1)
def _warm_press(theme: Theme, cache: Cache) -> CardPress:
    """One press a process and theme: its fonts, cut by now, and its styles are read once."""
    try:
        press = CardPress(theme, card_faces(theme, cache))
    except (ImportError, OSError) as problem:
        if isinstance(problem, OSError) and problem.errno is not None:
            raise  # the system's own refusal, such as a full disk; a library that is missing has no number
        raise MachineLacks(str(problem)) from problem
    gc.freeze()  # fonts and styles last as long as the process: no search for garbage need look at them
    return press
