"""A paragraph of a method -> steps: what the words say of oven, time and cue goes into the keys of a step."""

import re
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace

from sitegen.kitchen.amounts import Span
from sitegen.kitchen.ovens import OvenTable
from sitegen.notes.figures import NoFigure, minutes_text
from sitegen.notes.heats_in_notes import Heats, heats_in
from sitegen.notes.sentences import WAITS, clauses, kind_of, sentences
from sitegen.notes.times_in_notes import TimeSaid, times_in
from sitegen.notes.verbs import verb_kinds, words_of
from sitegen.notes.word_table import note_words
from sitegen.source.bare_amounts import bare_amount_in
from sitegen.source.durations import read_span_of_minutes

_MOST_AT_THE_HOB_MIN = 15
"""A longer time at the hob is waited for, not worked."""
_LONGEST_SENTENCE = 2_000
_MOST_TOGETHER = 2
"""Sentences of a long paragraph that make one step."""
_UNTIL = re.compile(r"[,;]?\s+(?:or )?(?:until|till|'?til)\s+(?P<cue>[^.;!?]+?)\s*[.!]?$", re.IGNORECASE)
_NEXT_DEED = re.compile(r"(?:,|\band\b|\bthen\b)\s*(?:and |then )*(?P<word>[a-z'-]+)", re.IGNORECASE)
_LONGEST_CUE = 140
_LOOSE = re.compile(r"\s+([,.;:!?])")
_AT = re.compile(r"[,]?\s*\b(?:at|in a|in an|on|in)\s*(?:the )?(?:a )?$", re.IGNORECASE)
_OVEN_BEHIND = re.compile(r"^\s*(?:in (?:the|a|an) |)?(?:pre-?heated )?oven\b", re.IGNORECASE)
_PREHEATED = re.compile(
    r"\b(?:pre-?heat(?:ed)?|heat|turn on|set)\b.*\boven\b|\boven\b.*\b(?:to|on|at)\b", re.IGNORECASE
)
_HEATS = {"chill": "fridge", "freeze": "freezer", "hob": "hob"}


@dataclass(frozen=True)
class NotedStep:
    """text: the words that stay. The rest are keys of a step, '' for none. line: of the notes, from 1."""

    text: str
    line: int
    oven: str = ""
    hands_on: str = ""
    wait: str = ""
    until: str = ""
    heat: str = ""


class Ovens:
    """Remembers the oven that was set last, through all steps of the notes."""

    def __init__(self, table: OvenTable, first: Heats | None) -> None:
        self.table = table
        self.now = first.oven(table) if first else ""

    def heard(self, heats: Heats) -> str:
        self.now = heats.oven(self.table)
        return self.now


def steps_in(text: str, line: int, ovens: Ovens) -> Iterator[NotedStep]:
    """The steps of a paragraph or of one numbered line."""
    read = [step for sentence in sentences(text) for step in _steps_of(sentence, line, ovens)]
    together = _MOST_TOGETHER if len(read) > 3 else len(read)
    yield from _joined(read, together)


def _steps_of(sentence: str, line: int, ovens: Ovens) -> Iterator[NotedStep]:
    """One step a clause. What is longer than any sentence a baker writes stays as it is."""
    if len(sentence) > _LONGEST_SENTENCE:
        yield NotedStep(sentence, line)
        return
    for clause in clauses(sentence):
        if clause:
            yield _read(clause, line, ovens)


def _joined(steps: Sequence[NotedStep], together: int) -> Iterator[NotedStep]:
    """Neighbours as one step, while none of them has a key that the other has, and no wait is passed."""
    current: NotedStep | None = None
    count = 0
    for step in steps:
        if current is not None and count < together and _can_join(current, step):
            current = _join(current, step)
            count += 1
            continue
        if current is not None:
            yield current
        current, count = step, 1
    if current is not None:
        yield current


def _can_join(one: NotedStep, two: NotedStep) -> bool:
    is_done = one.wait or one.oven or one.until
    clash = (one.hands_on and two.hands_on) or (one.heat and two.heat and one.heat != two.heat)
    only_words = not (two.wait or two.oven or two.until or two.hands_on or two.heat)
    return not clash and (not is_done or (only_words and not one.wait))


def _join(one: NotedStep, two: NotedStep) -> NotedStep:
    return NotedStep(
        f"{one.text} {two.text}",
        one.line,
        oven=one.oven or two.oven,
        hands_on=one.hands_on or two.hands_on,
        wait=one.wait or two.wait,
        until=one.until or two.until,
        heat=one.heat or two.heat,
    )


