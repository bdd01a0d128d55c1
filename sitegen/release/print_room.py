"""Where fonts and photos are cut and cards printed: the dear work of a build, shared out and kept."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path

from pydantic import TypeAdapter

from sitegen.faults import Fault, Severity
from sitegen.press.picture import Picture
from sitegen.press.theme import Theme
from sitegen.release.bundle_work import BundleWork, ReadyBundle, bundle_key, bundles_to_make, kept_size
from sitegen.release.cache import Cache, program_hash
from sitegen.release.card_work import CardWork, card_key, print_all
from sitegen.release.commission import CommissionFile
from sitegen.release.parcel import PageRow, Parcel, pages_from, parcel_from
from sitegen.release.photo_work import Box, CardCutWork, CutWork, Work, cut_all, kept_picture
from sitegen.release.proof import is_kitchens_own
from sitegen.release.recipe_work import HeadingsWork, KitchenWork, PagesWork, SetWork
from sitegen.release.sites import imprints
from sitegen.release.steps import Progress, Step
from sitegen.release.survey import Survey
from sitegen.release.theme_work import face_work, theme_files
from sitegen.release.workers import Workers
from sitegen.source.headings import Heading

_HEADING = TypeAdapter(Heading)
_FAULTS = TypeAdapter(tuple[Fault, ...])
_BATCH = 20
"""Headings that one piece of work reads: each is a few milliseconds."""

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

    def headings(self, slugs: Sequence[str], digests: Mapping[str, str]) -> tuple[Heading, ...]:
        """The headings of all recipes whose file has the right shape, sorted. digests: see `Survey`."""
        keys = {
            slug: self.cache.key("heading", program_hash(), slug, _file_digest(slug, digests))
            for slug in slugs
        }
        kept = {slug: body for slug, key in keys.items() if (body := self.cache.get(key)) is not None}
        found = {slug: _HEADING.validate_json(body) for slug, body in kept.items()}
        missing = [slug for slug in slugs if slug not in found]
        batches = [tuple(missing[at : at + _BATCH]) for at in range(0, len(missing), _BATCH)]
        for read in self.workers.worked_off([HeadingsWork(self.root, batch) for batch in batches], _nobody):
            for heading in read:
                found[heading.slug] = heading
                self.cache.put(keys[heading.slug], _HEADING.dump_json(heading))
        return tuple(heading for _, heading in sorted(found.items()))

    def parcels(self, commission: CommissionFile, survey: Survey) -> tuple[Parcel, ...]:
        """Every recipe proofed, set, and sorted by audience, in the order of their slugs."""
        self.progress.begin(Step.SHEETS, len(survey.slugs))
        found, work = {}, []
        for slug in survey.slugs:
            key = survey.parcel_key(slug, self.cache)
            parcel = _kept_parcel(self.cache, key)
            if parcel is None:
                work.append(SetWork(commission, slug, survey.drawn_on(slug), key))
            else:
                found[slug] = parcel
                self.progress.reuse(1)
        for parcel in self.workers.worked_off(work, self.progress.advance):
            found[parcel.slug] = parcel
        return tuple(found[slug] for slug in survey.slugs)

    def kitchen_faults(self, commission: CommissionFile, survey: Survey) -> tuple[Fault, ...]:
        """What is wrong with prices and orders."""
        if not any(map(is_kitchens_own, survey.digests)):
            return ()
        key = survey.kitchen_key(self.cache)
        kept = self.cache.get(key)
        if kept is not None:
            return _FAULTS.validate_json(kept)
        faults = KitchenWork(commission, survey.kitchen_slugs()).made()
        if any(fault.severity is Severity.ERROR for fault in faults):
            # What was perhaps meant is told from all recipes.
            return KitchenWork(commission, survey.slugs).made()
        self.cache.put(key, _FAULTS.dump_json(faults))
        return faults

    def cut(
        self,
        photos: Sequence[str],
        boxes: Sequence[tuple[str, Box]],
        digests: Mapping[str, str],
        theme: Theme,
    ) -> "CutPhotos":
        """Every cut that pages and cards will want.

        photos: of the pages of both trees. boxes: (photo, box) on cards. digests: hash of each photo.
        The theme's fonts, the longest pieces of this work, are begun first.
        """
        for_pages = [CutWork(self.root, file, digests[file], self.cache) for file in photos]
        for_cards = {
            (file, box): CardCutWork(self.root, file, digests[file], box, self.cache) for file, box in boxes
        }
        wanted: list[Work] = [*face_work(theme, self.cache), *for_pages, *for_cards.values()]
        self.progress.begin(Step.PICTURES, len(wanted))
        cut_all(wanted, self.workers, self.progress)
        kept = [kept_picture(work) for work in for_pages]
        return CutPhotos(
            pictures={picture.file: picture for picture, _ in kept},
            files={picture.file: files for picture, files in kept},
            card_cuts={each: work.key for each, work in for_cards.items()},
            theme_files=theme_files(theme, self.cache),
        )

    def cards(
        self,
        commission: CommissionFile,
        survey: Survey,
        theme: Theme,
        parcels: Sequence[Parcel],
        photos: "CutPhotos",
    ) -> Mapping[str, str]:
        """Print the cards of the subscribers' tree. Returns path in the tree -> cache key."""
        work = []
        for parcel in parcels:
            drawn_on = survey.drawn_on(parcel.slug)
            for card in parcel.cards:
                cuts = {photo[0]: photos.card_cuts[photo] for photo in card.photos}
                key = card_key(self.cache, theme, card, cuts)
                work.append(CardWork(commission, parcel.slug, drawn_on, card, cuts, key))
        self.progress.begin(Step.CARDS, len(work))
        print_all(work, self.cache, self.workers, self.progress)
        return {each.card.path: each.key for each in work}

    def bundles(
        self,
        commission: CommissionFile,
        survey: Survey,
        theme: Theme,
        parcels: Sequence[Parcel],
        cards: Mapping[str, str],
    ) -> tuple[ReadyBundle, ...]:
        """The bundles of the day, each with its contents printed. cards: path -> cache key, all printed."""
        imprint, paper = imprints(survey.school).subscribers, survey.school.whole_paper
        found = bundles_to_make(parcels, cards, survey.day)
        keys = [bundle_key(self.cache, theme, imprint, bundle, paper) for bundle in found]
        work = [
            BundleWork(commission, bundle, key)
            for bundle, key in zip(found, keys, strict=True)
            if kept_size(self.cache, key) is None
        ]
        self.workers.worked_off(work, _nobody)
        sizes = [kept_size(self.cache, key) or 0 for key in keys]
        return tuple(ReadyBundle(*each) for each in zip(found, keys, sizes, strict=True))

    def pages(
        self, commission: CommissionFile, survey: Survey, theme: Theme, parcels: Sequence[Parcel]
    ) -> Mapping[str, tuple[PageRow, ...]]:
        """Make the pages and texts of each recipe. Returns them by slug."""
        self.progress.begin(Step.PAGES, len(parcels))
        found, work = {}, []
        for parcel in parcels:
            key = self.cache.key("pages", survey.parcel_key(parcel.slug, self.cache), theme.page_digest)
            rows = _kept_pages(self.cache, key)
            if rows is None:
                work.append(PagesWork(commission, parcel.slug, survey.drawn_on(parcel.slug), key))
            else:
                found[parcel.slug] = rows
                self.progress.reuse(1)
        made = self.workers.worked_off(work, self.progress.advance)
        return found | {each.slug: rows for each, rows in zip(work, made, strict=True)}


@dataclass(frozen=True)
class CutPhotos:
    """pictures: as pages use them, by photo. card_cuts: (photo, box) -> cache key.

    theme_files: (path in the tree, cache key) of each file that pages need of the theme.
    """

    pictures: Mapping[str, Picture]
    files: PictureFiles
    card_cuts: Mapping[tuple[str, Box], str]
    theme_files: tuple[tuple[str, str], ...]


def _kept_parcel(cache: Cache, key: str) -> Parcel | None:
    """A recipe's parcel, if it is kept with the recipe's secrets."""
    body = cache.get(key)
    parcel = None if body is None else parcel_from(body)
    return parcel if parcel is not None and cache.has(parcel.secrets) else None


def _kept_pages(cache: Cache, key: str) -> tuple[PageRow, ...] | None:
    """The pages of a recipe, if they are all kept."""
    body = cache.get(key)
    rows = None if body is None else pages_from(body)
    return rows if rows is not None and all(cache.has(row.key) for row in rows) else None


def _file_digest(slug: str, digests: Mapping[str, str]) -> str:
    return digests.get(f"content/recipes/{slug}/recipe.yaml", "")


def _nobody() -> None:
    """Headings are read too fast for anyone to want to know how far."""
