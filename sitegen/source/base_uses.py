"""`base-recipes`: how a recipe uses each of its base recipes, made once or for each, and what it spares."""

from collections.abc import Iterator, Mapping
from difflib import get_close_matches
from typing import Literal

from pydantic import Field

from sitegen.faults import Fault, FaultCode, Severity
from sitegen.kitchen.recipe import BaseUse
from sitegen.source.context import Context
from sitegen.source.file_texts import FileModel, Short
from sitegen.source.misread import Misread
from sitegen.source.nodes import Path
from sitegen.source.percents import read_percent
from sitegen.source.reader import Document

UNKNOWN_BASE = FaultCode(
    "unknown-base",
    Severity.ERROR,
    "A title under `base-recipes` is the title of no other recipe of the school.",
    "Write the recipe's title as it stands at the head of its file.",
    good="  Base buttercream: {made: once",
    bad="  Base butercream: {made: once",
)
CODES = (UNKNOWN_BASE,)


class BaseUseFile(FileModel):
    """How a base recipe is made for this one."""

    made: Literal["once", "for each"] = Field(
        "once", description="Once for all components that take of it, or for each on its own."
    )
    spare: Short | None = Field(
        None, description="How much more than is needed is made.", examples=["5 %", "10 %"]
    )


def base_uses_from(
    document: Document, files: Mapping[str, BaseUseFile], context: Context
) -> tuple[tuple[BaseUse, ...], tuple[Fault, ...]]:
    """The uses of base recipes, each with its place, and the faults of those that cannot be read."""
    uses, faults = [], []
    for written, file in files.items():
        read = list(_base_use(document, written, file, context))
        uses += [one for one in read if isinstance(one, BaseUse)]
        faults += [one for one in read if isinstance(one, Fault)]
    return tuple(uses), tuple(faults)


def _base_use(
    document: Document, written: str, file: BaseUseFile, context: Context
) -> Iterator[BaseUse | Fault]:
    path: Path = ("base-recipes", written)
    titles = {title.casefold(): title for title in context.recipes}
    title = titles.get(written.casefold())
    if title is None:
        yield _unknown(document, path, written, context)
        return
    try:
        spare = read_percent(file.spare) if file.spare else BaseUse(title).spare
    except Misread as problem:
        yield problem.code.fault(document.place((*path, "spare")), problem.sentence, problem.way_out)
        return
    yield BaseUse(title, file.made == "once", spare, document.key_place(path))


def _unknown(document: Document, path: Path, written: str, context: Context) -> Fault:
    place = document.key_place(path)
    if written in context.components:
        sentence = f"'{written}' is a component of this recipe, not a base recipe"
        return UNKNOWN_BASE.fault(place, sentence, "a component is made once, and divided by shares")
    near = get_close_matches(written, context.recipes, n=1, cutoff=0.6)
    way_out = f"did you mean '{near[0]}'?" if near else ""
    return UNKNOWN_BASE.fault(place, f"there is no recipe '{written}'", way_out)
