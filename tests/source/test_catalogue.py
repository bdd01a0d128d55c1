"""Every code of the catalogue is provoked by its own bad example, and by none of the good ones."""

import ast
import shutil
from collections.abc import Callable, Iterator
from importlib import import_module
from pathlib import Path
from pkgutil import walk_packages

import pytest
from PIL import Image

import sitegen.source
from sitegen import limits
from sitegen.faults import FaultCode, Severity
from sitegen.source import note_codes
from sitegen.source.catalogue import CodeTwice, catalogue
from sitegen.source.library import read_content

SAMPLE = Path(__file__).parent / "sample_school"
CUPCAKES = "content/recipes/blackcurrant-and-bay-cupcakes"
FILES = {
    "recipe.yaml": f"{CUPCAKES}/recipe.yaml",
    "site.yaml": "content/site.yaml",
    "larder.yaml": "content/larder.yaml",
    "prices.yaml": "content/prices.yaml",
    "order.yaml": "content/orders/saturday.yaml",
    "tutorial.md": "content/tutorials/whisking.md",
}
ROWS = tuple(catalogue().values())
SHOWN = tuple(row for row in ROWS if row.good)


@pytest.fixture
def school(tmp_path: Path) -> Path:
    return Path(shutil.copytree(SAMPLE, tmp_path / "school"))


def codes(school: Path) -> set[str]:
    return {fault.code for fault in read_content(school).faults}


def test_the_sample_school_has_no_fault_at_all() -> None:
    assert read_content(SAMPLE).faults == ()


@pytest.mark.parametrize("row", SHOWN, ids=lambda row: row.code)
def test_the_bad_example_provokes_the_code(row: FaultCode, school: Path) -> None:
    path = school / FILES[row.file]
    text = path.read_text(encoding="utf-8")
    assert row.good in text
    path.write_text(text.replace(row.good, row.bad, 1), encoding="utf-8")
    assert row.code in codes(school)


def _append(name: str, body: bytes) -> Callable[[Path], object]:
    return lambda school: (school / name).write_bytes((school / name).read_bytes() + body)


def _picture(width: int, height: int) -> Callable[[Path], object]:
    return lambda school: Image.new("L", (width, height)).save(school / CUPCAKES / "whisk.jpg")


def _in_file(name: str, *changes: tuple[str, str]) -> Callable[[Path], object]:
    def change(school: Path) -> None:
        text = (school / name).read_text(encoding="utf-8")
        for old, new in changes:
            assert old in text
            text = text.replace(old, new, 1)
        (school / name).write_text(text, encoding="utf-8")

    return change


def _moving_picture(school: Path) -> None:
    frames = [Image.new("RGB", (700, 500), shade) for shade in ("white", "plum")]
    frames[0].save(school / CUPCAKES / "whisk.jpg", "WEBP", save_all=True, append_images=frames[1:])


def _cut_picture(school: Path) -> None:
    Image.new("RGB", (700, 500)).save(school / CUPCAKES / "whisk.jpg", "PNG")
    whole = (school / CUPCAKES / "whisk.jpg").read_bytes()
    (school / CUPCAKES / "whisk.jpg").write_bytes(whole[:-20])


FILM = (
    "whisk two eggs and a hundred and twenty grams of buttermilk and a hundred of sunflower oil until smooth",
    "now sift in a hundred and fifty grams of plain flour and a hundred and sixty of caster sugar",
    "and half a teaspoon of bicarbonate of soda and stop when no streaks remain",
    "then fill each case two thirds full",
    "and bake at a hundred and fifty fan for twenty two to twenty four minutes until the tops spring back",
    "cool them on a rack for an hour until no warmth is left",
    "now the custard bring a hundred and sixty grams of whole milk to a simmer",
    "then whisk two egg yolks and half the caster sugar and thirteen grams of cornflour into it and boil",
    "and chill that for two hours",
    "next beat eighty grams of blackcurrant puree into the base buttercream a spoonful at a time",
    "now core each cake of the sponge and fill it with custard and pipe the buttercream on top",
)


def _film(*changes: tuple[str, str]) -> Callable[[Path], object]:
    """Captions that talk through the sample recipe, with other words in places."""

    def write(school: Path) -> None:
        text = "\n".join(FILM)
        for old, new in changes:
            assert old in text
            text = text.replace(old, new, 1)
        cues = (
            f"00:{number // 6:02}:{number % 6}0.000 --> 00:{number // 6:02}:{number % 6}7.000\n{line}\n"
            for number, line in enumerate(text.split("\n"))
        )
        body = "\n".join(("WEBVTT\n", *cues))
        (school / CUPCAKES / "captions.vtt").write_text(body, encoding="utf-8")

    return write


