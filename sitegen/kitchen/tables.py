"""All tables of the trade in one frozen value, as the rules of this room take them.

`source/tables.py` reads them from `data/` and from `content/larder.yaml`; nothing here reads a file.
"""

from collections.abc import Mapping
from dataclasses import dataclass, field

from sitegen.kitchen.cautions import CautionRow
from sitegen.kitchen.editions import Edition
from sitegen.kitchen.eggs import EggTable
from sitegen.kitchen.larder import Larder
from sitegen.kitchen.measures import Measures
from sitegen.kitchen.ovens import OvenTable
from sitegen.kitchen.tins import TinTable


@dataclass(frozen=True)
class Tables:
    """spelling: region -> {British word or phrase: the region's}, longest phrase first.

    sources: key -> published source in words.
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
