"""What was dear to make, kept by the hash of everything that made it.

An entry is never asked whether it is still good: other inputs have another key, so a stale entry is
merely never found again. Faults are not kept, only finished bytes.
"""

import functools
import os
import time
from dataclasses import dataclass
from hashlib import sha256
from importlib.metadata import PackageNotFoundError, version
from importlib.resources import files
from pathlib import Path
from tempfile import NamedTemporaryFile

from sitegen.release.native_versions import native_versions

_DIGEST_BYTES = 32
_LENGTH_BYTES = 8
_HEAD_BYTES = _DIGEST_BYTES + _LENGTH_BYTES
_KEPT_SECONDS = 30 * 24 * 60 * 60
_LIBRARIES = (
    *("brotli", "fonttools", "font-manrope", "font-source-sans-pro", "font-source-serif-pro"),
    *("icalendar", "jinja2", "markdown", "nh3", "pillow", "rcssmin", "rjsmin", "segno"),
    *("cssselect2", "pydyf", "pyphen", "tinycss2", "tinyhtml5", "weasyprint"),
)
"""Packages of which another version may give other bytes, those by which others work among them."""


@functools.cache
def makers_hash() -> str:
    """A hash of what makes the entries: the press, the values that it is given, and its libraries.

    The press imports nothing else of the program (`tests/test_rooms.py` holds it to that), so that a
    change of any other room makes no kept card or picture stale.
    """
    return _hash_of(
        ("press", "sheet/values.py", "sheet/facet_values.py", "sheet/panel_values.py", "sheet/work_values.py")
    )


@functools.cache
def program_hash() -> str:
    """A hash of the whole program with its tables, and of the libraries."""
    return _hash_of(("",))


def _hash_of(parts: tuple[str, ...]) -> str:
    digest = sha256()
    package = Path(str(files("sitegen")))
    for path in sorted(path for part in parts for path in _source_files(package / part)):
        body = path.read_bytes()
        digest.update(f"{path.relative_to(package).as_posix()}\0{len(body)}\0".encode() + body)
    digest.update(_libraries().encode())
    return digest.hexdigest()


@functools.cache
def _libraries() -> str:
    """What prints and cuts, a line each, with its version."""
    told = {library: _version(library) for library in _LIBRARIES} | dict(native_versions())
    return "".join(f"{library} {version}\n" for library, version in sorted(told.items()))


def _source_files(path: Path) -> list[Path]:
    if path.is_file():
        return [path]
    return [
        each
        for each in path.rglob("*")
        if each.suffix in {".py", ".yaml", ".csv", ".txt", ".js"} and each.is_file()
    ]


def _version(library: str) -> str:
    try:
        return version(library)
    except PackageNotFoundError:
        return "missing"


class NotKept(Exception):
    """An entry vanished while a build ran, or was found damaged."""


@dataclass(frozen=True)
class Cache:
    """Kept bytes in a folder, `.sitegen/cache/`. Each file begins with the hash and length of what follows.

    makers: hash of what makes the entries (`makers_hash`), which goes into every key.
    """

    folder: Path
    makers: str

    def key(self, *parts: str | bytes) -> str:
        """The key of what these parts make.

        Each part goes in with its length, so that ('ab', 'c') and ('a', 'bc') differ.
        """
        digest = sha256(self.makers.encode())
        for part in parts:
            body = part.encode() if isinstance(part, str) else part
            digest.update(len(body).to_bytes(8))
            digest.update(body)
        return digest.hexdigest()

    def get(self, key: str) -> bytes | None:
        """The kept bytes, or None. A file that is damaged counts as none, and is taken away."""
        path = self._path(key)
        try:
            with open(path, "rb") as file:
                kept = file.read()
            os.utime(path)
        except OSError:
            return None
        body = kept[_HEAD_BYTES:]
        if kept[:_HEAD_BYTES] == _head(body):
            return body
        Path(path).unlink(missing_ok=True)
        return None

    def digest(self, key: str) -> str | None:
        """The hash of the kept bytes, told from the head of their file; None where they are not kept.

        A file that was cut short by a power failure counts as none; other damage shows when it is fetched.
        """
        try:
            with open(self._path(key), "rb") as file:
                head = file.read(_HEAD_BYTES)
                size = os.fstat(file.fileno()).st_size
                os.utime(file.fileno())
        except OSError:
            return None
        is_whole = size == _HEAD_BYTES + int.from_bytes(head[_DIGEST_BYTES:])
        return head[:_DIGEST_BYTES].hex() if is_whole and len(head) == _HEAD_BYTES else None

    def has(self, key: str) -> bool:
        """Whether the bytes are kept; see `digest`."""
        return self.digest(key) is not None

    def fetch(self, key: str) -> bytes:
        """Bytes that are kept. Raises NotKept where another hand took them away, or they are damaged."""
        body = self.get(key)
        if body is None:
            raise NotKept(key)
        return body

    def put(self, key: str, body: bytes) -> None:
        """Keep bytes; raises OSError where the disk is full or may not be written."""
        path = self._path(key)
        (self.folder / key[:2]).mkdir(parents=True, exist_ok=True)
        self._parts.mkdir(exist_ok=True)
        with NamedTemporaryFile(dir=self._parts, delete=False) as part:
            part.write(_head(body) + body)
        os.replace(part.name, path)

    def put_leaf(self, body: bytes) -> str:
        """Keep bytes under a key that they themselves decide. Returns the key."""
        key = self.key("leaf", sha256(body).digest())
        if not self.has(key):
            self.put(key, body)
        return key

    def clear_parts(self) -> None:
        """Take away entries that a killed build never finished. Raises OSError where that is refused."""
        for part in self._parts.iterdir() if self._parts.is_dir() else ():
            part.unlink(missing_ok=True)

    def forget_damaged(self) -> None:
        """Take away every entry that is not whole. Reads them all."""
        for path in self.folder.glob("*/*"):
            self.get(path.name)

    def forget_unused(self) -> None:
        """Drop entries that no build has asked for in thirty days."""
        oldest = time.time() - _KEPT_SECONDS
        for path in self.folder.glob("*/*"):
            if path.stat().st_mtime < oldest:
                path.unlink(missing_ok=True)

    @property
    def _parts(self) -> Path:
        """Where entries are written before they appear under their keys."""
        return self.folder / ".parts"

    def _path(self, key: str) -> str:
        return f"{self.folder}/{key[:2]}/{key}"


def _head(body: bytes) -> bytes:
    return sha256(body).digest() + len(body).to_bytes(_LENGTH_BYTES)
