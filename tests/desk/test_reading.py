"""A save touches what is made of the file, and nothing else; whatever is saved, nothing shown is stale."""

import os
import shutil
from collections.abc import Callable, Sequence
from datetime import UTC, datetime, time
from pathlib import Path

import pytest
from hypothesis import HealthCheck, Phase, given, settings
from hypothesis import strategies as st

from sitegen.desk.live_pictures import LivePictures
from sitegen.desk.live_site import LiveSite, NotMade
from sitegen.desk.reading import Reading
from sitegen.desk.states import desk_of
from sitegen.press.leaf import Tree
from tests.desk.running_desk import read_again, read_all
from tests.release.changing_school import CHANGES, State

SLUGS = ("squares", "topped-squares", "thin-squares", "curd")
PATHS = (
    "index.html",
    "contents.html",
    "tutorials/weighing.html",
    *(f"recipes/{slug}.html" for slug in SLUGS),
)


@pytest.fixture
def school(tmp_path: Path) -> Path:
    return State().written(tmp_path / "school")


def read(root: Path, clock: Callable[[], datetime] | None = None) -> Reading:
    reading = Reading(root, clock or (lambda: noon(State())), None)
    read_all(reading)
    return reading


def noon(state: State) -> datetime:
    return datetime.combine(state.day, time(12), UTC)


def all_shown(reading: Reading) -> dict[str, object]:
    """Everything that a browser can see."""
    site = LiveSite(reading, LivePictures(reading.bench.root, reading.bench.cache))
    shown: dict[str, object] = {"desk": desk_of(reading.bench)}
    for tree in (Tree.PUBLIC, Tree.SUBSCRIBERS):
        for path in PATHS:
            try:
                page = site.page(tree, path)
                shown[f"{tree}/{path}"] = page.body if page else None
            except NotMade as problem:
                shown[f"{tree}/{path}"] = problem.faults
    return shown


@settings(max_examples=2, phases=(Phase.explicit, Phase.generate), suppress_health_check=list(HealthCheck))
@given(changes=st.lists(st.sampled_from(sorted(CHANGES)), min_size=1, max_size=4))
def test_after_any_saves_all_is_shown_as_if_it_were_read_for_the_first_time(
    tmp_path_factory: pytest.TempPathFactory, changes: Sequence[str]
) -> None:
    state = State()
    root = state.written(tmp_path_factory.mktemp("changed") / "school")
    reading = read(root, lambda: noon(state))
    for change in changes:
        state = CHANGES[change](state)
        state.written(root)
        read_again(reading)
    assert all_shown(reading) == all_shown(read(root, lambda: noon(state)))


TOUCHED = {
    "content/recipes/thin-squares/recipe.yaml": {"thin-squares"},
    "content/recipes/thin-squares/step.jpg": {"thin-squares"},
    "content/recipes/curd/recipe.yaml": {"curd", "topped-squares"},
    "content/larder.yaml": set(SLUGS),
    "content/tutorials/weighing.md": set(),
    "themes/shelf/theme.yaml": set(),
}


def test_a_save_touches_what_is_made_of_the_file(school: Path) -> None:
    reading = read(school)
    for file, touched in TOUCHED.items():
        with (school / file).open("ab") as opened:
            opened.write(b"\n")
        assert reading.renewed().pending == touched, file
        read_all(reading)
    recipe = school / "content" / "recipes" / "squares" / "recipe.yaml"
    recipe.write_bytes(recipe.read_bytes())
    assert not reading.renewed().pending, "saved as it was"


def test_two_saves_within_a_tick_of_the_clock_are_two(school: Path) -> None:
    """A disk's clock may be coarse: the second has the time and the size of the first."""
    recipe = school / "content" / "recipes" / "thin-squares" / "recipe.yaml"
    reading = read(school)
    recipe.write_text(recipe.read_text().replace("Pale and short.", "Pale and shirt."))
    times = (recipe.stat().st_atime_ns, recipe.stat().st_mtime_ns)
    read_again(reading)
    recipe.write_text(recipe.read_text().replace("Pale and shirt.", "Pale and short."))
    os.utime(recipe, ns=times)
    assert reading.renewed().pending == {"thin-squares"}


HALF = (b"", b"title: [", b"\0\xff", b"title: " + b"x" * 2_000_000)


def test_a_half_written_file_is_a_fault_until_it_is_whole(school: Path) -> None:
    reading = read(school)
    sound = all_shown(reading)
    recipe = school / "content" / "recipes" / "curd" / "recipe.yaml"
    whole = recipe.read_bytes()
    for half in HALF:
        recipe.write_bytes(half)
        reading.renewed()
        assert desk_of(reading.bench)
        read_all(reading)
        row = next(row for row in desk_of(reading.bench).rows if row.slug == "curd")
        assert row.errors, half[:20]
    recipe.write_bytes(whole)
    read_again(reading)
    assert all_shown(reading) == sound


def test_what_goes_away_may_come_again(school: Path) -> None:
    reading = read(school)
    sound = all_shown(reading)
    for gone in ("content", "content/recipes", "content/recipes/curd", "themes"):
        shutil.move(school / gone, school / "elsewhere")
        read_again(reading)
        assert all_shown(reading) != sound, gone
        shutil.move(school / "elsewhere", school / gone)
        read_again(reading)
        assert all_shown(reading) == sound, gone


def test_a_link_out_of_the_folder_is_not_followed(school: Path, tmp_path: Path) -> None:
    outside = tmp_path / "outside.yaml"
    outside.write_text("title: Secret of another folder\n")
    recipe = school / "content" / "recipes" / "squares" / "recipe.yaml"
    recipe.unlink()
    recipe.symlink_to(outside)
    shown = all_shown(read(school))
    assert "Secret of another folder" not in repr(shown)
    assert any(row.errors for row in shown["desk"].rows if row.slug == "squares")  # type: ignore[attr-defined]