RECIPE = f"{CUPCAKES}/recipe.yaml"
BASE = "content/recipes/base-buttercream/recipe.yaml"
WITHOUT_TEXT: dict[str, Callable[[Path], object]] = {
    "no-content": lambda school: shutil.rmtree(school / "content"),
    "no-recipes": lambda school: shutil.rmtree(school / "content" / "recipes"),
    "no-file": lambda school: (school / "content" / "site.yaml").unlink(),
    "bad-slug": lambda school: (school / CUPCAKES).rename(school / "content" / "recipes" / "Bay Buns"),
    "stray-file": lambda school: (school / "content" / "recipes" / "notes.txt").touch(),
    "unreadable-file": lambda school: ((school / RECIPE).unlink(), (school / RECIPE).mkdir()),
    "file-too-large": _append(RECIPE, b"#" * 1_000_001),
    "line-too-long": _append(RECIPE, b"# " + b"-" * limits.LINE_CHARACTERS),
    "more-faults": _append(RECIPE, b"".join(b"key-%d: a\n" % n for n in range(limits.SHAPE_FAULTS + 1))),
    "not-text": _append(RECIPE, b"\0"),
    "not-utf-8": _append(RECIPE, b"# caf\xe9\n"),
    "too-many-values": _append(RECIPE, b"more:\n" + b"- a\n" * 100_000),
    "empty-page": lambda school: (school / FILES["tutorial.md"]).write_text(
        "---\ntitle: a\nsummary: b\n---\n"
    ),
    "ambiguous-reference": _in_file(
        RECIPE,
        ("- 100 g sunflower oil or rapeseed oil", "- 50 g sunflower oil\n      - 50 g olive oil"),
        ("{sunflower oil}", "{oil}"),
    ),
    "base-circle": _in_file(
        BASE, ("- 5 egg whites", "- 5 egg whites\n      - 10 g of Blackcurrant and bay cupcakes")
    ),
    "no-weight": _in_file(
        BASE,
        ("makes: 900 g", "makes: 2 bowls"),
        ("- 5 egg whites", "- 5 egg whites\n      - 2 vanilla extract"),
    ),
    "declared-twice": lambda school: (
        _append(RECIPE, b"larder:\n  rose syrup: {roles: [sugar]}\n")(school),
        _append(BASE, b"larder:\n  rose syrup: {allergens: {eu: [sulphites], us: []}}\n")(school),
    ),
    "unused-component": _in_file(
        RECIPE,
        ("  Assembly:\n", "  Syrup:\n    method:\n      - text: Boil.\n        wait: 1 min\n  Assembly:\n"),
    ),
    "pieces-and-dough": _in_file(
        RECIPE,
        ("makes: 12 cupcakes", "makes: 12 cupcakes of 900 g dough"),
        ("kind: oil cake", "kind: soft roll"),
    ),
    "preferment-unusual": _in_file(
        RECIPE,
        ("kind: oil cake", "kind: hearth loaf"),
        ("- 150 g plain flour\n", "- 150 g plain flour\n      - 200 g sourdough starter\n"),
    ),
    "film-says-otherwise": _film(
        ("a hundred and fifty grams of plain flour", "two hundred grams of plain flour")
    ),
    "film-leaves-out": _film(("and half a teaspoon of bicarbonate of soda and stop", "and stop")),
    "film-adds": _film(("and boil", "and boil and add a teaspoon of cinnamon")),
    "film-apart": _film(
        *((line, f"on walk {number} we saw heron {number} by the river") for number, line in enumerate(FILM))
    ),
    "said-otherwise-idle": lambda school: (
        _film()(school),
        _append(RECIPE, b"said-otherwise: [{about: plain flour, because: A cup.}]\n")(school),
    ),
    "picture-too-large": _picture(20_000, 2),
    "picture-small": _picture(300, 200),
    "picture-moves": _moving_picture,
    "picture-cut-short": _cut_picture,
}
OF_NOTES = {row.code for row in note_codes.CODES}
"""Told of notes that no school holds: tests/notes/ provokes each."""
NEVER_PROVOKED = {"yaml"} | OF_NOTES
"""What the parser may say one day and we don't know yet: test_reader.py gives it such a wording."""


def test_a_film_that_says_what_is_written_has_no_fault(school: Path) -> None:
    _film()(school)
    assert codes(school) == set()


@pytest.mark.parametrize("code", WITHOUT_TEXT)
def test_a_code_that_no_text_can_show_is_provoked_by_a_broken_school(code: str, school: Path) -> None:
    WITHOUT_TEXT[code](school)
    assert code in codes(school)


def test_every_code_has_an_example_or_a_broken_school() -> None:
    assert {row.code for row in ROWS} - {row.code for row in SHOWN} == WITHOUT_TEXT.keys() | NEVER_PROVOKED


def test_every_row_says_what_it_means_and_how_to_mend_it() -> None:
    assert [row.code for row in ROWS if not (row.meaning.endswith(".") and row.cure.endswith("."))] == []


def test_the_catalogue_takes_the_rows_of_other_rooms_and_no_code_twice() -> None:
    row = FaultCode("of-the-sheet", Severity.ADVICE, "Meaning.", "Cure.")
    assert catalogue([row])["of-the-sheet"] is row
    with pytest.raises(CodeTwice):
        catalogue([row, FaultCode("of-the-sheet", Severity.ERROR, "Another.", "Cure.")])


def test_every_code_that_a_module_defines_is_catalogued() -> None:
    names = [found.name for found in walk_packages(sitegen.source.__path__, "sitegen.source.")]
    defined = {
        value.code
        for name in names
        for value in vars(import_module(name)).values()
        if isinstance(value, FaultCode)
    }
    assert defined <= catalogue().keys()


def test_no_fault_is_made_past_the_catalogue() -> None:
    assert list(_faults_made_by_hand()) == []


def _faults_made_by_hand() -> Iterator[str]:
    for path in Path(sitegen.source.__file__).parent.rglob("*.py"):
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
            if isinstance(node, ast.Call) and isinstance(node.func, ast.Name) and node.func.id == "Fault":
                yield f"{path.name}:{node.lineno}"
