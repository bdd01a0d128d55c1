"""A recipe file of the right shape -> Recipe: every line, phrase and sentence read, all faults kept."""

import re
from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction
from typing import TypeVar

from sitegen.faults import Fault, FaultCode, Place
from sitegen.kitchen.filmed import SaidOtherwise
from sitegen.kitchen.keeping import PLACES
from sitegen.kitchen.method import Photo, Prose, Reference, Step
from sitegen.kitchen.recipe import (
    BaseUse,
    BatchAsk,
    Component,
    DoughAim,
    Keeps,
    Line,
    Makes,
    OfferedSwap,
    PublicShows,
    Recipe,
    Release,
    Revision,
    SettledAdvice,
    Video,
)
from sitegen.source.base_uses import base_uses_from
from sitegen.source.captions import captions_named
from sitegen.source.chapters import read_chapter, read_moment
from sitegen.source.component_words import read_degrees, read_friction, read_kind
from sitegen.source.context import Context
from sitegen.source.durations import read_span_of_minutes
from sitegen.source.holding import read_holding
from sitegen.source.keepings import read_keeps
from sitegen.source.lines import read_line
from sitegen.source.misread import Misread
from sitegen.source.models import ComponentFile, PhotoFile, RecipeFile, StepFile
from sitegen.source.nodes import Path
from sitegen.source.percents import read_percent
from sitegen.source.photos import Folder, photo_named
from sitegen.source.phrases import read_batch, read_fill, read_oven
from sitegen.source.prose import read_prose
from sitegen.source.reader import Document
from sitegen.source.references import AMBIGUOUS, UNLISTED
from sitegen.source.serves import read_serves
from sitegen.source.settling import settled
from sitegen.source.vessels import read_tin
from sitegen.source.yields import read_makes

Value = TypeVar("Value")

MOST_LOST = Fraction(70)
"""Percent of its weight that a component may be said to lose: more than a dried meringue does."""

# What a step is said to miss may be the ingredient line that could not be read.
_OF_LOST_LINES = (UNLISTED, AMBIGUOUS)
_BRACES = re.compile(r"\{[^{}]*\}")


@dataclass(frozen=True)
class RecipeSource:
    """One recipe file, of the right shape and not yet read word by word."""

    slug: str
    folder: Folder
    document: Document
    file: RecipeFile


def recipe_from(source: RecipeSource, context: Context) -> tuple[Recipe | None, tuple[Fault, ...]]:
    """The recipe, and every fault of its words.

    None where a line, a phrase or a sentence could not be read: what the checks would say of the rest
    misleads. A picture that is not there is a fault too, but leaves the recipe whole.
    """
    reading = _RecipeReading(source, context)
    recipe = reading.recipe()
    return (None if reading.is_misread else recipe), tuple(reading.faults)


def release_of(file: RecipeFile, document: Document) -> Release:
    """Its days; those of a draft where the file names none."""
    release = file.release
    if release is None:
        return Release(None, None, PublicShows.TEASER)
    shows = PublicShows(release.public_shows)
    return Release(release.subscribers, release.public, shows, document.key_place(("release",)))


