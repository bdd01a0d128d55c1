"""The bare words of public files, kept by the hash of their bytes: what was read once is not read again.

Only a file in which nothing is packed is kept, so that its words are all that there is to look through.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field

from sitegen.release.cache import Cache, program_hash

_DIGEST_BYTES = 32
_BETWEEN = b"\n"
"""Stands in no bare words, so that no phrase is found across two readings."""


@dataclass
class KeptWords:
    """digests: file in the public tree -> SHA-256 of its bytes, in hexadecimal. cache: None keeps nothing.

    Files without a word, which pictures are, share one entry: a school has ten thousand of them.
    """

    digests: Mapping[str, str] = field(default_factory=dict)
    cache: Cache | None = None

    def __post_init__(self) -> None:
        kept = self.cache.get(self._wordless_key(self.cache)) if self.cache else None
        starts = range(0, len(kept or b""), _DIGEST_BYTES)
        self._wordless = frozenset((kept or b"")[start : start + _DIGEST_BYTES].hex() for start in starts)
        self._met: set[str] = set()

    def words_of(self, file: str) -> bytes | None:
        """All readings of a file, a line each; None where they are not kept."""
        digest = self.digests.get(file)
        if self.cache is None or digest is None:
            return None
        if digest in self._wordless:
            self._met.add(digest)
            return b""
        return self.cache.get(_key(self.cache, digest))

    def keep(self, file: str, readings: Iterator[bytes]) -> bytes:
        """The readings of a file in which nothing is packed, as `words_of` will give them. Raises OSError."""
        words = _BETWEEN.join(readings)
        digest = self.digests.get(file)
        if self.cache is not None and digest is not None:
            if words:
                self.cache.put(_key(self.cache, digest), words)
            else:
                self._met.add(digest)
        return words

    def put_by(self) -> None:
        """Keep which files have no words; once all were looked through. Raises OSError."""
        if self.cache is not None and self._met != self._wordless:
            body = b"".join(map(bytes.fromhex, sorted(self._met)))
            self.cache.put(self._wordless_key(self.cache), body)

    @staticmethod
    def _wordless_key(cache: Cache) -> str:
        return cache.key("files without words", program_hash())


def _key(cache: Cache, digest: str) -> str:
    return cache.key("words", program_hash(), digest)
