"""The files of a theme for pages, whose fonts take seconds to cut, made once and kept."""

import json

from sitegen.press.theme import Theme, theme_leaves
from sitegen.release.cache import Cache


def kept_theme(theme: Theme, cache: Cache) -> tuple[tuple[str, str], ...]:
    """(path in the tree, cache key) of each file that pages need. Raises OSError where none can be kept."""
    list_key = cache.key("theme", theme.digest)
    listed = cache.get(list_key)
    if listed is not None:
        files = tuple((path, _key(path, theme, cache)) for path in json.loads(listed))
        if all(cache.has(key) for _, key in files):
            return files
    leaves = theme_leaves(theme)
    for path, body in leaves:
        cache.put(_key(path, theme, cache), body)
    cache.put(list_key, json.dumps([path for path, _ in leaves]).encode())
    return tuple((path, _key(path, theme, cache)) for path, _ in leaves)


def _key(path: str, theme: Theme, cache: Cache) -> str:
    return cache.key("theme file", theme.digest, path)
