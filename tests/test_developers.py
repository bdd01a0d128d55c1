"""What DEVELOPERS.md says of the house, held against what stands there."""

import re
import tomllib
from pathlib import Path

import pytest

PROJECT = Path(__file__).parents[1]
HOUSE = PROJECT / "sitegen"
TEXT = (PROJECT / "DEVELOPERS.md").read_text(encoding="utf-8")
PROJECT_FILE = tomllib.loads((PROJECT / "pyproject.toml").read_text(encoding="utf-8"))["project"]
ROOMS = ("data", "kitchen", "source", "sheet")


def section(heading: str) -> str:
    return TEXT.split(f"## {heading}\n", 1)[1].split("\n## ", 1)[0]


def named(room: str) -> set[str]:
    """Files of a room that the table of subjects names, without their endings."""
    rows = [row.strip("|").split("|") for row in section("By subject").splitlines() if row.startswith("| ")]
    column = 1 + ROOMS.index(room)
    return {word.strip() for row in rows[1:] for word in row[column].split(",") if word.strip(" -")}


def there(room: str) -> set[str]:
    files = (path.relative_to(HOUSE / room) for path in (HOUSE / room).rglob("*.*") if path.is_file())
    unread = {"starter", "__pycache__"}
    return {path.with_suffix("").as_posix() for path in files if not unread & set(path.parts)}


@pytest.mark.parametrize("room", ROOMS)
def test_every_file_of_the_table_of_subjects_is_there(room: str) -> None:
    assert named(room) <= there(room)


def test_no_rule_of_the_kitchen_is_without_a_subject() -> None:
    assert named("kitchen") == there("kitchen") - {"__init__"}


def test_every_table_is_listed_with_its_sources() -> None:
    listed = {name for row in section("Tables").splitlines() for name in re.findall(r"`(\w+\.\w+)`", row)}
    assert listed == {path.name for path in (HOUSE / "data").iterdir() if path.is_file()}


def test_every_library_is_listed() -> None:
    wanted = [*PROJECT_FILE["dependencies"], *PROJECT_FILE["optional-dependencies"]["test"]]
    names = [re.split(r"[\[>]", library)[0] for library in wanted]
    text = section("Libraries").lower()
    assert [name for name in names if name not in text and not name.startswith("types-")] == []


@pytest.mark.parametrize(
    "path", sorted(set(re.findall(r"`((?:tests|sitegen|cli|sheet|source|kitchen)/[\w./]+)`", TEXT)))
)
def test_every_path_that_is_named_is_there(path: str) -> None:
    assert (PROJECT / path).exists() or (HOUSE / path).exists()
