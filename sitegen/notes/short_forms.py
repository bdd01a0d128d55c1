"""Words that old notes write short: 'lge', 'dk', 'gr. ginger'."""

import re
from functools import cache

from sitegen.notes.amounts_in_notes import spellings
from sitegen.notes.number_patterns import FIGURE
from sitegen.notes.values import Lore
from sitegen.notes.word_table import any_of, note_words

_RIND = re.compile(rf"^(?:pared |grated )?(?:peel|rind) (?:of |(?={FIGURE}))", re.IGNORECASE)


def lengthened(text: str, lore: Lore) -> str:
    """'2 lge eggs' -> '2 large eggs', 'gr. ginger' -> 'ground ginger'; '80 gr butter' stays."""

    def long(found: re.Match[str]) -> str:
        is_unit = found["short"] in spellings(lore) and re.search(rf"{FIGURE} $", text[: found.start()])
        return found[0] if is_unit else short[found["short"].casefold()]

    short = note_words().short
    text = " ".join(text.split())
    text = re.sub(rf"\bof the (?={FIGURE})", "of ", text)
    text = _RIND.sub("zest of ", text)
    return _short_form().sub(long, text)


@cache
def _short_form() -> re.Pattern[str]:
    """A word that is written short; 'fl' of 'fl oz' is none."""
    words = any_of(note_words().short)
    return re.compile(rf"(?<![^\s(])(?P<short>{words})(?:\.|(?=[\s,;)]|$))(?! oz\b)", re.IGNORECASE)
