"""The faults of a draft, as a proof would tell them once it lies in its folder."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from sitegen.faults import Fault, Severity
from sitegen.kitchen.declared import known_with, tables_of
from sitegen.kitchen.recipe import Recipe
from sitegen.notes.values import Lore
from sitegen.source.checks import CHECKS
from sitegen.source.checks.takings import UNUSED
from sitegen.source.declared import declared_in
from sitegen.source.models import RecipeFile
from sitegen.source.nodes import Data
from sitegen.source.photos import Folder
from sitegen.source.reader import Document, parse_document
from sitegen.source.recipes import RecipeSource, recipe_from
from sitegen.source.shapes import MISSING_KEY, shaped

_STAND_INS: dict[str, Data] = {"title": "Untitled", "summary": "Untold.", "makes": "1 piece"}
_STEP: dict[str, Data] = {"text": "Make it."}


@dataclass(frozen=True)
class Proofed:
    """faults: of the draft as it stands, and of its words even where a key is missing, in order.

    recipe: with something in place of what is missing; None where its words cannot be read.
    """

    faults: tuple[Fault, ...]
    recipe: Recipe | None

    @property
    def errors(self) -> tuple[Fault, ...]:
        return tuple(fault for fault in self.faults if fault.severity is Severity.ERROR)


def proofed(text: str, shown: str, folder: Folder, lore: Lore) -> Proofed:
    """shown: the draft's file as the baker is told it. folder: where it will lie."""
    document, faults = parse_document(text, shown)
    if document is None:
        return Proofed(faults, None)
    file, shape_faults = shaped(document, RecipeFile)
    if file is not None:
        recipe, told = _read(RecipeSource(folder.path.name, folder, document, file), lore)
        return Proofed(_sorted((*faults, *told)), None if faults else recipe)
    if any(fault.code != MISSING_KEY.code for fault in shape_faults):
        return Proofed(_sorted((*faults, *shape_faults)), None)
    whole, unmade = _with_stand_ins(document)
    file, _ = shaped(whole, RecipeFile)
    if file is None:
        return Proofed(_sorted((*faults, *shape_faults)), None)
    recipe, words = _read(RecipeSource(folder.path.name, folder, whole, file), lore)
    meant = (one for one in words if not _is_of_unmade(one, unmade))
    return Proofed(_sorted((*faults, *shape_faults, *meant)), recipe)


def _is_of_unmade(fault: Fault, unmade: Sequence[str]) -> bool:
    """Whether a component without steps is told that no step takes its ingredients."""
    return fault.code == UNUSED.code and any(f"'{title}'" in fault.sentence for title in unmade)


def _sorted(faults: tuple[Fault, ...]) -> tuple[Fault, ...]:
    return tuple(sorted(dict.fromkeys(faults), key=lambda fault: (fault.place, fault.code)))


def _with_stand_ins(document: Document) -> tuple[Document, tuple[str, ...]]:
    """The document with something for each key that is missing; and the components without a method."""
    data = dict(document.data) if isinstance(document.data, dict) else {}
    data = {**{key: value for key, value in _STAND_INS.items() if key not in data}, **data}
    parts = data.get("components")
    components = dict(parts) if isinstance(parts, dict) else {"Recipe": {}}
    unmade = []
    for title, part in components.items():
        if isinstance(part, dict) and "method" not in part:
            components[title] = {**part, "method": [dict(_STEP)]}
            unmade.append(title)
    return replace(document, data={**data, "components": components}), tuple(unmade)


def _read(source: RecipeSource, lore: Lore) -> tuple[Recipe | None, tuple[Fault, ...]]:
    tables = lore.context.tables
    declared, larder_faults = declared_in(source.document, source.file.larder, tables)
    known = known_with(tables, declared)
    context = replace(lore.context, tables=known, components=tuple(source.file.components), declared=declared)
    recipe, faults = recipe_from(source, context)
    meant = tuple(_meaning(recipe, lore)) if recipe else ()
    return recipe, (*larder_faults, *faults, *meant)


def _meaning(recipe: Recipe, lore: Lore) -> Iterator[Fault]:
    tables = tables_of(recipe, {}, lore.context.tables)
    for check in CHECKS:
        yield from check(recipe, tables)
