"""All tables of the trade: the project's own from `data/`, and a school's `content/larder.yaml` on top.

Our own files are plain rows that a test reads whole; a wrong one raises. A baker's rows give faults.
"""

from collections.abc import Mapping
from dataclasses import replace
from functools import cache
from importlib.resources import files
from typing import TypeVar

import yaml
from pydantic import BaseModel

from sitegen.faults import Fault
from sitegen.kitchen.larder import Larder
from sitegen.kitchen.measures import Measures
from sitegen.kitchen.tables import Tables
from sitegen.source.balance_rows import BalancesFile, balance_table
from sitegen.source.batter_file import BattersFile, batter_kinds
from sitegen.source.caution_rows import CautionsFile, caution_rows
from sitegen.source.composition_rows import composition_rows, with_compositions
from sitegen.source.diet_rows import DietsFile, diets
from sitegen.source.dough_rows import DoughsFile, dough_table
from sitegen.source.finding_rows import FindingFile, finding_table
from sitegen.source.keeping_file import KeepingFile, keeping_table
from sitegen.source.larder_rows import LarderReading
from sitegen.source.nodes import Data
from sitegen.source.nutrition_files import BakeLossesFile, NutritionFile
from sitegen.source.nutrition_rows import nutrition_table
from sitegen.source.reader import Document
from sitegen.source.section_file import SectionsFile, sections
from sitegen.source.substitution_rows import SubstitutionsFile, swaps
from sitegen.source.sugar_file import SugarStagesFile, sugar_stages
from sitegen.source.table_files import (
    EditionsFile,
    EggsFile,
    OvensFile,
    SourcesFile,
    SpellingFile,
    TinsFile,
    UnitNamesFile,
)
from sitegen.source.table_rows import (
    BrokenTable,
    editions,
    egg_table,
    longest_first,
    oven_table,
    source_words,
    tin_table,
)

# Every value stays the text that was written, as in a baker's file ('1/4', 'yes', '08120').
_LOADER = yaml.CBaseLoader if yaml.__with_libyaml__ else yaml.BaseLoader

File = TypeVar("File", bound=BaseModel)


def read_tables(own_larder: Document | None = None) -> tuple[Tables, tuple[Fault, ...]]:
    """Every table, and the faults of the school's larder.

    own_larder: `content/larder.yaml` as read, or None. Its rows override or add; a row at fault changes
    nothing. Raises BrokenTable or pydantic's ValidationError where one of our own files is wrong.
    """
    tables = _own_tables()
    if own_larder is None:
        return tables, ()
    reading = LarderReading(tables.measures, tables.sources, roles=known_roles(tables.larder))
    larder, faults = reading.extended(tables.larder, own_larder)
    return replace(tables, larder=larder), faults


def known_roles(larder: Larder) -> frozenset[str]:
    """Every role that an ingredient has."""
    return frozenset(role for row in larder.ingredients for role in row.roles)


@cache
def _own_tables() -> Tables:
    measures = Measures.of(_text("measures.txt"), _unit_names())
    sources, short_sources = source_words(_file("sources.yaml", SourcesFile))
    larder = _own_larder(measures, sources)
    return Tables(
        measures=measures,
        larder=larder,
        tins=tin_table(_file("tins.yaml", TinsFile), measures),
        ovens=oven_table(_file("ovens.yaml", OvensFile)),
        eggs=egg_table(_file("eggs.yaml", EggsFile), measures),
        editions=editions(_file("editions.yaml", EditionsFile)),
        cautions=caution_rows(_file("cautions.yaml", CautionsFile)),
        spelling={
            region: longest_first(words)
            for region, words in _file("spelling.yaml", SpellingFile).root.items()
        },
        sources=sources,
        short_sources=short_sources,
        diets=diets(_file("diets.yaml", DietsFile)),
        swaps=swaps(_file("substitutions.yaml", SubstitutionsFile), larder, measures),
        sugar=sugar_stages(_file("sugar_stages.yaml", SugarStagesFile)),
        batters=batter_kinds(_file("batters.yaml", BattersFile)),
        balances=balance_table(_file("balances.yaml", BalancesFile)),
        doughs=dough_table(_file("doughs.yaml", DoughsFile)),
        keeping=keeping_table(_file("keeping.yaml", KeepingFile)),
        nutrition=nutrition_table(
            _file("nutrition.yaml", NutritionFile), _file("bake_losses.yaml", BakeLossesFile)
        ),
        sections=sections(_file("sections.yaml", SectionsFile)),
        finding=finding_table(_file("finding.yaml", FindingFile)),
    )


def _unit_names() -> Mapping[str, tuple[str, ...]]:
    return {unit: tuple(words) for unit, words in _file("unit_names.yaml", UnitNamesFile).root.items()}


def _own_larder(measures: Measures, sources: Mapping[str, str]) -> Larder:
    reading = LarderReading(measures, sources, strict=False)
    larder, faults = reading.extended(Larder.of(()), _document("larder.yaml"))
    if faults:
        raise BrokenTable("; ".join(fault.sentence for fault in faults))
    return with_compositions(larder, composition_rows(_text("composition.csv").splitlines()))


def _document(name: str) -> Document:
    """One of our own files without places: a fault in it never reaches a baker."""
    return Document(
        shown=name,
        data=_data(name),
        places={},
        key_places={},
        braced=frozenset(),
        lines=(),
        scalars={},
        text="",
    )


def _file(name: str, model: type[File]) -> File:
    return model.model_validate(_data(name))


def _data(name: str) -> Data:
    data: Data = yaml.load(_text(name), Loader=_LOADER)
    return data


def _text(name: str) -> str:
    return (files("sitegen") / "data" / name).read_text(encoding="utf-8")
