"""`output/report.json`: what was built, what changed since the last build, and why.

No clock goes in, nor what was found in the cache: the same content, day and last report give the same
bytes. How long a build took is told by the command alone (`cli/step_log.py`).
"""

from collections.abc import Collection, Iterable, Mapping
from dataclasses import dataclass
from functools import cache
from hashlib import file_digest
from pathlib import Path

from pydantic import BaseModel, ConfigDict, ValidationError, computed_field

from sitegen.opening import plain_files
from sitegen.release.causes import FIRST_BUILD, Causes
from sitegen.release.kinds import kind_of


class _Row(BaseModel):
    model_config = ConfigDict(frozen=True, extra="forbid")


@dataclass(frozen=True, slots=True)
class BuiltFile:
    """One file of the output. about: slugs of the recipes it shows; empty for the school as a whole.

    A school of a thousand recipes has forty thousand of them, so they are as small as can be.
    """

    size: int
    sha256: str
    about: tuple[str, ...] = ()


class Change(_Row):
    """path: of the file in `output/`. recipe: slug of the one it is of; empty for the school as a whole.

    why: the inputs that differ and that it may owe its change to, of many only their folders
    (`causes.py`); empty where none that we know of does.
    """

    path: str
    recipe: str = ""
    why: tuple[str, ...] = ()


class Held(_Row):
    """How many files of a kind a tree holds, and their bytes in all."""

    files: int
    bytes: int


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

    # what is computed is written too, and worked out anew when it is read back
    model_config = ConfigDict(frozen=True, extra="ignore")

    on: str
    sitegen: str
    changes: Changes
    files: Mapping[str, BuiltFile]
    inputs: Mapping[str, str]

    @computed_field  # type: ignore[prop-decorator]  # as pydantic documents it
    @property
    def same(self) -> int:
        """How many files are, byte for byte, those of the last build."""
        return len(self.files) - len(self.changes.added) - len(self.changes.changed)

    @computed_field  # type: ignore[prop-decorator]
    @property
    def sizes(self) -> dict[str, dict[str, Held]]:
        """Tree -> kind -> what it holds, both in the order of their names."""
        sizes: dict[tuple[str, str], list[int]] = {}
        for path, file in self.files.items():
            sizes.setdefault((path.partition("/")[0], kind_of(path)), []).append(file.size)
        trees: dict[str, dict[str, Held]] = {}
        for (tree, kind), each in sorted(sizes.items()):
            trees.setdefault(tree, {})[kind] = Held(files=len(each), bytes=sum(each))
        return trees

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

    A folder that lies elsewhere (the theme of an installed sitegen) is named by its last two parts. What is
    no plain file, and a link out of its folder, is passed over: nobody reads it either.
    """
    hashes: dict[str, str] = {}
    for folder in folders:
        start = root if folder.is_relative_to(root) else folder.parent.parent
        prefix = folder.relative_to(start).as_posix()
        found = {
            f"{prefix}/{name}": file_digest(file, "sha256").hexdigest() for name, file in plain_files(folder)
        }
        hashes |= dict(sorted(found.items(), key=lambda row: row[0].split("/")))
    return hashes


def changes_since(last: Report | None, files: Mapping[str, BuiltFile], inputs: Mapping[str, str]) -> Changes:
    """What differs from the last build, each with the differing inputs that may concern it."""
    before = last.files if last else {}
    causes = Causes.between(last.inputs, inputs) if last else None
    why = cache(causes.of if causes else _at_first)  # all files of a recipe have the same causes

    def told(paths: Collection[str], rows: Mapping[str, BuiltFile]) -> tuple[Change, ...]:
        return tuple(
            Change(path=path, recipe=next(iter(rows[path].about), ""), why=why(rows[path].about))
            for path in sorted(paths)
        )

    changed = {path for path in files.keys() & before.keys() if files[path].sha256 != before[path].sha256}
    return Changes(
        added=told(files.keys() - before.keys(), files),
        changed=told(changed, files),
        removed=told(before.keys() - files.keys(), before),
    )


def _at_first(_about: tuple[str, ...]) -> tuple[str, ...]:
    return (FIRST_BUILD,)
