"""The command as a baker runs it, in a folder of the test's own."""

import os
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path

import pytest

from tests.release.small_school import write_school

PROJECT = Path(__file__).parents[2]
Run = Callable[..., "subprocess.CompletedProcess[str]"]


@pytest.fixture
def school(tmp_path: Path) -> Path:
    """The small school, clean and not yet published."""
    return write_school(tmp_path)


@pytest.fixture
def run() -> Run:
    """Runs `sitegen` in a folder: run(folder, *arguments, **environment)."""

    def ran(folder: Path, *arguments: str, **environment: str) -> "subprocess.CompletedProcess[str]":
        return subprocess.run(
            [sys.executable, "-m", "sitegen", *arguments],
            cwd=folder,
            capture_output=True,
            text=True,
            check=False,
            env={**os.environ, "PYTHONPATH": str(PROJECT), "COLUMNS": "100", **environment},
        )

    return ran
