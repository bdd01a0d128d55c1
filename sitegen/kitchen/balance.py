"""A recipe's balance: each ingredient as a percentage of the flour."""

from collections.abc import Sequence
from fractions import Fraction


def baker_percentages(weights: Sequence[Fraction], flour_g: Fraction) -> tuple[Fraction, ...]:
    """Each weight in % of the flour, exact; the flour itself makes 100 in all.

    weights: grams. flour_g: all flour of the recipe, over 0. Source: common practice.
    """
    return tuple(weight / flour_g * 100 for weight in weights)


def drift(
    exact: Sequence[Fraction], printed: Sequence[Fraction], flour: Sequence[bool]
) -> tuple[Fraction, ...]:
    """How far rounding has moved each ingredient's share, in points, printed less exact.

    exact, printed: grams, line by line. flour: which lines are flour. The base is all flour, or the
    heaviest line where there is none (or none that weighs anything). Source: common practice; over 4
    points the rounding was too coarse.
    """
    if not any(exact):
        return tuple(Fraction(0) for _ in exact)
    base = balance_base(exact, flour)
    before = baker_percentages(exact, _sum_of(exact, base))
    printed_base = _sum_of(printed, base)
    after = baker_percentages(printed, printed_base) if printed_base else before
    return tuple(new - old for old, new in zip(before, after, strict=True))


def balance_base(exact: Sequence[Fraction], flour: Sequence[bool]) -> list[int]:
    """Which lines the shares are of: all flour that weighs something, else the heaviest line.

    exact: grams, at least one line. flour: which lines are flour.
    """
    flours = [index for index, is_flour in enumerate(flour) if is_flour and exact[index]]
    return flours or [max(range(len(exact)), key=lambda index: exact[index])]


def _sum_of(weights: Sequence[Fraction], lines: Sequence[int]) -> Fraction:
    return sum((weights[index] for index in lines), Fraction(0))
