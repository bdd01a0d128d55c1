"""The command as a baker runs it, in a folder of the test's own."""

import multiprocessing
import os
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path

import pytest

from sitegen.cli.main import main
from tests.release.small_school import write_school

PROJECT = Path(__file__).parents[2]
Run = Callable[..., "subprocess.CompletedProcess[str]"]

WARM = multiprocessing.get_context("forkserver")
"""Each command is a process of its own, and what all of them import is imported once."""
WARM.set_forkserver_preload(["sitegen.release.proof", "sitegen.cli.sheet", "sitegen.cli.plan"])


@pytest.fixture
def school(tmp_path: Path) -> Path:
    """The small school, clean and not yet published."""
    return write_school(tmp_path)


@pytest.fixture
def run(tmp_path_factory: pytest.TempPathFactory) -> Run:
    """Runs `sitegen` in a folder: run(folder, *arguments, **environment).

    `publish` and whatever has an environment of its own are begun from nothing.
    """

    def ran(folder: Path, *arguments: str, **environment: str) -> "subprocess.CompletedProcess[str]":
        command = [sys.executable, "-m", "sitegen", *arguments]
        if environment or arguments[:1] == ("publish",):
            own = {**os.environ, "PYTHONPATH": str(PROJECT), "COLUMNS": "100", **environment}
            return subprocess.run(command, cwd=folder, capture_output=True, text=True, check=False, env=own)
        told = tmp_path_factory.mktemp("told")
        process = WARM.Process(target=_as_command, args=(folder, arguments, told))
        process.start()
        process.join()
        shown = [(told / name).read_text(encoding="utf-8") for name in ("out", "err")]
        return subprocess.CompletedProcess(command, process.exitcode or 0, *shown)

    return ran


def _as_command(folder: Path, arguments: tuple[str, ...], told: Path) -> None:
    for descriptor, name in ((1, "out"), (2, "err")):
        with (told / name).open("wb") as file:
            os.dup2(file.fileno(), descriptor)
    os.chdir(folder)
    os.environ["COLUMNS"] = "100"
    sys.argv = ["sitegen", *arguments]
    main()
