"""The words of numbers: a closed class, which no table needs to hold."""

from fractions import Fraction

_BELOW_TWENTY = (
    "zero one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen sixteen "
    "seventeen eighteen nineteen"
)
_TENS = "twenty thirty forty fifty sixty seventy eighty ninety"
_NAMES_OF_PARTS = "third fourth fifth sixth seventh eighth ninth tenth"

ARTICLES = frozenset({"a", "an"})
"""They count as one where a hundred, a dozen or a part of a whole follows."""
UNITS = {word: value for value, word in enumerate(_BELOW_TWENTY.split())} | {"nought": 0, "naught": 0}
"""0 to 19."""
TENS = {word: 10 * value for value, word in enumerate(_TENS.split(), start=2)} | {"fourty": 40}
PARTS = (
    {"half": 2, "halves": 2, "quarter": 4, "quarters": 4}
    | {word: value for value, word in enumerate(_NAMES_OF_PARTS.split(), start=3)}
    | {f"{word}s": value for value, word in enumerate(_NAMES_OF_PARTS.split(), start=3)}
)
"""Into how many parts the whole is cut."""
SIGNS = {
    "½": Fraction(1, 2),
    "⅓": Fraction(1, 3),
    "⅔": Fraction(2, 3),
    "¼": Fraction(1, 4),
    "¾": Fraction(3, 4),
    "⅛": Fraction(1, 8),
    "⅜": Fraction(3, 8),
    "⅝": Fraction(5, 8),
    "⅞": Fraction(7, 8),
}