def _read(clause: str, line: int, ovens: Ovens) -> NotedStep:
    heats = [one for one in heats_in(clause) if _is_of_the_oven(clause, one)]
    for one in heats:
        ovens.heard(one)
    step = NotedStep(clause, line)
    cut: list[tuple[int, int]] = []
    spans = [_with_at(clause, one) for one in heats if not _PREHEATED.search(clause[: one.start])]
    for time in times_in(clause):
        is_bare = _stands_without(clause, time, spans)
        step, is_taken = _timed(step, time, kind_of(time, clause), ovens)
        cut += [(time.lead, time.end)] if is_taken and is_bare else []
    step = _waits_without_time(step, clause, ovens)
    cut += spans if step.oven else []
    text = _without(clause, cut)
    text, cue = _cue(text)
    if step.oven and text.casefold().strip(" .,;:") in ("", "oven", "in oven", "in the oven"):
        text = "Bake"
    return replace(step, text=_sentence(text), until=cue)


def _is_of_the_oven(clause: str, heats: Heats) -> bool:
    """Whether a heat is the oven's: by its kind or mark, or by the words about it."""
    words = words_of(clause)
    is_told = any(one.is_oven for one in heats.all)
    return is_told or "oven" in words or any(verb_kinds().get(word) == "bake" for word in words)


def _timed(step: NotedStep, time: TimeSaid, kind: str, ovens: Ovens) -> tuple[NotedStep, bool]:
    """The step with one of its times in the key where it belongs, and whether that is its wait.

    A second time of the same key stays in words.
    """
    if not kind:
        return step, False
    minutes = read_span_of_minutes(time.text).high
    is_wait = kind in WAITS or (kind == "hob" and minutes > _MOST_AT_THE_HOB_MIN)
    before = step.wait if is_wait else step.hands_on
    if before and (is_wait or kind == "hob"):
        return step, False
    said = _added(before, time.text) if before else time.text
    oven = ovens.now if kind == "bake" else ""
    heat = step.heat or _HEATS.get(kind, "")
    if is_wait:
        return replace(step, wait=time.text, heat=heat, oven=step.oven or oven), True
    return replace(step, hands_on=said, heat=heat, oven=step.oven or oven), False


def _added(one: str, more: str) -> str:
    """'4 min slow, 6 min fast' are ten minutes of work; the first alone where the sum cannot be written."""
    first, second = read_span_of_minutes(one), read_span_of_minutes(more)
    try:
        return minutes_text(Span(first.low + second.low, first.high + second.high))
    except NoFigure:
        return one


def _waits_without_time(step: NotedStep, clause: str, ovens: Ovens) -> NotedStep:
    """'Bake until golden': the oven is known all the same."""
    first = next(iter(words_of(clause)), "")
    if not step.oven and verb_kinds().get(first) == "bake" and not step.wait:
        return replace(step, oven=ovens.now)
    return step


def _stands_without(clause: str, time: TimeSaid, heats: Sequence[tuple[int, int]]) -> bool:
    """Whether the sentence stands without the time: 'bake for 20 minutes', 'bake at 160 C fan, 20 minutes'.

    heats: where the words of an oven begin and end, which are cut out too.
    """
    if "for" in clause[time.lead : time.start].casefold().split():
        return True
    before = words_of(_without(clause[: time.lead], [one for one in heats if one[1] <= time.lead]))
    while before and before[-1] in note_words().verb_leads:
        before.pop()
    return bool(before) and (before[-1] in verb_kinds() or before[0] == "oven")


def _with_at(clause: str, heats: Heats) -> tuple[int, int]:
    """The words of a heat, with 'at' before and 'oven' behind."""
    if clause[: heats.start].rstrip().endswith(" to"):
        return heats.start, heats.start
    before = _AT.search(clause[: heats.start])
    behind = _OVEN_BEHIND.match(clause[heats.end :])
    begin = before.start() if before else heats.start
    return begin, heats.end + (behind.end() if behind else 0)


def _without(text: str, cut: Iterable[tuple[int, int]]) -> str:
    for begin, end in sorted(cut, reverse=True):
        text = f"{text[:begin].rstrip(' (')} {text[end:].lstrip(' )')}"
    text = _LOOSE.sub(r"\1", " ".join(text.split()))
    return re.sub(r"([,;:])(?:\s*[,;:])+", r"\1", text).strip(" ,;:")


def _cue(text: str) -> tuple[str, str]:
    """The text without 'until golden' at its end, and the cue; '' where a deed or an amount stands in it."""
    found = _UNTIL.search(text)
    if not found or len(found["cue"]) > _LONGEST_CUE or not text[: found.start()].strip():
        return text, ""
    cue = found["cue"].strip(" ,")
    if bare_amount_in(cue) or next(heats_in(cue), None) or next(times_in(cue), None):
        return text, ""
    for deed in _NEXT_DEED.finditer(cue):
        if deed["word"].casefold() in verb_kinds():
            return text, ""
    return text[: found.start()].strip(" ,;"), cue


def _sentence(text: str) -> str:
    """With a capital and a full stop."""
    text = text.strip()
    if not text:
        return ""
    capital = text[:1].upper() + text[1:]
    return capital if capital.endswith((".", "!", "?", ":", ")")) else f"{capital}."
