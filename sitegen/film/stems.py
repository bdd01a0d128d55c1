"""Words without their endings: 'whisked' meets 'whisk', 'cherries' 'cherry'. Crude, and enough here."""

from functools import lru_cache

_ODD = {
    "leaves": "leaf",
    "halves": "half",
    "loaves": "loaf",
    "knives": "knife",
    "thickened": "thick",
    "thicken": "thick",
    "icing": "icing",
    "pudding": "pudding",
    "frozen": "freeze",
    "froze": "freeze",
    "risen": "rise",
    "rose": "rose",
    "beaten": "beat",
    "shaken": "shake",
    "broken": "break",
    "cut": "cut",
    "went": "go",
    "goes": "go",
    "going": "go",
}
_VOWELS = frozenset("aeiouy")


@lru_cache(maxsize=16384)
def stem(word: str) -> str:
    """A word in small letters without the endings of number and tense.

    What comes of it is no word, and only meets what was cut the same way.
    """
    word = _ODD.get(word, word).removesuffix("'s").removesuffix("'")
    if len(word) <= 3:
        return word
    word = _without_plural(word)
    for ending in ("ing", "ed"):
        bare = word.removesuffix(ending)
        if bare != word and len(bare) >= 3 and _VOWELS.intersection(bare) and word != "icing":
            word = bare
            break
    if len(word) > 3 and word[-1] == word[-2]:
        word = word[:-1]
    if len(word) > 3 and word[-1] == "e":
        word = word[:-1]
    return f"{word[:-1]}i" if len(word) > 3 and word[-1] == "y" else word


def _without_plural(word: str) -> str:
    if word.endswith("ies"):
        return f"{word[:-3]}i"
    if word.endswith(("sses", "shes", "ches", "xes", "zes")):
        return word[:-2]
    return word if word.endswith(("ss", "us", "is")) or not word.endswith("s") else word[:-1]
