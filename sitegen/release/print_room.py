"""Where fonts and photos are cut and cards printed: the dear work of a build, shared out and kept."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from pathlib import Path

from sitegen.press import addresses
from sitegen.press.card import photos_on
from sitegen.press.picture import Picture
from sitegen.press.theme import Theme
from sitegen.release.cache import Cache
from sitegen.release.card_work import CardWork, print_all
from sitegen.release.photo_work import (
    Box,
    CardCutWork,
    CutWork,
    Work,
    cut_all,
    kept_picture,
    photo_digests,
)
from sitegen.release.sites import Site
from sitegen.release.steps import Progress, Step
from sitegen.release.theme_work import ThemeWork
from sitegen.release.workers import Workers
from sitegen.sheet.values import Sheet

PictureFiles = Mapping[str, tuple[tuple[str, str], ...]]
"""Photo -> (path in the tree, cache key) of each of its files."""


@dataclass(frozen=True)
class Imports:
    """What a process needs before it can print: a second's work, to be done while recipes are being read."""

    def made(self) -> None:
        import sitegen.press.card_fetcher
        import sitegen.press.pictures  # noqa: F401


@dataclass(frozen=True)
class PrintRoom:
    """root: the folder that holds `content/`, absolute."""

    root: Path
    cache: Cache
    workers: Workers
    progress: Progress

    def make_ready(self) -> None:
        """Where nothing is kept yet there will be work for all processes: have them begin now."""
        if not self.cache.folder.exists():
            self.workers.make_ready(Imports())

    def cut(self, photos: Sequence[str], subscribers: Site) -> "CutPhotos":
        """Every cut that pages and cards will want. photos: of the pages of both trees.

        The theme's fonts, the longest piece of this work, are begun first.
        """
        listed = _card_list(subscribers)
        boxes = dict.fromkeys(box for sheet, paper, *_ in listed for box in photos_on(sheet, paper).items())
        digests = photo_digests(self.root, [*photos, *(file for file, _ in boxes)])
        for_pages = [CutWork(self.root, file, digests[file], self.cache) for file in photos]
        for_cards = {
            (file, box): CardCutWork(self.root, file, digests[file], box, self.cache) for file, box in boxes
        }
        theme = ThemeWork(_for_sending(subscribers.theme), self.cache)
        wanted: list[Work] = [theme, *for_pages, *for_cards.values()]
        self.progress.begin(Step.PICTURES, len(wanted))
        cut_all(wanted, self.workers, self.progress.advance)
        kept = [kept_picture(work) for work in for_pages]
        return CutPhotos(
            pictures={picture.file: picture for picture, _ in kept},
            files={picture.file: files for picture, files in kept},
            card_cuts={each: work.key for each, work in for_cards.items()},
            theme_files=theme.files(),
        )

    def cards(self, site: Site, photos: "CutPhotos") -> Mapping[str, str]:
        """Print the cards of the subscribers' site. Returns path in the tree -> cache key."""
        theme = _for_sending(site.theme)
        work = {
            path: CardWork(
                sheet=sheet,
                imprint=site.imprint,
                paper=paper,
                page_address=site.imprint.address + page,
                photos={each[0]: photos.card_cuts[each] for each in photos_on(sheet, paper).items()},
                theme=theme,
                cache=self.cache,
            )
            for sheet, paper, path, page in _card_list(site)
        }
        self.progress.begin(Step.CARDS, len(work))
        print_all(list(work.values()), self.workers, self.progress.advance)
        return {path: each.key for path, each in work.items()}


@dataclass(frozen=True)
class CutPhotos:
    """pictures: as pages use them, by photo. card_cuts: (photo, box) -> cache key.

    theme_files: (path in the tree, cache key) of each file that pages need of the theme.
    """

    pictures: Mapping[str, Picture]
    files: PictureFiles
    card_cuts: Mapping[tuple[str, Box], str]
    theme_files: tuple[tuple[str, str], ...]


def _for_sending(theme: Theme) -> Theme:
    """The theme without what the pages' templates keep in it, which no process can send."""
    return replace(theme)


def _card_list(site: Site) -> Iterator[tuple[Sheet, str, str, str]]:
    """(sheet, paper, path of the card, path of the recipe's page in that edition) of each card to print."""
    for recipe in site.recipes:
        for view in recipe.rows[0]:
            if isinstance(view, Sheet):
                for paper in recipe.papers:
                    path = addresses.card(recipe.slug, view.head.edition.key, paper)
                    yield view, paper, path, recipe.path(view)
