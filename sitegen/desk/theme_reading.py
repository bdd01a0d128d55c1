"""The school's theme, read again when one of its files was saved."""

from pathlib import Path

from sitegen.desk.shown_faults import faults_here
from sitegen.faults import Fault
from sitegen.press.theme import Theme, load_theme
from sitegen.press.theme_folder import find_theme, lineage
from sitegen.press.tokens import ThemeUnusable


class ThemeReading:
    """root: the folder that holds `content/`. folders: of the theme and of those that it inherits from."""

    def __init__(self, root: Path) -> None:
        self._root = root
        self._read: tuple[object, Theme | None, tuple[Fault, ...]] | None = None
        self.folders: tuple[Path, ...] = ()

    def read(self, name: str) -> tuple[Theme | None, tuple[Fault, ...]]:
        """The theme of that name, None with its faults where it cannot be used; the last one while no file of
        it was saved."""
        try:
            self.folders = lineage(find_theme(self._root, name))
            key = (name, self.folders, _signs(self.folders))
            if self._read is None or self._read[0] != key:
                self._read = (key, load_theme(self.folders[0]), ())
        except (ThemeUnusable, OSError) as problem:
            self._read = (None, None, faults_here(problem, self._root))
        return self._read[1], self._read[2]


def _signs(folders: tuple[Path, ...]) -> list[tuple[str, int, int]]:
    """Every file with its time and size."""
    signs = []
    for folder in folders:
        for path in sorted(folder.rglob("*")):
            stat = path.stat()
            signs.append((str(path), stat.st_mtime_ns, stat.st_size))
    return signs
