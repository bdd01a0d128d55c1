"""Rows of `data/substitutions.yaml` -> the kitchen's swaps. They are ours: a wrong one raises at once."""

from fractions import Fraction
from typing import Annotated, Literal

from pydantic import Field, RootModel, StringConstraints

from sitegen.kitchen.larder import Larder
from sitegen.kitchen.measures import Measures
from sitegen.kitchen.substitutions import Substitute, Swap
from sitegen.source.figures import grams_in, millilitres_in
from sitegen.source.file_texts import FileModel
from sitegen.source.table_rows import BrokenTable

Region = Annotated[str, StringConstraints(pattern="^(uk|us|au)$")]


class SubstitutionFile(FileModel):
    instead_of: str = Field(alias="for")
    use: dict[str, str] = Field(min_length=1)
    source: str
    per: Literal["100 g", "1 piece"] = "100 g"
    changes: str = ""
    method: str = ""
    lacking_in: dict[Region, str] = Field(default={})
    differs_in: dict[Region, str] = Field(default={})
    written_in: frozenset[Region] = frozenset()


class SubstitutionsFile(RootModel[list[SubstitutionFile]]):
    """Rows, those of one ingredient in the order in which they are tried."""


def swaps(file: SubstitutionsFile, larder: Larder, measures: Measures) -> tuple[Swap, ...]:
    """Every way to do without an ingredient, in the file's order.

    Raises BrokenTable for an ingredient that the larder lacks and for an amount that cannot be weighed.
    """
    return tuple(_swap(row, larder, measures) for row in file.root)


def _swap(row: SubstitutionFile, larder: Larder, measures: Measures) -> Swap:
    if not _is_key(row.instead_of, larder):
        raise BrokenTable(row.instead_of)
    return Swap(
        instead_of=row.instead_of,
        use=tuple(Substitute(name, _grams(name, text, larder, measures)) for name, text in row.use.items()),
        per_piece=row.per == "1 piece",
        changes=row.changes,
        method=row.method,
        lacking_in={**row.lacking_in},
        differs_in={**row.differs_in},
        written_in=frozenset(row.written_in),
        source=row.source,
    )


def _grams(name: str, text: str, larder: Larder, measures: Measures) -> Fraction:
    """A weight as it stands; a measure by the ingredient's usual density."""
    ingredient = larder.find(name) if _is_key(name, larder) else None
    if ingredient is None:
        raise BrokenTable(name)
    grams = grams_in(text, measures)
    if grams is None and ingredient.density is not None:
        millilitres = millilitres_in(text, measures)
        grams = millilitres * ingredient.density.grams_per_ml if millilitres else None
    if not grams:
        raise BrokenTable(f"{text} {name}")
    return grams


def _is_key(name: str, larder: Larder) -> bool:
    found = larder.find(name)
    return found is not None and found.key == name
