"""Balance as a baker hears of it: a school is written, read, and asked."""

from pathlib import Path
from textwrap import dedent, indent

import pytest

from sitegen.faults import Fault, Severity
from sitegen.source.library import read_content

SITE = """
name: Tansy Row
tagline: Baking taught one careful step at a time
address: https://tansyrow.example/
subscribers-address: https://tansyrow.example/table/
language: en-GB
written-in: british-metric
egg-size: medium
editions: [british-metric]
papers: [a4]
time-zone: Europe/London
"""


def asked(root: Path, makes: str, **components: str) -> list[Fault]:
    """What is said of a recipe. components: title -> its keys and, each on a line, its ingredients."""
    folder = root / "content" / "recipes" / "buns"
    folder.mkdir(parents=True)
    (root / "content" / "site.yaml").write_text(SITE, encoding="utf-8")
    text = f"title: Buns\nsummary: A bun.\nmakes: {makes}\ncomponents:\n"
    for title, body in components.items():
        step = f"    method:\n      - text: Make {title.lower()}.\n        hands-on: 5 min\n"
        text += f"  {title}:\n{indent(dedent(body).strip(), '    ')}\n{step}"
    (folder / "recipe.yaml").write_text(text, encoding="utf-8")
    own = ("balance-unusual", "leavening-unusual", "acid-missing", "salt-unusual", "yeast-unusual")
    doughs = ("preferment-unusual", "pieces-and-dough")
    return [fault for fault in read_content(root).faults if fault.code in (*own, *doughs)]


def sentences(faults: list[Fault]) -> list[str]:
    return [fault.sentence for fault in faults]


def test_a_creamed_cake_with_too_much_sugar(tmp_path: Path) -> None:
    sponge = """
        kind: creamed cake
        ingredients:
          - 200 g plain flour
          - 300 g caster sugar
          - 200 g unsalted butter
          - 200 g egg
    """
    (fault,) = asked(tmp_path, "12 buns", Sponge=sponge)
    assert fault.sentence == (
        "in 'Sponge' the weight of sugar is 150 % of that of the flour; 60 to 110 % is usual for "
        "'creamed cake' (trade schools' guidelines)"
    )
    assert (fault.severity, fault.place.line) == (Severity.ADVICE, 5)


@pytest.mark.parametrize(
    ("ingredients", "sentence"),
    [
        (
            "- 200 g plain flour\n- 30 g baking powder",
            "in 'Sponge' the weight of baking powder is 15 % of that of the flour, more than can be meant; "
            "up to 6 % is usual (common practice)",
        ),
        (
            "- 200 g plain flour\n- 2 g bicarbonate of soda",
            "in 'Sponge' the weight of bicarbonate is 1 % of that of the flour; up to 0.5 % is usual "
            "where nothing sour is listed (common practice)",
        ),
    ],
)
def test_leavening_is_judged_without_a_kind(tmp_path: Path, ingredients: str, sentence: str) -> None:
    body = "ingredients:\n" + indent(ingredients, "  ")
    assert sentences(asked(tmp_path, "12 buns", Sponge=body)) == [sentence]


def test_a_ratio_is_said_as_one(tmp_path: Path) -> None:
    ganache = "kind: truffle ganache\ningredients:\n  - 300 g dark chocolate\n  - 240 g double cream"
    assert sentences(asked(tmp_path, "12 buns", Ganache=ganache)) == [
        "in 'Ganache' the weight of chocolate is 1.25 times that of the liquid; 2 times is usual for "
        "'truffle ganache' (common practice)"
    ]


def test_what_is_not_there_at_all_is_said_to_be_missing(tmp_path: Path) -> None:
    choux = "kind: choux\ningredients:\n  - 180 g water\n  - 80 g unsalted butter\n  - 100 g plain flour"
    assert sentences(asked(tmp_path, "12 buns", Choux=choux)) == [
        "there is no egg in 'Choux': usually 1.3 to 2 times that of the flour for 'choux' (common practice)"
    ]


DOUGH = """
    kind: tin loaf
    ingredients:
      - all of Poolish
      - {flour} g strong white flour
      - {water} g water
      - 10 g fine salt
      - 4 g instant yeast
"""
POOLISH = """
    kind: poolish
    ingredients:
      - {grams} g strong white flour
      - {grams} g water
      - 0.3 g instant yeast
"""


def loaf(prefermented: int) -> dict[str, str]:
    """A dough of 500 g flour at 64 %, so much of the flour in a poolish."""
    rest = DOUGH.format(flour=500 - prefermented, water=320 - prefermented)
    return {"Poolish": POOLISH.format(grams=prefermented), "Dough": rest}


@pytest.mark.parametrize(("prefermented", "asks"), [(150, False), (290, True)])
def test_more_than_half_of_the_flour_in_a_preferment_is_asked_about(
    tmp_path: Path, prefermented: int, asks: bool
) -> None:
    told = sentences(asked(tmp_path, "1 loaf", **loaf(prefermented)))
    sentence = (
        "in 'Dough' the weight of pre-fermented flour is 58 % of that of the flour; 10 to 40 % is usual "
        "(common practice)"
    )
    assert told == [sentence] * asks


@pytest.mark.parametrize(
    ("makes", "sentence"),
    [
        ("9 rolls of 90 g dough", None),
        ("9 rolls of 83 g baked", None),
        ("10 rolls of 90 g", "10 rolls take 900 g of dough, and 'Dough' weighs 834 g"),
        ("10 rolls of 90 g baked", "10 rolls take 1000 g of dough, and 'Dough' weighs 834 g"),
        ("6 rolls of 90 g", "6 rolls take 540 g of dough, and 'Dough' weighs 834 g"),
        ("10 rolls", None),
    ],
)
def test_pieces_are_held_against_the_dough(tmp_path: Path, makes: str, sentence: str | None) -> None:
    """834 g of dough; a tin loaf loses 10 %, so 83 g baked are 92 g of dough."""
    told = asked(tmp_path, makes, **loaf(150))
    assert sentences(told) == ([sentence] if sentence else [])


def test_the_way_out_of_too_little_dough_is_a_weight_of_flour(tmp_path: Path) -> None:
    """900 g of dough at 167 %, and 2 % that sticks: 550 g of flour."""
    (fault,) = asked(tmp_path, "10 rolls of 90 g dough", **loaf(150))
    assert fault.way_out == "it comes out with 550 g of flour in all, the rest in proportion"
