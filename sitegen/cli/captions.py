"""`sitegen captions RECIPE`."""

from pathlib import Path

import click

from sitegen.cli.exits import Exit
from sitegen.cli.folder import root_option, school_folder


@click.command()
@click.argument("recipe")
@click.option(
    "--captions",
    "file",
    type=click.Path(path_type=Path, dir_okay=False),
    metavar="FILE",
    help="WebVTT or SRT. Default: the captions that the recipe names.",
)
@click.option("--json", "as_json", is_flag=True, help="As JSON.")
@root_option
@click.pass_context
def captions(
    context: click.Context, recipe: str, file: Path | None, as_json: bool, root: Path | None
) -> None:
    """Hold the captions of a film against RECIPE (its folder's name or its title).

    Shows where each step begins, chapters to paste, and what is said otherwise than it is written: amounts,
    temperatures, times, counts and shares, ingredients never named, and what goes in that no line has. What
    is only perhaps so stands below. `said-otherwise` in the recipe settles a finding.

    \b
    Examples:
      sitegen captions lemon-shortbread
      sitegen captions lemon-shortbread --captions ~/films/shortbread.srt

    Exit codes: 0 nothing is certain to be said otherwise, 1 something is, or recipe or captions have faults,
    2 wrong use.
    """
    folder = school_folder(root)

    from sitegen.cli.captions_text import film_json, film_text
    from sitegen.cli.faulty import asked
    from sitegen.release.filming import filmed

    found = asked(lambda: filmed(folder, recipe, file), "there is no film to show")
    click.echo(film_json(found) if as_json else film_text(found))
    context.exit(Exit.FAULTS if any(finding.certain for finding in found.open) else Exit.CLEAN)
