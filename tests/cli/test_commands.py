"""The commands from the outside: exit codes, what is printed where, and never a traceback."""

import json
import os
import pty
import subprocess
import sys
from pathlib import Path

import pytest
from click.testing import CliRunner

from sitegen.cli.main import COMMANDS, group
from tests.cli.conftest import PROJECT, Run
from tests.release.small_school import assert_whole, write_recipe


def misspell(school: Path) -> None:
    file = school / "content" / "recipes" / "open-biscuits" / "recipe.yaml"
    file.write_text(file.read_text().replace("180 g plain flour", "180 g plain flor"))


@pytest.mark.parametrize("command", COMMANDS)
def test_each_command_has_help_with_an_example(command: str) -> None:
    shown = CliRunner().invoke(group, [command, "--help"])
    assert shown.exit_code == 0
    assert f"sitegen {command}" in shown.output.split("Example", 1)[1]


@pytest.mark.parametrize("command", COMMANDS)
def test_no_command_needs_more_than_one_argument(command: str) -> None:
    found = group.get_command(None, command)  # type: ignore[arg-type]  # click asks for a context it ignores
    assert found is not None
    assert sum(parameter.required for parameter in found.params) <= 1


def test_a_clean_school_proofs_with_0(run: Run, school: Path) -> None:
    ran = run(school, "proof")
    assert (ran.returncode, ran.stderr) == (0, "")
    assert (
        ran.stdout.startswith("5 recipes, 1 technique page:") or "5 recipes, 1 technique page:" in ran.stdout
    )


def test_an_error_proofs_with_1_and_is_shown_at_its_word(run: Run, school: Path) -> None:
    misspell(school)
    ran = run(school, "proof")
    assert ran.returncode == 1
    line = next(line for line in ran.stdout.split("\n") if "plain flor" in line and "|" in line)
    mark = ran.stdout.split("\n")[ran.stdout.split("\n").index(line) + 1]
    assert line[mark.index("^") :].startswith("plain flor")
    assert "did you mean 'plain flour'?" in mark


def test_advice_alone_proofs_with_0(run: Run, school: Path) -> None:
    (school / "content" / "recipes" / "shopping.txt").write_text("butter")
    ran = run(school, "proof")
    assert ran.returncode == 0
    assert "advice stray-file" in ran.stdout


@pytest.mark.parametrize("report", ["sarif", "json"])
def test_reports_for_programs_are_the_only_thing_on_the_output(run: Run, school: Path, report: str) -> None:
    misspell(school)
    ran = run(school, "proof", "--report", report)
    assert ran.returncode == 1
    assert "unknown-ingredient" in json.dumps(json.loads(ran.stdout))


def test_a_report_goes_to_a_file_while_the_faults_are_shown(run: Run, school: Path) -> None:
    misspell(school)
    ran = run(school, "proof", "--report", "sarif", "--to", "proof.sarif")
    assert ran.returncode == 1
    assert "error unknown-ingredient" in ran.stdout
    assert json.loads((school / "proof.sarif").read_text())["version"] == "2.1.0"


def test_a_record_inside_the_output_is_wrong_use(run: Run, school: Path) -> None:
    ran = run(school, "publish", "--record", "output/build.json")
    assert ran.returncode == 2
    assert not (school / "output").exists()


def test_a_code_is_explained_without_a_school(run: Run, tmp_path: Path) -> None:
    ran = run(tmp_path, "proof", "--explain", "unknown-ingredient")
    assert ran.returncode == 0
    assert "What to do:" in ran.stdout


def test_a_code_that_is_none_is_answered_with_near_ones(run: Run, tmp_path: Path) -> None:
    ran = run(tmp_path, "proof", "--explain", "unknown-ingredients")
    assert ran.returncode == 2
    assert "unknown-ingredient" in ran.stderr


@pytest.mark.parametrize(
    "arguments",
    [
        ["proof"],
        ["publish"],
        ["sheet", "open-biscuits"],
        ["scale", "open-biscuits"],
        ["nonsense"],
        ["sheet"],
        ["proof", "--report", "carrier pigeon"],
        ["publish", "--on", "3/7/2026"],
        ["publish", "--jobs", "0"],
        ["proof", "--to", "proof.sarif"],
        ["schema", "cake"],
        ["proof", "--root", "nowhere"],
    ],
)
def test_wrong_use_ends_with_2_and_a_sentence(run: Run, tmp_path: Path, arguments: list[str]) -> None:
    ran = run(tmp_path, *arguments)
    assert ran.returncode == 2
    assert ran.stderr
    assert "Traceback" not in ran.stderr


def test_a_school_is_found_from_any_folder_inside_it(run: Run, school: Path) -> None:
    assert run(school / "content" / "recipes" / "open-biscuits", "proof").returncode == 0


def test_a_school_may_be_named(run: Run, school: Path) -> None:
    assert run(Path("/"), "proof", "--root", str(school)).returncode == 0


