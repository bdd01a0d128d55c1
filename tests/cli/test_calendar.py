"""`sitegen calendar` from the outside, and its words."""

import json
from datetime import date
from io import StringIO
from pathlib import Path

import pytest
from icalendar import Calendar
from rich.console import Console

from sitegen.cli.calendar_table import show_calendar
from sitegen.cli.calendar_text import calendar_events, lacks, plain_calendar
from sitegen.release.calendar import Draft, Entry, Goes, Pictures, Readiness, ReleaseCalendar
from tests.cli.conftest import Run

WANTING = Readiness(2, 1, Pictures(finished=False, steps=9, bare_steps=3, film=True, captions=False))
WHOLE = Readiness(0, 0, Pictures(finished=True, steps=1, bare_steps=0, film=True, captions=True))
CALENDAR = ReleaseCalendar(
    on=date(2026, 7, 4),
    time_zone="Europe/London",
    host="tansyrow.example",
    entries=(
        Entry(date(2026, 7, 3), Goes.TO_SUBSCRIBERS, "bay", "Bay cake", "", WHOLE),
        Entry(date(2026, 7, 10), Goes.TO_EVERYONE, "bay", "Bay cake", "teaser", WANTING),
        Entry(date(2026, 7, 20), Goes.CHANGE_NOTICE, "bay", "Bay cake", "Oil is less.", Readiness()),
    ),
    drafts=(Draft("fig", "Fig [cake]", WHOLE),),
    elsewhere={"content/larder.yaml": 2},
)


@pytest.mark.parametrize(
    ("readiness", "words"),
    [
        (WHOLE, ()),
        (Readiness(1), ("1 error",)),
        (
            WANTING,
            (
                "2 errors",
                "no photo of the finished bake",
                "3 of 9 steps without a photo",
                "no captions",
                "1 piece of advice",
            ),
        ),
        (Readiness(0, 0, Pictures(True, 1, 1, False, False)), ("1 of 1 step without a photo", "no film")),
    ],
)
def test_what_lacks_is_said_the_worst_first(readiness: Readiness, words: tuple[str, ...]) -> None:
    assert lacks(readiness) == words


def test_plain_text_has_a_block_a_day() -> None:
    text = plain_calendar(CALENDAR)
    assert "Friday 2026-07-03\n  to subscribers  Bay cake: ready\n" in text
    assert "  to everyone     Bay cake (teaser): 2 errors; no photo" in text
    assert "  change notice   Bay cake: ready\n                  Oil is less.\n" in text
    assert "Drafts\n  Fig [cake]: ready\n" in text
    assert text.endswith("stop every publish: content/larder.yaml (2)\n")


def test_a_terminal_shows_the_same_in_a_table() -> None:
    out = StringIO()
    show_calendar(CALENDAR, Console(file=out, width=100, force_terminal=True))
    for word in ("Friday 2026-07-10", "2 errors", "Oil is less.", "Fig [cake]", "content/larder.yaml (2)"):
        assert word in out.getvalue()


def test_events_keep_their_names_when_a_day_is_moved() -> None:
    names = [event.name for event in calendar_events(CALENDAR)]
    assert names == ["to-subscribers-bay", "to-everyone-bay", "change-notice-bay-2026-07-20"]


def test_the_command_shows_days_to_come_and_writes_a_file(run: Run, school: Path) -> None:
    ran = run(school, "calendar", "--on", "2026-07-11", "--until", "2026-07-18", "--ics", "days.ics")
    assert ran.returncode == 0
    assert "Friday 2026-07-17\n  to everyone     Coming biscuits (ingredients): 2 of 3 steps" in ran.stdout
    assert "2026-07-10" not in ran.stdout
    (event,) = Calendar.from_ical((school / "days.ics").read_bytes()).walk("VEVENT")
    assert event.decoded("dtstart") == date(2026, 7, 17)


def test_an_error_that_holds_something_up_ends_with_1(run: Run, school: Path) -> None:
    file = school / "content" / "recipes" / "draft-biscuits" / "recipe.yaml"
    file.write_text(file.read_text().replace("180 g plain flour", "180 g plain flor"))
    ran = run(school, "calendar", "--on", "2026-07-11", "--json")
    assert ran.returncode == 1
    told = json.loads(ran.stdout)
    assert told["drafts"][0]["readiness"] == {"errors": 1, "advice": 0, "pictures": None}
    assert told["on"] == "2026-07-11"
