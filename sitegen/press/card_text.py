"""Markdown for the card: the few shapes of prose that paper and its tags can carry."""

import re

import nh3
from markupsafe import Markup

from sitegen.press.prose import to_html

_TAGS = {"a", "br", "em", "li", "ol", "p", "strong", "sub", "sup", "ul"}
_HEADING = re.compile(r"<(/?)h[2-4]>")
_AS_LINE = {"": "<p><strong>", "/": "</strong></p>"}


def card_prose(markdown: str) -> Markup:
    """Markdown as safe HTML: paragraphs, stress, lists and links.

    Pictures go, because a card shows only the photos that it was handed; headings become lines in bold,
    because they would break the order of the card's own (ISO 14289-1, 7.4.2).
    """
    html = _HEADING.sub(lambda found: _AS_LINE[found[1]], to_html(markdown))
    return Markup(nh3.clean(html, tags=_TAGS, attributes={"a": {"href"}}, link_rel=None))
