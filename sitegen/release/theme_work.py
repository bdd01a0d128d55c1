"""The files of a theme for pages, whose fonts take seconds to cut, made once and kept."""

import json
from dataclasses import dataclass

from sitegen.press.theme import Theme, theme_leaves
from sitegen.release.cache import Cache


@dataclass(frozen=True)
class ThemeWork:
    """Makes the files that pages need of a theme."""

    theme: Theme
    cache: Cache

    @property
    def key(self) -> str:
        """Where they are listed."""
        return self.cache.key("theme", self.theme.digest)

    def is_kept(self) -> bool:
        return self.cache.has(self.key) and all(self.cache.has(key) for _, key in self.files())

    def made(self) -> None:
        leaves = theme_leaves(self.theme)
        for path, body in leaves:
            self.cache.put(self._file_key(path), body)
        self.cache.put(self.key, json.dumps([path for path, _ in leaves]).encode())

    def files(self) -> tuple[tuple[str, str], ...]:
        """(path in the tree, cache key) of each file, once they are made."""
        return tuple((path, self._file_key(path)) for path in json.loads(self.cache.fetch(self.key)))

    def _file_key(self, path: str) -> str:
        return self.cache.key("theme file", self.theme.digest, path)
