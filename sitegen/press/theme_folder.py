"""Where a theme lies, and the themes that it inherits from."""

from pathlib import Path

from sitegen.press.tokens import ThemeUnusable, parent_of

THEME_FILE = "theme.yaml"
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


def _inherits(folder: Path) -> str:
    file = folder / THEME_FILE
    if not file.is_file():
        raise ThemeUnusable(folder, (f"{THEME_FILE} is missing",))
    return parent_of(file.read_text(encoding="utf-8"), folder)


def _found(nearby: Path, name: str) -> Path:
    places = [place / name for place in (nearby, *_WITH_THE_PROGRAM)]
    found = next((place for place in places if (place / THEME_FILE).is_file()), None)
    if found is None:
        raise ThemeUnusable(places[0], (f"there is no theme '{name}'",))
    return found
