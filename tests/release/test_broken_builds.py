"""Whatever goes wrong while a build runs ends in a fault with a place, and the old output is kept."""

import os
import shutil
import signal
import subprocess
import sys
import time
from collections.abc import Callable
from pathlib import Path

import pytest

from sitegen.release.build import Order, Refused, publish
from sitegen.release.steps import Silent, Step
from tests.release.conftest import Done
from tests.release.small_school import NOON, SUMMER, publish_school, tree_hashes, write_recipe

PROJECT = Path(__file__).parents[2]
STEP_PHOTO = "content/recipes/open-biscuits/step.jpg"


class Meddler(Silent):
    """Does something to the folder when a step begins."""

    def __init__(self, step: Step, deed: Callable[[], object]) -> None:
        self.step = step
        self.deed = deed

    def begin(self, step: Step, total: int) -> None:  # noqa: ARG002 (the protocol's)
        if step is self.step:
            self.deed()


def refusal(root: Path, step: Step = Step.READ, deed: Callable[[], object] = lambda: None) -> Refused:
    """Why a publish is refused in which something is done at a step; the output is as before."""
    before = tree_hashes(root / "output")
    with pytest.raises(Refused) as refused:
        publish(root, Order(NOON, SUMMER), Meddler(step, deed))
    assert tree_hashes(root / "output") == before
    return refused.value


def told(refused: Refused) -> set[tuple[str, str]]:
    return {(fault.code, fault.place.file) for fault in refused.faults}


def new_photo(root: Path) -> Path:
    """A photo that no build has cut."""
    from PIL import Image

    photo = root / STEP_PHOTO
    Image.new("RGB", (640, 480), (9, 90, 200)).save(photo, "JPEG")
    return photo


def replaced_by(photo: Path, make: Callable[[Path], object]) -> None:
    photo.unlink()
    make(photo)


@pytest.mark.parametrize("make", [os.mkfifo, os.mkdir], ids=["pipe", "folder"])
def test_what_is_no_photo_is_a_fault(again: Path, make: Callable[[Path], object]) -> None:
    """A pipe would keep a build waiting for ever."""
    replaced_by(again / STEP_PHOTO, make)
    refused = refusal(again)
    assert any("step.jpg" in str(fault) for fault in refused.faults)


def test_a_photo_that_vanishes_while_a_build_runs_is_a_fault(again: Path) -> None:
    photo = new_photo(again)
    assert told(refusal(again, Step.PICTURES, photo.unlink)) == {("cannot-read", STEP_PHOTO)}


def test_a_photo_that_is_saved_while_a_build_runs_is_a_fault(again: Path) -> None:
    photo = new_photo(again)

    def save() -> None:
        photo.write_bytes(photo.read_bytes() + b"\0")

    assert told(refusal(again, Step.PICTURES, save)) == {("changed-meanwhile", STEP_PHOTO)}


@pytest.mark.parametrize("damage", [lambda body: body[:-9], lambda body: body[:-1] + b"?", lambda _: b""])
def test_damaged_entries_of_the_cache_are_made_anew(
    done: Done, again: Path, damage: Callable[[bytes], bytes]
) -> None:
    """All but what takes seconds to cut: entries of up to 20 kB."""
    for entry in [path for path in (again / ".sitegen" / "cache").rglob("*") if path.is_file()]:
        if entry.stat().st_size < 20_000:
            entry.write_bytes(damage(entry.read_bytes()))
    shutil.rmtree(again / "output")
    publish_school(again)
    assert tree_hashes(again / "output") == tree_hashes(done.output)


@pytest.mark.parametrize("step", [Step.CARDS, Step.FILES])
def test_a_cache_that_is_removed_while_a_build_runs_does_no_harm(again: Path, step: Step) -> None:
    """It begins again by itself; where the cache is removed then too, it says so."""
    write_recipe(again, "open-biscuits", summary="Thinner than before")
    before = tree_hashes(again / "output")
    meddler = Meddler(step, lambda: shutil.rmtree(again / ".sitegen" / "cache", ignore_errors=True))
    with pytest.raises(Refused) as refused:
        publish(again, Order(NOON, SUMMER), meddler)
    assert told(refused.value) == {("changed-meanwhile", ".sitegen")}
    assert tree_hashes(again / "output") == before


@pytest.mark.parametrize(
    ("place", "told_at"),
    [("output", "output"), (".sitegen", ".sitegen"), (".sitegen/cache", ".sitegen/cache")],
)
def test_a_file_where_a_folder_should_be_is_a_fault(again: Path, place: str, told_at: str) -> None:
    shutil.rmtree(again / place)
    (again / place).write_text("a note")
    write_recipe(again, "open-biscuits", summary="Thinner than before")
    with pytest.raises(Refused) as refused:
        publish_school(again)
    (fault,) = refused.value.faults
    assert fault.code == "cannot-write"
    assert fault.place.file.startswith(told_at)
    assert "a file stands where a folder should be" in fault.sentence
    assert (again / place).read_text() == "a note"


