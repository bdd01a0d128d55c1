"""Read all of it and list every fault. Nothing here loads what prints."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from pathlib import Path

from sitegen.faults import Fault, FaultCode, Severity
from sitegen.release import codes, settled_advice
from sitegen.release.sheets import sheet_setter
from sitegen.sheet import checks as sheet_checks
from sitegen.sheet import order_checks
from sitegen.source.catalogue import catalogue as source_catalogue
from sitegen.source.library import read_content
from sitegen.source.school import Content


@dataclass(frozen=True)
class Proof:
    """What was read, and every fault of it: of the files and of the sheets, sorted by place."""

    content: Content
    faults: tuple[Fault, ...]

    @property
    def errors(self) -> tuple[Fault, ...]:
        """The faults that stop a publish."""
        return tuple(fault for fault in self.faults if fault.severity is Severity.ERROR)


def proof(root: Path) -> Proof:
    """Proof a whole folder. root: the one that holds `content/`. Never raises for what a baker wrote."""
    content = read_content(root)
    told = tuple(dict.fromkeys([*content.faults, *_sheet_faults(content)]))
    found = settled_advice.without_settled(told, content.recipes, catalogue())
    return Proof(content, tuple(sorted(found, key=lambda fault: (fault.place, fault.code, fault.sentence))))


def catalogue() -> Mapping[str, FaultCode]:
    """Every code that a proof or a build can tell, sorted."""
    return source_catalogue((*sheet_checks.CODES, *order_checks.CODES, *settled_advice.CODES, *codes.CODES))


def _sheet_faults(content: Content) -> Iterator[Fault]:
    """Of each recipe in each edition and batch; without a readable `site.yaml` there are no editions."""
    if content.school is None:
        return
    shelf = sheet_setter(content, content.school).shelf
    for recipe in content.recipes:
        yield from sheet_checks.sheet_faults(recipe, shelf)
    for order in content.orders:
        yield from order_checks.order_faults([(one.recipe, one.ask, one.at) for one in order.lines], shelf)
