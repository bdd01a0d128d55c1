"""What goes out when, to whom, and what is not ready for it: days, counts and lacks, told from a proof."""

from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import date, datetime
from enum import StrEnum
from itertools import groupby
from pathlib import Path
from urllib.parse import urlsplit

from sitegen.faults import Fault, Severity
from sitegen.kitchen.recipe import Recipe
from sitegen.release.asking import AtFault
from sitegen.release.days import is_draft, school_day
from sitegen.release.proof import proof
from sitegen.source.headings import Heading

_RECIPES = "content/recipes/"


class Goes(StrEnum):
    """What happens to a recipe on a day, in the order in which a day tells it."""

    TO_SUBSCRIBERS = "to subscribers"
    TO_EVERYONE = "to everyone"
    CHANGE_NOTICE = "change notice"


@dataclass(frozen=True)
class Pictures:
    """finished: whether the finished bake has a photo. steps, bare_steps: its own, and those without one.

    film, captions: whether it has an address of the film, and captions of it.
    """

    finished: bool
    steps: int
    bare_steps: int
    film: bool
    captions: bool


@dataclass(frozen=True)
class Readiness:
    """errors, advice: faults in the recipe's folder.

    pictures: None for a recipe that cannot be read, and for a notice, which needs none.
    """

    errors: int = 0
    advice: int = 0
    pictures: Pictures | None = None


@dataclass(frozen=True)
class Entry:
    """One thing that goes out. told: how much everyone sees, or what a change notice tells; '' else."""

    day: date
    goes: Goes
    slug: str
    title: str
    told: str
    readiness: Readiness


@dataclass(frozen=True)
class Draft:
    """A recipe that no day publishes."""

    slug: str
    title: str
    readiness: Readiness


@dataclass(frozen=True)
class ReleaseCalendar:
    """on: the day from which on things are to come. entries: by day, what is past among them if asked for.

    elsewhere: file -> errors in it, of all that is neither listed nor a draft; any error stops a publish.
    host: of the school's address.
    """

    on: date
    time_zone: str
    host: str
    entries: tuple[Entry, ...]
    drafts: tuple[Draft, ...]
    elsewhere: Mapping[str, int]

    @property
    def is_held_up(self) -> bool:
        """Whether something that is to come in the time asked for cannot go out, for an error anywhere."""
        shown = [*(entry.readiness for entry in self.entries), *(draft.readiness for draft in self.drafts)]
        has_errors = bool(self.elsewhere) or any(readiness.errors for readiness in shown)
        return has_errors and any(entry.day >= self.on for entry in self.entries)


@dataclass(frozen=True)
class Span:
    """Which days are asked for. on: the first that counts as to come, None for today. until: the last.

    past: with those before `on`.
    """

    on: date | None = None
    until: date | None = None
    past: bool = False

    def holds(self, day: date, today: date) -> bool:
        return (self.past or day >= today) and (self.until is None or day <= self.until)


def release_calendar(root: Path, now: datetime, span: Span) -> ReleaseCalendar:
    """Proof a folder and tell what goes out of it.

    root: the folder that holds `content/`. now: aware; today is its date in the school's time zone.
    Raises AtFault without a readable `site.yaml`.
    """
    proofed = proof(root)
    content = proofed.content
    if content.school is None:
        raise AtFault(proofed.errors, content.texts)
    today = span.on or school_day(now, content.school.time_zone)
    recipes = {recipe.slug: recipe for recipe in content.recipes}
    readiness = {
        heading.slug: readiness_of(heading.slug, recipes.get(heading.slug), proofed.faults)
        for heading in content.headings
    }
    entries = [
        entry
        for heading in content.headings
        for entry in entries_of(heading, recipes.get(heading.slug), readiness[heading.slug])
        if span.holds(entry.day, today)
    ]
    drafts = [
        Draft(heading.slug, heading.title, readiness[heading.slug])
        for heading in content.headings
        if is_draft(heading.release)
    ]
    listed = {entry.slug for entry in entries} | {draft.slug for draft in drafts}
    return ReleaseCalendar(
        on=today,
        time_zone=content.school.time_zone,
        host=urlsplit(content.school.address).hostname or "",
        entries=tuple(sorted(entries, key=_in_order)),
        drafts=tuple(sorted(drafts, key=lambda draft: draft.title)),
        elsewhere=_elsewhere(proofed.errors, listed),
    )


def entries_of(heading: Heading, recipe: Recipe | None, readiness: Readiness) -> Iterator[Entry]:
    """All that ever goes out of one recipe. recipe: None where it cannot be read; its days are known.

    Revisions of one day are one notice, which only errors hold up.
    """
    release = heading.release

    def entry(day: date, goes: Goes, told: str = "", ready: Readiness = readiness) -> Entry:
        return Entry(day, goes, heading.slug, heading.title, told, ready)

    if release.subscribers is not None:
        yield entry(release.subscribers, Goes.TO_SUBSCRIBERS)
    if release.public is not None:
        yield entry(release.public, Goes.TO_EVERYONE, release.public_shows.value)
    told = [one for one in recipe.revisions if one.notify] if recipe and not is_draft(release) else []
    for day, revisions in groupby(sorted(told, key=lambda one: one.date), key=lambda one: one.date):
        note = " ".join(one.note for one in revisions)
        yield entry(day, Goes.CHANGE_NOTICE, note, Readiness(readiness.errors))


def readiness_of(slug: str, recipe: Recipe | None, faults: Sequence[Fault]) -> Readiness:
    """What one recipe lacks. faults: of the whole school."""
    own = Counter(fault.severity for fault in faults if _slug_of(fault.place.file) == slug)
    return Readiness(
        own[Severity.ERROR], own[Severity.ADVICE], pictures_of(recipe) if recipe is not None else None
    )


def pictures_of(recipe: Recipe) -> Pictures:
    """Its photos and its film, those of its base recipes left aside."""
    steps = [step for part in recipe.components for step in part.steps]
    return Pictures(
        finished=recipe.photo is not None,
        steps=len(steps),
        bare_steps=sum(step.photo is None for step in steps),
        film=recipe.video is not None,
        captions=recipe.video is not None and bool(recipe.video.captions),
    )


def _in_order(entry: Entry) -> tuple[date, int, str]:
    return entry.day, list(Goes).index(entry.goes), entry.title


def _elsewhere(errors: Sequence[Fault], listed: set[str]) -> dict[str, int]:
    files = (fault.place.file for fault in errors)
    return dict(sorted(Counter(file for file in files if _slug_of(file) not in listed).items()))


def _slug_of(file: str) -> str:
    """The recipe in whose folder a file lies; '' for none."""
    return file.removeprefix(_RECIPES).partition("/")[0] if file.startswith(_RECIPES) else ""