@pytest.mark.parametrize("seconds", [-(10**9), 10**9])
def test_a_clock_that_jumps_changes_nothing(
    done: Done, again: Path, monkeypatch: pytest.MonkeyPatch, seconds: int
) -> None:
    clock = time.time
    shutil.rmtree(again / "output")
    monkeypatch.setattr(time, "time", lambda: clock() + seconds)
    publish_school(again)
    assert tree_hashes(again / "output") == tree_hashes(done.output)


FULL = """
import os, sys
from datetime import date, datetime, UTC
from pathlib import Path
from sitegen.release.build import Order, Refused, publish
from sitegen.release.steps import Silent

root = Path(sys.argv[1])
left = None

def full(event, arguments):
    global left
    if left is None:
        return
    opened = event == "open" and arguments[2] & (os.O_WRONLY | os.O_RDWR)
    wants = opened and not str(arguments[0]).endswith("lock") or event in {"os.mkdir", "os.rename"}
    if wants and str(arguments[0]).startswith(str(root)):
        if left == 0:
            raise OSError(28, "No space left on device", str(arguments[0]))
        left -= 1

sys.addaudithook(full)
number = 0
while True:
    left = number
    try:
        publish(root, Order(datetime(2026, 7, 15, 12, tzinfo=UTC), date(2026, 7, 15)), Silent())
    except Refused as refused:
        left = None
        print(number, *(f"{fault.code}: {fault.sentence}" for fault in refused.faults), flush=True)
        report = (root / "output" / "report.json").read_bytes()
        assert report == Path(sys.argv[2]).read_bytes(), "the output has changed"
    else:
        break
    number = number * 2 + 1
print("published", number)
"""
"""A disk that is full from the n-th file, folder or renaming on, for n of 0, 1, 3, 7 and so on."""


def test_a_disk_that_fills_up_at_any_moment_keeps_the_old_output(done: Done, again: Path) -> None:
    for slug in ("open-biscuits", "teaser-biscuits"):
        write_recipe(again, slug, summary="Thinner than before")
    before = tree_hashes(again / "output")
    ran = subprocess.run(
        [sys.executable, "-c", FULL, str(again.resolve()), str(done.output / "report.json")],
        capture_output=True,
        text=True,
        check=False,
        env={**os.environ, "PYTHONPATH": str(PROJECT)},
    )
    assert ran.returncode == 0, ran.stderr
    *refusals, published = ran.stdout.splitlines()
    assert published.startswith("published")
    assert len(refusals) >= 5
    assert all("cannot-write: it cannot be written: the disk is full" in line for line in refusals), refusals
    assert tree_hashes(again / "output") != before


def begun(root: Path) -> "subprocess.Popen[str]":
    return subprocess.Popen(
        [sys.executable, "-m", "sitegen", "publish", "--on", SUMMER.isoformat(), "--jobs", "2"],
        cwd=root,
        stdout=subprocess.DEVNULL,
        stderr=subprocess.PIPE,
        text=True,
        env={**os.environ, "PYTHONPATH": str(PROJECT)},
    )


def test_a_process_that_is_killed_while_it_prints_is_a_fault(again: Path) -> None:
    """As a system does that has no memory left."""
    shutil.rmtree(again / ".sitegen" / "cache")
    before = tree_hashes(again / "output")
    with begun(again) as child:
        assert child.stderr is not None
        assert any(line.startswith(f"{Step.PICTURES}/") for line in child.stderr)
        for worker in children_of(child.pid):
            os.kill(worker, signal.SIGKILL)
        told = child.stderr.read()
    assert child.returncode == 1, told
    assert "worker-died" in told
    assert "Traceback" not in told
    assert tree_hashes(again / "output") == before


def children_of(process: int) -> list[int]:
    """Its workers: what it has begun to do work, and not what looks after their semaphores."""
    told = Path(f"/proc/{process}/task/{process}/children").read_text().split()
    lines = {int(child): Path(f"/proc/{child}/cmdline").read_bytes() for child in told}
    return [child for child, line in lines.items() if b"spawn_main" in line]


def test_a_second_build_says_that_the_first_is_running(again: Path) -> None:
    shutil.rmtree(again / ".sitegen" / "cache")
    with begun(again) as first:
        assert first.stderr is not None
        assert first.stderr.readline().startswith(f"{Step.READ}/")
        with begun(again) as second:
            _, told = second.communicate()
        first.terminate()
        first.stderr.read()
    assert second.returncode == 1
    assert "another-build" in told
    assert "wait until it has ended" in told
