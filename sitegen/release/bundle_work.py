"""Bundles of cards made ready: their contents printed and their sizes counted once, and kept."""

import functools
import json
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import date
from hashlib import sha256

from sitegen.kitchen.editions import Edition
from sitegen.press.bundles import (
    STYLE,
    BundleContents,
    ContentsCard,
    ContentsPress,
    ContentsRecipe,
    page_count,
)
from sitegen.press.theme import Theme
from sitegen.press.zip_pieces import ZipEntry, zip_pieces
from sitegen.release.bundles import (
    Bundle,
    BundledCard,
    BundledRecipe,
    Change,
    Item,
    Why,
    bundles_of,
    changes_by_recipe,
)
from sitegen.release.cache import Cache, program_hash
from sitegen.release.commission import CommissionFile
from sitegen.release.parcel import Parcel
from sitegen.release.shown import PAPER_TITLES
from sitegen.release.theme_work import card_faces
from sitegen.sheet.days import MONTHS, day_text

_MEGABYTE = 1_000_000


@dataclass(frozen=True)
class BundleWork:
    """Prints the contents of one bundle and counts its bytes, a card at a time."""

    commission: CommissionFile
    bundle: Bundle
    key: str

    def made(self) -> None:
        commission = self.commission.read()
        cache, theme = commission.cache, commission.theme
        content = self.commission.school()
        school = content.school
        assert school is not None
        edition = content.tables.editions[school.editions[0]]
        size = 0
        recipes = []
        for item in self.bundle.items:
            cards = []
            for card in item.recipe.cards:
                body = cache.fetch(card.key)
                size += len(body)
                cards.append(ContentsCard(card.title, _inside(card), _pages_text(page_count(body))))
            recipes.append(ContentsRecipe(item.recipe.title, tuple(_news(item, edition)), tuple(cards)))
        contents = BundleContents(bundle_title(self.bundle), _told(self.bundle), tuple(recipes))
        body = _warm_press(theme, cache).pdf(contents, commission.imprints.subscribers, school.whole_paper)
        cache.put(self.key, body)
        cache.put(_size_key(cache, self.key), json.dumps(size + len(body)).encode())


@dataclass(frozen=True)
class ReadyBundle:
    """A bundle whose parts all are in the cache. key: of its contents. size: about how many bytes it has."""

    bundle: Bundle
    key: str
    size: int

    @property
    def size_text(self) -> str:
        """'4.2 MB'."""
        return f"{max(self.size / _MEGABYTE, 0.1):.1f} MB"

    def digest(self, cache: Cache) -> str:
        """The hash of its ZIP file if one was made of the same parts before, '' where not."""
        return (cache.get(self._zip_key(cache)) or b"").decode()

    def pieces(self, cache: Cache) -> Iterator[bytes]:
        """Its ZIP file; a piece holds one card. Its hash is kept once it is whole."""
        digest = sha256()
        for piece in zip_pieces(self._entries(cache)):
            digest.update(piece)
            yield piece
        cache.put(self._zip_key(cache), digest.hexdigest().encode())

    def _entries(self, cache: Cache) -> Iterator[ZipEntry]:
        folder = self.bundle.name
        yield f"{folder}/contents.pdf", functools.partial(cache.fetch, self.key)
        for item in self.bundle.items:
            for card in item.recipe.cards:
                yield f"{folder}/{_inside(card)}", functools.partial(cache.fetch, card.key)

    def _zip_key(self, cache: Cache) -> str:
        cards = [cache.digest(card.key) for item in self.bundle.items for card in item.recipe.cards]
        return cache.key("zip", self.key, repr((cache.digest(self.key), cards)))


def bundles_to_make(parcels: Sequence[Parcel], cards: Mapping[str, str], day: date) -> tuple[Bundle, ...]:
    """The bundles of a day. cards: path in the subscribers' tree -> cache key."""
    own = {parcel.slug: _own_changes(parcel) for parcel in parcels}
    changes = changes_by_recipe(own, {parcel.slug: parcel.about for parcel in parcels})
    recipes = [
        BundledRecipe(
            slug=parcel.slug,
            title=parcel.title,
            released=date.fromisoformat(parcel.subscribers.entry.published),
            changes=changes[parcel.slug],
            cards=tuple(
                BundledCard(card.path, cards[card.path], f"{card.edition_title}, {PAPER_TITLES[card.paper]}")
                for card in parcel.cards
            ),
        )
        for parcel in parcels
        if parcel.subscribers is not None
    ]
    return bundles_of(recipes, day)


def bundle_key(cache: Cache, theme: Theme, imprint: object, bundle: Bundle, paper: str) -> str:
    """The key of a bundle's contents: of all that it prints."""
    return cache.key("bundle", program_hash(), theme.paper_digest(STYLE), repr((imprint, bundle, paper)))


def kept_size(cache: Cache, key: str) -> int | None:
    """About how many bytes a bundle has; None where its contents are not kept."""
    body = cache.get(_size_key(cache, key))
    return int(json.loads(body)) if body is not None and cache.has(key) else None


def bundle_title(bundle: Bundle) -> str:
    """'July 2026', 'Changed since 1 July 2026'."""
    month = f"{MONTHS[bundle.begins.month - 1]} {bundle.begins.year}"
    return f"Changed since 1 {month}" if bundle.is_of_changes else month


def _told(bundle: Bundle) -> str:
    if bundle.is_of_changes:
        return "Cards that are new, or changed, since that day: print them again."
    return "The cards of all that came out in this month."


def _size_key(cache: Cache, key: str) -> str:
    return cache.key("bundle size", key)


def _inside(card: BundledCard) -> str:
    """Where a card lies in the folder of its bundle: 'cards/<recipe>-<edition>-<paper>.pdf'."""
    return card.path


def _own_changes(parcel: Parcel) -> tuple[Change, ...]:
    return tuple(Change(date.fromisoformat(one.iso), one.note, parcel.title) for one in parcel.revisions)


def _news(item: Item, edition: Edition) -> Iterator[tuple[str, str]]:
    if item.why is Why.NEW:
        yield day_text(item.recipe.released, edition), "new."
    for change in item.changes:
        of = "" if change.of == item.recipe.title else f"{change.of}: "
        yield day_text(change.day, edition), f"{of}{change.note}"


def _pages_text(pages: int) -> str:
    return f"{pages} page" if pages == 1 else f"{pages} pages"


@functools.lru_cache(maxsize=1)
def _warm_press(theme: Theme, cache: Cache) -> ContentsPress:
    """One press a process and theme: its fonts, cut by now, and its styles are read once."""
    return ContentsPress(theme, card_faces(theme, cache))
