"""Cards, each printed once and kept until something that made it changes."""

import functools
import gc
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field

from sitegen.press.card import CardPress
from sitegen.press.imprint import Imprint
from sitegen.press.theme import Theme
from sitegen.release.cache import Cache
from sitegen.release.theme_work import ThemeWork
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


@dataclass(frozen=True)
class CardWork:
    """Prints one card. photos: file -> key of its cut in the cache. page_address: of the recipe's page."""

    sheet: Sheet = field(repr=False)
    imprint: Imprint
    paper: str
    page_address: str
    photos: Mapping[str, str] = field(hash=False)
    theme: Theme
    cache: Cache

    @property
    def key(self) -> str:
        made_of = (self.sheet, self.imprint, self.paper, self.page_address, sorted(self.photos.items()))
        return self.cache.key("card", self.theme.digest, repr(made_of))

    def made(self) -> None:
        photos = {file: self.cache.fetch(key) for file, key in self.photos.items()}
        press = _warm_press(self.theme, self.cache)
        head = self.sheet.head
        try:
            card = press.print_card(self.sheet, self.imprint, self.paper, photos, self.page_address)
        except Exception as problem:  # a press that trips over one card must name it, whatever it raises
            reason = f"{type(problem).__name__}: {problem}"
            raise CardFailed(head.slug, head.edition.key, self.paper, reason) from problem
        self.cache.put(self.key, card)


def print_all(work: Sequence[CardWork], workers: Workers, on_each: Callable[[], None]) -> None:
    """Have every card in the cache, those with most steps first so that no worker ends long after the rest.

    Raises CardFailed, MachineLacks, OSError, WorkerDied.
    """
    missing = [each for each in work if not each.cache.has(each.key)]
    for _ in range(len(work) - len(missing)):
        on_each()
    longest_first = sorted(missing, key=_steps, reverse=True)
    workers.worked_off(longest_first, on_each)


def _steps(work: CardWork) -> int:
    return sum(len(part.steps) for part in work.sheet.components)


@functools.cache
def _warm_press(theme: Theme, cache: Cache) -> CardPress:
    """One press a process and theme: its fonts, cut by now, and its styles are read once."""
    try:
        press = CardPress(theme, ThemeWork(theme, cache).faces())
    except (ImportError, OSError) as problem:
        raise MachineLacks(str(problem)) from problem
    gc.freeze()  # fonts and styles last as long as the process: no search for garbage need look at them
    return press
