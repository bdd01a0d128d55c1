"""A picture as pages use it: where its cuts lie and how large they are."""

from dataclasses import dataclass


class PictureUnreadable(Exception):
    """A picture that cannot be printed. file: its path; reason: in a baker's words."""

    def __init__(self, file: str, reason: str) -> None:
        super().__init__(file, reason)
        self.file = file
        self.reason = reason


@dataclass(frozen=True)
class Cut:
    """One file of a picture: path relative to the tree; width and height in pixels."""

    path: str
    width: int
    height: int


@dataclass(frozen=True)
class Picture:
    """webp, jpeg: the same cuts in both formats, smallest first. file: the source's path (the key)."""

    file: str
    webp: tuple[Cut, ...]
    jpeg: tuple[Cut, ...]
