"""Faults at the terminal: in colour where there is one, and as the ending of a command."""

from collections.abc import Mapping, Sequence

import click

from sitegen.cli.exits import Exit, stop
from sitegen.cli.fault_text import faults_text, tally
from sitegen.cli.styled import styled
from sitegen.faults import Fault, Severity

_COLOURS = {Severity.ERROR: "red", Severity.ADVICE: "yellow"}


def show_faults(faults: Sequence[Fault], texts: Mapping[str, Sequence[str]], on_error: bool = True) -> None:
    """Print all faults, to the standard error or output. texts: file -> its lines."""
    click.echo(faults_text(faults, texts, _coloured), err=on_error, nl=False)


def stop_with_faults(
    faults: Sequence[Fault], texts: Mapping[str, Sequence[str]], sentence: str
) -> click.exceptions.Exit:
    """Show the faults and give the ending to raise. sentence: what was not done because of them."""
    show_faults(faults, texts)
    return stop(f"{tally(faults)}: {sentence}", Exit.FAULTS)


def _coloured(text: str, severity: Severity) -> str:
    return styled(text, _COLOURS[severity])
