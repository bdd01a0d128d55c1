"""Rows of `data/finding.yaml` -> the kitchen's values; these rows are ours, a wrong one raises at once."""

from fractions import Fraction

from pydantic import Field

from sitegen.kitchen.allergens import Regime
from sitegen.kitchen.finding import AllergenGroup, FindingTable, SearchWords, TimeBand, TinFamily
from sitegen.source.durations import read_span_of_minutes
from sitegen.source.file_texts import FileModel


class TimeBandFile(FileModel):
    title: str
    source: str
    over: str = ""
    to: str = ""


class TinFamilyFile(FileModel):
    title: str


class AllergenGroupFile(FileModel):
    title: str
    names: dict[Regime, tuple[str, ...]]
    source: str
    titles: dict[Regime, str] = Field(default_factory=dict)
    roles: tuple[str, ...] = ()


class SearchWordsFile(FileModel):
    passed_over: tuple[str, ...]
    letters: dict[str, str]
    endings: dict[str, str]


class FindingFile(FileModel):
    start_to_finish: dict[str, TimeBandFile]
    hands_on: dict[str, TimeBandFile]
    tins: dict[str, TinFamilyFile]
    without: dict[str, AllergenGroupFile]
    words: SearchWordsFile


def finding_table(file: FindingFile) -> FindingTable:
    """Everything in the file's order."""
    return FindingTable(
        start_to_finish=_bands(file.start_to_finish),
        hands_on=_bands(file.hands_on),
        tins=tuple(TinFamily(key, row.title) for key, row in file.tins.items()),
        without=tuple(
            AllergenGroup(key, row.title, row.names, row.titles, frozenset(row.roles))
            for key, row in file.without.items()
        ),
        words=SearchWords(
            passed_over=file.words.passed_over,
            letters=tuple(file.words.letters.items()),
            endings=tuple(file.words.endings.items()),
        ),
    )


def _bands(rows: dict[str, TimeBandFile]) -> tuple[TimeBand, ...]:
    return tuple(
        TimeBand(key, row.title, _minutes(row.over) if row.over else Fraction(0), _end(row.to))
        for key, row in rows.items()
    )


def _end(text: str) -> Fraction | None:
    return _minutes(text) if text else None


def _minutes(text: str) -> Fraction:
    return read_span_of_minutes(text).high
