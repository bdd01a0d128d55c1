"""Photos, cut for pages and for cards, each cut made once and kept."""

import json
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from hashlib import sha256
from io import BytesIO
from pathlib import Path
from typing import Protocol

from sitegen import limits
from sitegen.faults import Place, Severity
from sitegen.opening import read_within
from sitegen.press.picture import Cut, Picture, PictureUnreadable
from sitegen.release.cache import Cache
from sitegen.release.steps import Progress
from sitegen.release.workers import Workers
from sitegen.source.photos import trouble_with

Box = tuple[float, float]
"""Width and height on paper, in mm."""


class ChangedMeanwhile(Exception):
    """A photo was written to while the build ran. file: its path."""

    def __init__(self, file: str) -> None:
        super().__init__(file)
        self.file = file


@dataclass(frozen=True)
class CutWork:
    """Cuts one photo for pages. Comes back as the key under which its files are listed."""

    root: Path
    file: str
    digest: str
    cache: Cache

    @property
    def key(self) -> str:
        return self.cache.key("picture", self.digest)

    def is_kept(self) -> bool:
        listed = self.cache.get(self.key)
        return listed is not None and all(self.cache.has(key) for _, key in _listed(listed, self.cache))

    def made(self) -> None:
        picture, leaves = self.cut()
        for path, body in leaves:
            self.cache.put(self.cache.key("cut", path), body)
        self.cache.put(self.key, _picture_json(picture))

    def cut(self) -> tuple[Picture, tuple[tuple[str, bytes], ...]]:
        """The picture and its files, (path, bytes) each.

        Raises PictureUnreadable, ChangedMeanwhile and OSError.
        """
        from sitegen.press.pictures import cut_picture

        return cut_picture(_photo(self.root, self.file, self.digest), self.file)


@dataclass(frozen=True)
class CardCutWork:
    """Cuts one photo to its box on a card."""

    root: Path
    file: str
    digest: str
    box: Box
    cache: Cache

    @property
    def key(self) -> str:
        return self.cache.key("card photo", self.digest, repr(self.box))

    def is_kept(self) -> bool:
        return self.cache.has(self.key)

    def made(self) -> None:
        from sitegen.press.card_photos import cut_for_card

        photo = _photo(self.root, self.file, self.digest)
        self.cache.put(self.key, cut_for_card(photo, self.box, self.file))


class Work(Protocol):
    """What has something in the cache once it is made; two of equal value are one piece of work."""

    def is_kept(self) -> bool: ...

    def made(self) -> None: ...


def photo_digests(root: Path, files: Iterable[str]) -> Mapping[str, str]:
    """Photo -> hash of its bytes. Raises OSError where one cannot be read."""
    return {file: sha256(_body(root, file)).hexdigest() for file in sorted(set(files))}


def cut_all(work: Sequence[Work], workers: Workers, progress: Progress) -> None:
    """Have every cut in the cache. Raises PictureUnreadable, ChangedMeanwhile, OSError, WorkerDied."""
    missing = [each for each in dict.fromkeys(work) if not each.is_kept()]
    progress.reuse(len(work) - len(missing))
    workers.worked_off(missing, progress.advance)


def kept_picture(work: CutWork) -> tuple[Picture, tuple[tuple[str, str], ...]]:
    """A picture that was cut, and (path, cache key) of each of its files."""
    listed = work.cache.fetch(work.key)
    rows = json.loads(listed)
    webp, jpeg = (tuple(Cut(*cut) for cut in rows[name]) for name in ("webp", "jpeg"))
    return Picture(work.file, webp, jpeg), _listed(listed, work.cache)


def _picture_json(picture: Picture) -> bytes:
    rows = {
        name: [(cut.path, cut.width, cut.height) for cut in cuts]
        for name, cuts in (("webp", picture.webp), ("jpeg", picture.jpeg))
    }
    return json.dumps(rows).encode()


def _listed(listed: bytes, cache: Cache) -> tuple[tuple[str, str], ...]:
    rows = json.loads(listed)
    return tuple((cut[0], cache.key("cut", cut[0])) for name in ("webp", "jpeg") for cut in rows[name])


def _photo(root: Path, file: str, digest: str) -> bytes:
    """The photo, if it still is the one that the key was made of, and may be unpacked.

    Its head is looked at once more, in the very bytes that a decoder is about to be given.
    """
    body = _body(root, file)
    if sha256(body).hexdigest() != digest:
        raise ChangedMeanwhile(file)
    for fault in trouble_with(BytesIO(body), file.rpartition("/")[2], Place(file)):
        if fault.severity is Severity.ERROR:
            raise PictureUnreadable(file, fault.sentence)
    return body


def _body(root: Path, file: str) -> bytes:
    return read_within(root / "content", root / file, limits.PICTURE_BYTES)
