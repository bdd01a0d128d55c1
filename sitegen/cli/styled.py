"""Bold and colour, where the terminal has them and nobody asked for none."""

import os

import click


def styled(text: str, colour: str | None = None) -> str:
    """The text in bold, and in a colour if one is named.

    Plain where `NO_COLOR` is set to anything (no-color.org) and on a terminal that knows no escapes; click
    takes the escapes out again where the output is no terminal.
    """
    is_plain = os.environ.get("NO_COLOR") or os.environ.get("TERM") == "dumb"
    return text if is_plain else click.style(text, fg=colour, bold=True)
