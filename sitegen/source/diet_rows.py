"""Rows of `data/diets.yaml` -> the kitchen's values; these rows are ours, a wrong one raises at once."""

from pydantic import RootModel

from sitegen.kitchen.diets import Diet
from sitegen.source.file_texts import FileModel, YesNo

Words = tuple[str, ...]


class DietFile(FileModel):
    words: Words
    source: str
    allergens: Words = ()
    roles: Words = ()
    ingredients: Words = ()
    unless_line_words: Words = ()
    promises: YesNo = False


class DietsFile(RootModel[dict[str, DietFile]]):
    """Key -> row."""


def diets(file: DietsFile) -> tuple[Diet, ...]:
    """Dietary words in the file's order."""
    return tuple(
        Diet(
            key=key,
            words=row.words,
            allergens=frozenset(row.allergens),
            roles=frozenset(row.roles),
            ingredients=frozenset(row.ingredients),
            unless_line_words=row.unless_line_words,
            promises=row.promises,
        )
        for key, row in file.root.items()
    )
