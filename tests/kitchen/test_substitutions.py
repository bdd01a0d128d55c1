"""A substitute's weight for any amount, and which swap a region needs."""

from fractions import Fraction

import pytest

from sitegen.kitchen.substitutions import Original, Substitute, Swap, differs_in, needed_in, substitutes

SELF_RAISING = Swap(
    "self-raising flour",
    (Substitute("plain flour", Fraction(95)), Substitute("baking powder", Fraction(5))),
    differs_in={"us": "it holds salt"},
    written_in=frozenset({"uk"}),
)
SYRUP = Swap("golden syrup", (Substitute("honey", Fraction(100)),), lacking_in={"us": "few shops sell it"})
POD = Swap("vanilla pod", (Substitute("vanilla extract", Fraction(13, 2)),), per_piece=True)
SWAPS = (SELF_RAISING, SYRUP, POD)


def test_a_weight_is_replaced_by_its_share_of_a_hundred_grams() -> None:
    use = substitutes(SELF_RAISING, Original(Fraction(150)))
    assert use == (
        Substitute("plain flour", Fraction(285, 2)),
        Substitute("baking powder", Fraction(15, 2)),
    )


def test_what_is_counted_is_replaced_piece_by_piece() -> None:
    assert substitutes(POD, Original(Fraction(6), pieces=Fraction(2))) == (
        Substitute("vanilla extract", Fraction(13)),
    )


@pytest.mark.parametrize(
    ("swap", "original"),
    [(SYRUP, Original(None, Fraction(3))), (POD, Original(Fraction(3))), (POD, Original(None))],
)
def test_an_amount_that_the_row_cannot_read_gives_none(swap: Swap, original: Original) -> None:
    assert substitutes(swap, original) is None


@pytest.mark.parametrize(
    ("ingredient", "region", "written", "swap"),
    [
        ("golden syrup", "us", "uk", SYRUP),
        ("golden syrup", "us", "us", SYRUP),
        ("golden syrup", "uk", "uk", None),
        ("self-raising flour", "us", "uk", SELF_RAISING),
        ("self-raising flour", "us", "us", None),
        ("vanilla pod", "us", "uk", None),
        ("plain flour", "us", "uk", None),
    ],
)
def test_a_swap_is_needed_where_the_thing_is_lacking_or_means_another(
    ingredient: str, region: str, written: str, swap: Swap | None
) -> None:
    assert needed_in(SWAPS, ingredient, region, written) is swap


def test_of_two_ways_the_first_that_fits_the_region_is_taken() -> None:
    other = Swap("golden syrup", (Substitute("maple syrup", Fraction(100)),), lacking_in={"us": "", "au": ""})
    assert needed_in((SYRUP, other), "golden syrup", "us", "uk") is SYRUP
    assert needed_in((SYRUP, other), "golden syrup", "au", "uk") is other


def test_a_region_may_lack_it_for_a_reason_that_needs_no_words() -> None:
    assert Swap("x", (), lacking_in={"us": ""}).reason("us", "uk") == ""


@pytest.mark.parametrize(
    ("key", "region", "written", "how"),
    [
        ("self-raising flour", "us", "uk", "it holds salt"),
        ("self-raising flour", "us", "us", ""),
        ("self-raising flour", "uk", "uk", ""),
        ("golden syrup", "us", "uk", ""),
        ("butter", "us", "uk", ""),
    ],
)
def test_how_a_region_sells_another_thing_under_the_name(
    key: str, region: str, written: str, how: str
) -> None:
    assert differs_in(SWAPS, key, region, written) == how
