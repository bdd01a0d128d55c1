"""One-off sheets: a recipe in any edition, at any batch that a reader asks for in words."""

from collections.abc import Sequence
from dataclasses import dataclass
from difflib import get_close_matches
from itertools import zip_longest
from pathlib import Path

from sitegen.faults import Fault, FaultCode, Place, Severity
from sitegen.kitchen.recipe import BatchAsk, BatchKind, Recipe
from sitegen.kitchen.scaling import CannotScale
from sitegen.release.proof import proof
from sitegen.release.sheets import SheetSetter, sheet_setter
from sitegen.sheet.as_json import sheet_json
from sitegen.sheet.checks import WHY_NOT
from sitegen.sheet.values import Sheet, SheetLine
from sitegen.source.context import Context
from sitegen.source.misread import Misread
from sitegen.source.phrases import read_batch
from sitegen.source.school import Content
from sitegen.source.vessels import read_tin

_COMMAND_LINE = Place("the command line")


@dataclass(frozen=True)
class BatchWords:
    """How much is wanted, in a reader's words; at most one of the four, none for the tested batch."""

    makes: str = ""
    tin: str = ""
    times: str = ""
    using: str = ""

    @property
    def given(self) -> int:
        return sum(bool(words) for words in (self.makes, self.tin, self.times, self.using))


class NotAsked(Exception):
    """Something in the question itself is wrong. sentence: what; way_out: what was perhaps meant."""

    def __init__(self, sentence: str, way_out: str = "") -> None:
        super().__init__(sentence, way_out)
        self.sentence = sentence
        self.way_out = way_out


class AtFault(Exception):
    """The folder has errors, so that no sheet of it can be trusted."""

    def __init__(self, faults: Sequence[Fault], content: Content) -> None:
        super().__init__(faults)
        self.faults = tuple(faults)
        self.texts = content.texts


@dataclass(frozen=True)
class TableRow:
    """One line of the ingredient table. tested, asked: amounts as printed."""

    component: str
    name: str
    tested: str
    asked: str
