"""A figure outside its band, in a sentence with its source."""

from collections.abc import Sequence
from fractions import Fraction

from sitegen.kitchen.balances import WHOLE, Band, Finding
from sitegen.kitchen.recipe import Component
from sitegen.kitchen.tables import Tables

OF_A_KIND = "balance-unusual"
"""The code of what is held against a kind, which the sentence then names."""
WITHOUT = {"acid-missing": " where nothing sour is listed"}
"""Code -> what the usual figure rests on."""


def finding_sentence(component: Component, finding: Finding, tables: Tables) -> str:
    """In 'Bay sponge' the weight of sugar is 140 % of that of the flour; 60 to 110 % is usual for ..."""
    band = finding.band
    of = "all of it" if finding.of == (WHOLE,) else f"that of the {_listed(finding.of)}"
    of = f"of {of}" if band.in_percent else of
    of_a_kind = f" for '{component.kind}'" if component.kind and band.code == OF_A_KIND else ""
    condition = WITHOUT.get(band.code, of_a_kind)
    slip = ", more than can be meant" if finding.is_slip else ""
    figure, source = _figure(finding.figure, band), tables.source_in_short(band.source)
    what, usual = _listed(finding.what), _usual(band)
    if not finding.figure:
        return f"there is no {what} in '{component.title}': usually {usual} {of}{condition} ({source})"
    return (
        f"in '{component.title}' the weight of {what} is {figure} {of}{slip}; "
        f"{usual} is usual{condition} ({source})"
    )


def _listed(groups: Sequence[str]) -> str:
    return " and ".join(part for part in (", ".join(groups[:-1]), groups[-1]) if part)


def _usual(band: Band) -> str:
    if band.low == band.high:
        return _figure(band.high, band) if band.high else "none"
    if not band.low:
        return f"up to {_figure(band.high, band)}"
    low = _figure(band.low, band).removesuffix(" %").removesuffix(" times")
    return f"{low} to {_figure(band.high, band)}"


def _figure(ratio: Fraction, band: Band) -> str:
    """A ratio as the trade says it: '140 %', '1.4 %', '1.25 times'."""
    if not band.in_percent:
        return f"{float(ratio):.2f}".rstrip("0").rstrip(".") + " times"
    percent = float(ratio * 100)
    return f"{percent:.0f} %" if percent >= 10 else f"{percent:.2g} %"
