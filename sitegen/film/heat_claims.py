"""Temperatures as said, held against ovens and exact temperatures of the steps about."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction

from sitegen.faults import Place
from sitegen.film.attribution import Attributed
from sitegen.film.figures import heat_text, oven_text
from sitegen.film.marks import NOT_THIS_BAKE, About
from sitegen.film.repairs import is_warned
from sitegen.film.scene import Scene
from sitegen.film.spoken_amounts import Said, SpokenAmount
from sitegen.film.steps import FilmStep, steps_of
from sitegen.film.values import Finding, FindingKind
from sitegen.kitchen.amounts import Amount
from sitegen.kitchen.method import OvenSetting, Step
from sitegen.kitchen.ovens import OvenOutOfRange, read_oven
from sitegen.kitchen.temperatures import celsius_of

OVEN = "oven"
SET = {("set", "to"), ("set", "at"), ("is", "at"), ("it's", "at")}
"""Before a bare figure of an oven that was named further back."""
OVEN_WORDS = frozenset({"oven", "bake", "preheat", "fan", "shelf", "conventional"})
NEAR_OVEN_WORDS = 10
LOWEST_OVEN_C = 90
NEAR_C = Fraction(3)
"""Degrees that rounding from Fahrenheit may move an exact temperature."""


@dataclass(frozen=True)
class _Written:
    """A temperature of the recipe. readings: (degrees, scale, fan) in all scales. about: what it is of."""

    readings: frozenset[tuple[Fraction, str, bool | None]]
    text: str
    about: str
    is_oven: bool
    at: Place


def heat_findings(scene: Scene, said: Sequence[Attributed]) -> Iterator[Finding]:
    """Every temperature that the steps about do not have."""
    for one in said:
        amount = one.amount
        is_bare_oven = amount.what is Said.BARE and _is_bare_oven(scene, one)
        if amount.what is not Said.TEMPERATURE and not is_bare_oven:
            continue
        if (
            scene.about_in_clause(amount.begin) & (NOT_THIS_BAKE | About.BACK)
            or amount.is_part
            or is_warned(scene, amount)
        ):
            continue
        finding = _finding(scene, amount, sure=not is_bare_oven and not scene.is_doubted(amount.begin))
        if finding is not None:
            yield finding


def _is_bare_oven(scene: Scene, one: Attributed) -> bool:
    """'the oven at one sixty': a bare figure beside an oven, of nothing that is named."""
    amount = one.amount
    if not 100 <= amount.span.low <= 500 or amount.span.low % 5 or one.mention is not None or amount.is_part:
        return False
    about = scene.words[max(0, amount.begin - 6) : amount.end + 4]
    return OVEN in about or tuple(scene.words[max(0, amount.begin - 2) : amount.begin]) in SET


def _finding(scene: Scene, amount: SpokenAmount, sure: bool) -> Finding | None:
    here = [written for step in scene.steps_about(amount.begin) for written in _of_step(scene, step)]
    later = [written for step in steps_of(scene.recipe) for written in _of_step(scene, step)]
    is_oven = _is_of_oven(scene, amount) or (bool(here) and all(written.is_oven for written in here))
    if any(_agrees(amount, written) for written in here):
        return None
    is_ahead = is_oven and _is_set_ahead(scene, amount)
    alike = [written for written in here if written.is_oven == is_oven and not is_ahead]
    elsewhere = [written for written in later if written.is_oven == is_oven or not alike]
    is_elsewhere = any(_agrees(amount, written) for written in later)
    pool = alike or _following(scene, amount, is_oven) or elsewhere
    if not pool or (is_elsewhere and not alike) or not _may_be(amount, is_oven, bool(alike)):
        return None
    best = min(pool, key=lambda written: _apart(amount, written))
    return Finding(
        kind=FindingKind.TEMPERATURE,
        about=best.about,
        moment_s=scene.second(amount.begin),
        said=heat_text(amount.span, amount.unit or "celsius", amount.fan),
        written=best.text,
        certain=sure and not is_elsewhere and not amount.is_about and bool(alike or amount.fan is not None),
        at=best.at,
    )


def _may_be(amount: SpokenAmount, is_oven: bool, is_near: bool) -> bool:
    """Whether an oven is ever so hot; other heat counts where a step about has any: a kitchen has some."""
    return amount.unit == "gas" or amount.span.low >= LOWEST_OVEN_C if is_oven else is_near


def _is_set_ahead(scene: Scene, amount: SpokenAmount) -> bool:
    """'turn the oven down to a hundred and twenty': for what is baked next."""
    begin = max(0, amount.begin - NEAR_OVEN_WORDS)
    return scene.known.sets_oven.any_in(scene.words, begin, amount.end + NEAR_OVEN_WORDS // 2)


def _is_of_oven(scene: Scene, amount: SpokenAmount) -> bool:
    if amount.fan is not None or amount.unit == "gas":
        return True
    begin = max(0, amount.begin - NEAR_OVEN_WORDS)
    return bool(OVEN_WORDS.intersection(scene.words[begin : amount.end + NEAR_OVEN_WORDS]))


def _following(scene: Scene, amount: SpokenAmount, is_oven: bool) -> list[_Written]:
    """The temperatures of the next step of the recipe that has any: an oven is heated ahead of its step."""
    now = scene.step_at(amount.begin)
    steps = steps_of(scene.recipe)
    place = steps.index(now) + 1 if now in steps else 0
    for step in steps[place:]:
        found = [written for written in _of_step(scene, step) if written.is_oven == is_oven]
        if found:
            return found
    return []


def _of_step(scene: Scene, film_step: FilmStep) -> Iterator[_Written]:
    step, title = film_step.step, scene.recipe.components[film_step.component].title
    for oven, at in _ovens(step):
        yield _Written(_readings(scene, oven), oven_text(oven), OVEN, True, at)
    for reference in step.references:
        if reference.amount is not None and reference.amount.unit in ("celsius", "fahrenheit"):
            yield _exact(reference.amount, title, reference.at)


def _ovens(step: Step) -> Iterator[tuple[OvenSetting, Place]]:
    if step.oven is not None:
        yield step.oven, step.oven_at
    for reference in step.references:
        if reference.oven is not None:
            yield reference.oven, reference.at


def _readings(scene: Scene, oven: OvenSetting) -> frozenset[tuple[Fraction, str, bool | None]]:
    own = (oven.degrees, oven.scale, None if oven.scale == "gas" else oven.fan)
    try:
        read = read_oven(oven, scene.tables.ovens)
    except OvenOutOfRange:
        return frozenset({own})
    found = {
        own,
        (read.fan_c, "celsius", True),
        (read.conventional_c, "celsius", False),
        (read.fahrenheit, "fahrenheit", False),
        (read.fahrenheit_fan, "fahrenheit", True),
    }
    if read.gas:
        found.add((Fraction(read.gas), "gas", None))
    return frozenset(found)


def _exact(amount: Amount, title: str, at: Place) -> _Written:
    degrees = amount.span.middle
    celsius = degrees if amount.unit == "celsius" else celsius_of(degrees)
    readings = {(amount.span.low, amount.unit, None), (amount.span.high, amount.unit, None)}
    readings |= {(celsius, "celsius", None), (celsius * 9 / 5 + 32, "fahrenheit", None)}
    return _Written(frozenset(readings), heat_text(amount.span, amount.unit, None), title, False, at)


def _agrees(amount: SpokenAmount, written: _Written) -> bool:
    """Whether what is said is the written heat in any scale; the kind of oven counts where it is said."""
    if not written.is_oven and amount.fan is not None:
        return False
    for degrees, scale, fan in written.readings:
        if amount.unit not in ("", scale) or (scale == "gas") != (amount.unit == "gas"):
            continue
        if written.is_oven and amount.fan is not None and fan is not None and amount.fan != fan:
            continue
        near = NEAR_C if not written.is_oven and scale == "fahrenheit" else Fraction(0)
        if amount.span.low - near <= degrees <= amount.span.high + near:
            return True
    return False


def _apart(amount: SpokenAmount, written: _Written) -> Fraction:
    alike = [degrees for degrees, scale, _ in written.readings if amount.unit in ("", scale)]
    return min((abs(degrees - amount.span.low) for degrees in alike), default=Fraction(999))
