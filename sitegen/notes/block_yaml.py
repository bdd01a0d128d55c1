"""Values with comments -> YAML in the house's own style: blocks, plain texts, quotes where YAML has a trap.

What is written is read again by `source/reader.py` as the same text, letter for letter.
"""

import re
import textwrap
from collections.abc import Iterator
from dataclasses import dataclass

_INDENT = "  "
_COMMENT_WIDTH = 100
_WORD_WIDTH = 10_000
"""A word that is longer is cut in comments, so that no line of a file is too long to be read."""
_PLAIN_START = re.compile(r"[^\W_]|[(£€$½⅓⅔¼¾⅛]")
_TRAP = re.compile(r":(?: |$)| #")
_UNSEEN = re.compile(
    r"[\x00-\x1f\x7f-\x9f\u200b-\u200f\u2028-\u202e\u2060-\u206f\ufeff\ufffe\uffff\ud800-\udfff]"
)
_ESCAPES = {"\n": "\\n", "\t": "\\t", "\\": "\\\\", '"': '\\"'}


@dataclass(frozen=True)
class Entry:
    """A key with its value, or a value of a list (key '').

    value: a text, or what lies below it. above: comments on lines of their own before it.
    """

    key: str
    value: "Node"
    above: tuple[str, ...] = ()


@dataclass(frozen=True)
class Keys:
    """Keys with their values, in order. below: comments behind the last."""

    entries: tuple[Entry, ...]
    below: tuple[str, ...] = ()


@dataclass(frozen=True)
class Items:
    """The values of a list, in order. below: comments behind the last."""

    entries: tuple[Entry, ...]
    below: tuple[str, ...] = ()


Node = str | Keys | Items


def yaml_text(top: Keys) -> str:
    """The whole file, with a line end behind its last line; '' for nothing at all."""
    return "".join(f"{line}\n" for line in _lines(top, 0))


def listed(*values: Node) -> Items:
    """A list without comments."""
    return Items(tuple(Entry("", value) for value in values))


def _lines(node: Keys | Items, depth: int) -> Iterator[str]:
    for entry in node.entries:
        yield from _comments(entry.above, depth)
        if isinstance(node, Items):
            yield from _item(entry.value, depth)
        else:
            yield from _key(entry, depth)
    yield from _comments(node.below, depth)


def _key(entry: Entry, depth: int) -> Iterator[str]:
    key = f"{_INDENT * depth}{scalar(entry.key)}:"
    value = entry.value
    if isinstance(value, str):
        first, *rest = _scalar_lines(value, depth + 1)
        yield f"{key} {first}"
        yield from rest
    elif value.entries:
        yield key
        yield from _lines(value, depth + 1)
    else:
        yield f"{key} {'{}' if isinstance(value, Keys) else '[]'}"
        yield from _comments(value.below, depth + 1)


def _item(value: Node, depth: int) -> Iterator[str]:
    dash = f"{_INDENT * depth}- "
    if isinstance(value, str):
        first, *rest = _scalar_lines(value, depth + 1)
        yield f"{dash}{first}"
        yield from rest
        return
    first, *rest = list(_lines(value, depth + 1)) or ["{}"]
    yield f"{dash}{first.lstrip(' ')}"
    yield from rest


def _comments(comments: tuple[str, ...], depth: int) -> Iterator[str]:
    for comment in comments:
        for line in _wrapped(seen(comment)):
            yield f"{_INDENT * depth}# {line}"


def _wrapped(words: str) -> list[str]:
    short = " ".join(
        word[begin : begin + _WORD_WIDTH]
        for word in words.split()
        for begin in range(0, len(word), _WORD_WIDTH)
    )
    return textwrap.wrap(short, _COMMENT_WIDTH, break_long_words=False, break_on_hyphens=False)


def seen(text: str) -> str:
    """The text with a blank for every character that cannot be seen, line ends and tabs among them."""
    return _UNSEEN.sub(" ", text)


def _scalar_lines(text: str, depth: int) -> list[str]:
    """A text as it stands behind its key: on one line, or as a block below it."""
    if "\n" not in text or not _fits_a_block(text):
        return [scalar(text)]
    mark = "|" if text.endswith("\n") else "|-"
    lines = text.removesuffix("\n").split("\n")
    return [mark, *(f"{_INDENT * depth}{line}" if line else "" for line in lines)]


def _fits_a_block(text: str) -> bool:
    """Whether YAML gives a block back as it was: no blank begins it, none can be lost at its ends."""
    body = text.removesuffix("\n")
    is_inside = bool(body.strip()) and not body.startswith((" ", "\n")) and not body.endswith(("\n", " "))
    return is_inside and not _unseen_in(body)


def _unseen_in(text: str) -> bool:
    return _UNSEEN.search(text.replace("\n", "")) is not None


def scalar(text: str) -> str:
    """A text on one line: plain where YAML takes it for nothing else, in double quotes where it would."""
    is_plain = _PLAIN_START.match(text) and not _TRAP.search(text) and text == text.strip()
    if is_plain and not _UNSEEN.search(text):
        return text
    quoted = "".join(_ESCAPES.get(letter) or _escaped(letter) for letter in text)
    return f'"{quoted}"'


def _escaped(letter: str) -> str:
    if not _UNSEEN.match(letter):
        return letter
    return f"\\x{ord(letter):02x}" if ord(letter) < 256 else f"\\u{ord(letter):04x}"
