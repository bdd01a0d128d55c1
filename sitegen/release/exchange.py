"""Two calls of the system's C library that Python does not offer: exchange two folders, flush a disk."""

import ctypes
import errno
import os
from pathlib import Path

_FROM_HERE = -100  # AT_FDCWD, linux/fcntl.h: paths count from the working folder
_EXCHANGE = 2  # RENAME_EXCHANGE, linux/fs.h


class CannotExchange(Exception):
    """The system, the file system or a mount does not let these two folders change places."""


def exchange(one: Path, other: Path) -> None:
    """Let two folders change places in one step: at no moment is either missing or half there.

    Linux's renameat2(2). Raises CannotExchange where there is no such call, where the file system
    does not know it, or where one of the two is a mount or lies on another disk.
    """
    call = getattr(ctypes.CDLL(None, use_errno=True), "renameat2", None)
    if call is None:
        raise CannotExchange(os.strerror(errno.ENOSYS))
    if call(_FROM_HERE, os.fsencode(one), _FROM_HERE, os.fsencode(other), _EXCHANGE) != 0:
        raise CannotExchange(os.strerror(ctypes.get_errno()))


def flush(folder: Path) -> None:
    """Have all that was written to the folder's disk reach it, so that a power cut finds it whole.

    syncfs(2) does this once for all files; systems without it sync all disks.
    """
    call = getattr(ctypes.CDLL(None, use_errno=True), "syncfs", None)
    if call is None:
        os.sync()
        return
    opened = os.open(folder, os.O_RDONLY)
    try:
        if call(opened) != 0:
            failure = ctypes.get_errno()
            raise OSError(failure, os.strerror(failure), str(folder))
    finally:
        os.close(opened)
