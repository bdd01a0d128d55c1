"""The table of keeping against published advice, and against the bands that the trade's handbooks share."""

from fractions import Fraction

import pytest

from sitegen.kitchen.amounts import Span
from sitegen.kitchen.keeping import NOT_THERE, KeepingRow
from sitegen.source.tables import read_tables

TABLE = read_tables()[0].keeping
ROWS = {row.key: row for row in TABLE.rows}
DAY = 24
WEEK, MONTH, YEAR = 7 * DAY, 30 * DAY, 365 * DAY

FSA = "Food Standards Agency, Guidance on Temperature Control Legislation (2016): one period of up to 4 hours"
FSIS = "USDA Food Safety and Inspection Service: never over 2 hours out of the fridge"
FSANZ = "Food Standards Australia New Zealand, 2 hour / 4 hour guide: thrown away after 4 hours"
PIES = "USDA, custard and pumpkin pies: 3 to 4 days in the fridge"
CAKES = (
    "Food Standards Agency, advice for bakers of community cakes: fresh cream and cheesecake in the fridge"
)
PRACTICE = "common practice"


def hours(key: str, place: str) -> Span:
    row: KeepingRow = ROWS[key]
    return next(keeps.hours for keeps in row.keeping if keeps.place == place)


@pytest.mark.parametrize(("region", "out", "source"), [("uk", 4, FSA), ("us", 2, FSIS), ("au", 4, FSANZ)])
def test_hours_out_of_the_fridge(region: str, out: int, source: str) -> None:
    assert TABLE.out[region].hours == out, source


@pytest.mark.parametrize(
    ("key", "source"),
    [
        ("pastry cream", FSA),
        ("baked custard", PIES),
        ("cheesecake", CAKES),
        ("fresh cream", CAKES),
        ("cream-cheese topping", CAKES),
        ("fruit compote", PRACTICE),
    ],
)
def test_what_must_not_stand_in_the_room(key: str, source: str) -> None:
    assert hours(key, "room") == NOT_THERE, source


@pytest.mark.parametrize(
    ("key", "place", "low", "high", "source"),
    [
        ("baked custard", "fridge", 3 * DAY, 4 * DAY, PIES),
        ("cheesecake", "fridge", 2 * DAY, 4 * DAY, PIES),
        ("cheesecake", "freezer", MONTH, MONTH, PRACTICE),
        ("pastry cream", "fridge", 2 * DAY, 2 * DAY, PRACTICE),
        ("fresh cream", "fridge", DAY, 3 * DAY, PRACTICE),
        ("simple buttercream", "room", 3 * DAY, 4 * DAY, PRACTICE),
        ("simple buttercream", "fridge", WEEK, 2 * WEEK, PRACTICE),
        ("simple buttercream", "freezer", 3 * MONTH, 3 * MONTH, PRACTICE),
        ("meringue buttercream", "room", DAY, 2 * DAY, PRACTICE),
        ("meringue buttercream", "fridge", 5 * DAY, WEEK, PRACTICE),
        ("ganache", "room", DAY, 2 * DAY, PRACTICE),
        ("ganache", "fridge", WEEK, 2 * WEEK, PRACTICE),
        ("soft ganache", "room", DAY, DAY, PRACTICE),
        ("soft ganache", "fridge", 4 * DAY, WEEK, PRACTICE),
        ("soft ganache", "freezer", 2 * MONTH, 2 * MONTH, PRACTICE),
        ("choux shells", "room", 2 * DAY, 3 * DAY, PRACTICE),
        ("choux shells", "freezer", MONTH, MONTH, PRACTICE),
        ("plain sponge", "room", 3 * DAY, 4 * DAY, PRACTICE),
        ("plain sponge", "freezer", 3 * MONTH, 3 * MONTH, PRACTICE),
        ("oil cake", "room", 4 * DAY, 5 * DAY, PRACTICE),
        ("rich fruit cake", "room", 2 * WEEK, 6 * MONTH, PRACTICE),
        ("rich fruit cake", "freezer", YEAR, YEAR, PRACTICE),
        ("lean bread", "room", DAY, 2 * DAY, PRACTICE),
        ("lean bread", "freezer", MONTH, MONTH, PRACTICE),
        ("enriched bread", "room", 2 * DAY, 4 * DAY, PRACTICE),
        ("enriched bread", "freezer", 2 * MONTH, 3 * MONTH, PRACTICE),
        ("laminated pastry", "room", DAY, DAY, PRACTICE),
        ("laminated pastry", "freezer", MONTH, MONTH, PRACTICE),
        ("biscuits", "room", 5 * DAY, 10 * DAY, PRACTICE),
        ("biscuits", "freezer", 2 * MONTH, 3 * MONTH, PRACTICE),
        ("dry meringue", "room", 2 * WEEK, 2 * WEEK, PRACTICE),
        ("fruit compote", "fridge", 3 * DAY, 5 * DAY, PRACTICE),
        ("fruit compote", "freezer", 6 * MONTH, 6 * MONTH, PRACTICE),
        ("jam", "room", YEAR, YEAR, PRACTICE),
        ("jam", "fridge", 4 * WEEK, 8 * WEEK, PRACTICE),
        ("caramel sauce", "fridge", 2 * WEEK, 3 * WEEK, PRACTICE),
        ("caramel sauce", "freezer", 3 * MONTH, 3 * MONTH, PRACTICE),
    ],
)
def test_the_longest_time_lies_within_what_is_published(
    key: str, place: str, low: int, high: int, source: str
) -> None:
    assert Fraction(low) <= hours(key, place).high <= Fraction(high), source


@pytest.mark.parametrize("key", ["lean bread", "enriched bread", "laminated pastry"])
def test_bread_stales_fastest_in_the_fridge(key: str) -> None:
    """Between 0 and 10 C starch sets fastest (common practice)."""
    assert hours(key, "fridge") == NOT_THERE
