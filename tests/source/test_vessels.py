"""Tins in trade words."""

from fractions import Fraction

import pytest

from sitegen.kitchen.amounts import NOWHERE
from sitegen.kitchen.recipe import Tin
from sitegen.source.context import Context
from sitegen.source.misread import Misread
from sitegen.source.vessels import read_tin


def tin(text: str, context: Context) -> Tin:
    return read_tin(text, NOWHERE, context)


@pytest.mark.parametrize(
    ("text", "shape", "width_cm", "length_cm"),
    [
        ("20 cm round", "round", Fraction(20), Fraction(20)),
        ("20cm round tin", "round", Fraction(20), Fraction(20)),
        ("a 20 cm round cake tin", "round", Fraction(20), Fraction(20)),
        ("20 cm square", "square", Fraction(20), Fraction(20)),
        ("30 x 20 cm rectangle", "rectangle", Fraction(20), Fraction(30)),
        ("20 x 30 cm rectangle", "rectangle", Fraction(20), Fraction(30)),
        ("30 cm × 20 cm rectangle", "rectangle", Fraction(20), Fraction(30)),
        ("23 cm tart", "tart", Fraction(23), Fraction(23)),
        ("ring 22 cm", "ring", Fraction(22), Fraction(22)),
        ("8 in square", "square", Fraction("20.32"), Fraction("20.32")),
        ("8-inch round", "round", Fraction("20.32"), Fraction("20.32")),
        ('9½" round', "round", Fraction("24.13"), Fraction("24.13")),
        ("13 x 9 in rectangle", "rectangle", Fraction("22.86"), Fraction("33.02")),
        ("9 x 5 in loaf", "loaf", Fraction("12.7"), Fraction("22.86")),
    ],
)
def test_a_tin_by_shape_and_inside_measure(
    text: str, shape: str, width_cm: Fraction, length_cm: Fraction, context: Context
) -> None:
    read = tin(text, context)
    assert (read.shape, read.width_cm, read.length_cm) == (shape, width_cm, length_cm)
    assert (read.number, read.holes, read.name) == (1, 1, text)


@pytest.mark.parametrize(
    ("text", "number"),
    [
        ("two 20 cm round", 2),
        ("2 x 20 cm round", 2),
        ("three 18 cm sandwich tins", 3),
        ("two 900 g loaf tins", 2),
        ("two trays", 2),
        ("six 10 cm tart tins", 6),
        ("two 6-hole muffin tins", 2),
        ("20 cm round", 1),
        ("30 x 20 cm rectangle", 1),
    ],
)
def test_a_number_of_tins_stands_first(text: str, number: int, context: Context) -> None:
    assert tin(text, context).number == number


@pytest.mark.parametrize(
    ("text", "shape", "holes"),
    [
        ("muffin 12", "muffin", 12),
        ("muffin 6", "muffin", 6),
        ("muffin tin", "muffin", 12),
        ("6-hole muffin tin", "muffin", 6),
        ("12-cup muffin pan", "muffin", 12),
        ("mini-muffin 24", "mini-muffin", 24),
        ("bun", "bun", 12),
        ("two 12-hole muffin tins", "muffin", 12),
        ("6-hole 7 cm hemisphere", "hemisphere", 6),
        ("15-cavity 4 cm hemisphere mold", "hemisphere", 15),
        ("7 cm hemisphere", "hemisphere", 1),
        ("six 10 cm tartlets", "tart", 1),
    ],
)
def test_tins_with_holes(text: str, shape: str, holes: int, context: Context) -> None:
    read = tin(text, context)
    assert (read.shape, read.holes) == (shape, holes)


@pytest.mark.parametrize(
    ("text", "depth_cm"),
    [
        ("20 cm round, 7.5 cm deep", Fraction("7.5")),
        ("8 in round, 3 in deep", Fraction("7.62")),
        ("two 20 cm round, 4 cm deep", Fraction(4)),
    ],
)
def test_the_depth_stands_behind_a_comma(text: str, depth_cm: Fraction, context: Context) -> None:
    assert tin(text, context).depth_cm == depth_cm


def test_every_shape_of_the_table_has_its_usual_depth(context: Context) -> None:
    read = tin("20 cm round", context)
    assert read.depth_cm == context.tables.tins.shape("round").depth_cm


def test_half_a_ball_is_half_as_deep_as_it_is_wide(context: Context) -> None:
    assert tin("6-hole 7 cm hemisphere", context).depth_cm == Fraction("3.5")


@pytest.mark.parametrize(
    "text", ["30 x 20 cm deep tray", "30 x 20 cm roasting tin", "30 x 20 cm rimmed tray"]
)
def test_a_tray_with_a_rim_is_deep(text: str, context: Context) -> None:
    read = tin(text, context)
    assert (read.shape, read.depth_cm) == ("rimmed tray", Fraction("2.5"))


@pytest.mark.parametrize(
    ("text", "width_cm"), [("2 pint pudding basin", 16), ("20 cm basin", 20), ("four mini pudding basins", 8)]
)
def test_a_basin_is_known_by_its_pints_or_its_width(text: str, width_cm: int, context: Context) -> None:
    read = tin(text, context)
    assert (read.shape, read.width_cm) == ("pudding basin", width_cm)


@pytest.mark.parametrize("text", ["baking tray", "two baking trays", "40 x 30 cm tray"])
def test_a_tray_is_a_tin_of_its_own_kind(text: str, context: Context) -> None:
    assert tin(text, context).shape == "tray"


def test_every_tin_that_the_trade_knows_by_name_is_read(context: Context) -> None:
    rows = context.tables.tins.named
    assert [tin(row.name, context).shape for row in rows] == [row.tin.shape for row in rows]


@pytest.mark.parametrize(
    ("text", "way_out"),
    [
        ("muffle 12", "did you mean 'muffin'?"),
        ("20 cm ruond", "did you mean 'round'?"),
        ("round", "say how wide it is: '20 cm round'"),
        ("30 x 20 cm round", "say how wide it is: '20 cm round'"),
        ("30 x 20 cm square", "say how wide it is: '20 cm square'"),
        ("20 cm rectangle", "say both sides: '30 x 20 cm rectangle'"),
        ("20 cm loaf", "say both sides: '30 x 20 cm loaf'"),
        ("muffin 0", "say how many holes: 'muffin 12'"),
        ("7 cm muffin", "say how many holes: 'muffin 12'"),
        ("6-hole 20 cm round", "write `muffin 12`, `20 cm round`, `30 x 20 cm rectangle` or `900 g loaf`"),
        ("30 x 20 x 5 cm rectangle", "write the depth behind a comma: '30 x 20 cm rectangle, 5 cm deep'"),
        ("500 cm round", "say how wide it is: '20 cm round'"),
        ("20 cm", "write `muffin 12`, `20 cm round`, `30 x 20 cm rectangle` or `900 g loaf`"),
        ("a bucket", "write `muffin 12`, `20 cm round`, `30 x 20 cm rectangle` or `900 g loaf`"),
    ],
)
def test_a_tin_that_nobody_has_comes_with_a_way_out(text: str, way_out: str, context: Context) -> None:
    with pytest.raises(Misread) as fault:
        tin(text, context)
    assert (fault.value.code.code, fault.value.way_out) == ("tin", way_out)


def test_a_depth_of_nothing_is_marked(context: Context) -> None:
    text = "20 cm round, 0 cm deep"
    with pytest.raises(Misread) as fault:
        tin(text, context)
    assert fault.value.start == text.index("0 cm deep")
