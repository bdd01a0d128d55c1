"""An edition: a recipe in one region's words and measures, as a frozen value.

The rows stand in `data/editions.yaml`; `source/tables.py` reads them.
"""

from dataclasses import dataclass
from enum import StrEnum


class Measuring(StrEnum):
    """What an edition measures with first."""

    WEIGHT = "weight"
    CUPS = "cups"
    OUNCES = "ounces"


@dataclass(frozen=True)
class Edition:
    """One region's words and measures.

    key: 'british-metric', 'us-cups'. title: as readers see it. language: BCP 47 tag.
    region: 'uk', 'us', 'au' (names, spelling). measuring: grams, cups or ounces first.
    teaspoon, tablespoon, cup: names in `data/measures.txt` ('metric_teaspoon', 'us_cup', ...).
    oven_scales: scales in the order printed: 'fan', 'conventional', 'fahrenheit', 'gas', and
    'convection', the fan of an oven in degrees F.
    lengths: 'cm' or 'in'. egg_size: the size that answers the region's usual egg ('medium' in the
    UK, 'large' in the US), egg_region: whose grades. paper: the usual paper, 'a4' or 'letter'.
    has_sticks: butter is sold in sticks. has_ounces: a scale of the region shows ounces. cup_fill: the way
    that the region fills a cup with flour or cocoa, a method of the larder's densities.
    """

    key: str
    title: str
    language: str
    region: str
    measuring: Measuring
    teaspoon: str
    tablespoon: str
    cup: str
    oven_scales: tuple[str, ...]
    lengths: str
    egg_region: str
    egg_size: str
    paper: str
    has_sticks: bool = False
    has_ounces: bool = False
    cup_fill: str = "spooned"
