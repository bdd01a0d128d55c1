"""`sitegen plan RECIPE...`."""

from datetime import datetime
from pathlib import Path
from typing import TYPE_CHECKING, TypedDict, Unpack

import click

from sitegen.cli.batch_options import BatchQuestion, answer
from sitegen.cli.exits import Exit, stop
from sitegen.cli.folder import root_option
from sitegen.cli.moment import moment

if TYPE_CHECKING:
    from sitegen.release.plans import AskedPlan

_FILE = click.Path(dir_okay=False, writable=True, path_type=Path)


class Wishes(TypedDict):
    """What the options said; '' and None where one was not given."""

    ready_by: str
    start: str
    rest: str
    makes: str
    times: str
    cooks: int
    oven_tins: int | None
    edition: str
    svg: Path | None
    pdf: Path | None
    paper: str | None
    calendar: Path | None
    as_json: bool
    root: Path | None


@click.command()
@click.argument("recipes", nargs=-1, required=True)
@click.option("--ready-by", default="", metavar="HOUR", help="'2026-12-05 16:00' or 'Saturday 16:00'.")
@click.option("--start", default="", metavar="HOUR", help="Not to begin before it, instead.")
@click.option("--rest", default="", metavar="HOURS", help="Nobody works between them: 22:00-07:00.")
@click.option("--makes", default="", metavar="N", help="How many, or what weight: 24, '900 g'.")
@click.option("--times", default="", metavar="F", help="A factor: 2, 3/2.")
@click.option("--cooks", default=1, type=click.IntRange(1, 20), metavar="N", help="Pairs of hands.")
@click.option(
    "--oven-tins",
    type=click.IntRange(1, 200),
    metavar="N",
    help="Tins that the oven takes at a time. Default: as many as the recipe was tested with.",
)
@click.option("--edition", default="", metavar="E", help="Such as us-cups. Default: the school's own.")
@click.option("--svg", type=_FILE, metavar="FILE", help="Write the picture.")
@click.option("--pdf", type=_FILE, metavar="FILE", help="Print it: picture, notes and table.")
@click.option("--paper", type=click.Choice(["a4", "letter"]), help="Of the PDF. Default: the school's usual.")
@click.option("--calendar", type=_FILE, metavar="FILE", help="Write an iCalendar file, with alarms.")
@click.option("--json", "as_json", is_flag=True, help="As JSON.")
@root_option
def plan(recipes: tuple[str, ...], **wishes: Unpack[Wishes]) -> None:
    """Put the steps of one or more RECIPEs on a clock: the shortest way for your hands and oven.

    \b
    Examples:
      sitegen plan lemon-shortbread
      sitegen plan lemon-shortbread --ready-by '2026-12-05 16:00' --rest 22:00-07:00
      sitegen plan lemon-shortbread --makes 48 --cooks 2 --calendar saturday.ics

    Exit codes: 0 shown, 1 the recipe has faults, 2 wrong use or no such plan, 3 nothing can print.
    """
    from sitegen.release.plans import PlanWords, asked_plan

    now = moment()
    words = PlanWords(
        wishes["ready_by"], wishes["start"], wishes["rest"], wishes["cooks"], wishes["oven_tins"]
    )
    question: BatchQuestion = {
        "recipe": "",
        "makes": wishes["makes"],
        "tin": "",
        "times": wishes["times"],
        "using": "",
        "root": wishes["root"],
    }
    asked = answer(
        question, lambda folder, batch: asked_plan(folder, recipes, wishes["edition"], batch, words, now)
    )
    if wishes["calendar"] is not None and not asked.plan.starts:
        raise stop("a calendar needs an hour\ngive --ready-by or --start", Exit.WRONG_USE)
    _write_files(asked, question, wishes, now)
    _show(asked, as_json=wishes["as_json"])


def _write_files(asked: "AskedPlan", question: BatchQuestion, wishes: Wishes, now: datetime) -> None:
    """What was asked for as files; each is said on the standard error."""
    from sitegen.press.calendar_file import calendar_file
    from sitegen.press.timeline import WIDE, timeline_svg

    if wishes["svg"] is not None:
        if asked.plan.timeline is None:
            raise stop("a picture needs steps that take time", Exit.WRONG_USE)
        _write(wishes["svg"], timeline_svg(asked.plan.timeline, WIDE, "plan").encode())
    if wishes["calendar"] is not None:
        _write(wishes["calendar"], calendar_file(asked.plan, asked.host, now))
    if wishes["pdf"] is not None:
        _write(wishes["pdf"], _printed(asked, question, wishes["paper"] or ""))


def _printed(asked: "AskedPlan", question: BatchQuestion, paper: str) -> bytes:
    from sitegen.release.card_work import MachineLacks
    from sitegen.release.plan_print import plan_pdf

    try:
        return answer(question, lambda folder, _: plan_pdf(folder, asked, paper))
    except MachineLacks as lack:
        raise stop(f"The machine lacks a library: {lack.library}", Exit.MACHINE_LACKS) from None


def _write(path: Path, content: bytes) -> None:
    try:
        path.write_bytes(content)
    except OSError as problem:
        raise stop(f"'{path}' cannot be written: {problem.strerror}", Exit.WRONG_USE) from None
    click.echo(f"written: {path}", err=True)


def _show(asked: "AskedPlan", *, as_json: bool) -> None:
    from sitegen.press.plain_plan import plain_plan
    from sitegen.sheet.as_json import plan_json

    click.echo(plan_json(asked.plan) + "\n" if as_json else plain_plan(asked.plan), nl=False)
