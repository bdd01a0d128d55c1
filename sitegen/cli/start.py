"""`sitegen start FOLDER`."""

from pathlib import Path

import click

from sitegen.cli.exits import Exit, stop


@click.command()
@click.argument("folder", type=click.Path(path_type=Path))
def start(folder: Path) -> None:
    """Make FOLDER with a small school in it: one recipe, one technique page, settings, and CI files.

    \b
    Example:
      sitegen start my-bakery
    """
    from sitegen.release.start import NotEmpty
    from sitegen.release.start import start as copy_starter

    try:
        written = copy_starter(folder)
    except NotEmpty:
        raise stop(f"'{folder}' is not empty: name a new folder", Exit.WRONG_USE) from None
    except OSError as problem:
        raise stop(f"'{folder}' cannot be written: {problem.strerror}", Exit.FAULTS) from None
    click.echo(f"{len(written)} files written in {folder}:")
    for path in written:
        click.echo(f"  {path.as_posix()}")
    click.echo(f"\nNext: cd {folder}\n      sitegen proof\n      sitegen publish")
