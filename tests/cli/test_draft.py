"""`sitegen draft` from the outside."""

from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from sitegen.cli.main import group
from sitegen.release.proof import proof
from tests.cli.conftest import Run

WHOLE = """\
Ginger squares

Crisp at the rim, soft within.
Makes 16 squares

150g plain flour
100 g butter
80g caster sugar
1 tsp ground ginger

Rub the butter into the flour, sugar and ginger.
Press into a 20cm square tin and bake at 160C fan for 25 minutes until golden.
"""


def drafted(folder: Path, name: str, *options: str) -> Result:
    """In this process, which is faster than a process of its own."""
    return CliRunner().invoke(group, ["draft", str(folder / name), "--root", str(folder), *options])


@pytest.fixture
def notes(school: Path) -> Path:
    (school / "ginger.txt").write_text(WHOLE, encoding="utf-8")
    return school


def test_whole_notes_are_printed_as_a_file_that_proofs(run: Run, notes: Path) -> None:
    ran = run(notes, "draft", "ginger.txt")
    assert ran.returncode == 0, ran.stderr
    assert ran.stdout.startswith("title: Ginger squares\n")
    assert "9 of 9 lines of the notes understood" in ran.stderr
    assert "the file proofs" in ran.stderr


def test_a_draft_that_is_written_is_a_recipe_of_the_school(notes: Path) -> None:
    ran = drafted(notes, "ginger.txt", "--to", str(notes / "content" / "recipes"))
    assert (ran.exit_code, ran.stdout) == (0, ""), ran.stderr
    proofed = proof(notes)
    assert proofed.errors == ()
    (recipe,) = [one for one in proofed.content.recipes if one.slug == "ginger-squares"]
    assert recipe.tin is not None
    assert [step.oven.degrees for part in recipe.components for step in part.steps if step.oven] == [160]


def test_a_file_that_is_there_is_never_written_over(notes: Path) -> None:
    target = notes / "mine.yaml"
    target.write_text("title: Mine\n")
    ran = drafted(notes, "ginger.txt", "--to", str(target))
    assert ran.exit_code == 2
    assert "is there already" in ran.stderr
    assert target.read_text() == "title: Mine\n"


def test_what_was_not_understood_and_what_is_missing_are_told(notes: Path) -> None:
    (notes / "odd.txt").write_text(
        "Ingredients\n100 g butter\nthe usual\n50 g sugar\n\nMethod\nMelt the butter.\n"
    )
    ran = drafted(notes, "odd.txt")
    assert ran.exit_code == 1
    assert "# not understood: the usual" in ran.stdout
    assert "odd.txt:3:1: advice not-understood" in ran.stderr
    assert "missing: `makes`" in ran.stderr
    assert "missing: `summary`" in ran.stderr
    assert "no step of 'Odd' takes 'sugar'" in ran.stderr


@pytest.mark.parametrize(
    ("name", "body", "code"),
    [
        ("large.txt", b"150 g flour\n" * 900_000, "file-too-large"),
        ("junk.txt", bytes(range(256)) * 9, "not-notes"),
        ("empty.txt", b"", "no-recipe-found"),
        ("deep.json", b"[" * 90_000, "not-json"),
    ],
)
def test_bad_notes_are_one_fault(name: str, body: bytes, code: str, notes: Path) -> None:
    (notes / name).write_bytes(body)
    ran = drafted(notes, name)
    assert ran.exit_code == 1
    assert ran.stdout == ""
    assert f"error {code}" in ran.stderr
    assert "Traceback" not in ran.stderr


def test_a_school_writes_in_its_own_words(notes: Path) -> None:
    """American notes name the flour as the larder does."""
    (notes / "us.txt").write_text(
        "1 cup all-purpose flour\n2 tbsp cornstarch\n\nSift the flour and cornstarch.\n"
    )
    ran = drafted(notes, "us.txt")
    assert "- 1 cup plain flour" in ran.stdout
    assert "- 2 tbsp cornflour" in ran.stdout
    assert "text: Sift the {flour} and {cornflour}." in ran.stdout
