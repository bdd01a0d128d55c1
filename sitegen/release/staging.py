"""The new output, written beside the old one: what is the same is linked from there, once proved whole."""

import os
from collections.abc import Iterable, Mapping
from concurrent.futures import ThreadPoolExecutor
from dataclasses import dataclass, field, replace
from hashlib import file_digest, sha256
from pathlib import Path

from sitegen.press.leaf import Tree
from sitegen.release.outputs import Output
from sitegen.release.report import BuiltFile, Report

_READERS = 4
"""Threads that read files side by side: hashing lets go of the interpreter."""


@dataclass(frozen=True)
class OldOutput:
    """`output/` as the last build left it. report: its report, None where there is none."""

    folder: Path
    report: Report | None

    @property
    def files(self) -> Mapping[str, BuiltFile]:
        return self.report.files if self.report else {}

    def is_whole(self) -> bool:
        """Whether every file of the last build is there, byte for byte, and no other in any tree."""
        found = {
            path.relative_to(self.folder).as_posix()
            for tree in Tree
            for path in (self.folder / tree).rglob("*")
            if path.is_symlink() or not path.is_dir()
        }
        return found == set(self.files) and len(self.whole(found)) == len(found)

    def whole(self, places: Iterable[str]) -> frozenset[str]:
        """Those of some files that are still just what the last build wrote, byte for byte."""
        wanted = [place for place in places if place in self.files]
        with ThreadPoolExecutor(_READERS) as readers:
            digests = readers.map(lambda place: _digest(f"{self.folder}/{place}"), wanted)
            return frozenset(
                place
                for place, digest in zip(wanted, digests, strict=True)
                if digest == self.files[place].sha256
            )


@dataclass
class Stage:
    """An empty folder that fills with the new output. files: path in it -> what was written.

    linked: how many files are the old ones.
    """

    folder: Path
    old: OldOutput
    files: dict[str, BuiltFile] = field(default_factory=dict)
    linked: int = 0
    _whole: frozenset[str] = frozenset()
    _folders: set[str] = field(default_factory=set)

    def expect(self, outputs: Iterable[Output]) -> None:
        """Find out which of these are there already: files whose bytes are known to be the old ones."""
        same = [
            output.place
            for output in outputs
            if output.place in self.old.files and output.digest == self.old.files[output.place].sha256
        ]
        self._whole = self.old.whole(same)

    def take(self, output: Output) -> bool:
        """Have one output in the folder. Returns whether it is the old file.

        Raises OSError, NotKept and what the maker of the body raises.
        """
        place = output.place
        path = self._room_for(place)
        if place in self._whole and _is_linked(f"{self.old.folder}/{place}", path):
            self.files[place] = replace(self.old.files[place], about=output.about)
            self.linked += 1
            return True
        body = output.body()
        size, digest = 0, sha256()
        with open(path, "wb") as file:
            for piece in (body,) if isinstance(body, bytes) else body:
                file.write(piece)
                digest.update(piece)
                size += len(piece)
        self.files[place] = BuiltFile(size=size, sha256=digest.hexdigest(), about=output.about)
        return False

    def _room_for(self, place: str) -> str:
        """Where a file will stand. Its folder is made with the first that goes into it."""
        parent = place.rpartition("/")[0]
        if parent not in self._folders:
            (self.folder / parent).mkdir(parents=True, exist_ok=True)
            self._folders.add(parent)
        return f"{self.folder}/{place}"


def _is_linked(old: str, new: str) -> bool:
    """Whether the old file stands in the new place too; False where the disk knows no links or is another."""
    try:
        os.link(old, new, follow_symlinks=False)
    except OSError:
        return False
    return True


def _digest(path: str) -> str:
    try:
        with open(os.open(path, os.O_RDONLY | os.O_NOFOLLOW), "rb") as file:
            return file_digest(file, "sha256").hexdigest()
    except OSError:
        return ""
