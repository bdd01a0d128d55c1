"""What the README promises, held against what is there."""

import re
import shutil
from pathlib import Path

import pytest
from click.testing import CliRunner

from sitegen.cli.main import group
from sitegen.faults import Severity
from sitegen.source.library import read_content

PROJECT = Path(__file__).parents[1]
README = (PROJECT / "README.md").read_text(encoding="utf-8")
STARTER = PROJECT / "sitegen" / "data" / "starter"


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


def test_the_recipe_of_the_readme_is_clean(tmp_path: Path) -> None:
    text = re.search(r"```yaml\n(title:.*?)```", README, re.DOTALL)
    assert text
    folder = tmp_path / "content" / "recipes" / "lemon-drizzle-squares"
    folder.mkdir(parents=True)
    shutil.copy(STARTER / "content" / "site.yaml", tmp_path / "content" / "site.yaml")
    shutil.copy(next(STARTER.rglob("finished.jpg")), folder / "finished.jpg")
    (folder / "recipe.yaml").write_text(text.group(1), encoding="utf-8")
    content = read_content(tmp_path)
    assert [fault for fault in content.faults if fault.severity is Severity.ERROR] == []
    assert [recipe.title for recipe in content.recipes] == ["Lemon drizzle squares"]


@pytest.mark.parametrize("command", sorted(set(re.findall(r"sitegen (\w+)", README)) - {"keeps", "reads"}))
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