def test_publish_writes_the_output_and_says_what_changed(run: Run, school: Path) -> None:
    ran = run(school, "publish", "--on", "2026-07-15", "--record", "build.json")
    assert ran.returncode == 0, ran.stderr
    files = json.loads((school / "build.json").read_text())["files"]["all"]
    assert ran.stdout.startswith(f"output: {files} files, ")
    assert "for 2026-07-15 (first build)" in ran.stdout
    assert [line[:3] for line in ran.stderr.split("\n") if line[1:3] == "/7"] == [
        f"{n}/7" for n in range(1, 8)
    ]
    assert assert_whole(school / "output") == "2026-07-15"


def test_publish_refuses_errors_with_1_and_shows_them(run: Run, school: Path) -> None:
    misspell(school)
    ran = run(school, "publish")
    assert ran.returncode == 1
    assert "unknown-ingredient" in ran.stderr
    assert "nothing was published" in ran.stderr
    assert not (school / "output").exists()


def test_publish_without_the_press_library_ends_with_3_and_names_the_package(run: Run, school: Path) -> None:
    """A module of that name that fails as the real one does where Pango is missing."""
    fake = school / "fake"
    fake.mkdir()
    (fake / "weasyprint.py").write_text("raise OSError(\"cannot load library 'libpango-1.0-0'\")\n")
    ran = run(school, "publish", "--on", "2026-07-15", "--jobs", "2", PYTHONPATH=f"{fake}:{PROJECT}")
    assert ran.returncode == 3
    for word in ("libpango-1.0-0", "apt-get install", "dnf install", "brew install"):
        assert word in ran.stderr
    assert not (school / "output").exists()


def test_an_output_that_is_a_file_is_a_fault(run: Run, school: Path) -> None:
    (school / "output").write_text("in the way")
    ran = run(school, "publish", "--on", "2026-07-15", "--jobs", "1")
    assert ran.returncode == 1
    assert "Traceback" not in ran.stderr
    assert "cannot-write" in ran.stderr


def test_a_sheet_is_text_or_json(run: Run, school: Path) -> None:
    text = run(school, "sheet", "open-biscuits", "--edition", "us-cups")
    assert text.returncode == 0
    assert "\n1. Beat " in text.stdout
    data = run(school, "sheet", "open-biscuits", "--times", "2", "--json")
    assert json.loads(data.stdout)["head"]["batch"]["title"] == "24\N{NO-BREAK SPACE}squares"


def test_a_scaled_table_shows_both_batches(run: Run, school: Path) -> None:
    ran = run(school, "scale", "open-biscuits", "--makes", "24")
    row = next(line for line in ran.stdout.split("\n") if "plain flour" in line)
    assert "180" in row
    assert "360" in row


def test_a_misspelled_recipe_is_answered_with_near_ones(run: Run, school: Path) -> None:
    ran = run(school, "scale", "opne-biscuits")
    assert ran.returncode == 2
    assert "did you mean 'open-biscuits'" in ran.stderr


def test_a_schema_is_json(run: Run, tmp_path: Path) -> None:
    assert "components" in json.loads(run(tmp_path, "schema", "recipe").stdout)["properties"]


def test_start_makes_a_school_that_proofs(run: Run, tmp_path: Path) -> None:
    assert run(tmp_path, "start", "mine").returncode == 0
    assert run(tmp_path / "mine", "proof").returncode == 0
    assert run(tmp_path, "start", "mine").returncode == 2


def test_a_reader_that_goes_away_is_no_traceback(school: Path) -> None:
    write_recipe(school, "open-biscuits", step="for 10 g")
    command = f"{sys.executable} -m sitegen sheet teaser-biscuits --json | head -c 10"
    ran = subprocess.run(
        command, shell=True, cwd=school, capture_output=True, text=True, check=False, env=environment()
    )
    assert ran.stderr == ""


def test_a_terminal_gets_a_bar_and_colours(school: Path) -> None:
    misspell(school)
    ours, theirs = pty.openpty()
    child = subprocess.Popen(
        [sys.executable, "-m", "sitegen", "publish"],
        cwd=school,
        stdout=theirs,
        stderr=theirs,
        env=environment() | {"TERM": "xterm"},
    )
    os.close(theirs)
    told = b""
    while True:
        try:
            part = os.read(ours, 1000)
        except OSError:  # Linux reports the other end's closing as an error
            break
        told += part
    os.close(ours)
    assert child.wait() == 1
    assert b"\x1b[31m" in told
    assert b"Traceback" not in told


def test_letters_that_the_terminal_lacks_are_no_traceback(run: Run, school: Path) -> None:
    ran = run(school, "sheet", "open-biscuits", PYTHONIOENCODING="ascii", PYTHONUTF8="0", LC_ALL="C")
    assert ran.returncode == 0, ran.stderr


def environment() -> dict[str, str]:
    return {**os.environ, "PYTHONPATH": str(PROJECT)}
