"""What the last publish left behind, held against what lies in the folder now."""

from collections.abc import Mapping
from dataclasses import dataclass
from hashlib import file_digest
from pathlib import Path

from sitegen.desk.file_marks import TEXTS
from sitegen.opening import open_within
from sitegen.release.build import OUTPUT, REPORT
from sitegen.release.causes import recipe_of
from sitegen.release.proof import is_kitchens_own
from sitegen.release.report import Report, last_report


@dataclass(frozen=True)
class Since:
    """What differs from the last publish.

    on: the day that it was made for, '2026-11-28'. of_recipes: slug -> its files, by their own names.
    in_common: files that concern every recipe. known: slugs of the recipes that were there.
    """

    on: str
    of_recipes: Mapping[str, tuple[str, ...]]
    in_common: tuple[str, ...]
    known: frozenset[str]


class LastPublish:
    """root: the folder that holds `content/`."""

    def __init__(self, root: Path) -> None:
        self._root = root
        self._report: tuple[tuple[int, ...], Report | None] = ((), None)
        self._hashes: dict[str, tuple[str, str]] = {}

    def since(self, marks: Mapping[str, str]) -> Since | None:
        """None where nothing was published yet. marks: file -> what tells its content; of a text its hash."""
        sign = _sign(self._root / OUTPUT / REPORT)
        if sign != self._report[0]:
            self._report = (sign, last_report(self._root / OUTPUT))
        report = self._report[1]
        if report is None or not sign:
            return None
        before = {file: mark for file, mark in report.inputs.items() if file.startswith("content/")}
        now = {file: self._hash(file, mark, before.get(file), sign[0]) for file, mark in marks.items()}
        of_recipes: dict[str, list[str]] = {}
        in_common = []
        for file in sorted(before.keys() | now.keys()):
            if before.get(file) == now.get(file) or is_kitchens_own(file) or _is_spare(file):
                continue
            slug = recipe_of(file)
            if slug is None:
                in_common.append(file)
            else:
                of_recipes.setdefault(slug, []).append(file.rpartition("/")[2])
        known = frozenset(slug for file in before if (slug := recipe_of(file)))
        return Since(
            report.on, {slug: tuple(files) for slug, files in of_recipes.items()}, tuple(in_common), known
        )

    def _hash(self, file: str, mark: str, before: str | None, published_ns: int) -> str:
        """The hash of a file, as the report has it."""
        if file.endswith(TEXTS) or before is None:
            return mark
        known = self._hashes.get(file)
        if known is None or known[0] != mark:
            known = self._hashes[file] = (mark, self._newly_hashed(file, before, published_ns))
        return known[1]

    def _newly_hashed(self, file: str, before: str, published_ns: int) -> str:
        path = self._root / file
        try:
            stat = path.stat()
            # Not touched since: the hash is the one that the report has, and no picture need be read for it.
            if max(stat.st_mtime_ns, stat.st_ctime_ns) < published_ns:
                return before
            with open_within(self._root / "content", path) as body:
                return file_digest(body, "sha256").hexdigest()
        except OSError:
            return ""


def _is_spare(file: str) -> bool:
    """Whether an editor left it: what is hidden, or ends as spare copies do."""
    name = file.rpartition("/")[2]
    return name.startswith(".") or name.endswith("~")


def _sign(path: Path) -> tuple[int, ...]:
    try:
        stat = path.stat()
    except OSError:
        return ()
    return (stat.st_mtime_ns, stat.st_size, stat.st_ino)
