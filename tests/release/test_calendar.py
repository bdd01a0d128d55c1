"""What goes out when, and what is not ready."""

from dataclasses import replace
from datetime import UTC, date, datetime
from pathlib import Path

import pytest

from sitegen.faults import Fault, Place, Severity
from sitegen.kitchen.method import Photo
from sitegen.kitchen.recipe import PublicShows, Recipe, Release, Revision, Video
from sitegen.release.asking import AtFault
from sitegen.release.calendar import (
    Goes,
    Pictures,
    Readiness,
    ReleaseCalendar,
    Span,
    entries_of,
    readiness_of,
    release_calendar,
)
from sitegen.source.headings import Heading
from tests.release.small_school import write_school
from tests.sheet.pantry import recipe, says
from tests.sheet.test_build import SPONGE

AT = Place("content/recipes/bay/recipe.yaml", 1, 1, 1)
JULY = Release(date(2026, 7, 3), date(2026, 7, 10), PublicShows.INGREDIENTS)
BEFORE_MIDNIGHT = datetime(2026, 7, 9, 23, 30, tzinfo=UTC)


def heading(release: Release) -> Heading:
    return Heading("bay", "Bay cake", (), (), release, declares=False, at=AT)


def revised(*revisions: tuple[int, str, bool]) -> Recipe:
    rows = tuple(Revision(date(2026, 7, day), note, notify) for day, note, notify in revisions)
    return replace(recipe(SPONGE), revisions=rows)


def goes(release: Release, of: Recipe | None = None) -> list[tuple[int, Goes, str]]:
    return [(one.day.day, one.goes, one.told) for one in entries_of(heading(release), of, Readiness())]


def test_a_recipe_goes_to_subscribers_then_to_everyone() -> None:
    assert goes(JULY) == [(3, Goes.TO_SUBSCRIBERS, ""), (10, Goes.TO_EVERYONE, "ingredients")]
    assert goes(replace(JULY, public=None)) == [(3, Goes.TO_SUBSCRIBERS, "")]


def test_revisions_that_readers_must_hear_of_are_one_notice_a_day() -> None:
    changed = revised((20, "Oil is less.", True), (20, "So is salt.", True), (21, "Wording.", False))
    assert goes(JULY, changed)[2:] == [(20, Goes.CHANGE_NOTICE, "Oil is less. So is salt.")]


def test_a_draft_goes_nowhere() -> None:
    draft = Release(None, None, PublicShows.TEASER)
    assert goes(draft, revised((20, "Oil is less.", True))) == []


def test_what_lacks_is_counted() -> None:
    made = replace(
        recipe(replace(SPONGE, steps=(*SPONGE.steps, says("Eat.", photo=Photo("a.jpg", "A cake", AT))))),
        video=Video("https://video.example/bay"),
    )
    faults = [Fault(AT, "a", "b"), Fault(AT, "c", "d", severity=Severity.ADVICE), Fault(Place("x"), "e", "f")]
    ready = readiness_of("bay", made, faults)
    assert (ready.errors, ready.advice) == (1, 1)
    assert ready.pictures == Pictures(finished=False, steps=4, bare_steps=3, film=True, captions=False)
    assert readiness_of("bay", None, faults).pictures is None


@pytest.fixture(scope="module")
def school(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return write_school(tmp_path_factory.mktemp("calendar"))


@pytest.fixture(scope="module")
def everything(school: Path) -> ReleaseCalendar:
    return release_calendar(school, BEFORE_MIDNIGHT, Span(past=True))


def test_today_is_the_schools_own(everything: ReleaseCalendar) -> None:
    """Half an hour before midnight in Greenwich it is the next day under British Summer Time (UTC + 1)."""
    assert everything.on == date(2026, 7, 10)
    assert everything.host == "tansyrow.example"


def test_entries_come_by_day_and_the_subscribers_first(everything: ReleaseCalendar) -> None:
    days = [entry.day for entry in everything.entries]
    assert days == sorted(days)
    assert [entry.goes for entry in everything.entries] == [
        *[Goes.TO_SUBSCRIBERS] * 4,
        *[Goes.TO_EVERYONE] * 4,
        *[Goes.CHANGE_NOTICE] * 4,
    ]
    assert [draft.slug for draft in everything.drafts] == ["draft-biscuits"]
    assert not everything.is_held_up


def test_only_the_days_asked_for_are_told(everything: ReleaseCalendar, school: Path) -> None:
    span = Span(on=date(2026, 7, 11), until=date(2026, 7, 18))
    found = release_calendar(school, BEFORE_MIDNIGHT, span)
    assert [(entry.slug, entry.day.day) for entry in found.entries] == [("coming-biscuits", 17)]
    assert set(found.entries) < set(everything.entries)


def test_an_error_anywhere_holds_up_what_is_to_come(tmp_path: Path) -> None:
    broken = write_school(tmp_path)
    file = broken / "content/recipes/teaser-biscuits/recipe.yaml"
    file.write_text(file.read_text().replace("180 g plain flour", "180 g plain flor"))
    march = release_calendar(broken, BEFORE_MIDNIGHT, Span(date(2026, 7, 11), date(2026, 7, 18)))
    assert march.is_held_up
    assert march.elsewhere == {"content/recipes/teaser-biscuits/recipe.yaml": 1}
    assert not release_calendar(broken, BEFORE_MIDNIGHT, Span(date(2027, 1, 1))).is_held_up
    whole = release_calendar(broken, BEFORE_MIDNIGHT, Span(past=True))
    mine = [entry.readiness for entry in whole.entries if entry.slug == "teaser-biscuits"]
    assert [(ready.errors, ready.pictures) for ready in mine] == [(1, None)] * 2
    assert whole.elsewhere == {}


def test_without_a_readable_site_file_there_is_no_calendar(tmp_path: Path) -> None:
    (tmp_path / "content").mkdir()
    with pytest.raises(AtFault):
        release_calendar(tmp_path, BEFORE_MIDNIGHT, Span())
