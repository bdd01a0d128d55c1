"""What the README promises, held against what is there."""

import json
import re
import shlex
import shutil
from collections.abc import Iterator
from datetime import date, timedelta
from pathlib import Path
from typing import Any

import pytest
import yaml
from click.testing import CliRunner, Result
from pydantic import BaseModel

from sitegen.cli.main import COMMANDS, group
from sitegen.faults import Severity
from sitegen.release.proof import proof
from sitegen.source.models import ComponentFile, RecipeFile, StepFile
from sitegen.source.tables import read_tables

PROJECT = Path(__file__).parents[1]
README = (PROJECT / "README.md").read_text(encoding="utf-8")
STARTER = PROJECT / "sitegen" / "data" / "starter"
KEYS: dict[str, type[BaseModel]] = {"A recipe": RecipeFile, "A component": ComponentFile, "A step": StepFile}
FILES = {path: text for text, path in re.findall(r"```yaml\n(# (content/\S+)\n.*?)```", README, re.DOTALL)}
WRITES = {"preview", "publish", "stamp", "start"}
"""Commands that write more than they are asked for by name, or do not end; their own tests run them."""


def table(heading: str) -> list[list[str]]:
    """The cells of the table below a heading, without its head."""
    section = README.split(f"### {heading}\n", 1)[1].split("\n#", 1)[0]
    rows = [line for line in section.splitlines() if line.startswith("| `")]
    return [[cell.strip() for cell in row.strip("|").split(" | ")] for row in rows]


def code_in(cell: str) -> str:
    found = re.fullmatch(r"`(.*)`", cell)
    return found.group(1) if found else ""


def keys_of(model: type[BaseModel]) -> set[str]:
    return {str(field.alias or name) for name, field in model.model_fields.items()}


def ran(command: str, root: Path) -> Result:
    """What a command of the README says; the days in it are put where they are still to come."""
    coming = f"{date.today() + timedelta(days=60):%Y-%m-%d}"
    name, *words = shlex.split(re.sub(r"\d{4}-\d\d-\d\d", coming, command).removeprefix("sitegen "))
    where = [] if name == "schema" else ["--root", str(root)]
    return CliRunner().invoke(group, [name, *words, *where])


