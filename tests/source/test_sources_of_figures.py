"""Every row of every table names where its figures come from."""

import re
from collections.abc import Iterator
from importlib.resources import files

import pytest

from sitegen.source.nodes import Data
from sitegen.source.reader import parse_document
from sitegen.source.tables import read_tables

DATA = files("sitegen") / "data"
SOURCES = read_tables()[0].sources
TABLES = [
    "larder",
    "eggs",
    "ovens",
    "tins",
    "editions",
    "cautions",
    "substitutions",
    "diets",
    "balances",
    "doughs",
    "batters",
    "sugar_stages",
    "keeping",
]
DEFINITIONS = [
    line
    for line in (DATA / "measures.txt").read_text(encoding="utf-8").splitlines()
    if "=" in line and "[" not in line
]


def data_of(name: str) -> Data:
    document, _ = parse_document((DATA / f"{name}.yaml").read_text(encoding="utf-8"), name)
    assert document is not None
    return document.data


def sources_in(data: Data) -> Iterator[str]:
    if isinstance(data, dict):
        for key, value in data.items():
            if key == "source" and isinstance(value, str):
                yield value
            else:
                yield from sources_in(value)
    elif isinstance(data, list):
        for value in data:
            yield from sources_in(value)


@pytest.mark.parametrize("name", TABLES)
def test_a_source_stands_in_the_table_of_sources(name: str) -> None:
    found = list(sources_in(data_of(name)))
    assert found
    assert {source for source in found if source.split(" ")[0] not in SOURCES} == set()


@pytest.mark.parametrize("name", ["editions", "cautions", "diets"])
def test_every_row_has_a_source(name: str) -> None:
    rows = data_of(name)
    assert isinstance(rows, dict)
    assert [key for key, row in rows.items() if not list(sources_in(row))] == []


def test_every_part_of_the_table_of_ovens_has_a_source() -> None:
    parts = data_of("ovens")
    assert isinstance(parts, dict)
    assert [key for key, part in parts.items() if len(list(sources_in(part))) != 1] == []


def test_every_figure_of_the_larder_has_a_source() -> None:
    without = [
        row.key
        for row in read_tables()[0].larder.ingredients
        for figure in (*row.densities, *row.pieces)
        if figure.source.split(" ")[0] not in SOURCES
    ]
    assert without == []


def test_a_row_of_usda_names_its_food() -> None:
    """The NDB number has five figures."""
    found = [source for source in sources_in(data_of("larder")) if source.startswith("usda-sr28")]
    assert [source for source in found if not re.fullmatch(r"usda-sr28 \d{5}", source)] == []


def test_four_fifths_of_the_densities_are_published() -> None:
    sources = [
        row.source for ingredient in read_tables()[0].larder.ingredients for row in ingredient.densities
    ]
    published = [source for source in sources if source.split(" ")[0] in ("usda-sr28", "gnu-units")]
    assert len(published) >= len(sources) * 4 / 5


@pytest.mark.parametrize("definition", DEFINITIONS, ids=lambda line: line.split(" ")[0])
def test_a_measure_has_a_source_at_the_end_of_its_line(definition: str) -> None:
    _, _, comment = definition.partition("#")
    assert comment.split()[:1] != []
    assert comment.split()[0] in SOURCES


def test_every_source_is_words_for_a_reader() -> None:
    assert [key for key, words in SOURCES.items() if len(words) < 20] == []


@pytest.mark.parametrize(
    ("name", "part"),
    [("nutrition", "roundings"), ("nutrition", "labels"), ("bake_losses", "losses")],
)
def test_every_row_on_nutrition_has_a_source(name: str, part: str) -> None:
    tables = data_of(name)
    assert isinstance(tables, dict)
    rows = tables[part]
    assert isinstance(rows, dict)
    named = {key: [source.split(" ")[0] for source in sources_in(row)] for key, row in rows.items()}
    assert {key for key, sources in named.items() if len(sources) != 1 or sources[0] not in SOURCES} == set()


@pytest.mark.parametrize(("name", "part"), [("nutrition", "energy"), ("bake_losses", "alcohol-left")])
def test_the_factors_on_nutrition_have_a_source(name: str, part: str) -> None:
    tables = data_of(name)
    assert isinstance(tables, dict)
    (source,) = sources_in(tables[part])
    assert source in SOURCES
