"""Read all of it and list every fault. Nothing here loads what prints."""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from functools import cache
from pathlib import Path

from sitegen.faults import Fault, FaultCode, Severity
from sitegen.release import codes, settled_advice, stamp_codes
from sitegen.release.sheets import SheetSetter, sheet_setter
from sitegen.sheet import checks as sheet_checks
from sitegen.sheet import order_checks
from sitegen.source.catalogue import catalogue as source_catalogue
from sitegen.source.library import read_content
from sitegen.source.prices import PRICE_LIST
from sitegen.source.school import Content
from sitegen.source.textfile import read_text


@dataclass(frozen=True)
class Proof:
    """What was read, and every fault of it: of the files and of the sheets, sorted by place.

    setter: holds the sheets that were set for it; None without a readable `site.yaml`.
    """

    content: Content
    faults: tuple[Fault, ...]
    setter: SheetSetter | None

    @property
    def errors(self) -> tuple[Fault, ...]:
        """The faults that stop a publish."""
        return _errors(self.faults)


def proof(root: Path) -> Proof:
    """Proof a whole folder. root: the one that holds `content/`. Never raises for what a baker wrote."""
    content = read_content(root)
    setter = sheet_setter(content, content.school) if content.school else None
    told = [*content.faults, *(_sheet_faults(content, setter) if setter else ())]
    settled = settled_advice.without_settled(tuple(dict.fromkeys(told)), content.recipes, catalogue())
    return Proof(content, all_faults(settled.faults, settled.idle), setter)


def all_faults(faults: Iterable[Fault], idle: Iterable[Fault]) -> tuple[Fault, ...]:
    """Those of a whole school, sorted by place, each once. idle: advice that is settled and not given."""
    found = tuple(dict.fromkeys(faults))
    told = found if _errors(found) else (*found, *idle)
    return tuple(sorted(told, key=lambda fault: (fault.place, fault.code, fault.sentence)))


def recipe_proof(content: Content, slug: str, setter: SheetSetter | None) -> settled_advice.Settled:
    """The faults of one recipe, in its file and in its sheets.

    content: read with that recipe and all that it draws on. setter: None without a readable `site.yaml`.
    """
    folder = f"content/recipes/{slug}/"
    own = [fault for fault in content.faults if fault.place.file.startswith(folder)]
    recipes = [recipe for recipe in content.recipes if recipe.slug == slug]
    if setter is not None:
        for recipe in recipes:
            own += sheet_checks.sheet_faults(recipe, setter.shelf, setter.sheet)
    return settled_advice.without_settled(tuple(dict.fromkeys(own)), recipes, catalogue())


def kitchen_faults(content: Content, setter: SheetSetter | None) -> tuple[Fault, ...]:
    """Those of what is for the kitchen alone: prices and orders. content: read with their recipes."""
    own = [fault for fault in content.faults if is_kitchens_own(fault.place.file)]
    return (*own, *(_order_faults(content, setter) if setter else ()))


def texts_of(root: Path, faults: Iterable[Fault]) -> Mapping[str, tuple[str, ...]]:
    """The lines of each file that a fault stands in, to show them; a file that cannot be read is missing."""
    texts = {}
    for shown in {fault.place.file for fault in faults if fault.place.line}:
        text, _ = read_text(root / shown, shown)
        if text is not None:
            texts[shown] = tuple(text.split("\n"))
    return texts


def is_kitchens_own(file: str) -> bool:
    """Whether nothing that is published depends on a file: what the school pays, and its orders."""
    return file == f"content/{PRICE_LIST}" or file.startswith("content/orders/")


@cache
def catalogue() -> Mapping[str, FaultCode]:
    """Every code that a proof, a build or a stamping can tell, sorted."""
    return source_catalogue(
        (
            *sheet_checks.CODES,
            *order_checks.CODES,
            *settled_advice.CODES,
            *codes.CODES,
            *stamp_codes.CODES,
        )
    )


def _sheet_faults(content: Content, setter: SheetSetter) -> Iterator[Fault]:
    """Of each recipe in each edition and batch, and of each order."""
    for recipe in content.recipes:
        yield from sheet_checks.sheet_faults(recipe, setter.shelf, setter.sheet)
    yield from _order_faults(content, setter)


def _order_faults(content: Content, setter: SheetSetter) -> Iterator[Fault]:
    for order in content.orders:
        wanted = [(one.recipe, one.ask, one.at) for one in order.lines]
        yield from order_checks.order_faults(wanted, setter.shelf)


def _errors(faults: Iterable[Fault]) -> tuple[Fault, ...]:
    return tuple(fault for fault in faults if fault.severity is Severity.ERROR)
