"""Titles that would be taken for one another, and titles that a step names in `after`."""

from collections.abc import Iterator, Sequence
from difflib import get_close_matches

from sitegen.faults import Fault, FaultCode, Severity
from sitegen.kitchen.recipe import Recipe
from sitegen.kitchen.tables import Tables
from sitegen.source.headings import Heading

TITLE_TWICE = FaultCode(
    "title-twice",
    Severity.ERROR,
    "Two recipes bear the same title, so that `500 g of ...` could mean either.",
    "Give one of them another title.",
    good="title: Blackcurrant and bay cupcakes",
    bad="title: Base buttercream",
)
COMPONENT_TWICE = FaultCode(
    "component-twice",
    Severity.ERROR,
    "Two components of a recipe differ in capitals only.",
    "Give one of them another title.",
    good="components:\n",
    bad="components:\n  bay SPONGE:\n    method:\n      - text: Bake.\n",
)
TITLE_OF_BOTH = FaultCode(
    "title-of-both",
    Severity.ERROR,
    "A component bears the title of another recipe, so that `half of ...` could mean either.",
    "Give the component another title.",
    good="components:\n",
    bad="components:\n  Base Buttercream:\n    method:\n      - text: Bake.\n",
)
UNKNOWN_AFTER = FaultCode(
    "unknown-after",
    Severity.ERROR,
    "A step waits for a component that the recipe does not have.",
    "Write the component's title as it stands above its ingredients.",
    good="after: [Bay sponge,",
    bad="after: [Bay spunge,",
)
AFTER_ITSELF = FaultCode(
    "after-itself",
    Severity.ERROR,
    "A step waits for the component that it is a part of, so that it could never begin.",
    "Delete the title from `after`; the steps of a component follow each other as written.",
    good="after: [Bay sponge,",
    bad="after: [Assembly, Bay sponge,",
)
TAG_SPELLINGS = FaultCode(
    "tag-spellings",
    Severity.ERROR,
    "The same tag is written in two ways, so that it would fill two pages.",
    "Write it the same way in every recipe.",
    good="tags: [cupcakes, soft fruit]",
    bad="tags: [cupcakes, Creams]",
)

CODES = (TITLE_TWICE, COMPONENT_TWICE, TITLE_OF_BOTH, UNKNOWN_AFTER, AFTER_ITSELF, TAG_SPELLINGS)


def components_differ(recipe: Recipe, _tables: Tables) -> Iterator[Fault]:
    """No two components bear the same title."""
    seen: set[str] = set()
    for component in recipe.components:
        if component.title.casefold() in seen:
            sentence = f"'{component.title}' stands in this recipe already"
            yield COMPONENT_TWICE.fault(component.at, sentence)
        seen.add(component.title.casefold())


def after_is_known(recipe: Recipe, _tables: Tables) -> Iterator[Fault]:
    """A step waits for other components of its own recipe."""
    titles = [component.title for component in recipe.components]
    for component in recipe.components:
        for step in component.steps:
            for title in step.after:
                if title == component.title:
                    yield AFTER_ITSELF.fault(step.at, f"this step waits for '{title}', its own component")
                elif title not in titles:
                    near = get_close_matches(title, titles, n=1, cutoff=0.6)
                    way_out = f"did you mean '{near[0]}'?" if near else f"components: {', '.join(titles)}"
                    yield UNKNOWN_AFTER.fault(step.at, f"'{title}' is no component of this recipe", way_out)


def titles_differ(headings: Sequence[Heading]) -> Iterator[Fault]:
    """A title names one thing in the whole school."""
    owners: dict[str, Heading] = {}
    for heading in headings:
        first = owners.setdefault(heading.title.casefold(), heading)
        if first is not heading:
            sentence = f"'{heading.title}' is the title of {first.at.file or first.slug} already"
            yield TITLE_TWICE.fault(heading.at, sentence)
    for heading in headings:
        for part in heading.parts:
            owner = owners.get(part.title.casefold(), heading)
            if owner is not heading:
                sentence = f"'{part.title}' is also the title of {owner.at.file or owner.slug}"
                yield TITLE_OF_BOTH.fault(part.at, sentence)


def tags_spelt_alike(headings: Sequence[Heading]) -> Iterator[Fault]:
    """One tag, one spelling."""
    spelt: dict[str, str] = {}
    for heading in headings:
        for tag in heading.tags:
            first = spelt.setdefault(tag.casefold(), tag)
            if first != tag:
                sentence = f"the tag '{tag}' is '{first}' elsewhere"
                yield TAG_SPELLINGS.fault(heading.at, sentence, f"write '{first}'")


CHECKS = (components_differ, after_is_known)
HEADING_CHECKS = (titles_differ, tags_spelt_alike)
