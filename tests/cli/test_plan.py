"""`sitegen plan` from the outside."""

import json
from pathlib import Path
from xml.etree import ElementTree

import pytest

from tests.cli.conftest import Run
from tests.release.counter_school import write_counter


@pytest.fixture
def counter(tmp_path: Path) -> Path:
    return write_counter(tmp_path)


def test_a_plan_is_a_table_with_totals_and_notes(run: Run, counter: Path) -> None:
    ran = run(counter, "plan", "iced-buns")
    assert (ran.returncode, ran.stderr) == (0, "")
    for text in ("0:00  ", "Start to finish", "No plan for one cook and this oven is shorter: proved."):
        assert text in ran.stdout


def test_files_are_written_beside_the_table_and_told_on_the_standard_error(run: Run, counter: Path) -> None:
    files = ("--svg", "a.svg", "--pdf", "a.pdf", "--calendar", "a.ics")
    ran = run(counter, "plan", "iced-buns", "--ready-by", "Saturday 16:00", *files)
    assert ran.returncode == 0, ran.stderr
    assert ran.stderr.splitlines() == ["written: a.svg", "written: a.ics", "written: a.pdf"]
    assert ElementTree.parse(counter / "a.svg").getroot().tag == "{http://www.w3.org/2000/svg}svg"
    assert (counter / "a.pdf").read_bytes().startswith(b"%PDF-1.7")
    assert b"BEGIN:VALARM" in (counter / "a.ics").read_bytes()


def test_as_json(run: Run, counter: Path) -> None:
    ran = run(counter, "plan", "iced-buns", "--json", "--cooks", "2", "--start", "Saturday 09:00")
    assert (ran.returncode, ran.stderr) == (0, "")
    plan = json.loads(ran.stdout)
    assert plan["starts"].startswith("09:00, Saturday")
    assert plan["chain"]
    assert plan["rows"][0]["begins"].endswith("+00:00")


@pytest.mark.parametrize(
    ("options", "told"),
    [
        (("iced-buns", "--cooks", "0"), "0 is not in the range"),
        (("iced-buns", "--oven-tins", "none"), "is not a valid integer"),
        (("iced-buns", "--ready-by", "tea"), "'tea' is no hour of a day"),
        (("iced-buns", "--ready-by", "2020-12-05 16:00"), "the earliest is "),
        (("iced-buns", "--rest", "22:00-07:00"), "nights off need a day"),
        (("iced-buns", "--calendar", "a.ics"), "a calendar needs an hour"),
        (("iced-buns", "--svg", "nowhere/a.svg"), "cannot be written: No such file or directory"),
        (("iced-buns", "--makes", "0"), "'0' is no amount"),
        (("rock-cakes",), "there is no recipe 'rock-cakes'"),
        ((), "Missing argument"),
    ],
)
def test_wrong_use_is_refused_in_words(run: Run, counter: Path, options: tuple[str, ...], told: str) -> None:
    ran = run(counter, "plan", *options)
    assert ran.returncode == 2
    assert told in ran.stderr
    assert "Traceback" not in ran.stderr
    assert ran.stdout == ""


def test_the_same_question_gives_the_same_bytes_on_any_machine(run: Run, counter: Path) -> None:
    def answered(seed: str) -> tuple[str, bytes]:
        ran = run(
            counter,
            "plan",
            "iced-buns",
            "almond-cake",
            "--ready-by",
            "Saturday 16:00",
            "--pdf",
            "a.pdf",
            PYTHONHASHSEED=seed,
        )
        return ran.stdout, (counter / "a.pdf").read_bytes()

    assert answered("1") == answered("7")
