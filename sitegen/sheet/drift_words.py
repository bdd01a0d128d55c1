"""Shares and their drift as texts, for a terminal and for the desk."""

from fractions import Fraction


def percent_text(share: Fraction) -> str:
    """A share, in % as it is given, to a tenth: '53.3 %'."""
    return f"{float(share):.1f} %"


def points_text(points: Fraction) -> str:
    """How far a share has moved, in points to a hundredth, with its sign: '+0.25'."""
    return f"{float(points):+.2f}"


def scale_text(grams: Fraction) -> str:
    """A weight finer than a baker's: to a tenth, '152.4 g', below 10 g to a hundredth, '3.05 g'."""
    return f"{float(grams):,.{2 if grams < 10 else 1}f} g"
