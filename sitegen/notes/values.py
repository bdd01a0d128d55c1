"""What notes are read against, and what becomes of each of their lines: frozen values."""

from dataclasses import dataclass
from enum import StrEnum

from sitegen.kitchen.editions import Edition
from sitegen.source.context import Context


@dataclass(frozen=True)
class Lore:
    """What a school knows when it reads notes: its tables, its titles, the edition that its files are in."""

    context: Context
    edition: Edition

    @property
    def region(self) -> str:
        return self.edition.region


class Fate(StrEnum):
    """What became of a line of the notes.

    TAKEN: it stands in the file. ASIDE: it was understood, and no key holds it: a comment.
    LOST: it was not understood: a comment.
    """

    TAKEN = "taken"
    ASIDE = "set aside"
    LOST = "not understood"


@dataclass(frozen=True)
class LineFate:
    """number: of the line, from 1. written: as it stands there. reason: what there is to say of it, or ''."""

    number: int
    written: str
    fate: Fate
    reason: str = ""


@dataclass(frozen=True)
class Draft:
    """A recipe file made of notes.

    text: of the file. slug: for its folder. fates: of every line that says something, in order.
    missing: what a recipe file must say and the notes do not, in words.
    """

    text: str
    slug: str
    fates: tuple[LineFate, ...]
    missing: tuple[str, ...]
