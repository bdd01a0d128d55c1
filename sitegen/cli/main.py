"""`sitegen`: the group of commands. A command's file is loaded when it is called, and not before."""

import sys
from importlib import import_module

import click

from sitegen import __version__
from sitegen.cli.exits import Exit, leave_pipe
from sitegen.cli.stopping import Stopped, go_on, heed_requests, ignore_requests

COMMANDS = {
    "proof": "Read everything and list every fault.",
    "preview": "Show the desk and a live site, renewed as you save.",
    "publish": "Build the site, the cards and the texts into output/.",
    "calendar": "List what goes out when, and what is not ready.",
    "sheet": "Print one recipe in any edition and batch.",
    "scale": "Show a recipe's ingredients for another batch.",
    "cost": "Show what a batch costs and what a piece must sell for.",
    "plan": "Put the steps of recipes on a clock.",
    "order": "Plan a production day: shopping, weigh-outs, clock, allergens, cost.",
    "stamp": "Make numbered copies of cards for a list of names.",
    "draft": "Make a recipe file of old notes.",
    "captions": "Hold the captions of a film against its recipe.",
    "drift": "Show how far rounding moves a recipe's balance.",
    "schema": "Print the JSON Schema of a kind of file.",
    "start": "Make a folder for a new school.",
}
"""Name -> what it does, in one line. The command `x` is the function `x` of `sitegen/cli/x.py`."""
_STOPPED = {
    # The old one stands there, or the new one if it was just swapped in.
    "publish": "stopped; output/ is whole",
    "preview": "the preview has ended; it published nothing",
}
"""Name -> what is true of it whenever it is stopped; of the others, that they are."""


class LateGroup(click.Group):
    """A group that knows its commands by name and loads each one only when it is asked for."""

    def list_commands(self, ctx: click.Context) -> list[str]:  # noqa: ARG002 (click's signature)
        return list(COMMANDS)

    def get_command(self, ctx: click.Context, cmd_name: str) -> click.Command | None:  # noqa: ARG002
        if cmd_name not in COMMANDS:
            return None
        command = getattr(import_module(f"sitegen.cli.{cmd_name}"), cmd_name)
        return command if isinstance(command, click.Command) else None

    def format_commands(self, ctx: click.Context, formatter: click.HelpFormatter) -> None:  # noqa: ARG002
        with formatter.section("Commands"):
            formatter.write_dl(list(COMMANDS.items()))


@click.group(cls=LateGroup, context_settings={"help_option_names": ["-h", "--help"]})
@click.version_option(__version__, prog_name="sitegen", message="%(prog)s %(version)s")
def group() -> None:
    """One structured file a recipe in; a checked, scaled and converted site and printed cards out.

    Run a command anywhere inside a folder that holds content/. Begin with
    'sitegen start FOLDER', or with 'sitegen proof' where recipes are already there.

    Exit codes: 0 clean, 1 faults, 2 wrong use, 3 the machine lacks something.
    """


def main() -> None:
    """The entry point: every ending is an exit code, and no baker ever sees a traceback."""
    for stream in (sys.stdout, sys.stderr):
        if hasattr(stream, "reconfigure"):
            stream.reconfigure(errors="backslashreplace")
    heed_requests()
    sys.exit(_ended() or Exit.CLEAN)


def _say_stopped() -> None:
    # No option of the group takes a value, so the first name of a command is the one that was typed.
    command = next((word for word in sys.argv[1:] if word in COMMANDS), "")
    click.echo(f"\n{_STOPPED.get(command, 'stopped')}", err=True)


def _ended() -> int | None:
    """Run the command that was typed. Returns its exit code, None for a command that came to its end."""
    try:
        code: int | None = group.main(prog_name="sitegen", standalone_mode=False)
        sys.stdout.flush()
        ignore_requests()
        go_on()
    except Stopped as stopped:
        ignore_requests()
        _say_stopped()
        return Exit.SIGNALLED + stopped.number
    except click.exceptions.Abort:
        _say_stopped()
        return Exit.INTERRUPTED
    except click.ClickException as problem:
        problem.show()
        return problem.exit_code
    except BrokenPipeError:
        leave_pipe()
    except OSError as problem:
        click.echo(f"{problem.filename or 'the system'}: {problem.strerror}", err=True)
        return Exit.FAULTS
    return code
