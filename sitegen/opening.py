"""The one way in which a school's files are opened: inside their tree, plain files only, no more than asked.

in:        the folder of a tree, a path below it
out:       an open file, or its bytes
imports:   the standard library
never:     follows a link out of the tree, waits for a pipe, or reads a device
"""

import errno
import os
import stat
from collections.abc import Iterator
from contextlib import suppress
from io import BufferedReader
from pathlib import Path

_PLAINLY = os.O_RDONLY | os.O_NOFOLLOW | os.O_NONBLOCK | os.O_CLOEXEC
"""How a file is opened. O_NONBLOCK: to open a pipe would wait for who writes into it."""


class LeadsOutside(OSError):
    """A path that leads out of its tree, by a link or by '..'. filename: the path."""

    def __init__(self, path: Path) -> None:
        super().__init__(errno.ELOOP, "it is a link out of the folder", str(path))


class NoPlainFile(OSError):
    """A folder, a pipe, a socket or a device stands where a file should be. filename: the path."""

    def __init__(self, path: Path) -> None:
        super().__init__(errno.ENXIO, "it is no plain file", str(path))


class TooManyBytes(OSError):
    """A file that is larger than may be read. filename: the path."""

    def __init__(self, path: Path, most: int) -> None:
        super().__init__(errno.EFBIG, f"it has more than {most // 1_000_000} MB", str(path))


_PASSED_OVER = (LeadsOutside, NoPlainFile, FileNotFoundError)


def open_within(tree: Path, path: Path) -> BufferedReader:
    """A file below a folder, open for reading.

    Links inside the tree are followed first; then each folder on the way, and the file, is opened from the
    one above it and may be no link: what is swapped in meanwhile is refused, not followed. The folder `tree`
    itself may be reached by links. Raises LeadsOutside, NoPlainFile, and OSError for what is not there.
    """
    top, real = os.path.realpath(tree), os.path.realpath(path)
    if os.path.commonpath([top, real]) != top or top == real:
        raise LeadsOutside(path)
    *folders, name = os.path.relpath(real, top).split(os.sep)
    try:
        return _plain(_from_folder_to_folder(top, folders, name), path)
    except OSError as problem:
        if problem.errno in (errno.ELOOP, errno.EMLINK):
            raise LeadsOutside(path) from problem
        if problem.errno == errno.ENXIO:  # a socket
            raise NoPlainFile(path) from problem
        raise OSError(problem.errno, problem.strerror, str(path)) from problem


def read_within(tree: Path, path: Path, most: int) -> bytes:
    """The bytes of a file below a folder. most: how many it may have. Raises TooManyBytes, and as above."""
    with open_within(tree, path) as file:
        body = file.read(most + 1)
    if len(body) > most:
        raise TooManyBytes(path, most)
    return body


def plain_files(tree: Path) -> Iterator[tuple[str, BufferedReader]]:
    """Every plain file below a folder: its path from there, and the file, open until the next is asked for.

    Links to files inside the tree count as files; links to folders, and all that `open_within` refuses, are
    passed over. Faster than to open each on its own. Raises OSError for what may not be read.
    """
    top = os.path.realpath(tree)
    for folder, _, names, descriptor in os.fwalk(top) if os.path.isdir(top) else ():
        inside = os.path.relpath(folder, top)
        for name in names:
            path = Path(folder, name)
            with suppress(*_PASSED_OVER), _opened(path, name, descriptor, tree) as file:
                yield name if inside == os.curdir else f"{inside}/{name}", file


def _opened(path: Path, name: str, folder: int, tree: Path) -> BufferedReader:
    try:
        return _plain(os.open(name, _PLAINLY, dir_fd=folder), path)
    except OSError as problem:
        if problem.errno in (errno.ELOOP, errno.EMLINK):
            return open_within(tree, path)
        raise


def _from_folder_to_folder(top: str, folders: list[str], name: str) -> int:
    """A descriptor of the file, reached without following a link. Raises OSError."""
    here = os.open(top, os.O_RDONLY | os.O_DIRECTORY | os.O_CLOEXEC)
    try:
        for folder in folders:
            below = os.open(folder, os.O_RDONLY | os.O_DIRECTORY | os.O_NOFOLLOW | os.O_CLOEXEC, dir_fd=here)
            os.close(here)
            here = below
        return os.open(name, _PLAINLY, dir_fd=here)
    finally:
        os.close(here)


def _plain(descriptor: int, path: Path) -> BufferedReader:
    if not stat.S_ISREG(os.fstat(descriptor).st_mode):
        os.close(descriptor)
        raise NoPlainFile(path)
    return os.fdopen(descriptor, "rb")
