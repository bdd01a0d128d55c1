"""What the exit codes mean, and how everything that can go wrong for a baker ends in one of them."""

import os
import sys
from enum import IntEnum

import click


class Exit(IntEnum):
    """Exit codes of every command."""

    CLEAN = 0
    FAULTS = 1
    WRONG_USE = 2
    MACHINE_LACKS = 3
    SIGNALLED = 128  # and the number of the signal, as shells report it
    INTERRUPTED = 130  # by Ctrl-C


def stop(sentence: str, code: Exit) -> click.exceptions.Exit:
    """Say why a command ends here, on the standard error, and give the ending to raise."""
    click.echo(sentence, err=True)
    return click.exceptions.Exit(code)


def leave_pipe() -> None:
    """End quietly when whoever read our output has gone, such as `head`; with 1, as click ends then too."""
    os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
    sys.exit(1)
