"""Photos of the live site: where their cuts will lie is told at once, each is made when it is asked for."""

from collections.abc import Iterator, Mapping
from contextlib import suppress
from dataclasses import dataclass
from hashlib import sha256
from pathlib import Path
from threading import Lock

from sitegen import limits
from sitegen.opening import read_within
from sitegen.press.picture import Picture
from sitegen.press.pictures import planned_picture
from sitegen.release.cache import Cache
from sitegen.release.photo_work import CutWork


@dataclass(frozen=True)
class _Planned:
    """mark: of the file when it was looked at. digest: of its bytes."""

    mark: str
    digest: str
    picture: Picture


class LivePictures:
    """The photos of one school. Two threads may ask: pages for plans, a browser for cuts."""

    def __init__(self, root: Path, cache: Cache) -> None:
        """root: the folder that holds `content/`. cache: the same as a build's."""
        self._root = root
        self._cache = cache
        self._planned: dict[str, _Planned] = {}
        self._by_path: dict[str, str] = {}
        self._cutting = Lock()

    def marked(self, marks: Mapping[str, str]) -> Mapping[str, Picture]:
        """Photo -> its picture, looked up as it is asked for. marks: file -> what tells its content.

        Asking raises PictureUnreadable and OSError.
        """
        return _Pictures(self, marks)

    def plan(self, file: str, mark: str) -> Picture:
        """What a page shows of a photo, none of which need be cut yet. mark: what tells the file's content.

        Raises PictureUnreadable and OSError.
        """
        known = self._planned.get(file)
        if known is None or known.mark != mark:
            body = read_within(self._root / "content", self._root / file, limits.PICTURE_BYTES)
            picture = planned_picture(body, file)
            known = self._planned[file] = _Planned(mark, sha256(body).hexdigest(), picture)
            self._by_path |= {cut.path: file for cut in (*picture.webp, *picture.jpeg)}
        return known.picture

    def digest(self, file: str, mark: str) -> str:
        """SHA-256 of a photo's bytes, in hexadecimal. Raises PictureUnreadable and OSError."""
        self.plan(file, mark)
        return self._planned[file].digest

    def cut(self, path: str) -> bytes | None:
        """The file at a path of the tree; None where no page that was made shows it.

        Raises PictureUnreadable, ChangedMeanwhile and OSError.
        """
        file = self._by_path.get(path)
        if file is None:
            return None
        key = self._cache.key("cut", path)
        with self._cutting:
            body = self._cache.get(key)
            if body is not None:
                return body
            _, leaves = CutWork(self._root, file, self._planned[file].digest, self._cache).cut()
            with suppress(OSError):  # a disk that is full, or a build that clears up: then it is cut again
                for each, cut in leaves:
                    self._cache.put(self._cache.key("cut", each), cut)
            return dict(leaves).get(path)


class _Pictures(Mapping[str, Picture]):
    def __init__(self, shelf: LivePictures, marks: Mapping[str, str]) -> None:
        self._shelf = shelf
        self._marks = marks

    def __getitem__(self, file: str) -> Picture:
        return self._shelf.plan(file, self._marks.get(file, ""))

    def __iter__(self) -> Iterator[str]:
        return iter(self._marks)

    def __len__(self) -> int:
        return len(self._marks)
