"""The house: which room may import which, held against every import in every file."""

import ast
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path

import pytest

import sitegen

HOUSE = Path(sitegen.__file__).parent

MAY_IMPORT = {
    "kitchen": {"kitchen"},
    "timing": {"timing", "kitchen"},
    "film": {"film", "kitchen"},
    "source": {"source", "film", "kitchen", "timing.graph"},
    "notes": {"notes", "source", "film", "kitchen"},
    "sheet": {"sheet", "timing", "kitchen"},
    "press": {
        "press",
        "sheet.values",
        "sheet.facet_values",
        "sheet.panel_values",
        "sheet.work_values",
        "sheet.order_values",
    },
    "release": {"release", "press", "sheet", "timing", "kitchen", "source", "film"},
    "desk": {"desk", "release", "press", "sheet", "timing", "kitchen", "source", "film"},
    "cli": {"cli", "desk", "notes", "release", "source", "press", "sheet", "film", "kitchen"},
}
PURE = ("kitchen", "timing")
LEAVES = {True: {"faults"}, False: {"faults", "limits", "opening"}}
"""Whether a room is pure -> what it may import beside."""
MACHINE = {"os", "pathlib", "io", "shutil", "tempfile", "subprocess", "socket", "time", "random", "datetime"}
DAYS_ARE_VALUES = {
    "kitchen/recipe.py": {"datetime"},
    "timing/nights.py": {"datetime"},
    "timing/rested.py": {"datetime"},
}


def modules(room: str) -> list[Path]:
    return sorted((HOUSE / room).rglob("*.py"))


def imports(path: Path) -> Iterator[str]:
    """Every module that a file names in an import, those inside functions and type-only ones too."""
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        if isinstance(node, ast.Import):
            yield from (alias.name for alias in node.names)
        elif isinstance(node, ast.ImportFrom):
            assert node.level == 0, f"{path} imports relatively"
            yield node.module or ""


def _ours(path: Path) -> Iterator[str]:
    """The modules of the house among them; `from sitegen import limits` names one too."""
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        if isinstance(node, ast.ImportFrom) and node.module == "sitegen":
            yield from (
                f"sitegen.{alias.name}" for alias in node.names if (HOUSE / f"{alias.name}.py").is_file()
            )
    yield from (name for name in imports(path) if name.startswith("sitegen."))


@pytest.mark.parametrize("room", MAY_IMPORT)
def test_a_room_imports_only_what_lies_below_it(room: str) -> None:
    allowed = MAY_IMPORT[room] | LEAVES[room in PURE]
    for path in modules(room):
        for name in _ours(path):
            inner = name.removeprefix("sitegen.")
            below = any(inner == one or inner.startswith(f"{one}.") for one in allowed)
            assert below, f"{path} imports {name}"


def test_every_folder_of_the_house_is_a_room_of_the_table() -> None:
    rooms = {path.parent.name for path in HOUSE.glob("*/__init__.py")}
    assert rooms == set(MAY_IMPORT)


@pytest.mark.parametrize("room", PURE)
def test_a_pure_room_knows_no_machine(room: str) -> None:
    for path in modules(room):
        granted = DAYS_ARE_VALUES.get(str(path.relative_to(HOUSE)), set())
        named = {name.split(".")[0] for name in imports(path)}
        assert not named & (MACHINE - granted), path


@pytest.mark.parametrize("leaf", sorted(LEAVES[False]))
def test_a_leaf_imports_nothing_of_the_house(leaf: str) -> None:
    assert not [name for name in imports(HOUSE / f"{leaf}.py") if name.startswith("sitegen")]


def test_every_room_says_what_it_is_for() -> None:
    for room in MAY_IMPORT:
        text = ast.get_docstring(ast.parse((HOUSE / room / "__init__.py").read_text(encoding="utf-8"))) or ""
        for word in ("in:", "out:", "imports:", "never:", "read first:"):
            assert word in text, f"{room} does not say '{word}'"


def test_the_command_line_starts_without_the_press() -> None:
    """WeasyPrint takes about a second to import, Pillow a tenth: only what prints may load them."""
    code = (
        "import sys, sitegen.cli.main; "
        "sys.exit(', '.join(sorted({'weasyprint', 'PIL', 'fontTools'} & set(sys.modules))) or 0)"
    )
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stderr
