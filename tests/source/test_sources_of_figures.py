"""Every row of every table names where its figures come from."""

import csv
import re
from collections.abc import Iterator
from importlib.resources import files

import pytest

from sitegen.source.nodes import Data
from sitegen.source.reader import parse_document
from sitegen.source.tables import read_tables

DATA = files("sitegen") / "data"
SOURCES = read_tables()[0].sources
WITHOUT_FIGURES = {"note_words", "sources", "spelling", "spoken", "unit_names"}
"""Words only: there a digit is part of a name."""
TABLES = sorted(
    file.name.removesuffix(".yaml")
    for file in DATA.iterdir()
    if file.name.endswith(".yaml") and file.name.removesuffix(".yaml") not in WITHOUT_FIGURES
)
OTHER_FILES = {"measures.txt", "composition.csv"}
"""Read below, line by line."""
NAMES = {"us", "au", "also", "plural", "plurals", "names", "title", "called"}
"""Keys of the tables whose texts are words in print: '2% milk' holds no figure of ours."""
DIGIT = re.compile(r"\d")
FILLED = re.compile(r"(?P<column>\w+) (?P<source>.+)")
DEFINITIONS = [
    line
    for line in (DATA / "measures.txt").read_text(encoding="utf-8").splitlines()
    if "=" in line and "[" not in line
]
COMPOSITIONS = list(csv.DictReader((DATA / "composition.csv").read_text(encoding="utf-8").splitlines()))


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


def figures_without_a_source(data: Data, where: str = "") -> Iterator[str]:
    """Every figure that has no source beside it, nor beside a row that it stands in."""
    if isinstance(data, dict):
        if "source" in data:
            return
        for key, value in data.items():
            if key in NAMES and not isinstance(value, dict):
                continue
            if DIGIT.search(key) and not isinstance(value, (dict, list)):
                yield f"{where}/{key}"
            yield from figures_without_a_source(value, f"{where}/{key}")
    elif isinstance(data, list):
        for value in data:
            yield from figures_without_a_source(value, where)
    elif isinstance(data, str) and DIGIT.search(data):
        yield f"{where}: {data}"


def without_sources(data: Data) -> Data:
    """The same table as somebody would have it who forgot every source."""
    if isinstance(data, dict):
        return {key: without_sources(value) for key, value in data.items() if key != "source"}
    return [without_sources(value) for value in data] if isinstance(data, list) else data


def test_no_file_of_figures_is_forgotten() -> None:
    files_of_figures = {file.name for file in DATA.iterdir() if file.is_file()}
    assert files_of_figures == {f"{name}.yaml" for name in (*TABLES, *WITHOUT_FIGURES)} | OTHER_FILES


@pytest.mark.parametrize("name", TABLES)
def test_every_figure_has_a_source(name: str) -> None:
    assert list(figures_without_a_source(data_of(name))) == []


@pytest.mark.parametrize("name", [name for name in TABLES if name not in ("diets", "sections", "cautions")])
def test_a_table_whose_sources_are_forgotten_is_found_out(name: str) -> None:
    """All but those that are words: which ingredients a claim is about, where a shop keeps them."""
    assert list(figures_without_a_source(without_sources(data_of(name))))


@pytest.mark.parametrize("name", TABLES)
def test_a_source_stands_in_the_table_of_sources(name: str) -> None:
    found = list(sources_in(data_of(name)))
    assert found
    assert {source for source in found if source.split(" ")[0] not in SOURCES} == set()


@pytest.mark.parametrize("name", ["editions", "cautions", "diets", "sections"])
def test_every_row_has_a_source(name: str) -> None:
    rows = data_of(name)
    assert isinstance(rows, dict)
    assert [key for key, row in rows.items() if not list(sources_in(row))] == []


@pytest.mark.parametrize("row", COMPOSITIONS, ids=lambda row: row["ingredient"])
def test_a_composition_and_every_cell_that_was_filled_from_elsewhere_has_a_source(
    row: dict[str, str],
) -> None:
    """'not stated' leaves a nitrogen factor at 6.25, the law's own; 'by difference' is worked out."""
    filled = [FILLED.fullmatch(text) for text in row["filled"].split("; ") if text]
    sources = [row["source"], *(found["source"] for found in filled if found)]
    assert None not in filled
    named = [source for source in sources if source not in ("not stated", "by difference")]
    assert [source for source in named if source.split(" ")[0] not in SOURCES] == []


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
