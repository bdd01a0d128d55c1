"""The question that `sheet`, `scale` and `cost` share: which recipe, at which batch, in which edition."""

from collections.abc import Callable
from pathlib import Path
from typing import TYPE_CHECKING, TypedDict, TypeVar

import click

from sitegen.cli.folder import root_option, school_folder

if TYPE_CHECKING:
    from sitegen.release.asking import Asked, BatchWords

Command = TypeVar("Command", bound=Callable[..., None])
Answer = TypeVar("Answer")

_EDITION = click.option(
    "--edition", default="", metavar="E", help="Such as us-cups. Default: the school's own."
)
_BATCH = (
    click.argument("recipe"),
    click.option("--makes", default="", metavar="N", help="How many: 24, '900 g', '24 rolls of 60 g'."),
    click.option(
        "--tin", default="", metavar="T", help="A tin of yours: '23 cm round', '13 x 9 in rectangle'."
    ),
    click.option("--times", default="", metavar="F", help="A factor: 2, 3/2."),
    click.option("--using", default="", metavar="LINE", help="What is in hand: '200 g butter', '3 eggs'."),
    root_option,
)


def batch_options(command: Command) -> Command:
    """Gives a command the question of a recipe and a batch as its argument and options."""
    for option in reversed(_BATCH):
        command = option(command)
    return command


def sheet_options(command: Command) -> Command:
    """The same, and in which edition."""
    return batch_options(_EDITION(command))


class BatchQuestion(TypedDict):
    """What the argument and the options said; '' where one was not given."""

    recipe: str
    makes: str
    tin: str
    times: str
    using: str
    root: Path | None


class Question(BatchQuestion):
    edition: str


def answered(question: Question) -> "Asked":
    """The sheet that was asked for. Stops with 1 for faults of the folder, 2 for those of the question."""
    from sitegen.release.asking import asked_sheet

    return answer(
        question, lambda folder, words: asked_sheet(folder, question["recipe"], question["edition"], words)
    )


def answer(question: BatchQuestion, ask: "Callable[[Path, BatchWords], Answer]") -> Answer:
    """What `ask` says of a folder and a batch. Stops with 1 for the folder's faults, 2 for the question's."""
    folder = school_folder(question["root"])

    from sitegen.cli.faulty import asked
    from sitegen.release.asking import BatchWords

    words = BatchWords(question["makes"], question["tin"], question["times"], question["using"])
    return asked(lambda: ask(folder, words), "there is no sheet to show")
