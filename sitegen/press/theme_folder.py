"""Where a theme lies, and the themes that it inherits from."""

import re
from pathlib import Path

from sitegen import limits
from sitegen.opening import read_within
from sitegen.press.tokens import ThemeUnusable, parent_of

THEME_FILE = "theme.yaml"
NAME = re.compile(r"[a-z0-9]+(-[a-z0-9]+)*")
_PACKAGE = Path(__file__).parent.parent
_WITH_THE_PROGRAM = (_PACKAGE / "themes", _PACKAGE.parent / "themes")
"""Of an installed program, and of a checkout."""


def find_theme(root: Path, name: str) -> Path:
    """The folder of a theme: beside `content/` first, then among those that come with the program.

    Raises ThemeUnusable where there is none of that name.
    """
    return _found(root / "themes", name)


def lineage(folder: Path) -> tuple[Path, ...]:
    """The folder of a theme and of those that it inherits from, the nearest first.

    Raises ThemeUnusable where one is missing, cannot be read, or inherits from itself by any way.
    """
    folders = [folder]
    while name := _inherits(folders[-1]):
        parent = _found(folder.parent, name)
        if parent in folders:
            raise ThemeUnusable(folder, (f"theme.yaml, inherits: '{name}' inherits from itself",))
        folders.append(parent)
    return tuple(folders)


def theme_text(folder: Path, name: str) -> str:
    """A text file of a theme. Raises ThemeUnusable where it cannot be read, or lies elsewhere."""
    try:
        return read_within(folder, folder / name, limits.TEXT_BYTES).decode("utf-8-sig")
    except FileNotFoundError as problem:
        raise ThemeUnusable(folder, (f"{name} is missing",)) from problem
    except UnicodeDecodeError as problem:
        raise ThemeUnusable(folder, (f"{name} is not written in UTF-8",)) from problem
    except OSError as problem:
        raise ThemeUnusable(folder, (f"{name} cannot be read: {problem.strerror}",)) from problem


def _inherits(folder: Path) -> str:
    return parent_of(theme_text(folder, THEME_FILE), folder)


def _found(nearby: Path, name: str) -> Path:
    """The folder of that name; a name is that of a folder and leads nowhere else, not by a link either."""
    places = [place / name for place in (nearby, *_WITH_THE_PROGRAM)]
    if not NAME.fullmatch(name):
        raise ThemeUnusable(nearby, (f"'{name}' names no theme: write small letters, figures and dashes",))
    found = next((place for place in places if place.is_dir()), None)
    if found is None:
        raise ThemeUnusable(places[0], (f"there is no theme '{name}'",))
    if found.is_symlink():
        raise ThemeUnusable(found, (f"'{name}' is a link, where a folder should be",))
    return found
