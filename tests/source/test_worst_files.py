"""The largest and most tangled files that pass the first bounds are read to their end, and told briefly."""

import shutil
import subprocess
import sys
from pathlib import Path

import pytest

from sitegen import limits
from sitegen.source.library import read_content

SAMPLE = Path(__file__).parent / "sample_school"
RECIPE = "content/recipes/blackcurrant-and-bay-cupcakes/recipe.yaml"
HEAD = "title: Large\nsummary: Large\nmakes: 12 buns\n"
PART = "components:\n  Dough:\n    method:\n      - text: Mix.\n"
WORST = {
    "unknown keys": HEAD + "".join(f"key-{number}: a\n" for number in range(9_000)) + PART,
    "keys with nothing behind them": HEAD + "".join(f"key-{number}:\n" for number in range(9_000)) + PART,
    "keys that stand twice": HEAD + "tags: [a]\n" * 2_000 + PART,
    "a list on one line": f"{HEAD}tags: [{', '.join(['a'] * 15_000)}]\n{PART}",
    "comments on one line": f"{HEAD}summary: {'a # ' * 10_000}\n{PART}",
    "brackets on one line": f"{HEAD}tags: {'{a, ' * 20}{'[a], ' * 5_000}{'}' * 20}\n{PART}",
    "values that repeat others": "a: &a [x, x]\n" + "".join(f"k{n}: &b{n} [*a, *a]\n" for n in range(3_000)),
    "empty lines": HEAD + "\n" * 500_000 + PART,
    "one quote": f"{HEAD}notes: '" + "a\n  " * 100_000,
    "braces in a sentence": HEAD + PART.replace("Mix.", "'" + "{" * 2_900 + "'"),
    "hidden characters": HEAD + "".join(f"notes: {chr(0x200E) * 20_000}\n" for _ in range(10)) + PART,
}


def test_each_is_read_to_its_end(tmp_path: Path) -> None:
    """In a process of its own, with far more time than it takes: a hang would be stopped and told."""
    school = Path(shutil.copytree(SAMPLE, tmp_path / "school"))
    recipe = (school / RECIPE).parent
    for number, text in enumerate(WORST.values()):
        folder = shutil.copytree(recipe, recipe.parent / f"worst-{number}")
        (folder / "recipe.yaml").write_text(text, encoding="utf-8")
    command = [sys.executable, "-m", "sitegen", "proof", "--report", "json", "--root", str(school)]
    done = subprocess.run(command, capture_output=True, timeout=300, check=False)
    assert done.returncode == 1, done.stderr[-1_000:]
    told = {number for number in range(len(WORST)) if f"worst-{number}/".encode() in done.stdout}
    assert len(told) == len(WORST)


@pytest.mark.parametrize("what", ["unknown keys", "keys with nothing behind them"])
def test_no_file_is_told_of_more_than_a_reader_can_read(what: str, tmp_path: Path) -> None:
    school = Path(shutil.copytree(SAMPLE, tmp_path / "school"))
    (school / RECIPE).write_text(WORST[what], encoding="utf-8")
    faults = [fault for fault in read_content(school).faults if fault.place.file == RECIPE]
    assert len(faults) == limits.SHAPE_FAULTS + 1
    assert "more-faults" in {fault.code for fault in faults}


def test_what_is_wrong_is_never_repeated_whole(tmp_path: Path) -> None:
    school = Path(shutil.copytree(SAMPLE, tmp_path / "school"))
    for text in (
        f"public-shows: {'a' * 50_000}",
        f"{'k' * 190}: a",
        f"notes: {'n' * 55_000}",
        f"tin: {'t' * 9_000}",
    ):
        release = f"release: {{{text}}}\n" if text.startswith("public") else f"{text}\n"
        (school / RECIPE).write_text(HEAD + release + PART, encoding="utf-8")
        assert all(len(fault.sentence + fault.way_out) < 1_000 for fault in read_content(school).faults)
