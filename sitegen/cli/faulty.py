"""Faults at the terminal: in colour where there is one, and as the ending of a command."""

from collections.abc import Callable, Mapping, Sequence
from typing import TypeVar

import click

from sitegen.cli.exits import Exit, stop
from sitegen.cli.fault_text import faults_text
from sitegen.cli.styled import styled
from sitegen.faults import Fault, Severity
from sitegen.release.tally import tally

Answer = TypeVar("Answer")

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


def asked(ask: Callable[[], Answer], sentence: str) -> Answer:
    """What `ask` answers. Stops with 1 for faults of the school's files, 2 for those of the question.

    sentence: what is not shown because of the files' faults.
    """
    from sitegen.release.asking import AtFault, NotAsked

    try:
        return ask()
    except NotAsked as problem:
        hint = f"\n{problem.way_out}" if problem.way_out else ""
        raise stop(problem.sentence + hint, Exit.WRONG_USE) from None
    except AtFault as faulty:
        raise stop_with_faults(faulty.faults, faulty.texts, sentence) from None


def _coloured(text: str, severity: Severity) -> str:
    return styled(text, _COLOURS[severity])
