"""Recipes that are proofed one by one have the faults that the proof of the whole school tells."""

import shutil
from datetime import date
from pathlib import Path

import pytest

from sitegen.release.build import Order, Refused, publish
from sitegen.release.proof import proof
from sitegen.release.steps import Silent
from sitegen.source.library import read_content
from tests.release.changing_school import State
from tests.release.small_school import NOON

RECIPES = "content/recipes"
SLIPS = {
    "an ingredient": ("topped-squares", "g unsalted butter", "g unsalted buter"),
    "a base recipe": ("topped-squares", "100 g of Sharp curd", "100 g of Sharp crud"),
    "more than is made": ("topped-squares", "100 g of Sharp curd", "9 kg of Sharp curd"),
    "in the base recipe": ("curd", "g unsalted butter", "g unsalted buter"),
    "a circle": ("curd", "- 150 g unsalted butter", "- 10 g of Topped squares"),
    "a title twice": ("curd", "title: Sharp curd", "title: Squares"),
    "a title of both": ("curd", "title: Sharp curd", "title: Dough"),
    "a tag": ("thin-squares", "tags: [biscuits]", "tags: [Biscuits]"),
    "a technique": ("squares", "tutorial: weighing", "tutorial: wayghing"),
    "the shape of a file": ("curd", "summary:", "sumary:"),
    "no recipe at all": ("curd", "title: Sharp curd", "\t- ["),
    "a batch": ("squares", "batches: [24 squares]", "batches: [90000 squares]"),
    "an oven": ("squares", "150 C fan", "900 C fan"),
    "settled and not given": ("squares", "makes:", "settled: {balance-unusual: It is meant so.}\nmakes:"),
    "a title in escapes": ("topped-squares", "- 100 g of Sharp curd", '- "100 g of Sharp cur\\x64"'),
}
"""What slips -> the recipe, what stands in its file, and what the baker wrote."""


@pytest.fixture(scope="module")
def cut_faces(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A school that was published, so that its type is cut."""
    root = State().written(tmp_path_factory.mktemp("school"))
    publish(root, Order(NOON, State().day, jobs=1), Silent())
    return root


@pytest.mark.parametrize("slip", SLIPS)
def test_a_publish_tells_what_the_proof_tells(cut_faces: Path, tmp_path: Path, slip: str) -> None:
    root = Path(shutil.copytree(cut_faces, tmp_path / "school"))
    slug, right, wrong = SLIPS[slip]
    path = root / RECIPES / slug / "recipe.yaml"
    assert right in path.read_text()
    path.write_text(path.read_text().replace(right, wrong, 1))
    try:
        told = publish(root, Order(NOON, date(2026, 7, 15), jobs=1), Silent()).faults
    except Refused as refused:
        told = refused.faults
    assert told == proof(root).faults


@pytest.mark.parametrize(
    ("file", "text"),
    [
        ("orders/day.yaml", "title: Day\nmake: {squares: 24 squares, crud: 1}\n"),
        ("orders/day.yaml", "title: Day\nmake: {Sharp curd: 200 g, squares: 90000 squares}\n"),
        ("prices.yaml", "currency: GBP\nprices: {unsalted buter: 2.05 per 250 g}\n"),
        ("site.yaml", "name: Tansy Row\n"),
    ],
)
def test_so_it_does_of_files_beside_the_recipes(
    cut_faces: Path, tmp_path: Path, file: str, text: str
) -> None:
    root = Path(shutil.copytree(cut_faces, tmp_path / "school"))
    (root / "content" / file).parent.mkdir(exist_ok=True)
    (root / "content" / file).write_text(text)
    with pytest.raises(Refused) as refused:
        publish(root, Order(NOON, date(2026, 7, 15), jobs=1), Silent())
    assert refused.value.faults == proof(root).faults


def test_the_line_of_a_fault_is_shown(cut_faces: Path, tmp_path: Path) -> None:
    root = Path(shutil.copytree(cut_faces, tmp_path / "school"))
    path = root / RECIPES / "curd" / "recipe.yaml"
    path.write_text(path.read_text().replace("unsalted butter", "unsalted buter"))
    with pytest.raises(Refused) as refused:
        publish(root, Order(NOON, date(2026, 7, 15), jobs=1), Silent())
    shown = refused.value.texts
    assert shown == {file: read_content(root).texts[file] for file in shown}
    assert set(shown) == {fault.place.file for fault in refused.value.faults}
