"""Advice that a recipe has settled: left out of the proof, and told of where it settles nothing."""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from difflib import get_close_matches

from sitegen.faults import Fault, FaultCode, Severity
from sitegen.kitchen.recipe import Recipe, SettledAdvice

CANNOT_SETTLE = FaultCode(
    "cannot-settle",
    Severity.ERROR,
    "Only advice can be settled: an error stands until it is mended, and what is no code settles nothing.",
    "Write the code of the advice as the proof prints it, or take the line out of `settled`.",
    file="",
)
NOTHING_TO_SETTLE = FaultCode(
    "nothing-to-settle",
    Severity.ADVICE,
    "A recipe settles advice that is not given any more; left there, it would hide the next such slip.",
    "Take the line out of `settled`.",
    file="",
)
CODES = (CANNOT_SETTLE, NOTHING_TO_SETTLE)


@dataclass(frozen=True)
class Settled:
    """faults: less the advice that the recipes settle, and what is wrong with the settling itself.

    idle: what settles nothing. It is to be told only once no error is left in the school: behind one,
    advice may not have been looked for.
    """

    faults: tuple[Fault, ...]
    idle: tuple[Fault, ...]


def without_settled(
    faults: Sequence[Fault], recipes: Iterable[Recipe], known: Mapping[str, FaultCode]
) -> Settled:
    """The faults of some recipes, sorted by what the recipes say of them.

    known: code -> its row, all of them. Advice belongs to the recipe in whose file it stands.
    """
    settled = {(recipe.at.file, one.code): one for recipe in recipes for one in recipe.settled}
    sound = {key for key in settled if _is_advice(key[1], known)}
    told = {(fault.place.file, fault.code) for fault in faults}
    kept = (fault for fault in faults if (fault.place.file, fault.code) not in sound)
    idle = (settled[key] for key in settled if key in sound - told)
    return Settled((*kept, *_unsound(settled.values(), known)), tuple(map(_idle, idle)))


def _is_advice(code: str, known: Mapping[str, FaultCode]) -> bool:
    return code in known and known[code].severity is Severity.ADVICE


def _idle(one: SettledAdvice) -> Fault:
    sentence = f"'{one.code}' is settled here, and nothing in this recipe calls for it"
    return NOTHING_TO_SETTLE.fault(one.at, sentence)


def _unsound(settled: Iterable[SettledAdvice], known: Mapping[str, FaultCode]) -> Iterator[Fault]:
    advice = [code for code in known if _is_advice(code, known)]
    for one in settled:
        if one.code not in known:
            near = get_close_matches(one.code, advice, n=1, cutoff=0.5)
            way_out = f"did you mean '{near[0]}'?" if near else ""
            yield CANNOT_SETTLE.fault(one.at, f"'{one.code}' is the code of no advice", way_out)
        elif one.code not in advice:
            sentence = f"'{one.code}' is an error, and stays one until it is mended"
            yield CANNOT_SETTLE.fault(one.at, sentence, "mend it, and take this line out")
