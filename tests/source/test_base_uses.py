"""`base-recipes`: what is said of a base recipe is read, and held against what is taken."""

import shutil
from fractions import Fraction
from pathlib import Path

import pytest

from sitegen.kitchen.recipe import BaseUse
from sitegen.source.library import read_content

SAMPLE = Path(__file__).parent / "sample_school"
CUPCAKES = Path("content/recipes/blackcurrant-and-bay-cupcakes/recipe.yaml")
WRITTEN = "  Base buttercream: {made: once, spare: 5 %}\n"


@pytest.fixture
def school(tmp_path: Path) -> Path:
    return Path(shutil.copytree(SAMPLE, tmp_path / "school"))


def say(school: Path, row: str) -> None:
    path = school / CUPCAKES
    text = path.read_text(encoding="utf-8")
    assert WRITTEN in text
    path.write_text(text.replace(WRITTEN, f"  {row}\n"), encoding="utf-8")


@pytest.mark.parametrize(
    ("row", "use"),
    [
        ("Base buttercream: {spare: 5 %}", BaseUse("Base buttercream", True, Fraction(1, 20))),
        ("Base buttercream: {spare: 12.5 %}", BaseUse("Base buttercream", True, Fraction(1, 8))),
        ("base Buttercream: {made: once}", BaseUse("Base buttercream")),
    ],
)
def test_made_once_and_nothing_spare_unless_it_is_said(school: Path, row: str, use: BaseUse) -> None:
    say(school, row)
    content = read_content(school)
    assert content.faults == ()
    assert content.recipes[1].base_uses == (use,)


@pytest.mark.parametrize(
    ("row", "code", "word"),
    [
        ("Base butercream: {spare: 5 %}", "unknown-base", "did you mean 'Base buttercream'?"),
        ("Bay sponge: {spare: 5 %}", "unknown-base", "divided by shares"),
        ("Base buttercream: {spare: 5}", "percent", "5 %"),
        ("Base buttercream: {spare: 150 %}", "percent", "at most 100 %"),
        ("Base buttercream: {made: twice}", "unknown-word", "once"),
        ("Base buttercream: {made: for each}", "made-once-anyway", ""),
        ("Blackcurrant and bay cupcakes: {spare: 5 %}", "unused-base", ""),
    ],
)
def test_what_cannot_be_is_told_at_its_line(school: Path, row: str, code: str, word: str) -> None:
    say(school, row)
    (fault,) = read_content(school).faults
    assert fault.code == code
    assert word in fault.way_out
    line = (school / CUPCAKES).read_text(encoding="utf-8").split("\n")[fault.place.line - 1]
    assert line.strip() == row
