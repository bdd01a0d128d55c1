"""The faults that only a build can meet: of the machine and the output folder, not of a file's text."""

import errno
from pathlib import Path

from sitegen.faults import Fault, FaultCode, Place, Severity

ANOTHER_BUILD = FaultCode(
    "another-build",
    Severity.ERROR,
    "Two builds of one folder at the same time would write over each other.",
    "Wait until the other has ended, and publish again.",
    file="",
)
CANNOT_WRITE = FaultCode(
    "cannot-write",
    Severity.ERROR,
    "The new output could not be written, because the disk is full or a folder's rights forbid it. "
    "The old output was kept.",
    "Make room, or give write rights to the folder, and publish again.",
    file="",
)
CANNOT_READ = FaultCode(
    "cannot-read",
    Severity.ERROR,
    "A file that was there when the folder was read could not be read when it was printed.",
    "Look whether the file is still there and may be read, and publish again.",
    file="",
)
WORKER_DIED = FaultCode(
    "worker-died",
    Severity.ERROR,
    "One of the processes that print cards and cut pictures was ended from outside, most often by a machine "
    "that had no memory left. The old output was kept.",
    "Publish again with '--jobs 1', or on a machine with more memory.",
    file="",
)

CODES = (ANOTHER_BUILD, CANNOT_WRITE, CANNOT_READ, WORKER_DIED)

_REASONS = {
    errno.ENOSPC: "the disk is full",
    errno.EDQUOT: "your share of the disk is used up",
    errno.EACCES: "its rights do not allow it",
    errno.EPERM: "its rights do not allow it",
    errno.EROFS: "its disk is read-only",
    errno.ENOTDIR: "a file stands where a folder should be",
    errno.EEXIST: "a file stands where a folder should be",
}


def another_build(root: Path) -> Fault:
    sentence = "another build of this folder is running"
    return ANOTHER_BUILD.fault(Place(_shown(root, root / "output")), sentence, "wait until it has ended")


def cannot_write(root: Path, problem: OSError) -> Fault:
    """The fault for a system's refusal while the output was written."""
    reason = _REASONS.get(problem.errno or 0, problem.strerror or "the system gives no reason")
    place = Place(_shown(root, Path(str(problem.filename or root / "output"))))
    return CANNOT_WRITE.fault(place, f"it cannot be written: {reason}", "the old output was kept")


def worker_died(root: Path) -> Fault:
    sentence = "a process that prints was ended from outside, perhaps for want of memory"
    return WORKER_DIED.fault(Place(_shown(root, root / "output")), sentence, "try '--jobs 1'")


def _shown(root: Path, path: Path) -> str:
    """A path as the baker knows it: below the folder where it lies there."""
    return path.relative_to(root).as_posix() if path.is_relative_to(root) else path.as_posix()
