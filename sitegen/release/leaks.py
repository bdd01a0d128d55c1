"""The last look before a swap: every byte of the public tree is read for what is only for subscribers.

`audience.py` keeps it out by construction; this holds whatever was built, by whatever template, against the
texts themselves. One find, and nothing is published.
"""

import os
from collections.abc import Iterator
from dataclasses import dataclass
from hashlib import sha256
from pathlib import Path

from ahocorasick_rs import BytesAhoCorasick, Implementation

from sitegen.release.bare_words import bare, bare_text
from sitegen.release.kept_words import KeptWords
from sitegen.release.secrets import Secrets, stem_of
from sitegen.release.unpacked import Sealed, notes_in_picture, parts_of, readings

_KEY_BYTES = 16
"""A phrase is looked for by its beginning, which keeps the automaton small, and then compared whole."""
_NOT_FOR_ALL = "a picture or a card that is only for subscribers"
MOST_FINDS = 20
"""So many are enough to know that something is wrong."""


@dataclass(frozen=True)
class Leak:
    """One thing in a public file that is not for everyone.

    file: POSIX, below the public tree. slug: whose it is, '' unknown. what: the words that were found, or
    what else is wrong, ready for a sentence.
    """

    file: str
    slug: str
    what: str


class Leaked(Exception):
    """Nothing was swapped in, since it would have told everyone what is only for subscribers."""

    def __init__(self, leaks: tuple[Leak, ...]) -> None:
        super().__init__(leaks)
        self.leaks = leaks


def leaks_in(folder: Path, secrets: Secrets, kept: KeptWords | None = None) -> tuple[Leak, ...]:
    """What is found in the files of a folder, by the order of their names; at most MOST_FINDS.

    kept: the words of files that were read before. Raises OSError where a file cannot be read.
    """
    look = _Look(secrets, _Phrases(secrets), kept or KeptWords())
    found: dict[Leak, None] = {}
    for path in _files(folder):
        found |= dict.fromkeys(look.leaks_of(path, path.relative_to(folder).as_posix()))
        if len(found) >= MOST_FINDS:
            return tuple(found)[:MOST_FINDS]
    look.kept.put_by()
    return tuple(found)


class _Phrases:
    """All phrases that are nobody's but the subscribers', found in a row of bare words."""

    def __init__(self, secrets: Secrets) -> None:
        self._slugs: dict[bytes, str] = {}
        for recipe in secrets.recipes:
            for text in recipe.phrases:
                self._slugs.setdefault(text.encode(), recipe.slug)
        beginnings: dict[bytes, list[bytes]] = {}
        for phrase in self._slugs:
            beginnings.setdefault(phrase[:_KEY_BYTES], []).append(phrase)
        self._of_key = tuple(beginnings.values())
        self._automaton = BytesAhoCorasick(list(beginnings), implementation=Implementation.ContiguousNFA)
        for open_text in _open_texts(secrets):
            for phrase in list(self._in(open_text)):
                self._slugs.pop(phrase, None)

    def found_in(self, text: bytes) -> Iterator[tuple[str, str]]:
        """(slug, words) of each. text: bare words."""
        for phrase in self._in(text):
            if phrase in self._slugs:
                yield self._slugs[phrase], phrase.decode("utf-8", "replace").strip()

    def _in(self, text: bytes) -> Iterator[bytes]:
        for number, start, _ in self._automaton.find_matches_as_indexes(text, overlapping=True):
            yield from (phrase for phrase in self._of_key[number] if text.startswith(phrase, start))


def _open_texts(secrets: Secrets) -> Iterator[bytes]:
    for recipe in secrets.recipes:
        yield " \n ".join(recipe.open_texts).encode()
    for text in secrets.open_texts:
        yield bare_text(text).encode()
        yield from readings(text.encode("utf-8", "replace"))


def _files(folder: Path) -> Iterator[Path]:
    """Each file, and each link, which is not followed."""
    for inner, folders, names in os.walk(folder):
        folders.sort()
        links = [name for name in folders if Path(inner, name).is_symlink()]
        yield from (Path(inner, name) for name in sorted((*names, *links)))


@dataclass(frozen=True)
class _Look:
    """What the files of a folder are held against."""

    secrets: Secrets
    phrases: _Phrases
    kept: KeptWords

    def leaks_of(self, path: Path, name: str) -> Iterator[Leak]:
        if path.is_symlink():
            yield Leak(name, "", "it is a link, which may lead to anything")
            return
        yield from self._words(name, bare(name.encode("utf-8", "surrogateescape")))
        if stem_of(name) in self.secrets.stems:
            yield Leak(name, "", "it bears the name of a picture that is only for subscribers")
        words = self.kept.words_of(name)
        if words is None:
            yield from self._leaks_in(path.read_bytes(), name)
        else:
            if self.kept.digests[name] in self.secrets.bodies:
                yield Leak(name, "", _NOT_FOR_ALL)
            yield from self._words(name, words)

    def _leaks_in(self, body: bytes, name: str) -> Iterator[Leak]:
        """What is found in a file that is read first now. Its words are kept if they are all of it."""
        try:
            parts = tuple(parts_of(body))
        except Sealed as sealed:
            yield Leak(name, "", sealed.reason)
            return
        wrong = tuple(leak for part in parts for leak in self._wrong_in(name, part))
        yield from wrong
        texts = (part for part in parts if notes_in_picture(part) is None)
        read = (reading for part in texts for reading in readings(part))
        is_all = len(parts) == 1 and not wrong
        yield from self._words(name, self.kept.keep(name, read) if is_all else b"\n".join(read))

    def _words(self, name: str, text: bytes) -> Iterator[Leak]:
        for slug, words in self.phrases.found_in(text):
            yield Leak(name, slug, f"'{words}'")

    def _wrong_in(self, name: str, part: bytes) -> Iterator[Leak]:
        """What no public file is, whatever its words."""
        if b"%PDF-" in part[:1024]:
            yield Leak(name, "", "a card, which is for subscribers")
        if notes_in_picture(part):
            yield Leak(name, "", "a picture with notes beside its pixels, such as those of a camera")
        if sha256(part).hexdigest() in self.secrets.bodies:
            yield Leak(name, "", _NOT_FOR_ALL)
