"""What every process must know to work off a recipe of a build: written once, read once by each."""

import pickle
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cached_property, lru_cache
from hashlib import sha256
from pathlib import Path

from sitegen.press.imprint import Imprint
from sitegen.press.theme import Theme
from sitegen.release.cache import Cache
from sitegen.release.days import Standing
from sitegen.source.headings import Heading
from sitegen.source.library import read_school
from sitegen.source.school import Content


@dataclass(frozen=True)
class Imprints:
    """The publisher's block of each tree."""

    public: Imprint
    subscribers: Imprint


@dataclass(frozen=True)
class Commission:
    """root: the folder that holds `content/`, absolute.

    digests: file below root -> hash, of all of `content/`. standings: of each recipe on the day.
    """

    root: Path
    headings: tuple[Heading, ...]
    standings: Mapping[str, Standing]
    digests: Mapping[str, str]
    imprints: Imprints
    theme: Theme
    cache: Cache

    @cached_property
    def public_slugs(self) -> frozenset[str]:
        """Of the recipes that have a page in the public tree."""
        return frozenset(slug for slug, each in self.standings.items() if each.public is not None)

    @cached_property
    def subscribers_slugs(self) -> frozenset[str]:
        """Of the recipes that have a page in the subscribers' tree."""
        return frozenset(slug for slug, each in self.standings.items() if each.subscribers)


@dataclass(frozen=True)
class CommissionFile:
    """A commission where processes find it. digest: of the file, so that none is taken for another."""

    path: Path
    digest: str

    def read(self) -> Commission:
        """The commission, read once a process."""
        return _read(self)

    def school(self) -> Content:
        """What all recipes have in common, read once a process."""
        return _school(self)

    def sheets_of(self, slug: str) -> Path:
        """Where the sheets of a recipe wait between being proofed and being printed."""
        return self.path.parent / f"{slug}.sheets"


def handed_out(commission: Commission, folder: Path) -> CommissionFile:
    """The commission written into a folder of this build alone, which is there and empty."""
    body = pickle.dumps(commission)
    file = CommissionFile(folder / "commission", sha256(body).hexdigest())
    file.path.write_bytes(body)
    return file


@lru_cache(maxsize=1)
def _read(file: CommissionFile) -> Commission:
    commission = pickle.loads(file.path.read_bytes())
    assert isinstance(commission, Commission)
    return commission


@lru_cache(maxsize=1)
def _school(file: CommissionFile) -> Content:
    content, _ = read_school(file.read().root)
    return content
