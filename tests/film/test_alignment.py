"""The dynamic programme, held against every alignment that there is."""

from collections.abc import Iterator, Sequence

from hypothesis import given
from hypothesis import strategies as st

from sitegen.film.alignment import NOWHERE, align

Matrix = list[list[float]]


def every_alignment(
    sentences: int, steps: int, first: int = 0, step: int = 0
) -> Iterator[list[tuple[int, int, int]]]:
    """All ways to give some of the steps a stretch each, in their order and side by side."""
    if step == steps:
        yield []
        return
    yield from every_alignment(sentences, steps, first, step + 1)
    for begin in range(first, sentences):
        for end in range(begin + 1, sentences + 1):
            for rest in every_alignment(sentences, steps, end, step + 1):
                yield [(step, begin, end), *rest]


def scored(matches: Matrix, entries: Matrix, stretches: Sequence[tuple[int, int, int]]) -> float:
    return sum(
        entries[begin][step] + sum(matches[at][step] for at in range(begin, end))
        for step, begin, end in stretches
    )


def matrices(sentences: int, steps: int, values: st.SearchStrategy[float]) -> st.SearchStrategy[Matrix]:
    row = st.lists(values, min_size=steps, max_size=steps)
    return st.lists(row, min_size=sentences, max_size=sentences)


SHAPES = st.tuples(st.integers(0, 4), st.integers(0, 3))
SCORES = st.integers(-3, 4).map(float)
ENTRIES = st.one_of(SCORES, st.just(NOWHERE))


@given(st.data(), SHAPES)
def test_no_alignment_scores_more(data: st.DataObject, shape: tuple[int, int]) -> None:
    matches = data.draw(matrices(*shape, SCORES))
    entries = data.draw(matrices(*shape, ENTRIES))
    found = align(matches, entries, shape[1])
    best = max(scored(matches, entries, each) for each in every_alignment(*shape))
    assert found.score == best


@given(st.data(), SHAPES)
def test_the_stretches_are_those_that_were_scored(data: st.DataObject, shape: tuple[int, int]) -> None:
    matches = data.draw(matrices(*shape, SCORES))
    entries = data.draw(matrices(*shape, ENTRIES))
    found = align(matches, entries, shape[1])
    stretches = [(each.step, each.begin, each.end) for each in found.stretches]
    assert stretches in list(every_alignment(*shape))
    assert scored(matches, entries, stretches) == found.score == sum(each.score for each in found.stretches)


def test_a_step_that_is_not_spoken_of_gets_nothing() -> None:
    found = align([[3.0, -1.0, 0.0], [-1.0, -1.0, 4.0]], [[0.0] * 3] * 2, 3)
    assert [(each.step, each.begin, each.end) for each in found.stretches] == [(0, 0, 1), (2, 1, 2)]
