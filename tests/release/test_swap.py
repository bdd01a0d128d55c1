"""A build appears whole or not at all: with the system's exchange, and without it."""

import os
import shutil
import signal
import subprocess
import sys
import time
from pathlib import Path

import pytest

from sitegen.release import swap
from sitegen.release.exchange import CannotExchange

TREES = ("public", "subscribers", "texts")


def stage_with(workshop: Path, mark: str) -> Path:
    stage = swap.fresh_stage(workshop)
    for tree in TREES:
        (stage / tree).mkdir()
        for number in range(5):
            (stage / tree / f"{number}.html").write_text(mark)
    (stage / "report.json").write_text(mark)
    return stage


def marks_in(output: Path) -> set[str]:
    return {path.read_text() for path in output.rglob("*") if path.is_file() and path.name != ".gitkeep"}


def refuse(_one: Path, _other: Path) -> None:
    raise CannotExchange("no such call here")


@pytest.fixture(params=["exchange", "entry by entry"])
def way(request: pytest.FixtureRequest, monkeypatch: pytest.MonkeyPatch) -> str:
    if request.param != "exchange":
        monkeypatch.setattr(swap, "exchange", refuse)
    return str(request.param)


@pytest.mark.usefixtures("way")
def test_the_new_output_replaces_the_old_one_in_full(tmp_path: Path) -> None:
    output = tmp_path / "output"
    swap.appear(stage_with(tmp_path / ".sitegen", "old"), output)
    (output / "public" / "gone.html").write_text("old")
    swap.appear(stage_with(tmp_path / ".sitegen", "new"), output)
    assert marks_in(output) == {"new"}
    assert sorted(entry.name for entry in output.iterdir()) == [
        "public",
        "report.json",
        "subscribers",
        "texts",
    ]
    assert not (tmp_path / ".sitegen" / swap.STAGE).exists()


@pytest.mark.usefixtures("way")
def test_files_that_no_build_makes_stay_in_the_output(tmp_path: Path) -> None:
    output = tmp_path / "output"
    output.mkdir()
    (output / ".gitkeep").write_text("")
    (output / "host-settings").mkdir()
    (output / "host-settings" / "rules").write_text("kept")
    swap.appear(stage_with(tmp_path / ".sitegen", "new"), output)
    assert (output / ".gitkeep").exists()
    assert (output / "host-settings" / "rules").read_text() == "kept"


@pytest.mark.usefixtures("way")
def test_an_output_folder_that_is_a_link_stays_one(tmp_path: Path) -> None:
    (tmp_path / "elsewhere").mkdir()
    (tmp_path / "output").symlink_to(tmp_path / "elsewhere")
    swap.appear(stage_with(tmp_path / ".sitegen", "new"), tmp_path / "output")
    assert (tmp_path / "output").is_symlink()
    assert marks_in(tmp_path / "elsewhere") == {"new"}


@pytest.mark.parametrize("renames_before_the_cut", range(9))
def test_a_swap_cut_short_entry_by_entry_is_completed_by_the_next_run(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, renames_before_the_cut: int
) -> None:
    output = tmp_path / "output"
    swap.appear(stage_with(tmp_path / ".sitegen", "old"), output)
    monkeypatch.setattr(swap, "exchange", refuse)
    rename, done = Path.rename, []

    def rename_until_cut(self: Path, target: Path) -> Path:
        if len(done) == renames_before_the_cut:
            raise InterruptedError
        done.append(target)
        return rename(self, target)

    monkeypatch.setattr(Path, "rename", rename_until_cut)
    with pytest.raises(InterruptedError):
        swap.appear(stage_with(tmp_path / ".sitegen", "new"), output)
    monkeypatch.setattr(Path, "rename", rename)
    swap.finish_arrival(output)
    assert marks_in(output) == {"new" if renames_before_the_cut else "old"}
    assert sorted(entry.name for entry in output.iterdir()) == [
        "public",
        "report.json",
        "subscribers",
        "texts",
    ]


def test_a_full_disk_keeps_the_old_output(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    output = tmp_path / "output"
    swap.appear(stage_with(tmp_path / ".sitegen", "old"), output)
    stage = stage_with(tmp_path / ".sitegen", "new")

    def full(_folder: Path) -> None:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(swap, "flush", full)
    with pytest.raises(OSError, match="No space left"):
        swap.appear(stage, output)
    assert marks_in(output) == {"old"}


SWAPPER = """
import sys
from pathlib import Path
from sitegen.release import swap
workshop, output = Path(sys.argv[1]), Path(sys.argv[2])
print("ready", flush=True)
number = 0
while True:
    number += 1
    stage = swap.fresh_stage(workshop)
    for tree in ("public", "subscribers", "texts"):
        (stage / tree).mkdir()
        for page in range(5):
            (stage / tree / f"{page}.html").write_text(str(number))
    (stage / "report.json").write_text(str(number))
    swap.appear(stage, output)
"""


@pytest.mark.parametrize("milliseconds", range(1, 46, 3))
def test_a_killed_run_leaves_one_whole_output(tmp_path: Path, milliseconds: int) -> None:
    workshop, output = tmp_path / ".sitegen", tmp_path / "output"
    swap.appear(stage_with(workshop, "0"), output)
    child = subprocess.Popen(
        [sys.executable, "-c", SWAPPER, str(workshop), str(output)], stdout=subprocess.PIPE, text=True
    )
    with child:
        assert child.stdout is not None
        assert child.stdout.readline() == "ready\n"
        time.sleep(milliseconds / 1000)
        os.kill(child.pid, signal.SIGKILL)
    assert len(marks_in(output)) == 1
    assert sum(1 for path in output.rglob("*") if path.is_file()) == 16
    swap.appear(stage_with(workshop, "after"), output)
    assert marks_in(output) == {"after"}


def test_the_stage_is_cleared_of_what_a_killed_run_left(tmp_path: Path) -> None:
    left = swap.fresh_stage(tmp_path)
    (left / "half.html").write_text("half")
    assert list(swap.fresh_stage(tmp_path).iterdir()) == []
    shutil.rmtree(left)
