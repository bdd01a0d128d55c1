"""A leaf: one file of the output, as a value."""

from dataclasses import dataclass
from enum import StrEnum


class Tree(StrEnum):
    """Which tree of `output/` a leaf belongs to."""

    PUBLIC = "public"
    SUBSCRIBERS = "subscribers"
    TEXTS = "texts"


@dataclass(frozen=True)
class Leaf:
    """path: POSIX, relative to its tree. body: the bytes of the file."""

    tree: Tree
    path: str
    body: bytes
