"""Which folder a command works on: the one that holds `content/`, here or further up."""

from pathlib import Path

import click

from sitegen.cli.exits import Exit, stop

root_option = click.option(
    "--root",
    type=click.Path(path_type=Path),
    metavar="FOLDER",
    help="The folder that holds content/. Default: the one you stand in, or the nearest above it.",
)


def school_folder(root: Path | None) -> Path:
    """The folder that holds `content/`; stops with code 2 where there is none.

    root: as told on the command line, else the search begins where one stands.
    """
    if root is not None:
        if not (root / "content").is_dir():
            raise stop(f"there is no content/ folder in '{root}'", Exit.WRONG_USE)
        return root
    here = Path.cwd()
    for folder in (here, *here.parents):
        if (folder / "content").is_dir():
            return folder
    sentence = f"there is no content/ folder in '{here}' or above it"
    raise stop(f"{sentence}\n'sitegen start FOLDER' makes one with a first recipe in it", Exit.WRONG_USE)
