"""The demo's recipes put on a clock."""

from functools import cache
from pathlib import Path

from sitegen.release.sheets import sheet_setter
from sitegen.sheet.day_plan import Wish, day_plan
from sitegen.sheet.making import Making, making_of
from sitegen.sheet.work_values import DayPlan
from sitegen.source.library import read_content

ROOT = Path(__file__).parents[2]
SLUGS = tuple(sorted(path.parent.name for path in (ROOT / "content" / "recipes").glob("*/recipe.yaml")))


@cache
def demo_makings() -> dict[str, Making]:
    """What is made of each recipe as written, in the school's own edition."""
    content = read_content(ROOT)
    assert content.school is not None
    shelf = sheet_setter(content, content.school).shelf
    edition = shelf.tables.editions[content.school.editions[0]]
    return {
        recipe.slug: making_of(recipe, shelf.bases, shelf.tables, edition, shelf.written)
        for recipe in content.recipes
    }


def demo_plan(slug: str, wish: Wish) -> DayPlan:
    made = demo_makings()[slug]
    return day_plan(slug, made.in_batch, made.summaries, wish, made.setting)
