"""A build that is asked to stop ends with a code of its own, in a sentence, and leaves no process behind."""

import os
import signal
import subprocess
import sys
import time
from pathlib import Path

import pytest

from sitegen.release.steps import Step
from tests.cli.conftest import PROJECT
from tests.release.small_school import tree_hashes

LOST = """
import os, signal
from sitegen.release import build

class Dropped:
    def __del__(self):
        os.kill(os.getpid(), signal.{name})

read = build.read_school

def read_and_drop(root):
    Dropped()  # what a handler raises in a finaliser is printed, and lost
    return read(root)

build.read_school = read_and_drop
"""
STILL_IGNORED = """
import os, signal
from sitegen.cli.stopping import go_on, heed_requests
heed_requests()
os.kill(os.getpid(), signal.SIGINT)
go_on()
print("went on")
"""
_RUN = "from sitegen.cli.main import main\nmain()\n"


def begun(root: Path, before: str = "", jobs: int = 2) -> "subprocess.Popen[str]":
    """A publish in a process group of its own, which hears Ctrl-C even if the tests run in the background."""
    before = f"import signal\nsignal.signal(signal.SIGINT, signal.default_int_handler)\n{before}"
    return subprocess.Popen(
        [sys.executable, "-c", before + _RUN, "publish", "--jobs", str(jobs)],
        cwd=root,
        stdout=subprocess.DEVNULL,
        stderr=subprocess.PIPE,
        text=True,
        env={**os.environ, "PYTHONPATH": str(PROJECT)},
        start_new_session=True,
    )


def assert_group_ends(group: int) -> None:
    """Every process of the group ends by itself; how soon is not what is tested."""
    for _ in range(600):
        try:
            os.killpg(group, 0)
        except ProcessLookupError:
            return
        time.sleep(0.05)
    raise AssertionError("a process went on")


@pytest.mark.parametrize(
    ("request_", "step", "code", "to_all"),
    [
        (signal.SIGINT, Step.READ, 130, True),  # a terminal tells every process of the group
        (signal.SIGTERM, Step.PICTURES, 143, False),
    ],
)
def test_a_build_that_is_stopped_says_so_and_keeps_the_old_output(
    school: Path, request_: signal.Signals, step: Step, code: int, to_all: bool
) -> None:
    (school / "output" / "public").mkdir(parents=True)
    (school / "output" / "public" / "index.html").write_text("old")
    before = tree_hashes(school / "output")
    child = begun(school)
    with child:
        assert child.stderr is not None
        assert any(line.startswith(f"{step}/") for line in child.stderr)
        time.sleep(0.2)
        (os.killpg if to_all else os.kill)(child.pid, request_)
        told = child.stderr.read()
    assert child.returncode == code
    assert "Traceback" not in told
    assert "output/ is whole" in told
    assert_group_ends(child.pid)
    assert tree_hashes(school / "output") == before


@pytest.mark.parametrize(("name", "code"), [("SIGINT", 130), ("SIGTERM", 143)])
def test_a_request_that_python_lost_is_heeded_at_the_next_step(school: Path, name: str, code: int) -> None:
    child = begun(school, LOST.format(name=name), jobs=1)
    _, told = child.communicate()
    assert "Exception ignored" in told
    assert child.returncode == code
    assert not (school / "output").exists()


def test_what_is_ignored_from_the_beginning_stays_ignored(school: Path) -> None:
    """A shell without job control starts `command &` with Ctrl-C ignored (POSIX.1-2017, shell, 2.11)."""
    ran = subprocess.run(
        ["sh", "-c", '"$@" & wait $!', "sh", sys.executable, "-c", STILL_IGNORED],
        cwd=school,
        capture_output=True,
        text=True,
        check=False,
        env={**os.environ, "PYTHONPATH": str(PROJECT)},
    )
    assert (ran.returncode, ran.stdout) == (0, "went on\n"), ran.stderr


def test_processes_end_with_the_one_that_began_them(school: Path) -> None:
    child = begun(school)
    with child:
        assert child.stderr is not None
        assert any(line.startswith(f"{Step.PICTURES}/") for line in child.stderr)
        os.kill(child.pid, signal.SIGKILL)
    assert_group_ends(child.pid)
