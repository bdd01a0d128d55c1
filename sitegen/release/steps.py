"""The steps of a build, numbered once: progress, timings and DEVELOPERS.md use these numbers."""

from enum import IntEnum
from typing import Protocol


class Step(IntEnum):
    """One step of the trip from `content/` to `output/`."""

    READ = 1
    SHEETS = 2
    PICTURES = 3
    CARDS = 4
    PAGES = 5
    FILES = 6
    SWAP = 7

    @property
    def title(self) -> str:
        """What happens in it, in a few words."""
        return _TITLES[self]


_TITLES = {
    Step.READ: "read the folder",
    Step.SHEETS: "proof the recipes and set their sheets",
    Step.PICTURES: "cut the pictures and fonts",
    Step.CARDS: "print the cards",
    Step.PAGES: "set the pages of recipes",
    Step.FILES: "write the new output",
    Step.SWAP: "swap in the new output",
}


class Progress(Protocol):
    """Whoever wants to know how far a build is."""

    def begin(self, step: Step, total: int) -> None:
        """A step begins. total: how many things it makes, 0 where nothing is counted."""

    def advance(self) -> None:
        """One of them is made."""

    def reuse(self, count: int) -> None:
        """So many of them were found in kept work."""


class Silent:
    """Tells nobody."""

    def begin(self, step: Step, total: int) -> None: ...

    def advance(self) -> None: ...

    def reuse(self, count: int) -> None: ...
