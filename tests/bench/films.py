"""How far films are read truly: what is planted in them, what must be let pass, where steps begin.

    python -m tests.bench.films [FOLDER] [--told]

FOLDER: of films with their truth (tests/film/film_truth.py says how they are written); tests/film/films if
none is named. With --told, what was missed and what was made up stands below, each in a line.
"""

import sys
from collections.abc import Sequence
from pathlib import Path
from statistics import median

from tests.film.film_truth import Film, Score, films_in, score
from tests.film.reading_films import readings_of

FILMS = Path(__file__).parents[1] / "film" / "films"
HEAD = ("film", "length", "planted", "found", "decoys", "reported", "others", "certain", "misquoted")
STEPS = ("steps", "found", "median s", "worst s", "not shown, found")


def main(words: Sequence[str]) -> None:
    folders = [Path(word) for word in words if word != "--told"] or [FILMS]
    films = [film for folder in folders for film in films_in(folder)]
    readings = readings_of(films)
    scores = {film.name: score(film, readings[film.name]) for film in films}
    print(f"{HEAD[0]:22}" + "".join(f"{word:>10}" for word in HEAD[1:]) + "  ", *STEPS, sep="  ")
    for film in films:
        tell(film, scores[film.name])
    tell_all(films, scores)
    if "--told" in words:
        for film in films:
            tell_whole(film, scores[film.name])


def tell(film: Film, told: Score) -> None:
    """A line of the table."""
    false = [*told.others, *(finding for _, finding in told.decoyed)]
    length = f"{film.length_s // 60}:{film.length_s % 60:02}"
    counts: tuple[int, ...] = (
        len(film.planted),
        len(told.found),
        len(film.decoys),
        len(told.decoyed),
        len(told.others),
    )
    counts = (*counts, sum(each.certain for each in false), len(told.misquoted))
    row = "".join(f"{count:>10}" for count in counts)
    print(f"{film.name:22}{length:>10}{row}    {step_words(len(film.steps), [told])}")


def tell_all(films: Sequence[Film], scores: dict[str, Score]) -> None:
    """The line of all films together."""
    told = list(scores.values())
    false = [one for each in told for one in (*each.others, *(finding for _, finding in each.decoyed))]
    counts = (
        sum(len(film.planted) for film in films),
        sum(len(each.found) for each in told),
        sum(len(film.decoys) for film in films),
        sum(len(each.decoyed) for each in told),
        sum(len(each.others) for each in told),
        sum(each.certain for each in false),
        sum(len(each.misquoted) for each in told),
    )
    row = "".join(f"{count:>10}" for count in counts)
    print(f"{'all':22}{'':>10}{row}    {step_words(sum(len(film.steps) for film in films), told)}")


def step_words(steps: int, told: Sequence[Score]) -> str:
    """How many steps were found and how far off."""
    errors = [error for each in told for error in each.step_errors_s]
    far = f"{median(errors):8.1f} {max(errors):8}" if errors else f"{'-':>8} {'-':>8}"
    return f"{steps:5} {len(errors):6} {far} {sum(len(each.unshown) for each in told):9}"


def tell_whole(film: Film, told: Score) -> None:
    """What is wrong, each in a line."""
    print(f"\n{film.name}")
    for planted in told.missed:
        print(f"  missed    {_clock(planted.at_s)}  {planted.told}")
    for planted, finding in told.misquoted:
        print(f"  misquoted {_clock(planted.at_s)}  {planted.told}: {finding}")
    for decoy, finding in told.decoyed:
        print(f"  decoy     {_clock(finding.moment_s)}  {finding} ({decoy.because})")
    for finding in told.others:
        print(f"  made up   {_clock(finding.moment_s)}  {finding}")
    for step in told.steps_missed:
        print(f"  no step   {_clock(step.begins_s)}  {step.component} {step.step}")


def _clock(at_s: int | None) -> str:
    return "  -  " if at_s is None else f"{at_s // 60:2}:{at_s % 60:02}"


if __name__ == "__main__":
    main(sys.argv[1:])
