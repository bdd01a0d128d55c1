"""The faces of a theme, cut once for cards and for pages and kept, since cutting one takes seconds."""

from collections.abc import Mapping
from dataclasses import dataclass

from sitegen.press.fonts import FontFile, short_hash, subset
from sitegen.press.theme import Theme, font_path, theme_texts
from sitegen.release.cache import Cache


@dataclass(frozen=True)
class FaceWork:
    """Cuts one face. Two themes that name it alike share it."""

    font: FontFile
    cache: Cache

    @property
    def card_key(self) -> str:
        """Of the face as cards are set in it."""
        return self.cache.key("card face", repr(self.font), short_hash(self.font))

    @property
    def page_key(self) -> str:
        """Of the face as pages fetch it."""
        return self.cache.key("page face", repr(self.font), short_hash(self.font))

    def is_kept(self) -> bool:
        return self.cache.has(self.card_key) and self.cache.has(self.page_key)

    def made(self) -> None:
        self.cache.put(self.card_key, subset(self.font))
        self.cache.put(self.page_key, subset(self.font, "woff2"))


def face_work(theme: Theme, cache: Cache) -> tuple[FaceWork, ...]:
    """The work on each face that a theme names."""
    return tuple(FaceWork(font, cache) for font in theme.fonts)


def theme_files(theme: Theme, cache: Cache) -> tuple[tuple[str, str], ...]:
    """(path in the tree, cache key) of each file that pages need, once the faces are cut."""
    texts = tuple((path, cache.put_leaf(body)) for path, body in theme_texts(theme))
    return (*texts, *((font_path(work.font), work.page_key) for work in face_work(theme, cache)))


def card_faces(theme: Theme, cache: Cache) -> Mapping[FontFile, bytes]:
    """What cards are set in, once it is cut."""
    return {work.font: cache.fetch(work.card_key) for work in face_work(theme, cache)}
