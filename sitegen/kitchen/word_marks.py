"""Words that mark something in a text: whole words, or beginnings of words where a star ends them."""

import re
from functools import lru_cache


@lru_cache(maxsize=16384)
def has_word(text: str, words: tuple[str, ...]) -> bool:
    """Whether any of the words stands in the text, in any case.

    A word matches whole words ('torch' not in 'scorch'); with a star at its end also longer ones
    ('caramelis*' in 'caramelised'). Remembered, since a recipe is asked the same for every edition and batch.
    """
    return bool(words) and _pattern(words).search(text) is not None


@lru_cache(maxsize=512)
def _pattern(words: tuple[str, ...]) -> re.Pattern[str]:
    alternatives = (
        re.escape(word.removesuffix("*")) + (r"\w*" if word.endswith("*") else "") for word in words
    )
    return re.compile(r"\b(?:" + "|".join(alternatives) + r")\b", re.IGNORECASE)