class _RecipeReading:
    """One walk through a recipe file. faults grow; `is_misread` once a text could not be read."""

    def __init__(self, source: RecipeSource, context: Context) -> None:
        self.faults: list[Fault] = []
        self.is_misread = False
        self._silent: tuple[FaultCode, ...] = ()
        self._file = source.file
        self._slug = source.slug
        self._folder = source.folder
        self._document = source.document
        self._context = context

    def recipe(self) -> Recipe | None:
        file = self._file
        makes = self._read(("makes",), lambda text, at: read_makes(text, at, self._context))
        tin = self._read(("tin",), lambda text, at: read_tin(text, at, self._context))
        components = settled(self._components())
        batches = self._batches(makes)
        if makes is None:
            return None
        return Recipe(
            slug=self._slug,
            title=file.title,
            summary=file.summary,
            makes=makes,
            components=components,
            tin=tin,
            tags=tuple(file.tags),
            photo=self._photo(file.photo, ("photo",)),
            release=release_of(self._file, self._document),
            video=self._video(),
            batches=batches,
            notes=file.notes or "",
            revisions=self._revisions(),
            serves=self._read(("serves",), lambda text, _: read_serves(text)),
            declared=self._context.declared,
            swaps=self._swaps(),
            base_uses=self._base_uses(),
            settled=self._settled(),
            said_otherwise=self._said_otherwise(),
            at=self._document.place(("title",)),
        )

    def _components(self) -> tuple[Component, ...]:
        return tuple(self._component(title, file) for title, file in self._file.components.items())

    def _component(self, title: str, file: ComponentFile) -> Component:
        path: Path = ("components", title)
        lines = self._lines(path, len(file.ingredients))
        self._silent = _OF_LOST_LINES if len(lines) < len(file.ingredients) else ()
        steps = tuple(
            self._step((*path, "method", index), step, lines) for index, step in enumerate(file.method)
        )
        return Component(
            title=title,
            lines=lines,
            steps=steps,
            keeps=file.keeps.note or "" if file.keeps else "",
            keeping=self._keeping((*path, "keeps")),
            kind=self._read((*path, "kind"), lambda text, at: read_kind(text, at, self._context)) or "",
            bake_loss=self._read((*path, "bake-loss"), lambda text, _: read_percent(text, MOST_LOST)),
            dough=self._dough((*path, "dough")),
            at=self._document.key_place(path),
        )

    def _dough(self, path: Path) -> DoughAim | None:
        temperature = self._read((*path, "temperature"), read_degrees)
        if temperature is None:
            return None
        return DoughAim(
            temperature=temperature,
            room=self._read((*path, "room"), read_degrees),
            flour=self._read((*path, "flour"), read_degrees),
            preferment=self._read((*path, "preferment"), read_degrees),
            friction=self._read((*path, "friction"), lambda text, at: read_friction(text, at, self._context)),
        )

    def _keeping(self, path: Path) -> tuple[Keeps, ...]:
        read = (self._keeps(path, place) for place in PLACES)
        return tuple(keeps for keeps in read if keeps is not None)

    def _keeps(self, path: Path, place: str) -> Keeps | None:
        return self._read((*path, place), lambda text, _: read_keeps(text, place))

    def _base_uses(self) -> tuple[BaseUse, ...]:
        uses, faults = base_uses_from(self._document, self._file.base_recipes, self._context)
        self.faults += faults
        return uses

    def _lines(self, path: Path, count: int) -> tuple[Line, ...]:
        read = (
            self._read((*path, "ingredients", index), lambda text, at: read_line(text, at, self._context))
            for index in range(count)
        )
        return tuple(line for line in read if line is not None)

    def _step(self, path: Path, file: StepFile, lines: Sequence[Line]) -> Step:
        within = self._read((*path, "within"), read_span_of_minutes)
        holding = self._read((*path, "holds"), read_holding)
        return Step(
            prose=self._prose((*path, "text"), lines),
            hands_on_min=self._read((*path, "hands-on"), read_span_of_minutes),
            wait_min=self._read((*path, "wait"), read_span_of_minutes),
            oven=self._read((*path, "oven"), lambda text, at: read_oven(text, at, self._context)),
            fill=self._read((*path, "fill"), read_fill),
            until=file.until or "",
            photo=self._photo(file.photo, (*path, "photo")),
            after=tuple(file.after or ()),
            tutorial=file.tutorial or "",
            within_min=within.low if within else None,
            holds_min=holding.minutes if holding else None,
            holds_how=holding.how if holding else "",
            tools=tuple(file.tools),
            waits_in=file.waits_in or "",
            heat=file.heat or "",
            grows=file.grows,
            oven_at=self._document.place((*path, "oven")),
            wait_at=self._document.place((*path, "wait")),
            fill_at=self._document.place((*path, "fill")),
            at=self._document.place(path),
        )

    def _prose(self, path: Path, lines: Sequence[Line]) -> Prose:
        """The prose of a step, each reference with its place: the nth stands in the nth pair of braces."""
        prose = self._read(path, lambda text, at: read_prose(text, at, lines, self._context)) or ()
        text = str(self._document.value(path))
        braces = (self._document.place_in(path, *found.span()) for found in _BRACES.finditer(text))
        return tuple(
            replace(part, at=next(braces)) if isinstance(part, Reference) else part for part in prose
        )

    def _photo(self, file: PhotoFile | None, path: Path) -> Photo | None:
        if file is None:
            return None
        photo, faults = photo_named(self._folder, file.file, file.alt, self._document.place((*path, "file")))
        self.faults += faults
        return photo

    def _batches(self, makes: Makes | None) -> tuple[BatchAsk, ...]:
        paths: list[Path] = [("batches", index) for index in range(len(self._file.batches or ()))]
        read = (
            self._read(path, lambda text, at: read_batch(text, at, self._context, makes)) for path in paths
        )
        return tuple(batch for batch in read if batch is not None)

    def _video(self) -> Video | None:
        file = self._file.video
        if file is None:
            return None
        captions = ""
        if file.captions:
            place = self._document.place(("video", "captions"))
            captions, faults = captions_named(self._folder, file.captions, place)
            self.faults += faults
        read = (self._read(("video", "chapters", index), read_chapter) for index in range(len(file.chapters)))
        return Video(
            address=file.address,
            captions=captions,
            captions_at=self._document.place(("video", "captions")),
            published=file.published,
            chapters=tuple(chapter for chapter in read if chapter is not None),
            at=self._document.key_place(("video",)),
        )

    def _swaps(self) -> tuple[OfferedSwap, ...]:
        """Each under the larder's own name for it; a check tells of those that nothing is known of."""
        rows = [self._context.tables.larder.find(name) for name in self._file.swaps]
        return tuple(
            OfferedSwap(row.key if row else name, self._document.place(("swaps", index)))
            for index, (row, name) in enumerate(zip(rows, self._file.swaps, strict=True))
        )

    def _settled(self) -> tuple[SettledAdvice, ...]:
        return tuple(
            SettledAdvice(code, reason, self._document.key_place(("settled", code)))
            for code, reason in self._file.settled.items()
        )

    def _said_otherwise(self) -> tuple[SaidOtherwise, ...]:
        return tuple(
            SaidOtherwise(
                about=file.about,
                reason=file.because,
                moment_s=self._read(("said-otherwise", index, "at"), read_moment),
                at=self._document.place(("said-otherwise", index, "about")),
            )
            for index, file in enumerate(self._file.said_otherwise)
        )

    def _revisions(self) -> tuple[Revision, ...]:
        return tuple(
            Revision(file.date, file.note, file.notify, self._document.place(("revisions", index, "date")))
            for index, file in enumerate(self._file.revisions)
        )

    def _read(self, path: Path, read: Callable[[str, Place], Value]) -> Value | None:
        """The text at a path as a value; None where there is none, or where its fault was kept."""
        text = self._document.value(path)
        if not isinstance(text, str):
            return None
        try:
            return read(text.strip(), self._document.place(path))
        except Misread as problem:
            self.is_misread = True
            if problem.code in self._silent:
                return None
            blanks = len(text) - len(text.lstrip())
            at = self._document.place_in(path, blanks + problem.start, blanks + problem.end)
            self.faults.append(problem.code.fault(at, problem.sentence, problem.way_out))
            return None
