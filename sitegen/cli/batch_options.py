"""The question that `sheet` and `scale` share: which recipe, in which edition, at which batch."""

from collections.abc import Callable
from pathlib import Path
from typing import TYPE_CHECKING, TypedDict, TypeVar

import click

from sitegen.cli.exits import Exit, stop
from sitegen.cli.folder import root_option, school_folder

if TYPE_CHECKING:
    from sitegen.release.asking import Asked

Command = TypeVar("Command", bound=Callable[..., None])

_OPTIONS = (
    click.argument("recipe"),
    click.option("--edition", default="", metavar="E", help="Such as us-cups. Default: the school's own."),
    click.option("--makes", default="", metavar="N", help="How many, or what weight: 24, '900 g'."),
    click.option(
        "--tin", default="", metavar="T", help="A tin of yours: '23 cm round', '13 x 9 in rectangle'."
    ),
    click.option("--times", default="", metavar="F", help="A factor: 2, 3/2."),
    click.option("--using", default="", metavar="LINE", help="What is in hand: '200 g butter', '3 eggs'."),
    root_option,
)


def batch_options(command: Command) -> Command:
    """Gives a command the question as its argument and options."""
    for option in reversed(_OPTIONS):
        command = option(command)
    return command


class Question(TypedDict):
    """What the argument and the options said; '' where one was not given."""

    recipe: str
    edition: str
    makes: str
    tin: str
    times: str
    using: str
    root: Path | None


def answered(question: Question) -> "Asked":
    """The sheet that was asked for. Stops with 1 for faults of the folder, 2 for those of the question."""
    folder = school_folder(question["root"])

    from sitegen.cli.faulty import stop_with_faults
    from sitegen.release.asking import AtFault, BatchWords, NotAsked, asked_sheet

    words = BatchWords(question["makes"], question["tin"], question["times"], question["using"])
    try:
        return asked_sheet(folder, question["recipe"], question["edition"], words)
    except NotAsked as problem:
        hint = f"\n{problem.way_out}" if problem.way_out else ""
        raise stop(problem.sentence + hint, Exit.WRONG_USE) from None
    except AtFault as faulty:
        raise stop_with_faults(faulty.faults, faulty.texts, "there is no sheet to show") from None
