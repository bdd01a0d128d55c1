"""The files of a theme for pages and the faces of its cards: fonts take seconds to cut, and so are kept."""

import json
from collections.abc import Mapping
from dataclasses import dataclass

from sitegen.press.fonts import FontFile, subset
from sitegen.press.theme import Theme, theme_leaves
from sitegen.release.cache import Cache


@dataclass(frozen=True)
class ThemeWork:
    """Makes the files that pages need of a theme, and the faces that cards are set in."""

    theme: Theme
    cache: Cache

    @property
    def key(self) -> str:
        """Where the files for pages are listed."""
        return self.cache.key("theme", self.theme.digest)

    def is_kept(self) -> bool:
        if not self.cache.has(self.key):
            return False
        keys = [*(key for _, key in self.files()), *(self._face_key(font) for font in self.theme.fonts)]
        return all(map(self.cache.has, keys))

    def made(self) -> None:
        for font in self.theme.fonts:
            self.cache.put(self._face_key(font), subset(font))
        leaves = theme_leaves(self.theme)
        for path, body in leaves:
            self.cache.put(self._file_key(path), body)
        self.cache.put(self.key, json.dumps([path for path, _ in leaves]).encode())

    def files(self) -> tuple[tuple[str, str], ...]:
        """(path in the tree, cache key) of each file, once they are made."""
        return tuple((path, self._file_key(path)) for path in json.loads(self.cache.fetch(self.key)))

    def faces(self) -> Mapping[FontFile, bytes]:
        """What cards are set in, once it is cut."""
        return {font: self.cache.fetch(self._face_key(font)) for font in self.theme.fonts}

    def _face_key(self, font: FontFile) -> str:
        return self.cache.key("card face", self.theme.digest, font.name)

    def _file_key(self, path: str) -> str:
        return self.cache.key("theme file", self.theme.digest, path)
