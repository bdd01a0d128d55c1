"""SOURCE_DATE_EPOCH stands for the clock: the rules of reproducible-builds.org, 'SOURCE_DATE_EPOCH'."""

from datetime import UTC, datetime, timedelta

import click
import pytest

from sitegen.cli.exits import Exit
from sitegen.cli.moment import moment


def test_without_it_the_clock_is_asked(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.delenv("SOURCE_DATE_EPOCH", raising=False)
    assert abs(moment() - datetime.now(UTC)) < timedelta(minutes=5)


@pytest.mark.parametrize(
    ("told", "read"),
    [
        ("0", datetime(1970, 1, 1, tzinfo=UTC)),
        ("1784071800", datetime(2026, 7, 14, 23, 30, tzinfo=UTC)),
        ("253370764799", datetime(9998, 12, 31, 23, 59, 59, tzinfo=UTC)),
    ],
)
def test_it_is_read_as_seconds_since_1970(monkeypatch: pytest.MonkeyPatch, told: str, read: datetime) -> None:
    monkeypatch.setenv("SOURCE_DATE_EPOCH", told)
    assert moment() == read


@pytest.mark.parametrize(
    "told", ["", "soon", "1.5", "-1", "+1", " 1", "1_000", "2026-07-15", "१२", "253370764800", "9" * 5000]
)
def test_what_is_no_such_number_is_wrong_use(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str], told: str
) -> None:
    monkeypatch.setenv("SOURCE_DATE_EPOCH", told)
    with pytest.raises(click.exceptions.Exit) as ended:
        moment()
    assert ended.value.exit_code == Exit.WRONG_USE
    assert "SOURCE_DATE_EPOCH" in capsys.readouterr().err
