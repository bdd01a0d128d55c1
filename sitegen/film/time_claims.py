"""Times as said, held against the waits and the text of the steps about."""

from collections.abc import Iterator, Sequence
from fractions import Fraction

from sitegen.film.attribution import Attributed
from sitegen.film.figures import minutes_text
from sitegen.film.keeping_claims import keeping_place
from sitegen.film.marks import NOT_THIS_BAKE, About
from sitegen.film.repairs import is_warned
from sitegen.film.scene import Scene
from sitegen.film.spoken_amounts import Said, SpokenAmount
from sitegen.film.steps import FilmStep
from sitegen.film.values import Finding, FindingKind
from sitegen.film.written_times import FAR_WORK, LEAVE, WrittenTime, times_of_step
from sitegen.kitchen.amounts import Span
from sitegen.kitchen.method import Step

HANDS_ON_MOST = Fraction(2)
"""Work that is said to take so many times as long, or as short, is another work."""
FAR_FROM_BEGINNING = 45
"""Words behind the first of a step within which a time without any work is of it."""
UNLIKE, UNLIKE_IN_TEXT, FAR_OFF = Fraction(4), Fraction(2), Fraction(6, 5)
"""So many times as long is another time than the wait of a step, or one in its text; and so many, one that is
not said for about the written one."""
NEAR_WORK = 6
"""Words behind a time in which the work is said that it is of."""
FAR_LEAVE = 3
"""Words before a work in which it says that it is a wait: 'leave them to soak'."""
COLD, COOL = "cold", "cool"
"""What is cold was chilled, or cooled."""
NO_LENGTH = (("left",), ("ago",), ("old",), ("past",), ("away",))
LONG_UNIT_MIN = Fraction(600)
"""From here on, minutes, a unit is one of nights and days."""
_HOUR_MIN = Fraction(60)
FAR_FOLLOWING = 3
"""Words between a time and the beginning of the step that it is of."""
IN_ALL = Fraction(1, 10)
"""Of a sum of waits that is said as one."""


def time_findings(scene: Scene, said: Sequence[Attributed]) -> Iterator[Finding]:
    """Every time that the step in hand does not have."""
    times = [one.amount for one in said if one.amount.what is Said.TIME]
    for one in said:
        amount = one.amount
        if amount.what is not Said.TIME or keeping_place(scene, amount):
            continue
        about = scene.about_in_clause(amount.begin)
        is_ahead = bool(about & About.AHEAD) and not _is_told_at_once(scene, amount, frozenset())
        if about & (NOT_THIS_BAKE | About.BACK) or is_ahead or _is_limit(scene, amount):
            continue
        if is_warned(scene, amount):
            continue
        finding = _finding(scene, amount, times)
        if finding is not None:
            yield finding


def _finding(scene: Scene, amount: SpokenAmount, times: Sequence[SpokenAmount]) -> Finding | None:
    now, soon = scene.step_at(amount.begin), scene.next_step(amount.begin)
    if now is None:
        return None
    works = _works_said(scene, amount)
    own = [written for written in times_of_step(now, scene.known) if _may_be(scene, amount, written)]
    is_over = not any(
        written.works & works or (written.is_wait and not _is_said(scene, amount, written, times))
        for written in own
    )
    if is_over and not _is_hands_on(amount, now.step):
        own, now = list(_of_following(scene, amount, soon)), soon or now
    fitting = [written for written in own if written.works & works]
    fitting = fitting or [written for written in own if written.works]
    is_of_now = any(written.works & works for written in own)
    works_near = works - {scene.known.works[LEAVE]} if is_of_now else works
    steps = _neighbours(scene, now)
    others = [*steps[1:], *([soon] if soon is not None and soon not in steps else [])]
    allowed = own + [
        written
        for step in others
        for written in times_of_step(step, scene.known)
        if not is_of_now or written.works & works_near
    ]
    if any(_agrees(amount, written.span) for written in allowed) or _is_kept(scene, amount):
        return None
    is_named = any(written.works & works for written in own if not written.is_wait)
    if not is_named and _is_hands_on(amount, now.step):
        return None
    if not fitting or scene.words[amount.end : amount.end + 1] in NO_LENGTH:
        return None
    best = min(fitting, key=lambda written: _ratio(amount.span, written.span))
    is_same_work = bool(best.works & works)
    is_near = is_over or _is_told_at_once(scene, amount, works)
    unlike = UNLIKE if best.is_wait else UNLIKE_IN_TEXT
    if not is_same_work and not (is_near and _ratio(amount.span, best.span) <= unlike):
        return None
    is_doubted = scene.is_doubted(amount.begin)
    if is_doubted and any(
        scene.are_of_one_step(amount.begin, other.begin) and _agrees(other, best.span) for other in times
    ):
        return None
    component = scene.recipe.components[best.step.component]
    return Finding(
        kind=FindingKind.TIME,
        about=component.title,
        moment_s=scene.second(amount.begin),
        said=minutes_text(amount.span),
        written=minutes_text(best.span),
        certain=(is_same_work or (len(own) == 1 and not is_over))
        and (not amount.is_about or _ratio(amount.span, best.span) > FAR_OFF)
        and (amount.span.high > 1 or not amount.is_article)
        and not is_doubted,
        at=best.at,
    )


