"""Links from recipes to technique pages."""

from collections.abc import Iterator
from difflib import get_close_matches

from sitegen.faults import Fault, FaultCode, Severity
from sitegen.source.school import Content

UNKNOWN_TUTORIAL = FaultCode(
    "unknown-tutorial",
    Severity.ERROR,
    "A step links to a technique page that does not exist.",
    "Write the file name of the page without '.md', or write the page.",
    good="tutorial: whisking",
    bad="tutorial: wisking",
)

CODES = (UNKNOWN_TUTORIAL,)


def tutorials_exist(content: Content) -> Iterator[Fault]:
    """Every page that a step links to is there, or is at fault itself."""
    slugs = [tutorial.slug for tutorial in content.tutorials]
    broken = {place_file.rpartition("/")[2] for place_file in content.texts}
    for recipe in content.recipes:
        for component in recipe.components:
            for step in component.steps:
                if step.tutorial and step.tutorial not in slugs and f"{step.tutorial}.md" not in broken:
                    near = get_close_matches(step.tutorial, slugs, n=1, cutoff=0.6)
                    way_out = f"did you mean '{near[0]}'?" if near else UNKNOWN_TUTORIAL.cure
                    sentence = f"there is no technique page '{step.tutorial}'"
                    yield UNKNOWN_TUTORIAL.fault(step.at, sentence, way_out)


SCHOOL_CHECKS = (tutorials_exist,)
