"""`sitegen plan RECIPE...`."""

from datetime import UTC, datetime
from pathlib import Path
from typing import TYPE_CHECKING, TypedDict, Unpack

import click

from sitegen.cli.batch_options import BatchQuestion, answer
from sitegen.cli.exits import Exit, stop
from sitegen.cli.folder import root_option

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
    oven_loads: int
    edition: str
    svg: Path | None
    calendar: Path | None
    as_json: bool
    root: Path | None


@click.command()
@click.argument("recipes", nargs=-1, required=True)
@click.option("--ready-by", default="", metavar="HOUR", help="When it must be ready: '2026-12-05 16:00'.")
@click.option("--start", default="", metavar="HOUR", help="When the work begins, instead.")
@click.option("--rest", default="", metavar="HOURS", help="Nobody works between them: 22:00-07:00.")
@click.option("--makes", default="", metavar="N", help="How many, or what weight: 24, '900 g'.")
@click.option("--times", default="", metavar="F", help="A factor: 2, 3/2.")
@click.option("--cooks", default=1, type=click.IntRange(1, 20), help="Pairs of hands.")
@click.option("--oven-loads", default=1, type=click.IntRange(1, 20), help="Loads the oven takes at a time.")
@click.option("--edition", default="", metavar="E", help="Such as us-cups. Default: the school's own.")
@click.option("--svg", type=_FILE, help="Write the picture.")
@click.option("--calendar", type=_FILE, help="Write an iCalendar file, with alarms.")
@click.option("--json", "as_json", is_flag=True, help="As JSON.")
@root_option
def plan(recipes: tuple[str, ...], **wishes: Unpack[Wishes]) -> None:
    """Put the steps of one or more RECIPEs on a clock: the shortest way for your hands and oven.

    \b
    Examples:
      sitegen plan lemon-shortbread
      sitegen plan lemon-shortbread --ready-by '2026-12-05 16:00' --rest 22:00-07:00
      sitegen plan lemon-shortbread --makes 48 --cooks 2 --calendar saturday.ics

    Exit codes: 0 shown, 1 the recipe has faults, 2 wrong use or no such plan.
    """
    from sitegen.release.plans import PlanWords, asked_plan

    now = datetime.now(UTC)
    words = PlanWords(
        wishes["ready_by"], wishes["start"], wishes["rest"], wishes["cooks"], wishes["oven_loads"]
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
    _write_files(asked, wishes, now)
    _show(asked, as_json=wishes["as_json"])


def _write_files(asked: "AskedPlan", wishes: Wishes, now: datetime) -> None:
    """What was asked for as files; each is said on the standard error."""
    from sitegen.press.calendar_file import calendar_file
    from sitegen.press.timeline import WIDE, timeline_svg

    if wishes["svg"] is not None and asked.plan.timeline is not None:
        _write(wishes["svg"], timeline_svg(asked.plan.timeline, WIDE, "plan").encode())
    if wishes["calendar"] is not None:
        _write(wishes["calendar"], calendar_file(asked.plan, asked.host, now))


def _write(path: Path, content: bytes) -> None:
    path.write_bytes(content)
    click.echo(f"written: {path}", err=True)


def _show(asked: "AskedPlan", *, as_json: bool) -> None:
    from sitegen.press.plain_plan import plain_plan
    from sitegen.sheet.as_json import plan_json

    click.echo(plan_json(asked.plan) + "\n" if as_json else plain_plan(asked.plan), nl=False)
