"""Films with the truth about them: what is planted in the captions, what must be let pass, where steps begin.

A film is two files of one name: the captions (`.vtt` or `.srt`) and the truth (`.yaml`):

    recipe: lemon-meringue-bites    # its folder in `content/recipes/`
    captions: content/recipes/...   # only where they lie elsewhere in the project
    length: '7:53'
    steps:                          # the sentence with which each step begins; a step not shown is left out
      - {component: Lemon curd, step: 1, at: '3:56'}
    planted:                        # said otherwise than written; 'about': phrases, any one of them will do
      - {kind: amount, at: '1:00', about: icing sugar, said: 50 g, written: 40 g}
    decoys:                         # figures of something else: to be let pass
      - {at: '1:07', because: 'a repair: 115 g, sorry, 95 g'}
"""

import re
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from pathlib import Path

import yaml

from sitegen.film.values import FilmReading, Finding, FindingKind, StepMoment

PROJECT = Path(__file__).parents[2]

NEAR_S = 8
"""A finding is of what is said no further off than this, seconds."""

_COUNTED = {FindingKind.COUNT: FindingKind.AMOUNT}
"""Three eggs are a count and an amount: either name will do."""


@dataclass(frozen=True)
class Planted:
    """A mismatch that a film has.

    at_s: None for what is never said. about: phrases, each a set of words. said, written: '' where unwritten.
    """

    kind: FindingKind
    at_s: int | None
    about: tuple[frozenset[str], ...]
    said: str
    written: str
    told: str


@dataclass(frozen=True)
class Decoy:
    """Something said that is no mismatch, and why."""

    at_s: int
    because: str


@dataclass(frozen=True)
class Film:
    """A film and the truth about it. slug: of the recipe. length_s: seconds."""

    name: str
    captions: Path
    slug: str
    length_s: int
    steps: tuple[StepMoment, ...]
    planted: tuple[Planted, ...]
    decoys: tuple[Decoy, ...]


@dataclass(frozen=True)
class Score:
    """How far a reading of a film is true.

    misquoted: found with other figures than those that are said and written.
    decoyed: decoys that were reported, each with its finding. others: what else is reported and not planted.
    step_errors_s: seconds off, of the steps that were found. unshown: steps found that the film leaves out.
    """

    found: tuple[Planted, ...]
    missed: tuple[Planted, ...]
    misquoted: tuple[tuple[Planted, Finding], ...]
    decoyed: tuple[tuple[Decoy, Finding], ...]
    others: tuple[Finding, ...]
    step_errors_s: tuple[int, ...]
    steps_missed: tuple[StepMoment, ...]
    unshown: tuple[StepMoment, ...]


def films_in(folder: Path) -> list[Film]:
    """The films of a folder, by name."""
    return [film_of(truth) for truth in sorted(folder.glob("*.yaml"))]


def film_of(truth: Path) -> Film:
    """One film. Raises KeyError for a truth that lacks something, StopIteration for one without captions."""
    told = yaml.safe_load(truth.read_text(encoding="utf-8"))
    beside = (truth.with_suffix(kind) for kind in (".vtt", ".srt"))
    captions = PROJECT / told["captions"] if "captions" in told else next(filter(Path.exists, beside))
    steps = tuple(StepMoment(row["component"], row["step"], seconds(row["at"])) for row in told["steps"])
    decoys = tuple(Decoy(seconds(row["at"]), row["because"]) for row in told["decoys"])
    planted = tuple(_planted(row) for row in told["planted"])
    return Film(truth.stem, captions, told["recipe"], seconds(told["length"]), steps, planted, decoys)


def seconds(moment: str) -> int:
    """'6:42' -> 402."""
    minutes, rest = moment.split(":")
    return int(minutes) * 60 + int(rest)


def score(film: Film, reading: FilmReading) -> Score:
    """What a reading found, missed and made up."""
    findings, moments = reading.findings, reading.moments
    found = tuple(each for each in film.planted if any(is_of(finding, each) for finding in findings))
    loose = [each for each in findings if not any(is_of(each, planted) for planted in film.planted)]
    nearest = [(_decoy_near(film, finding), finding) for finding in loose]
    begins = {(each.component, each.step): each.begins_s for each in moments}
    shown = {(each.component, each.step): each for each in film.steps}
    return Score(
        found=found,
        misquoted=tuple(_misquoted(film, findings)),
        missed=tuple(each for each in film.planted if each not in found),
        decoyed=tuple((decoy, finding) for decoy, finding in nearest if decoy is not None),
        others=tuple(finding for decoy, finding in nearest if decoy is None),
        step_errors_s=tuple(abs(begins[key] - each.begins_s) for key, each in shown.items() if key in begins),
        steps_missed=tuple(each for key, each in shown.items() if key not in begins),
        unshown=tuple(each for each in moments if (each.component, each.step) not in shown),
    )


def is_of(finding: Finding, planted: Planted) -> bool:
    """Whether a finding is the planted mismatch: of its kind, about it, and where it is said."""
    if _counted(finding.kind) != _counted(planted.kind):
        return False
    about = words(finding.about)
    if not any(phrase <= about or (about and about <= phrase) for phrase in planted.about):
        return False
    if planted.at_s is None or finding.moment_s is None:
        return planted.at_s is finding.moment_s
    return abs(finding.moment_s - planted.at_s) <= NEAR_S


def figures(text: str) -> list[str]:
    """The figures of an amount: '1 1/2 tsp' -> ['1', '1/2'], '10-12 min' -> ['10', '12']."""
    return re.findall(r"[0-9]+(?:[./][0-9]+)?", text)


def words(text: str) -> frozenset[str]:
    """The words of a phrase, without the s of a plural."""
    return frozenset(word.lower().removesuffix("s") for word in text.split())


def _planted(row: Mapping[str, str]) -> Planted:
    at_s = seconds(row["at"]) if "at" in row else None
    about = tuple(words(phrase) for phrase in row["about"].split(","))
    said, written = row.get("said", ""), row.get("written", "")
    told = f"{row['kind']} {row['about']}: {said or 'never said'}"
    return Planted(FindingKind(row["kind"]), at_s, about, said, written, told)


def _misquoted(film: Film, findings: Iterable[Finding]) -> Iterator[tuple[Planted, Finding]]:
    """Planted mismatches that no finding tells with both figures, each with one that is of it."""
    for planted in film.planted:
        told = [each for each in findings if is_of(each, planted)]
        if told and not any(_quotes(each, planted) for each in told):
            yield planted, told[0]


def _quotes(finding: Finding, planted: Planted) -> bool:
    return all(
        not truth or figures(truth) == figures(told)
        for truth, told in ((planted.said, finding.said), (planted.written, finding.written))
    )


def _counted(kind: FindingKind) -> FindingKind:
    return _COUNTED.get(kind, kind)


def _decoy_near(film: Film, finding: Finding) -> Decoy | None:
    """The decoy beside which a finding is said."""
    if finding.moment_s is None:
        return None
    moment = finding.moment_s
    near = [each for each in film.decoys if abs(each.at_s - moment) <= NEAR_S]
    return min(near, key=lambda each: abs(each.at_s - moment), default=None)
