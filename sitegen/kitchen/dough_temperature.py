"""The temperature of the water for a dough: the rule of three, or of four with a preferment.

A habit that holds within about 2 C near 60 to 70 % hydration: what it gives is aimed for.
"""

from collections.abc import Mapping
from dataclasses import dataclass, field
from fractions import Fraction

from sitegen.kitchen.recipe import DoughAim

ICE_MELTS_LIKE_C = 80
"""Melting ice takes 80 kcal a kg: as much as cooling its water by 80 C."""


@dataclass(frozen=True)
class DoughTemperatures:
    """The row of `data/doughs.yaml`, degrees C.

    friction: mixer -> degrees that mixing adds. room: what kitchen and flour are taken to have. rooms: those
    that a sheet prints. tap: cold water. hottest, coldest: what water is given between.
    """

    friction: Mapping[str, Fraction] = field(hash=False)
    room: Fraction
    rooms: tuple[Fraction, ...]
    tap: Fraction
    hottest: Fraction
    coldest: Fraction


@dataclass(frozen=True)
class WaterAdvice:
    """Water for a dough. degrees: C, within what is given; too_hot: the rule asked for more than that.

    ice: how much of the water, as a share, is weighed in as ice so that tap water comes down to it; 0 else.
    """

    degrees: Fraction
    too_hot: bool = False
    ice: Fraction = Fraction(0)


def water_temperature(
    wanted: Fraction, room: Fraction, flour: Fraction, friction: Fraction, *others: Fraction
) -> Fraction:
    """What the water must have, degrees C, exact.

    wanted: of the mixed dough. friction: degrees that mixing adds. others: what each other large part has
    (preferment, soaker), degrees C.
    Formula: (3 + others) x wanted - room - flour - others - friction.
    Source: published notes of baking schools; common practice.
    """
    parts = 3 + len(others)
    return parts * wanted - room - flour - sum(others, Fraction(0)) - friction


def measured_friction(
    dough: Fraction, room: Fraction, flour: Fraction, water: Fraction, *others: Fraction
) -> Fraction:
    """What mixing added, degrees C, exact, from a dough that was measured: kept for that mixer and batch.

    dough: after mixing. others: preferment, soaker. Formula: the same, solved for friction.
    """
    return water_temperature(dough, room, flour, Fraction(0), *others) - water


def ice_share(tap: Fraction, wanted: Fraction) -> Fraction:
    """How much of the water is weighed in as ice, as a share, exact.

    tap, wanted: degrees C, tap the warmer. Formula: (tap - wanted) / (tap + 80).
    """
    return (tap - wanted) / (tap + ICE_MELTS_LIKE_C)


def water_for(aim: DoughAim, room: Fraction, has_preferment: bool, table: DoughTemperatures) -> WaterAdvice:
    """The water for a dough in a kitchen of that temperature.

    room: degrees C; flour and preferment have the same where the baker says nothing of them.
    Source: water over 43 C is never given, as yeast suffers (common practice).
    """
    flour = room if aim.flour is None else aim.flour
    others = ((room if aim.preferment is None else aim.preferment),) if has_preferment else ()
    degrees = water_temperature(aim.temperature, room, flour, friction_of(aim, table), *others)
    if degrees > table.hottest:
        return WaterAdvice(table.hottest, too_hot=True)
    if degrees < table.coldest:
        return WaterAdvice(table.coldest, ice=ice_share(table.tap, degrees))
    return WaterAdvice(degrees)


def friction_of(aim: DoughAim, table: DoughTemperatures) -> Fraction:
    """What mixing adds: as the baker measured it, else as by hand, the least of all."""
    if aim.friction is not None:
        return aim.friction
    return min(table.friction.values())
