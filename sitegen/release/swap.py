"""A finished build takes the place of the old one: `output/` is the old whole or the new whole.

The new output is written in full under `.sitegen/`, flushed to the disk, and then changes places with
`output/` in one system call (`exchange.py`): a run that is killed leaves the old folder or the new
one, with all its trees and its report, and no third state exists. The folders stay plain folders, as
hosts want them.

Some systems have no such call, and some mount `output/` from elsewhere. There the new output is first
copied into `output/.arriving/`, whose appearing under this name is the decision; then each tree is
renamed into its place. A run that is killed in between is completed by the next one, from that
folder's contents alone.
"""

import os
import shutil
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from sitegen.release.exchange import CannotExchange, exchange, flush

STAGE = "next"
SCRATCH = "hand-over"
ARRIVING = ".arriving"
_UNFINISHED = ".arriving-unfinished"
_LEAVING = ".leaving"
ONE_FILE = ".arriving-file"


def fresh_stage(workshop: Path) -> Path:
    """An empty folder for the new output; whatever a killed run left there is gone.

    workshop: `.sitegen/`, beside `content/`. Raises OSError where it cannot be made.
    """
    stage = workshop / STAGE
    _clear(stage)
    stage.mkdir(parents=True)
    return stage


def clear_leftovers(workshop: Path) -> None:
    """Take away what a killed run left in `.sitegen/`, before anything is written: it may fill the disk.

    Raises OSError where something cannot be removed.
    """
    _clear(workshop / STAGE)
    _clear(workshop / SCRATCH)


@contextmanager
def scratch_folder(workshop: Path) -> Iterator[Path]:
    """An empty folder for what processes of one build hand each other; it goes when the block ends.

    What a killed run left there is gone too. Raises OSError where it cannot be made.
    """
    folder = workshop / SCRATCH
    _clear(folder)
    folder.mkdir(parents=True)
    try:
        yield folder
    finally:
        _clear(folder)


def replace_file(path: Path, body: bytes) -> None:
    """Let one file of the output have other bytes: those from before or these, whole."""
    part = path.with_name(ONE_FILE)
    part.write_bytes(body)
    os.replace(part, path)
    flush(path.parent)


def finish_arrival(output: Path) -> None:
    """Complete a swap that was cut short entry by entry, and take away what one left unfinished.

    Raises OSError where a folder cannot be renamed.
    """
    _clear(output / _UNFINISHED)
    _clear(output / ONE_FILE)
    arriving, leaving = output / ARRIVING, output / _LEAVING
    if arriving.is_dir():
        for entry in sorted(arriving.iterdir()):
            _put_in_place(entry, output / entry.name, leaving)
        arriving.rmdir()
    _clear(leaving)


def appear(stage: Path, output: Path) -> None:
    """Make the staged folder the output, and take the old output away.

    Files in `output/` that no build makes (such as `.gitkeep`) stay there.
    Raises OSError where the disk is full or a folder may not be written; the old output is then kept.
    """
    output = output.resolve()
    output.mkdir(parents=True, exist_ok=True)
    _bring_along(output, stage)
    flush(stage)
    try:
        exchange(stage, output)
    except CannotExchange:
        _arrive_entry_by_entry(stage, output)
    flush(output)
    _clear(stage)


def _bring_along(output: Path, stage: Path) -> None:
    """Copy what others put into `output/`: what the stage has no entry of that name for."""
    shutil.copymode(output, stage)
    for entry in output.iterdir():
        kept = stage / entry.name
        if os.path.lexists(kept):
            continue
        if entry.is_dir() and not entry.is_symlink():
            shutil.copytree(entry, kept, symlinks=True)
        else:
            shutil.copy2(entry, kept, follow_symlinks=False)


def _arrive_entry_by_entry(stage: Path, output: Path) -> None:
    unfinished = output / _UNFINISHED
    shutil.copytree(stage, unfinished, symlinks=True)
    flush(output)
    unfinished.rename(output / ARRIVING)
    flush(output)
    finish_arrival(output)


def _put_in_place(entry: Path, place: Path, leaving: Path) -> None:
    _clear(leaving)
    if os.path.lexists(place):
        place.rename(leaving)
    entry.rename(place)


def _clear(path: Path) -> None:
    if path.is_dir() and not path.is_symlink():
        shutil.rmtree(path)
    else:
        path.unlink(missing_ok=True)
