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
    INTERRUPTED = 130  # 128 + SIGINT, as shells report it


class Stop(click.ClickException):
    """An ending with a sentence for the baker and a code for the shell."""

    def __init__(self, sentence: str, code: Exit) -> None:
        super().__init__(sentence)
        self.exit_code = code

    def show(self, file: object = None) -> None:
        click.echo(self.format_message(), err=True)


def leave_pipe() -> None:
    """End quietly when whoever read our output has gone, such as `head`."""
    os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
    sys.exit(Exit.CLEAN)
