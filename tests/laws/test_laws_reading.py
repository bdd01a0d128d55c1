"""Whatever stands in a school's files, every fault is told in its place, and a recipe without one can be set.

The files are those of the sample and the demo after a few slips of the pen, and trees of YAML and ingredient
lines drawn from the words that they know. The oracle is that of the coverage-guided fuzzing in `tests/fuzz/`.
"""

from functools import cache
from pathlib import Path
from random import Random
from tempfile import mkdtemp

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.fuzz.mutations import FIGURES, WORDS, Pen, keys, seeds
from tests.fuzz.oracle import assert_files_hold, assert_recipe_holds
from tests.fuzz.proving_school import FILES, ProvingSchool


@cache
def school() -> ProvingSchool:
    return ProvingSchool(Path(mkdtemp()))


def try_file(kind: str, text: str) -> None:
    school().write(kind, text.encode("utf-8", errors="surrogatepass"))
    try:
        assert_recipe_holds(school()) if kind == "recipe" else assert_files_hold(school())
    finally:
        school().mend(kind)


@settings(max_examples=40)
@given(st.integers(0, 2**32), st.integers(1, 4))
def test_a_recipe_after_a_few_slips(seed: int, slips: int) -> None:
    chance = Random(seed)
    try_file("recipe", Pen(chance, "recipe").slipped(chance.choice(seeds("recipe")), slips))


@pytest.mark.parametrize("kind", sorted(FILES.keys() - {"recipe"}))
@settings(max_examples=5)
@given(seed=st.integers(0, 2**32))
def test_any_other_file_after_a_few_slips(kind: str, seed: int) -> None:
    chance = Random(seed)
    try_file(kind, Pen(chance, kind).slipped(chance.choice(seeds(kind)), chance.randint(1, 4)))


TEXTS = st.sampled_from([*WORDS, *FIGURES, "Mix.", "0:00 The start"]) | st.text(max_size=12)
TREES = st.recursive(
    TEXTS,
    lambda inner: st.lists(inner, max_size=4) | st.dictionaries(st.sampled_from(keys()), inner, max_size=4),
    max_leaves=25,
)


def flow(tree: object) -> str:
    """A tree as YAML in brackets, every text in double quotes."""
    if isinstance(tree, dict):
        return "{" + ", ".join(f"{key}: {flow(value)}" for key, value in tree.items()) + "}"
    if isinstance(tree, list):
        return "[" + ", ".join(map(flow, tree)) + "]"
    return '"' + str(tree).encode("unicode_escape").decode().replace('"', '\\"') + '"'


@settings(max_examples=40)
@given(st.dictionaries(st.sampled_from(keys()), TREES, max_size=8))
def test_a_tree_of_keys_that_are_known_and_values_that_are_not(tree: dict[str, object]) -> None:
    try_file("recipe", "\n".join(f"{key}: {flow(value)}" for key, value in tree.items()))


LINES = st.lists(st.sampled_from([*WORDS, *FIGURES, "of", "or", ",", "(", ")", "for dusting"]), max_size=6)
PROSE = st.lists(st.sampled_from([*WORDS, *FIGURES, "{", "}", "{half of", "{the rest of", "."]), max_size=9)


@settings(max_examples=40)
@given(st.lists(LINES, max_size=4), PROSE)
def test_ingredient_lines_and_sentences_of_any_words(lines: list[list[str]], prose: list[str]) -> None:
    rows = "".join(f"      - {flow(' '.join(words))}\n" for words in lines)
    ingredients = f"    ingredients:\n{rows}" if rows else ""
    step = f"    method:\n      - text: {flow(' '.join(prose) or 'Mix.')}\n"
    head = "title: A bake\nsummary: Of any words.\nmakes: 12 buns\n"
    try_file("recipe", f"{head}components:\n  Dough:\n{ingredients}{step}")
