"""The folder read again after a save: only what the save touched, recipe by recipe, the wanted ones first.

What a recipe is made from is told by the same keys as those of a build (`release/survey.py`), so that what is
the same is never read twice, and what is not the same always.
"""

import os
from collections import OrderedDict
from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace
from datetime import date, datetime
from pathlib import Path

from sitegen.desk.bench import Bench, RecipeState, as_if_out
from sitegen.desk.file_marks import FileMark, file_marks
from sitegen.desk.last_publish import LastPublish
from sitegen.desk.theme_reading import ThemeReading
from sitegen.faults import Fault, Place, Severity
from sitegen.release.build import WORKSHOP
from sitegen.release.cache import Cache, makers_hash
from sitegen.release.codes import CANNOT_READ
from sitegen.release.days import school_day
from sitegen.release.parcel import Parcel
from sitegen.release.proof import is_kitchens_own
from sitegen.release.recipe_reading import ReadRecipe, read_kitchen_faults, read_recipe
from sitegen.release.shown import Shown, card_rows, listed, shown_of
from sitegen.release.sites import imprints
from sitegen.release.survey import Survey
from sitegen.source.headings import Heading
from sitegen.source.library import faults_of_headings, read_headings, read_school
from sitegen.source.school import Content

_RECIPES = "content/recipes/"
_AT_HAND = 8
"""Recipes whose sheets are kept: half a megabyte each."""


@dataclass(frozen=True)
class AtHand:
    """A recipe with its sheets. shown: as if it were out for both audiences; None while it has errors."""

    read: ReadRecipe
    shown: Shown | None