def _is_limit(scene: Scene, amount: SpokenAmount) -> bool:
    """'not before the half hour': until when or from when, and not how long."""
    begin = amount.begin - 1 if scene.words[amount.begin - 1 : amount.begin] == ("the",) else amount.begin
    return any(
        index + scene.known.limits.at(scene.words, index) >= begin
        for index in scene.known.limits.within(scene.words, begin - 2, begin)
    )


def _may_be(scene: Scene, amount: SpokenAmount, written: WrittenTime) -> bool:
    """Whether a time can be that one at all: who speaks of days means no hour in the oven."""
    unit_min = scene.known.minutes.get(scene.words[amount.end - 1], Fraction(1))
    return unit_min <= LONG_UNIT_MIN or written.span.high >= LONG_UNIT_MIN


def _is_kept(scene: Scene, amount: SpokenAmount) -> bool:
    """Whether a time is how long something keeps, as written."""
    kept = [place for component in scene.recipe.components for place in component.keeping]
    return any(_agrees(amount, place.hours.times(_HOUR_MIN)) for place in kept)


def _is_said(scene: Scene, amount: SpokenAmount, written: WrittenTime, times: Sequence[SpokenAmount]) -> bool:
    """Whether the written time was said before in its step, so that another figure is another time."""
    begun = scene.begun_at(amount.begin)
    return any(begun <= other.begin < amount.begin and _agrees(other, written.span) for other in times)


def _of_following(scene: Scene, amount: SpokenAmount, soon: FilmStep | None) -> Iterator[WrittenTime]:
    """The waits of the step that begins right behind a time: 'leave it thirty minutes, then lift it out'."""
    if soon is not None and scene.step_at(min(amount.end + FAR_FOLLOWING, len(scene.words) - 1)) is soon:
        yield from (
            written
            for written in times_of_step(soon, scene.known)
            if written.is_wait and _may_be(scene, amount, written)
        )


def _neighbours(scene: Scene, now: FilmStep) -> list[FilmStep]:
    """The step in hand, and those about it in its component."""
    steps = scene.recipe.components[now.component].steps
    return [
        FilmStep(now.component, number, steps[number])
        for number in (now.number, now.number - 1, now.number + 1)
        if 0 <= number < len(steps)
    ]


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


def _is_told_at_once(scene: Scene, amount: SpokenAmount, works: frozenset[int]) -> bool:
    """Whether a time without work of its own follows the beginning of its step."""
    since = amount.begin - scene.begun_at(amount.begin)
    return not works and since <= FAR_FROM_BEGINNING


def _works_said(scene: Scene, amount: SpokenAmount) -> frozenset[int]:
    """The work that a time is of: what is said last before it, and next behind it in its sentence."""
    sentence, known = scene.sentence_at(amount.begin), scene.known
    found: set[int] = set()
    for index in range(amount.begin - 1, max(sentence.begin, amount.begin - FAR_WORK) - 1, -1):
        works = known.works_at(scene.norms, index)
        if works:
            found |= works
            if scene.norms[index] == COLD:
                found.add(known.works[COOL])
            if LEAVE in scene.norms[max(0, index - FAR_LEAVE) : index]:
                found.add(known.works[LEAVE])
            break
    for index in range(amount.end, min(sentence.end, amount.end + NEAR_WORK)):
        found |= known.works_at(scene.norms, index)
    return frozenset(found)


def _ratio(said: Span, written: Span) -> Fraction:
    low, high = sorted((said.middle, written.middle))
    return high / low if low else Fraction(999)
