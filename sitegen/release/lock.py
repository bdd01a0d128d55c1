"""One build of a folder at a time."""

import fcntl
import os
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path


class AnotherBuildRuns(Exception):
    """A second build was started while the first still writes."""


@contextmanager
def only_build(workshop: Path) -> Iterator[None]:
    """Hold the folder's lock for the length of a build.

    The system lets go of it when the process ends, however it ends, so no stale lock can remain.
    Raises AnotherBuildRuns at once where another process holds it; OSError where the folder
    cannot be written.
    """
    workshop.mkdir(parents=True, exist_ok=True)
    held = os.open(workshop / "lock", os.O_RDWR | os.O_CREAT | os.O_CLOEXEC, 0o644)
    try:
        fcntl.flock(held, fcntl.LOCK_EX | fcntl.LOCK_NB)
    except BlockingIOError:
        os.close(held)
        raise AnotherBuildRuns from None
    try:
        yield
    finally:
        os.close(held)
