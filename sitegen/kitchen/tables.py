"""All tables of the trade in one frozen value, as the rules of this room take them.

`source/tables.py` reads them from `data/` and from `content/larder.yaml`; nothing here reads a file.
"""

from collections.abc import Mapping
from dataclasses import dataclass, field

from sitegen.kitchen.balances import BalanceTable
from sitegen.kitchen.batters import BatterKind
from sitegen.kitchen.cautions import CautionRow
from sitegen.kitchen.diets import Diet
from sitegen.kitchen.doughs import DoughTable
from sitegen.kitchen.editions import Edition
from sitegen.kitchen.eggs import EggTable
from sitegen.kitchen.finding import FindingTable
from sitegen.kitchen.keeping import KeepingTable
from sitegen.kitchen.larder import Larder
from sitegen.kitchen.measures import Measures
from sitegen.kitchen.nutrition_table import NutritionTable
from sitegen.kitchen.ovens import OvenTable
from sitegen.kitchen.sections import Sections
from sitegen.kitchen.substitutions import Swap
from sitegen.kitchen.sugar import SugarStages
from sitegen.kitchen.tins import TinTable


@dataclass(frozen=True)
class Tables:
    """spelling: region -> {British word or phrase: the region's}, longest phrase first.

    sources: key -> published source in words. short_sources: key -> the few words that a sheet prints.
    """

    measures: Measures
    larder: Larder
    tins: TinTable
    ovens: OvenTable
    eggs: EggTable
    editions: Mapping[str, Edition] = field(hash=False)
    cautions: tuple[CautionRow, ...]
    spelling: Mapping[str, Mapping[str, str]] = field(hash=False)
    sources: Mapping[str, str] = field(hash=False)
    short_sources: Mapping[str, str] = field(hash=False, default_factory=dict)
    diets: tuple[Diet, ...] = ()
    swaps: tuple[Swap, ...] = ()
    sugar: SugarStages = SugarStages()
    batters: tuple[BatterKind, ...] = ()
    balances: BalanceTable = BalanceTable()
    doughs: DoughTable | None = None
    keeping: KeepingTable = KeepingTable()
    nutrition: NutritionTable = NutritionTable()
    sections: Sections = Sections()
    finding: FindingTable = FindingTable()

    def source_in_short(self, source: str) -> str:
        """What a sheet prints for the source of a row: in few words where the table has them.

        source: a key of `sources`, with the row's own number where it has one.
        """
        key = source.split(" ")[0]
        return self.short_sources.get(key) or self.sources.get(key, source)
