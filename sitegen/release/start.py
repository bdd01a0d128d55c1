"""A new school's folder: the starter that comes with the package, copied into an empty place."""

import shutil
from importlib.resources import as_file, files
from pathlib import Path


class NotEmpty(Exception):
    """The folder already holds something, which a start would write over."""


def start(folder: Path) -> tuple[Path, ...]:
    """Copy the starter into a folder, which is made where it is missing.

    Returns the files written, sorted, as paths below the folder.
    Raises NotEmpty where the folder holds anything at all, and OSError where it cannot be written.
    """
    if folder.exists() and (not folder.is_dir() or any(folder.iterdir())):
        raise NotEmpty(folder)
    with as_file(files("sitegen") / "data" / "starter") as starter:
        shutil.copytree(starter, folder, dirs_exist_ok=True, copy_function=shutil.copyfile)
        written = (path for path in starter.rglob("*") if path.is_file())
        return tuple(sorted(path.relative_to(starter) for path in written))
