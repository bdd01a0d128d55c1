"""`output/report.json`: what was built, what changed since the last build, and why.

No clock goes in: the same content, day and last report give the same bytes.
"""

from collections.abc import Collection, Iterable, Mapping, Sequence
from hashlib import sha256
from pathlib import Path

from pydantic import BaseModel, ConfigDict, ValidationError

_RECIPES = "content/recipes/"
_RELEASE = "release of "


class _Row(BaseModel):
    model_config = ConfigDict(frozen=True, extra="forbid")


class BuiltFile(_Row):
    """One file of the output. about: slugs of the recipes it shows; empty for the school as a whole."""

    size: int
    sha256: str
    about: tuple[str, ...] = ()


class Change(_Row):
    """path: of the file in `output/`. why: the inputs that differ, empty where none that we know of does."""

    path: str
    why: tuple[str, ...] = ()


class Changes(_Row):
    """Since the last build. A file that only moved counts as removed and added."""

    added: tuple[Change, ...] = ()
    changed: tuple[Change, ...] = ()
    removed: tuple[Change, ...] = ()

    @property
    def count(self) -> int:
        return len(self.added) + len(self.changed) + len(self.removed)


class Report(_Row):
    """on: the day built for, ISO 8601. inputs: what was read -> its hash or, for a release, its standing."""

    on: str
    sitegen: str
    changes: Changes
    files: Mapping[str, BuiltFile]
    inputs: Mapping[str, str]

    def as_json(self) -> str:
        return self.model_dump_json(indent=2) + "\n"


def last_report(output: Path) -> Report | None:
    """The report of the last build; None where there is none that can be read."""
    try:
        return Report.model_validate_json((output / "report.json").read_bytes())
    except (OSError, ValidationError):
        return None


def file_hashes(root: Path, folders: Iterable[Path]) -> dict[str, str]:
    """Path below root -> hash, for every file of some folders, in the order of their names.

    A folder that lies elsewhere (the theme of an installed sitegen) is named by its last two parts.
    """
    hashes: dict[str, str] = {}
    for folder in folders:
        start = root if folder.is_relative_to(root) else folder.parent.parent
        for path in sorted(folder.rglob("*")):
            if path.is_file():
                hashes[path.relative_to(start).as_posix()] = sha256(path.read_bytes()).hexdigest()
    return hashes


def release_input(slug: str) -> str:
    """The name under which a recipe's standing on the day is told among the inputs."""
    return _RELEASE + slug


def changes_since(last: Report | None, files: Mapping[str, BuiltFile], inputs: Mapping[str, str]) -> Changes:
    """What differs from the last build, each with the differing inputs that concern it."""
    before = last.files if last else {}
    differing = _differing(last.inputs if last else {}, inputs)

    def told(paths: Collection[str], rows: Mapping[str, BuiltFile]) -> tuple[Change, ...]:
        return tuple(Change(path=path, why=_why(rows[path], differing, last)) for path in sorted(paths))

    changed = {path for path in files.keys() & before.keys() if files[path].sha256 != before[path].sha256}
    return Changes(
        added=told(files.keys() - before.keys(), files),
        changed=told(changed, files),
        removed=told(before.keys() - files.keys(), before),
    )


def _differing(before: Mapping[str, str], now: Mapping[str, str]) -> tuple[str, ...]:
    return tuple(sorted(name for name in before.keys() | now.keys() if before.get(name) != now.get(name)))


def _why(row: BuiltFile, differing: Sequence[str], last: Report | None) -> tuple[str, ...]:
    if last is None:
        return ("first build",)
    return tuple(name for name in differing if not row.about or _concerns(name, row.about))


def _concerns(name: str, slugs: Collection[str]) -> bool:
    """An input of one recipe concerns the files about it; every other input concerns all."""
    if name.startswith(_RELEASE):
        return name.removeprefix(_RELEASE) in slugs
    if name.startswith(_RECIPES):
        return name.removeprefix(_RECIPES).partition("/")[0] in slugs
    return True
