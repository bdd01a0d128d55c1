"""Times as said, held against the waits and the text of the steps about."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction

from sitegen.faults import Place
from sitegen.film.attribution import Attributed
from sitegen.film.evidence import FilmStep
from sitegen.film.figures import minutes_text
from sitegen.film.scene import Scene
from sitegen.film.sentences import NOT_THIS_BAKE, About
from sitegen.film.spoken_amounts import Said, SpokenAmount
from sitegen.film.spoken_numbers import number_at
from sitegen.film.values import Finding, FindingKind
from sitegen.film.words import tokens
from sitegen.kitchen.amounts import Span, single
from sitegen.kitchen.method import Step, Words

HANDS_ON_MOST = Fraction(2)
"""Work that is said to take so many times as long, or as short, is another work."""
FAR_FROM_BEGINNING = 45
"""Words behind the first of a step within which a time without any work is of it."""
UNLIKE, FAR_OFF = Fraction(4), Fraction(6, 5)
"""So many times as long is another time; and so many, one that is not said for about the written one."""
FAR_WORK, NEAR_WORK = 16, 6
"""Words before and behind a time in which the work is said that it is of."""
LEAVE = "leav"
"""The stem of the work that any wait is."""
NO_LENGTH = (("left",), ("ago",), ("old",), ("past",), ("away",))
IN_ALL = Fraction(1, 10)
"""Of a sum of waits that is said as one."""


@dataclass(frozen=True)
class _Written:
    span: Span
    works: frozenset[int]
    step: FilmStep
    at: Place
    is_wait: bool


def time_findings(scene: Scene, said: Sequence[Attributed]) -> Iterator[Finding]:
    """Every time that the step in hand does not have."""
    for one in said:
        amount = one.amount
        if amount.what is not Said.TIME:
            continue
        about = scene.about(amount.begin)
        if about & (NOT_THIS_BAKE | About.BACK | About.AHEAD):
            continue
        finding = _finding(scene, amount)
        if finding is not None:
            yield finding


def _finding(scene: Scene, amount: SpokenAmount) -> Finding | None:
    now, soon = scene.step_at(amount.begin), scene.next_step(amount.begin)
    if now is None:
        return None
    works = _works_said(scene, amount)
    own = list(_of_step(scene, now))
    fitting = [written for written in own if written.works & works] or own
    is_of_now = any(written.works & works for written in own)
    steps = _neighbours(scene, now)
    others = [*steps[1:], *([soon] if soon is not None and soon not in steps else [])]
    allowed = own + [
        written
        for step in others
        for written in _of_step(scene, step)
        if not is_of_now or written.works & works or not written.works
    ]
    if any(_agrees(amount, written.span) for written in allowed) or _is_hands_on(amount, now.step):
        return None
    if not fitting or scene.words[amount.end : amount.end + 1] in NO_LENGTH:
        return None
    best = min(fitting, key=lambda written: _ratio(amount.span, written.span))
    is_same_work = bool(best.works & works)
    if not is_same_work and not (best.is_wait and _is_told_at_once(scene, amount, works, best.span)):
        return None
    component = scene.recipe.components[best.step.component]
    return Finding(
        kind=FindingKind.TIME,
        about=component.title,
        moment_s=scene.second(amount.begin),
        said=minutes_text(amount.span),
        written=minutes_text(best.span),
        certain=(is_same_work or len(own) == 1)
        and (not amount.is_about or _ratio(amount.span, best.span) > FAR_OFF)
        and (amount.span.high > 1 or not amount.is_article),
        at=best.at,
    )


def _neighbours(scene: Scene, now: FilmStep) -> list[FilmStep]:
    """The step in hand, and those about it in its component."""
    steps = scene.recipe.components[now.component].steps
    return [
        FilmStep(now.component, number, steps[number])
        for number in (now.number, now.number - 1, now.number + 1)
        if 0 <= number < len(steps)
    ]


def _of_step(scene: Scene, film_step: FilmStep) -> Iterator[_Written]:
    """The times of a step: its wait, and those in its text, each with the works that it belongs to."""
    step, known = film_step.step, scene.known
    prose = tokens(" ".join(part.text if isinstance(part, Words) else "" for part in step.prose))
    norms = known.norms(prose)
    works = frozenset(known.works[word] for word in norms if word in known.works)
    if step.wait_min is not None:
        waits = [LEAVE]
        waits += ["bak"] if step.oven else []
        waits += ["fridg"] if step.heat == "fridge" else []
        own = works | {known.works[stem] for stem in waits if stem in known.works}
        yield _Written(step.wait_min, own, film_step, step.wait_at, True)
    index = 0
    while index < len(prose):
        number = number_at(prose, index)
        minutes = known.minutes.get(prose[number.end]) if number and number.end < len(prose) else None
        if number is not None and minutes is not None:
            span = Span(number.low, number.high).times(minutes)
            yield _Written(span, works, film_step, step.at, False)
        index = number.end if number is not None else index + 1
    for limit in (step.within_min, step.holds_min):
        if limit is not None:
            yield _Written(single(limit), frozenset(), film_step, step.at, False)


def _agrees(amount: SpokenAmount, written: Span) -> bool:
    """Whether a time as said lies within the written one; about right is as good."""
    slack = written.high * IN_ALL if amount.is_about else Fraction(0)
    return written.low - slack <= amount.span.low and amount.span.high <= written.high + slack


def _is_hands_on(amount: SpokenAmount, step: Step) -> bool:
    """Time at work is the whole of a step; any part of it may be said."""
    return (
        step.hands_on_min is not None
        and amount.span.high <= step.hands_on_min.high * HANDS_ON_MOST
        and (step.wait_min is None or amount.span.low >= step.hands_on_min.low / HANDS_ON_MOST)
        and amount.span.low <= step.hands_on_min.high
        and not _is_said_of_wait(amount, step)
    )


def _is_said_of_wait(amount: SpokenAmount, step: Step) -> bool:
    return step.wait_min is not None and amount.span.high * 4 > step.wait_min.low


def _is_told_at_once(scene: Scene, amount: SpokenAmount, works: frozenset[int], written: Span) -> bool:
    """Whether a time without work of its own follows the beginning of its step, and is at all like it."""
    since = amount.begin - scene.begun_at(amount.begin)
    return not works and since <= FAR_FROM_BEGINNING and _ratio(amount.span, written) <= UNLIKE


def _works_said(scene: Scene, amount: SpokenAmount) -> frozenset[int]:
    """The work that a time is of: what is said last before it, and next behind it in its sentence."""
    sentence, known = scene.sentence_at(amount.begin), scene.known
    found: set[int] = set()
    for index in range(amount.begin - 1, max(sentence.begin, amount.begin - FAR_WORK) - 1, -1):
        works = known.works_at(scene.norms, index)
        if works:
            found |= works
            break
    for index in range(amount.end, min(sentence.end, amount.end + NEAR_WORK)):
        found |= known.works_at(scene.norms, index)
    return frozenset(found)


def _ratio(said: Span, written: Span) -> Fraction:
    low, high = sorted((said.middle, written.middle))
    return high / low if low else Fraction(999)
