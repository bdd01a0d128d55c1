"""The table of batches and editions that a recipe page offers, as values."""

from dataclasses import dataclass


@dataclass(frozen=True)
class CardFile:
    """title: 'A4'; path: relative to the tree."""

    title: str
    path: str


@dataclass(frozen=True)
class Choice:
    """One cell: the recipe in one edition at one batch.

    path: its page, relative to the tree. is_here: the page that shows the table.
    """

    edition_key: str
    edition_title: str
    batch_key: str
    batch_title: str
    path: str
    is_here: bool


@dataclass(frozen=True)
class Choices:
    """rows: one a batch, each with one Choice an edition, in the same order throughout.

    cards: the printed cards in the page's own edition, for subscribers.
    """

    rows: tuple[tuple[Choice, ...], ...]
    cards: tuple[CardFile, ...] = ()
