"""Rows of `data/sections.yaml` -> the kitchen's values; these rows are ours, a wrong one raises at once."""

from pydantic import RootModel

from sitegen.kitchen.sections import Section, Sections
from sitegen.source.file_texts import FileModel, YesNo


class SectionFile(FileModel):
    title: str
    source: str
    ingredients: tuple[str, ...] = ()
    roles: tuple[str, ...] = ()
    rest: YesNo = False


class SectionsFile(RootModel[dict[str, SectionFile]]):
    """Key -> row."""


def sections(file: SectionsFile) -> Sections:
    """Sections in the file's order."""
    return Sections(
        tuple(
            Section(key, row.title, frozenset(row.ingredients), frozenset(row.roles), row.rest)
            for key, row in file.root.items()
        )
    )