@pytest.fixture(scope="module")
def school(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The starter's school with every file that the README shows, and a recipe of all examples of keys."""
    root = tmp_path_factory.mktemp("readme")
    shutil.copytree(STARTER / "content", root / "content")
    recipes = root / "content" / "recipes"
    shutil.copytree(PROJECT / "content" / "recipes" / "base-pastry-cream", recipes / "base-pastry-cream")
    shutil.copytree(PROJECT / "content" / "tutorials", root / "content" / "tutorials", dirs_exist_ok=True)
    files = {**FILES, "content/recipes/rolls/recipe.yaml": recipe_of_all_keys()}
    for path, text in files.items():
        file = root / path
        file.parent.mkdir(parents=True, exist_ok=True)
        file.write_text(text, encoding="utf-8")
    for slug in ("lemon-drizzle-squares", "rolls"):
        shutil.copy(recipes / "lemon-shortbread" / "finished.jpg", recipes / slug / "finished.jpg")
    return root


def recipe_of_all_keys() -> str:
    """The examples of the three tables as one recipe: each step's on a step of its own."""
    whole, part, step = (examples(heading) for heading in KEYS)
    part["ingredients"] += ["140 g buttermilk", "20 g orange sugar crystals", "300 g of Base pastry cream"]
    taken = "Mix {strong white flour}, {buttermilk}, {orange sugar crystals} and {Base pastry cream}."
    part["method"] = [{"text": taken}, *({"text": "Go on.", key: value} for key, value in step.items())]
    whole["title"] = "Rolls of all keys"
    whole["components"] = {
        "Glaze": {"ingredients": ["50 g icing sugar"], "method": [{"text": "Sift {icing sugar}."}]},
        "Dough": part,
    }
    return json.dumps(whole)


def examples(heading: str) -> dict[str, Any]:
    """Key -> the value of its example, every word a text as a baker's file has it."""
    rows = (yaml.load(code_in(row[2]), Loader=yaml.BaseLoader) for row in table(heading) if len(row) > 2)
    return {key: value for row in rows if row for key, value in row.items()}


def test_the_job_stands_in_the_first_paragraph() -> None:
    title, paragraph = README.split("\n\n")[:2]
    assert title == "# sitegen"
    for word in (
        "baker",
        "subscribers",
        "checks",
        "scales",
        "metric",
        "cups",
        "PDF",
        "timings",
        "yield",
        "publish",
    ):
        assert word in paragraph


def test_the_two_commands_come_first_and_are_there() -> None:
    blocks = re.findall(r"^    (\S.*)$", README, re.MULTILINE)
    assert blocks[:2] == ["bin/site", "bin/test"]
    for command in blocks[:2]:
        assert (PROJECT / command).stat().st_mode & 0o100


def test_the_files_of_the_readme_are_clean(school: Path) -> None:
    assert set(FILES) == {
        "content/recipes/lemon-drizzle-squares/recipe.yaml",
        "content/larder.yaml",
        "content/prices.yaml",
        "content/orders/saturday.yaml",
    }
    found = proof(school)
    assert [fault for fault in found.faults if fault.severity is Severity.ERROR] == []


def written_out() -> Iterator[str]:
    """The commands of the sections before the reference, on the recipes that are shown there."""
    text = README.split("## Reference")[0]
    yield from re.findall(r"^    (sitegen (?!publish|preview).*)$", text, re.MULTILINE)


@pytest.mark.parametrize("command", [*written_out(), "sitegen order saturday"])
def test_commands_on_the_files_of_the_readme_run(command: str, school: Path) -> None:
    later = ["--ready-by", "2027-03-27 09:00"] if " order " in command else []
    shown = ran(shlex.join([*shlex.split(command), *later]), school)
    assert shown.exit_code == 0, shown.output


def test_every_command_stands_in_the_table() -> None:
    assert [code_in(row[0]) for row in table("Commands")] == [
        "proof", "preview", "publish", "calendar", "sheet", "scale",
        "plan", "order", "cost", "stamp", "draft", "captions", "drift", "schema", "start"
    ]  # fmt: skip
    assert {code_in(row[0]) for row in table("Commands")} == set(COMMANDS)


@pytest.mark.parametrize(
    ("name", "command"), [(code_in(row[0]), code_in(row[2])) for row in table("Commands")]
)
def test_the_example_of_a_command_runs_on_the_demo(name: str, command: str) -> None:
    assert command.startswith(f"sitegen {name}")
    if name in WRITES:
        assert CliRunner().invoke(group, [name, "--help"]).exit_code == 0
        return
    shown = ran(command, PROJECT)
    assert shown.exit_code == 0, shown.output
    assert len(shown.output) > 20


@pytest.mark.parametrize("heading", KEYS)
def test_every_key_stands_in_its_table(heading: str) -> None:
    rows = [code_in(row[0]) for row in table(heading)]
    assert len(rows) == len(set(rows))
    assert set(rows) == keys_of(KEYS[heading])


@pytest.mark.parametrize("heading", KEYS)
def test_every_key_has_an_example_of_it(heading: str) -> None:
    assert set(examples(heading)) == keys_of(KEYS[heading]) - {"components", "method"}


def test_every_edition_stands_in_the_table() -> None:
    assert {code_in(row[0]) for row in table("Editions")} == set(read_tables()[0].editions)


@pytest.mark.parametrize("command", sorted(set(re.findall(r"sitegen (\w+)", README)) & set(COMMANDS)))
def test_every_command_of_the_readme_has_help(command: str) -> None:
    shown = CliRunner().invoke(group, [command, "--help"])
    assert shown.exit_code == 0, shown.output
    assert len(shown.output) > 100


def test_lock_files_name_no_address() -> None:
    locks = [*(PROJECT / "bin" / "lock").glob("*.txt"), PROJECT / "tests" / "checkers" / "package-lock.json"]
    assert len(locks) == 3
    for lock in locks:
        text = lock.read_text(encoding="utf-8")
        assert "://" not in text, lock
        assert "sha256:" in text or "sha512-" in text


def test_the_top_level_is_as_drawn() -> None:
    shown = {path.name for path in PROJECT.iterdir() if not path.name.startswith(".")}
    drawn = {"README.md", "DEVELOPERS.md", "LICENSE", "pyproject.toml", "bin", "sitegen", "content", "themes"}
    assert drawn | {"tests", "output"} == shown - {"node_modules"}
