"""`sitegen stamp` from the outside."""

import re
import subprocess
import sys
from pathlib import Path

import pikepdf
import pytest

from tests.cli.conftest import PROJECT, Run
from tests.press.plain_pdfs import TIDY, plain_pdf
from tests.release.small_school import SITE

README = (PROJECT / "README.md").read_text(encoding="utf-8")
SECTION = README.split("## Number the copies\n", 1)[1].split("\n## ", 1)[0]
CARD = "output/subscribers/cards/lemon-meringue-bites-british-metric-a4.pdf"
LIST = "subscribers.csv"


@pytest.fixture
def table(tmp_path: Path) -> Path:
    """A school that has published one card, with the list of the README."""
    (tmp_path / "content").mkdir()
    (tmp_path / "content" / "site.yaml").write_text(SITE)
    (tmp_path / CARD).parent.mkdir(parents=True)
    (tmp_path / CARD).write_bytes(plain_pdf(TIDY))
    (tmp_path / LIST).write_text(re.findall(r"```csv\n(.*?)```", SECTION, re.DOTALL)[0])
    return tmp_path


def test_the_example_of_the_readme_runs(run: Run, table: Path) -> None:
    (example,) = re.findall(r"`sitegen (stamp [^`]*\.pdf [^`]*)`", README)
    ran = run(table, *example.split())
    assert (ran.returncode, ran.stderr) == (0, "")
    assert ran.stdout.startswith("2 copies made, 0 there already")
    (told,) = re.findall(r"`(stamped/[^`]*\.pdf)`", SECTION)
    assert (table / told).is_file()
    assert '"2","Quill, Bo","stamped/0002-quill-bo/' in (table / "stamped/register.csv").read_text()


def test_a_bad_row_ends_with_1_and_is_shown_and_the_others_are_stamped(run: Run, table: Path) -> None:
    with (table / LIST).open("a") as file:
        file.write("名無し,Ely\nCy Tart\n")
    ran = run(table, "stamp", CARD, LIST)
    assert ran.returncode == 1
    assert "subscribers.csv:4:1: error name-unprintable: the mark has no letter for 名 無 し" in ran.stderr
    assert "subscribers.csv:5:1: error row-columns" in ran.stderr
    assert "    5 | Cy Tart\n" in ran.stderr
    assert "2 errors" in ran.stderr
    assert ran.stdout.startswith("2 copies made")


def test_encrypted_copies_of_a_folder_of_cards_elsewhere_by_two_processes(run: Run, table: Path) -> None:
    (table / "output/subscribers/cards/loaf.pdf").write_bytes(plain_pdf(TIDY))
    cards = str(Path(CARD).parent)
    ran = run(table, "stamp", cards, LIST, "--no-print", "--into", "../copies", "--jobs", "2")
    assert (ran.returncode, ran.stderr) == (0, "")
    with pikepdf.open(table.parent / "copies/0001-ada-marrow/loaf-copy-1.pdf") as pdf:
        assert pdf.encryption.R == 6
        assert not pdf.allow.print_highres
    assert ran.stdout.startswith("4 copies made")


@pytest.mark.parametrize(
    ("arguments", "told"),
    [
        ([LIST], "name the cards first"),
        ([LIST, "output"], "name the cards first"),
        ([CARD, "nobody.csv"], "nobody.csv"),
        (["content", LIST], "there is no PDF in 'content'"),
        ([CARD, LIST, "--into", "output/public"], "may not lie in 'output/'"),
        ([CARD, LIST, "--jobs", "0"], "--jobs"),
        ([], "CARDS"),
    ],
)
def test_wrong_use_ends_with_2_and_a_sentence(arguments: list[str], told: str, run: Run, table: Path) -> None:
    ran = run(table, "stamp", *arguments)
    assert ran.returncode == 2
    assert told in ran.stderr
    assert "Traceback" not in ran.stderr
    assert not (table / "stamped").exists()


def test_git_ignores_what_is_stamped() -> None:
    for file in (".gitignore", "sitegen/data/starter/.gitignore"):
        assert "stamped/" in (PROJECT / file).read_text().splitlines()


def test_the_other_commands_do_not_load_what_stamps() -> None:
    code = "import sys, sitegen.cli.main; sys.exit('pikepdf' in sys.modules)"
    assert subprocess.run([sys.executable, "-c", code], cwd=PROJECT, check=False).returncode == 0
