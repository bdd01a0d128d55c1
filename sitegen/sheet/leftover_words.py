"""What a batch leaves over, in words: 'about 40 g of Base buttercream'."""

from collections.abc import Sequence

from sitegen.kitchen.editions import Edition
from sitegen.kitchen.leftovers import Leftover, leftovers
from sitegen.kitchen.shares import MadeComponent
from sitegen.sheet.amounts import fraction_text
from sitegen.sheet.setting import Setting
from sitegen.sheet.weights import about_text


def leftover_texts(made: Sequence[MadeComponent], setting: Setting) -> tuple[str, ...]:
    """A text for each leftover that a kitchen would notice, in the order of work."""
    texts = (_leftover_text(left, setting.edition) for left in leftovers(made))
    return tuple(setting.respelled(text) for text in texts if text)


def _leftover_text(left: Leftover, edition: Edition) -> str:
    """By weight where it is known, nothing under a gram; else by share of what the recipe makes."""
    if left.grams is None:
        return f"about {fraction_text(left.share)} of the recipe for {left.title}"
    if left.grams < 1:
        return ""
    return f"{about_text(left.grams, edition)} of {left.title}"
