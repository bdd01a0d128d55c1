"""The best way through a row of things, each in one of a few states: dynamic programming (Viterbi)."""

from collections.abc import Callable, Sequence


def best_way(
    worths: Sequence[Sequence[float]], start: Sequence[float], turn: Callable[[int, int, int], float]
) -> list[int]:
    """The state of each thing, such that the sum of what they are worth less what turns cost is the largest.

    worths: thing -> state -> what it is worth there. start: what it costs to begin in a state.
    turn: before, here, index -> what it costs that the thing of that index changes the state.
    """
    if not worths:
        return []
    states = range(len(start))
    scores = [worth - cost for worth, cost in zip(worths[0], start, strict=True)]
    back: list[list[int]] = []
    for index, worth in enumerate(worths[1:], start=1):
        ways = [[scores[before] - turn(before, here, index) for before in states] for here in states]
        came = [max(states, key=way.__getitem__) for way in ways]
        scores = [ways[here][came[here]] + worth[here] for here in states]
        back.append(came)
    way = [max(states, key=scores.__getitem__)]
    for came in reversed(back):
        way.append(came[way[-1]])
    return way[::-1]
