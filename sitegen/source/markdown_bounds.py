"""Whether Markdown can be set in a bearable time: how many marks it has, and how deep they lie in each other.

The library that reads it takes a time that grows with the square of some marks in a paragraph, and calls
itself once more for each level.
"""

import re

from sitegen import limits

_MARKS = re.compile(r"[\[*_`<]")
_PARAGRAPHS = re.compile(r"\n[ ]*\n")
_NESTING = re.compile(r"[ ]{0,200}(?:(?:>|[-+*][ ]|\d{1,9}[.)][ ])[ ]{0,200}){0,200}")
_LEVEL = re.compile(r">|[-+*][ ]|\d[.)][ ]|[ ]{4}")


def too_tangled(text: str) -> str:
    """What is too much in a text, in a baker's words; '' for nothing."""
    if len(_MARKS.findall(text)) > limits.MARKDOWN_MARKS or text.count("<") > limits.MARKDOWN_TAGS:
        return "has more marks of Markdown than a page needs"
    if any(len(_MARKS.findall(part)) > limits.PARAGRAPH_MARKS for part in _PARAGRAPHS.split(text)):
        return f"has a paragraph with more than {limits.PARAGRAPH_MARKS:,} marks of Markdown"
    if any(_depth(line) > limits.MARKDOWN_DEPTH for line in text.split("\n")):
        return f"has more than {limits.MARKDOWN_DEPTH} quotes or lists in each other"
    return ""


def _depth(line: str) -> int:
    """How many levels the beginning of a line opens, or is indented by."""
    beginning = _NESTING.match(line)
    return len(_LEVEL.findall(beginning[0])) if beginning else 0