class Reading:
    """Reads one school, again and again. All its calls are made from one thread at a time."""

    def __init__(self, root: Path, clock: Callable[[], datetime], on: date | None) -> None:
        """root: the folder that holds `content/`. on: the day to show; None for today's, in its own zone."""
        self._root = root.resolve()
        self._clock = clock
        self._on = on
        self._cache = Cache(self._root / WORKSHOP / "cache", makers_hash())
        self._marks: Mapping[str, FileMark] = {}
        self._common: tuple[object, Content, tuple[str, ...]] | None = None
        self._headings: dict[str, tuple[str, Heading | None]] = {}
        self._theme = ThemeReading(self._root)
        self._published = LastPublish(self._root)
        self._kitchen: tuple[str, tuple[Fault, ...]] = ("", ())
        self._at_hand: OrderedDict[str, AtHand] = OrderedDict()
        self.bench = self._surveyed({}, ())

    @property
    def theme_folders(self) -> tuple[Path, ...]:
        """Where the theme lies, and those that it inherits from."""
        return self._theme.folders

    def renewed(self) -> Bench:
        """The bench after a save. Recipes that are to be read again are pending, and keep their old state."""
        self.bench = self._surveyed(self.bench.states, self.bench.kitchen, self.bench.number + 1)
        return self.bench

    def failed(self, problem: Exception) -> Bench:
        """The bench with the fault that a renewal ended in; the next one begins anew."""
        sentence = f"the folder could not be read: {problem}"
        fault = CANNOT_READ.fault(Place("content"), sentence, "save a file to have it read again")
        own = (*(each for each in self.bench.own if each.place != fault.place), fault)
        self.bench = replace(self.bench, number=self.bench.number + 1, own=own, pending=frozenset())
        return self.bench

    def read(self, slug: str) -> Bench:
        """The bench once a recipe that was pending is read."""
        bench = self.bench
        if slug in bench.pending and bench.survey is not None:
            state = self._state(bench.survey, slug)
            states = {each: bench.states.get(each) for each in bench.slugs} | {slug: state}
            self.bench = replace(
                bench,
                number=bench.number + 1,
                states={each: found for each, found in states.items() if found is not None},
                pending=bench.pending - {slug},
            )
        return self.bench

    def read_kitchen(self) -> Bench:
        """The bench once prices and orders are proofed against its recipes."""
        survey = self.bench.survey
        if survey is not None:
            key = survey.kitchen_key(self._cache) if any(map(is_kitchens_own, survey.digests)) else ""
            if key != self._kitchen[0]:
                self._kitchen = (key, _kitchen_faults(survey) if key else ())
            if self._kitchen[1] != self.bench.kitchen:
                self.bench = replace(self.bench, number=self.bench.number + 1, kitchen=self._kitchen[1])
        return self.bench

    def at_hand(self, slug: str) -> AtHand | None:
        """A recipe with its sheets, read anew where they are not kept; None for one that is not there."""
        survey = self.bench.survey
        if survey is None or slug not in survey.slugs:
            return None
        return self._with_sheets(survey, slug)[1]

    def _surveyed(
        self, states: Mapping[str, RecipeState], kitchen: tuple[Fault, ...], number: int = 0
    ) -> Bench:
        self._marks = file_marks(self._root, self._marks)
        digests = {file: found.mark for file, found in self._marks.items()}
        common, slugs = self._in_common(digests)
        headings = self._all_headings(slugs, digests)
        school = common.school
        theme, theme_faults = self._theme.read(school.theme) if school else (None, ())
        day = self._on or (school_day(self._clock(), school.time_zone) if school else self._clock().date())
        survey = Survey(self._root, common, school, slugs, headings, digests, day) if school else None
        keys = {slug: survey.parcel_key(slug, self._cache) for slug in slugs} if survey else {}
        kept = {slug: states[slug] for slug in slugs if slug in states}
        return Bench(
            root=self._root,
            day=day,
            number=number,
            common=common,
            slugs=slugs,
            headings=headings,
            survey=survey,
            theme=theme,
            cache=self._cache,
            states=kept if survey else {},
            pending=frozenset(
                slug for slug, key in keys.items() if slug not in kept or kept[slug].key != key
            ),
            own=(*common.faults, *faults_of_headings(headings), *theme_faults),
            kitchen=kitchen,
            marks=digests,
            since=self._published.since(digests),
        )

    def _in_common(self, digests: Mapping[str, str]) -> tuple[Content, tuple[str, ...]]:
        """What all recipes have in common, and their folders; read anew where a file or a folder differs."""
        files = [(file, mark) for file, mark in digests.items() if not file.startswith(_RECIPES)]
        key = (files, _names(self._root / "content" / "recipes"), (self._root / "content").is_dir())
        if self._common is None or self._common[0] != key:
            self._common = (key, *read_school(self._root))
        return self._common[1], self._common[2]

    def _all_headings(self, slugs: tuple[str, ...], digests: Mapping[str, str]) -> tuple[Heading, ...]:
        now = {slug: digests.get(f"{_RECIPES}{slug}/recipe.yaml", "") for slug in slugs}
        changed = [slug for slug in slugs if self._headings.get(slug, ("?", None))[0] != now[slug]]
        read = {heading.slug: heading for heading in read_headings(self._root, changed)}
        kept = {slug: heading for slug, (_, heading) in self._headings.items() if slug in now}
        self._headings = {
            slug: (now[slug], read.get(slug) if slug in changed else kept[slug]) for slug in slugs
        }
        return tuple(heading for _, heading in self._headings.values() if heading is not None)

    def _state(self, survey: Survey, slug: str) -> RecipeState:
        key, hand = self._with_sheets(survey, slug)
        read, shown = hand.read, hand.shown
        files = {fault.place.file for fault in (*read.proofed.faults, *read.proofed.idle)}
        parcel = Parcel(slug, read.title, read.proofed.faults, read.proofed.idle)
        if shown is not None:
            parcel = replace(
                parcel,
                about=shown.about,
                public=listed(shown.public),
                subscribers=listed(shown.subscribers),
                cards=tuple(card_rows(shown.subscribers, imprints(survey.school).subscribers)),
                revisions=shown.revisions,
            )
        texts = {file: lines for file, lines in read.content.texts.items() if file in files}
        return RecipeState(key, parcel, read.recipe, texts)

    def _with_sheets(self, survey: Survey, slug: str) -> tuple[str, AtHand]:
        key = survey.parcel_key(slug, self._cache)
        hand = self._at_hand.pop(key, None) or _hand(survey, slug)
        self._at_hand[key] = hand
        while len(self._at_hand) > _AT_HAND:
            self._at_hand.popitem(last=False)
        return key, hand


def _hand(survey: Survey, slug: str) -> AtHand:
    read = read_recipe(survey.content, survey.headings, slug, survey.drawn_on(slug))
    if not read.has_sheets or read.recipe is None or read.setter is None:
        return AtHand(read, None)
    standings = survey.standings
    shown = shown_of(
        read.setter.all_sheets(read.recipe),
        as_if_out(read.recipe.release),
        survey.school.papers,
        [each for each, stands in standings.items() if stands.public is not None],
        [each for each, stands in standings.items() if stands.subscribers],
    )
    return AtHand(read, shown)


def _kitchen_faults(survey: Survey) -> tuple[Fault, ...]:
    faults = read_kitchen_faults(survey.content, survey.headings, survey.kitchen_slugs())
    if any(fault.severity is Severity.ERROR for fault in faults):
        # What was perhaps meant is told from all recipes.
        return read_kitchen_faults(survey.content, survey.headings, survey.slugs)
    return faults


def _names(folder: Path) -> tuple[tuple[str, bool], ...]:
    """What lies in a folder, and which of it is a folder itself; () where there is none."""
    try:
        return tuple(sorted((each.name, each.is_dir()) for each in os.scandir(folder)))
    except OSError:
        return ()
