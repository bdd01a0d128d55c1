"""What tells whether a file of the school is still the one that was read: marks, taken of all files at once.

A save is noticed by whoever watches the folder; which files it touched is told from here, so that a link, a
folder that was moved in, and a save that nobody reported count as well.
"""

import os
import time
from collections.abc import Mapping
from contextlib import suppress
from dataclasses import dataclass
from hashlib import sha256
from io import BufferedReader
from pathlib import Path

from sitegen import limits
from sitegen.opening import plain_files

TEXTS = (".yaml", ".md", ".vtt", ".srt")
"""Endings of the files that are marked by their content, since most of what is shown is made of them."""
_TICK_NS = 50_000_000
"""Within one tick of a disk's clock, 10 ms or less on most, a second save can have the time of the first."""


@dataclass(frozen=True)
class FileMark:
    """sign: time, size and number of the file on its disk. mark: of its content, for a picture of its sign.

    is_sure: False for a file that was saved a moment before, and may be saved again with the same sign.
    """

    sign: tuple[int, ...]
    mark: str
    is_sure: bool


def file_marks(root: Path, before: Mapping[str, FileMark]) -> Mapping[str, FileMark]:
    """Path below root -> its mark, for every plain file of `content/`, sorted as the build sorts them.

    before: what was found the last time; what has the same sign is not read again. A folder that is not
    there, or is taken away meanwhile, has no files.
    """
    found: dict[str, FileMark] = {}
    with suppress(OSError):
        for name, file in plain_files(root / "content"):
            shown = f"content/{name}"
            found[shown] = _marked(shown, file, before.get(shown))
    return dict(sorted(found.items(), key=_by_folders))


def _by_folders(row: tuple[str, FileMark]) -> list[str]:
    return row[0].split("/")


def _marked(shown: str, file: BufferedReader, before: FileMark | None) -> FileMark:
    stat = os.fstat(file.fileno())
    sign = (stat.st_mtime_ns, stat.st_ctime_ns, stat.st_size, stat.st_ino, stat.st_dev)
    if before is not None and before.is_sure and before.sign == sign:
        return before
    is_sure = time.time_ns() - max(stat.st_mtime_ns, stat.st_ctime_ns) > _TICK_NS
    if not shown.endswith(TEXTS) or stat.st_size > limits.TEXT_BYTES:
        # A picture is hashed once a page shows it.
        return FileMark(sign, repr(sign), is_sure)
    return FileMark(sign, sha256(file.read(limits.TEXT_BYTES)).hexdigest(), is_sure)
