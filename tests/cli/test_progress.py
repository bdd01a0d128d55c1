"""How far a build is: what a log and what a terminal shows of it."""

from io import StringIO

import pytest
from rich.console import Console

from sitegen.cli.progress import Bar, Lines, build_progress
from sitegen.cli.step_log import StepLog, StepRow
from sitegen.cli.styled import styled
from sitegen.release.steps import Silent, Step


class Clock:
    """Goes on only when it is told to."""

    def __init__(self) -> None:
        self.now = 100.0

    def __call__(self) -> float:
        return self.now


def test_a_log_has_a_line_a_step_and_hears_of_a_long_one(capsys: pytest.CaptureFixture[str]) -> None:
    clock = Clock()
    with Lines(clock) as lines:
        lines.begin(Step.READ, 0)
        lines.begin(Step.CARDS, 400)
        lines.reuse(100)
        for _ in range(60):
            clock.now += 1
            lines.advance()
    assert capsys.readouterr().err.split("\n") == [
        "1/7 read the folder",
        "4/7 print the cards: 400",
        "    130 of 400",
        "    160 of 400",
        "",
    ]


@pytest.mark.parametrize(("width", "bar", "time"), [(100, True, True), (70, False, True), (40, False, False)])
def test_a_terminal_shows_as_much_as_it_is_wide(width: int, bar: bool, time: bool) -> None:
    written = StringIO()
    console = Console(file=written, width=width, force_terminal=True, no_color=True, _environ={})
    with Bar(console) as shown:
        shown.begin(Step.READ, 0)
        shown.begin(Step.SHEETS, 1000)
        shown.reuse(400)
        shown.advance()
    last = written.getvalue()
    assert "401 of 1000" in last
    assert ("━" in last, " 0 s" in last) == (bar, time)


@pytest.mark.parametrize(
    ("terminal", "environment", "kind"),
    [
        (True, {"TERM": "xterm"}, Bar),
        (True, {"TERM": "dumb"}, Lines),
        (True, {"TERM": "xterm", "CI": "true"}, Lines),
        (False, {"TERM": "xterm", "FORCE_COLOR": "1"}, Lines),
    ],
)
def test_the_bar_is_for_terminals_that_someone_watches(
    terminal: bool, environment: dict[str, str], kind: type, monkeypatch: pytest.MonkeyPatch
) -> None:
    for name in ("CI", "FORCE_COLOR", "NO_COLOR"):
        monkeypatch.delenv(name, raising=False)
    for name, value in environment.items():
        monkeypatch.setenv(name, value)
    monkeypatch.setattr("sys.stderr.isatty", lambda: terminal, raising=False)
    assert type(build_progress()) is kind


def test_the_log_of_steps_counts_and_times_each() -> None:
    clock = Clock()
    log = StepLog(Silent(), clock)
    clock.now += 1
    log.begin(Step.READ, 0)
    clock.now += 2
    log.begin(Step.CARDS, 5)
    log.reuse(3)
    log.advance()
    log.advance()
    clock.now += 4
    assert log.rows() == (
        StepRow(Step.READ, seconds=2.0),
        StepRow(Step.CARDS, seconds=4.0, made=2, reused=3),
    )


@pytest.mark.parametrize(
    ("environment", "shown"),
    [
        ({"TERM": "xterm"}, "\x1b[31m\x1b[1merror\x1b[0m"),
        ({"TERM": "xterm", "NO_COLOR": "1"}, "error"),
        ({"TERM": "dumb"}, "error"),
    ],
)
def test_nobody_gets_colours_who_asked_for_none(
    environment: dict[str, str], shown: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.delenv("NO_COLOR", raising=False)
    for name, value in environment.items():
        monkeypatch.setenv(name, value)
    assert styled("error", "red") == shown
