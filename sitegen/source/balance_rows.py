"""`data/balances.yaml`: its shapes, and its rows as the kitchen's frozen values."""

import re
from collections.abc import Mapping, Sequence
from fractions import Fraction

from pydantic import Field

from sitegen.kitchen.balances import WHOLE, BalanceTable, Band, GroupTerm, Kind, flour_and_water
from sitegen.source.file_texts import FileModel
from sitegen.source.table_rows import BrokenTable, figure

_RANGE = re.compile(r"(?P<low>[\d./]+)-(?P<high>[\d./]+)(?P<percent> %)?")


class GroupTermFile(FileModel):
    roles: tuple[str, ...] = ()
    names: tuple[str, ...] = ()
    unless: tuple[str, ...] = ()
    without: tuple[str, ...] = Field((), alias="not")
    part: str = ""
    share: str = "1"
    source: str | None = None
    flour_at_hydration: str | None = None
    water_at_hydration: str | None = None


class BandFile(FileModel):
    what: str
    of: str
    usual: str
    ask: str | None = None
    stop: str | None = None
    source: str | None = None
    only_with: tuple[str, ...] = ()
    unless: tuple[str, ...] = ()
    families: tuple[str, ...] = ()
    code: str = "balance-unusual"


class KindFile(FileModel):
    family: str
    source: str
    ask: str
    bands: list[BandFile] = Field(min_length=1)
    loses: str | None = None


class BalancesFile(FileModel):
    groups: dict[str, list[GroupTermFile]]
    kinds: dict[str, KindFile]
    everywhere: list[BandFile]


def ratio(text: str) -> Fraction:
    """'60 %' or '0.6' as an exact ratio. Raises BrokenTable."""
    return figure(text.removesuffix(" %")) / 100 if text.endswith(" %") else figure(text)


def ratios(text: str) -> tuple[Fraction, Fraction]:
    """'60-110 %' or '0.8-1.4' as its two ends. Raises BrokenTable."""
    found = _RANGE.fullmatch(text)
    if found is None:
        raise BrokenTable(text)
    percent = found["percent"] or ""
    return ratio(found["low"] + percent), ratio(found["high"] + percent)


def balance_table(file: BalancesFile) -> BalanceTable:
    """Groups, kinds and the bands for everything; BrokenTable for a band of a group that there is not."""
    table = BalanceTable(
        groups={key: tuple(map(_term, terms)) for key, terms in file.groups.items()},
        kinds=tuple(_kind(key, row) for key, row in file.kinds.items()),
        everywhere=tuple(_band(row, row.source or "", "0 %") for row in file.everywhere),
    )
    _refuse_unknown_groups(table)
    return table


def _term(row: GroupTermFile) -> GroupTerm:
    return GroupTerm(
        roles=frozenset(row.roles),
        names=frozenset(row.names),
        unless_roles=frozenset(row.unless),
        unless_names=frozenset(row.without),
        part=row.part,
        share=_share(row),
    )


def _share(row: GroupTermFile) -> Fraction:
    if row.flour_at_hydration:
        return flour_and_water(Fraction(1), ratio(row.flour_at_hydration))[0]
    if row.water_at_hydration:
        return flour_and_water(Fraction(1), ratio(row.water_at_hydration))[1]
    return ratio(row.share)


def _kind(key: str, row: KindFile) -> Kind:
    bands = tuple(_band(band, band.source or row.source, row.ask) for band in row.bands)
    return Kind(key, row.family, bands, ratios(row.loses) if row.loses else None)


def _band(row: BandFile, source: str, usual_margin: str) -> Band:
    """ask: the ends themselves; where it says nothing, the usual ends moved by the kind's part of each."""
    low, high = ratios(row.usual)
    margin = ratio(usual_margin)
    ask_low, ask_high = ratios(row.ask) if row.ask else (low * (1 - margin), high * (1 + margin))
    return Band(
        what=_sum(row.what),
        of=_sum(row.of),
        low=low,
        high=high,
        ask_low=ask_low,
        ask_high=ask_high,
        source=source,
        in_percent=row.usual.endswith("%"),
        stop=ratio(row.stop) if row.stop else None,
        only_with=row.only_with,
        unless=row.unless,
        families=frozenset(row.families),
        code=row.code,
    )


def _sum(text: str) -> tuple[str, ...]:
    return tuple(text.split(" + "))


def _refuse_unknown_groups(table: BalanceTable) -> None:
    bands: Sequence[Band] = (*table.everywhere, *(band for kind in table.kinds for band in kind.bands))
    known: Mapping[str, object] = {**table.groups, WHOLE: ()}
    for band in bands:
        for group in (*band.what, *band.of, *band.only_with, *band.unless):
            if group not in known:
                raise BrokenTable(group)
