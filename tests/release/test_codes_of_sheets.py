"""Every code that shows only on a sheet is provoked by its own bad example in the sample school."""

import shutil
from pathlib import Path

import pytest

from sitegen.faults import FaultCode
from sitegen.release.proof import proof
from sitegen.sheet import checks, order_checks

SAMPLE = Path(__file__).parents[1] / "source" / "sample_school"
RECIPE = "content/recipes/blackcurrant-and-bay-cupcakes/recipe.yaml"
ORDER = "content/orders/saturday.yaml"
CODES = (*checks.CODES, *order_checks.CODES)
SHOWN = tuple(row for row in CODES if row.good)


def codes(root: Path) -> set[str]:
    return {fault.code for fault in proof(root).faults} & {row.code for row in CODES}


def test_the_sample_school_has_none_of_them() -> None:
    assert codes(SAMPLE) == set()


@pytest.mark.parametrize("row", SHOWN, ids=lambda row: row.code)
def test_the_bad_example_of_a_sheet_provokes_its_code(row: FaultCode, tmp_path: Path) -> None:
    root = Path(shutil.copytree(SAMPLE, tmp_path / "school"))
    file = root / (ORDER if row.file == "order.yaml" else RECIPE)
    text = file.read_text(encoding="utf-8")
    assert row.good in text
    file.write_text(text.replace(row.good, row.bad, 1), encoding="utf-8")
    assert row.code in codes(root)
