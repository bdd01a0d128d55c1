"""`data/spoken.yaml` -> the words that films are read with; the rows are ours, a wrong one raises at once."""

from collections.abc import Iterable, Iterator, Mapping
from fractions import Fraction
from functools import cache
from importlib.resources import files

import yaml

from sitegen.film.phrases import Phrases
from sitegen.film.stems import stem
from sitegen.film.vocabulary import SpokenWords
from sitegen.film.words import plain, tokens
from sitegen.source.file_texts import FileModel

_LOADER = yaml.CBaseLoader if yaml.__with_libyaml__ else yaml.BaseLoader


class SpokenFile(FileModel):
    """The table's keys; a word list each."""

    heard_as: dict[str, list[str]]
    may_be_heard_as: dict[str, list[str]]
    units: dict[str, list[str]]
    minutes: dict[str, list[str]]
    keeping_places: dict[str, list[str]]
    money: list[str]
    paying: list[str]
    celsius: list[str]
    fahrenheit: list[str]
    degrees: list[str]
    fan: list[str]
    conventional: list[str]
    sets_oven: list[str]
    between: list[str]
    about: list[str]
    repairs: list[str]
    weak_repairs: list[str]
    not_this: list[str]
    negations: list[str]
    warnings: list[str]
    yields: list[str]
    making: list[str]
    goes: list[str]
    more: list[str]
    rests: list[str]
    kept: list[str]
    has: list[str]
    limits: list[str]
    relatives: list[str]
    implements: list[str]
    asides: list[str]
    questions: list[str]
    advice: list[str]
    other_batches: list[str]
    ahead: list[str]
    back: list[str]
    listing: list[str]
    openers: list[str]
    strong_openers: list[str]
    no_openers: list[str]
    states: list[str]
    imperatives: list[str]
    led_to: list[str]
    beginners: list[str]
    behind_and: list[str]
    fresh_starts: list[str]
    stages: list[str]
    closed_conditions: list[str]
    called_so: list[str]
    subjects: list[str]
    strong_listing: list[str]
    leads_up: list[str]
    works: list[list[str]]
    adding: list[str]
    seldom_meant: list[str]
    weak_heads: list[str]
    little: list[str]


@cache
def spoken_words() -> SpokenWords:
    """The words of the project's own table."""
    text = (files("sitegen") / "data" / "spoken.yaml").read_text(encoding="utf-8")
    file = SpokenFile.model_validate(yaml.load(text, Loader=_LOADER))
    return SpokenWords(
        heard_as={stem(word): stem(plain(name)) for word, name in _turned(file.heard_as).items()},
        may_be={name: tuple(heard) for name, heard in file.may_be_heard_as.items()},
        units=_turned(file.units),
        keeping_places=_turned(file.keeping_places),
        minutes={word: Fraction(length) for word, length in _turned(file.minutes).items()},
        works={stem(word): number for number, word in _works(file.works) if " " not in word},
        work_phrases={
            tuple(map(stem, tokens(word))): number for number, word in _works(file.works) if " " in word
        },
        money=frozenset(file.money),
        paying=Phrases.of(file.paying),
        celsius=frozenset(file.celsius),
        fahrenheit=frozenset(file.fahrenheit),
        degrees=frozenset(file.degrees),
        fan=frozenset(file.fan),
        conventional=frozenset(file.conventional),
        sets_oven=Phrases.of(file.sets_oven),
        between=frozenset(file.between),
        little=_stems(file.little),
        seldom_meant=_stems(file.seldom_meant),
        weak_heads=_stems(file.weak_heads),
        about=Phrases.of(file.about),
        repairs=Phrases.of(file.repairs),
        weak_repairs=Phrases.of(file.weak_repairs),
        not_this=Phrases.of(file.not_this),
        negations=Phrases.of(file.negations),
        warnings=Phrases.of(file.warnings),
        yields=Phrases.of(file.yields),
        making=Phrases.of(file.making),
        goes=frozenset(file.goes),
        more=frozenset(file.more),
        rests=Phrases.of(file.rests),
        kept=Phrases.of(file.kept),
        has=Phrases.of(file.has),
        limits=Phrases.of(file.limits),
        relatives=Phrases.of(file.relatives),
        implements=_stems(file.implements),
        asides=Phrases.of([*file.asides, *(f"{phrase}'s" for phrase in file.asides)]),
        questions=Phrases.of(file.questions),
        advice=Phrases.of(file.advice),
        other_batches=Phrases.of(file.other_batches),
        ahead=Phrases.of(file.ahead),
        back=Phrases.of(file.back),
        listing=Phrases.of(file.listing),
        openers=Phrases.of(file.openers),
        strong_openers=Phrases.of(file.strong_openers),
        no_openers=Phrases.of(file.no_openers),
        states=Phrases.of(file.states),
        imperatives=frozenset(file.imperatives),
        led_to=frozenset(file.led_to),
        beginners=Phrases.of(file.beginners),
        stages=Phrases.of(file.stages),
        subjects=Phrases.of(file.subjects),
        behind_and=Phrases.of([*file.stages, *file.behind_and]),
        fresh_starts=Phrases.of(file.fresh_starts),
        closed_conditions=Phrases.of(file.closed_conditions),
        called_so=Phrases.of(file.called_so),
        strong_listing=Phrases.of(file.strong_listing),
        leads_up=frozenset(file.leads_up),
        adding=Phrases.of(file.adding, stem),
    )


def _works(rows: Iterable[list[str]]) -> Iterator[tuple[int, str]]:
    """Each word with the number of its work; where two works have it, the first."""
    numbered = [(number, plain(word)) for number, row in enumerate(rows) for word in row]
    return reversed(numbered)


def _turned(rows: Mapping[str, Iterable[str]]) -> Mapping[str, str]:
    return {plain(word): name for name, words in rows.items() for word in words}


def _stems(words: Iterable[str]) -> frozenset[str]:
    return frozenset(stem(plain(word)) for word in words)
