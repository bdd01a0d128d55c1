"""Temporary files of libraries, kept below `.sitegen/` so that a killed build leaves none elsewhere.

WeasyPrint writes the fonts of a card into a temporary folder and takes it away in a finaliser. A process of a
pool ends without any, and a killed one too, so that a machine that builds for years would fill up.
"""

import atexit
import os
import shutil
import tempfile
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

_TEMPORARY = "temporary"
_OWN = f"of-this-process-{os.urandom(8).hex()}"
_WORKERS = "of-workers"
_TOLD = "TMPDIR"
"""What other programs go by (POSIX), such as the linker that Python calls to find libraries."""


@contextmanager
def temporary_files(workshop: Path) -> Iterator[Path]:
    """Keep this process's temporary files in the workshop, and give a folder for those of its workers.

    To be held together with the lock of the build: what a killed build left is taken away. This process's
    own files stay to its end, for a press that has printed once prints again in the next build.
    workshop: `.sitegen/`, beside `content/`. Raises OSError where a folder cannot be made.
    """
    folder = workshop / _TEMPORARY
    own, workers = folder / _OWN, folder / _WORKERS
    _clear_all_but(own, folder)
    own.mkdir(parents=True, exist_ok=True)
    workers.mkdir()
    atexit.register(_clear, own)
    before, tempfile.tempdir = tempfile.tempdir, str(own)
    told = os.environ.get(_TOLD)
    os.environ[_TOLD] = str(own)
    try:
        yield workers
    finally:
        tempfile.tempdir = before
        if told is None:
            del os.environ[_TOLD]
        else:
            os.environ[_TOLD] = told
        _clear_all_but(own, folder)


def _clear_all_but(own: Path, folder: Path) -> None:
    for left in folder.iterdir() if folder.is_dir() else ():
        if left != own:
            shutil.rmtree(left)


def _clear(own: Path) -> None:
    """At the end of this process, and the folder too if no other process has files there."""
    shutil.rmtree(own, ignore_errors=True)
    try:
        own.parent.rmdir()
    except OSError:
        return
