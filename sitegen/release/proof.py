"""Read all of it and list every fault. Nothing here loads what prints."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from pathlib import Path

from sitegen.faults import Fault, FaultCode, Severity
from sitegen.release import codes, settled_advice
from sitegen.release.sheets import SheetSetter, sheet_setter
from sitegen.sheet import checks as sheet_checks
from sitegen.sheet import order_checks
from sitegen.source.catalogue import catalogue as source_catalogue
from sitegen.source.library import read_content
from sitegen.source.school import Content


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
        return tuple(fault for fault in self.faults if fault.severity is Severity.ERROR)


def proof(root: Path) -> Proof:
    """Proof a whole folder. root: the one that holds `content/`. Never raises for what a baker wrote."""
    content = read_content(root)
    setter = sheet_setter(content, content.school) if content.school else None
    told = tuple(dict.fromkeys([*content.faults, *(_sheet_faults(content, setter) if setter else ())]))
    found = settled_advice.without_settled(told, content.recipes, catalogue())
    faults = tuple(sorted(found, key=lambda fault: (fault.place, fault.code, fault.sentence)))
    return Proof(content, faults, setter)


def catalogue() -> Mapping[str, FaultCode]:
    """Every code that a proof or a build can tell, sorted."""
    return source_catalogue((*sheet_checks.CODES, *order_checks.CODES, *settled_advice.CODES, *codes.CODES))


def _sheet_faults(content: Content, setter: SheetSetter) -> Iterator[Fault]:
    """Of each recipe in each edition and batch, and of each order."""
    for recipe in content.recipes:
        yield from sheet_checks.sheet_faults(recipe, setter.shelf, setter.sheet)
    for order in content.orders:
        wanted = [(one.recipe, one.ask, one.at) for one in order.lines]
        yield from order_checks.order_faults(wanted, setter.shelf)
