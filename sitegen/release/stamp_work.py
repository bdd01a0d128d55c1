"""The stamping that is shared among processes: some copies of one card, each written whole or not at all."""

import os
from dataclasses import dataclass, field
from functools import cache, lru_cache
from hashlib import sha256
from pathlib import Path

from sitegen.press.mark_face import MarkFace
from sitegen.press.stamp import CardStamp, Lock, MarkTooLong
from sitegen.release.subscriber_list import Subscriber

UNFINISHED = ".unfinished"
"""Folder in which copies lie until they are whole."""


@dataclass(frozen=True)
class Wanted:
    """A copy to be made.

    file: where it goes, below the folder of all copies. made_from: a hash of all that decides what it is.
    """

    number: int
    subscriber: Subscriber
    file: str
    made_from: str


@dataclass(frozen=True)
class Copy:
    """What came of it. sha256: of the file; '' where the name is wider than the card's margin is high."""

    wanted: Wanted
    sha256: str


@dataclass(frozen=True)
class StampWork:
    """card: bytes of a PDF. card_shown: its file as the baker is told it. into: the folder of all copies."""

    card: bytes = field(repr=False)
    card_shown: str
    wanted: tuple[Wanted, ...]
    lock: Lock | None
    into: Path

    def made(self) -> tuple[Copy, ...]:
        """Raises CardUnfit, OSError."""
        stamp = opened_card(self.card)
        return tuple(self._copy(stamp, wanted) for wanted in self.wanted)

    def _copy(self, stamp: CardStamp, wanted: Wanted) -> Copy:
        try:
            body = stamp.copy(wanted.number, wanted.subscriber.name, self.lock)
        except MarkTooLong:
            return Copy(wanted, "")
        place = self.into / wanted.file
        place.parent.mkdir(parents=True, exist_ok=True)
        unfinished = self.into / UNFINISHED / place.name
        unfinished.write_bytes(body)
        os.replace(unfinished, place)
        return Copy(wanted, sha256(body).hexdigest())


@lru_cache(maxsize=2)
def opened_card(card: bytes) -> CardStamp:
    """A card, opened once for the work of a process that comes together. Raises CardUnfit."""
    return CardStamp(card, mark_face())


@cache
def mark_face() -> MarkFace:
    return MarkFace()
