"""YAML's traps for people who write prose: their codes, and those that the parser walks over in silence."""

import re
from collections.abc import Iterator, Sequence

import yaml

from sitegen import limits
from sitegen.faults import Fault, FaultCode, Place, Severity
from sitegen.source.columns import Extent


def _error(code: str, meaning: str, cure: str, good: str = "", bad: str = "") -> FaultCode:
    return FaultCode(code, Severity.ERROR, meaning, cure, good, bad, "recipe.yaml" if good else "")


QUOTE = "put the text in quotes, or write it on the next line after '>-'"

TAB = _error(
    "tab",
    "A tab stands in the file. Editors show it at different widths, and YAML refuses it in indentation.",
    "Use spaces.",
    "  Bay sponge:\n",
    "\tBay sponge:\n",
)
BRACE = _error(
    "brace-begins-text",
    "A text that begins with '{' or '[' is read by YAML as a mapping or a list, not as text.",
    "Put the whole text in quotes.",
    "- text: Whisk {eggs},",
    "- text: {eggs},",
)
COMMA = _error(
    "comma-in-braces",
    "Inside braces a comma ends the text: what follows is read as another key, and its words are lost.",
    "Put the text in quotes, or write each key on its own line.",
    "captions: captions.vtt}",
    "captions: captions.vtt, and more}",
)
COLON = _error(
    "colon-in-text",
    "A colon with a space after it inside plain text is read by YAML as a key and its value.",
    "Put the whole text in quotes.",
    "text: Fill each case two-thirds full.",
    "text: Fill each case: two-thirds full.",
)
COMMENT = _error(
    "comment-cuts-text",
    "A space and '#' end a plain text: the words behind it are dropped as a comment.",
    "Put the whole text in quotes; give a comment a line of its own.",
    "text: Fill each case two-thirds full.",
    "text: Fill each case # two-thirds full.",
)
KEY_TWICE = _error(
    "key-twice",
    "A key stands twice in the same place; only one of the two can count.",
    "Delete one of them, or give it another name.",
    "tin: muffin 12\n",
    "tin: muffin 12\ntin: muffin 12\n",
)
SECOND_DOCUMENT = _error(
    "second-document",
    "A line of three dashes begins a second document, and only the first is read.",
    "Delete the line; one file holds one recipe.",
    "tags: [cupcakes",
    "---\ntags: [cupcakes",
)
ALIAS = _error(
    "anchor",
    "YAML reads a value that begins with '*' or '&' as a pointer to another place in the file.",
    "Put the whole text in quotes; write a value that is needed twice in both places.",
    "- text: Bake.",
    "- text: *Bake* at once.",
)
TAG = _error(
    "tag",
    "YAML reads a value that begins with '!' as the name of a type, and drops the word.",
    "Put the whole text in quotes.",
    "- text: Bake.",
    "- text: !bake at once.",
)
RESERVED = _error(
    "reserved-start",
    "YAML keeps some marks (such as @, ` and %) for itself: no plain text may begin with them.",
    "Put the whole text in quotes.",
    "- text: Bake.",
    "- text: @ once bake.",
)
QUOTE_OPEN = _error(
    "quote-open",
    "A quoted text is not closed before the file ends.",
    "Close the quotes; write an apostrophe inside single quotes twice, or use double quotes outside.",
    "until: no warmth is left",
    "until: 'no warmth is left",
)
AFTER_QUOTE = _error(
    "text-after-quote",
    "Words stand behind a closing quote; YAML ends the text at the quote.",
    "Put the whole text in quotes; inside single quotes write an apostrophe twice.",
    "keeps: 2 days, covered",
    "keeps: '2 days', covered",
)
ESCAPE = _error(
    "escape",
    "Inside double quotes a backslash begins an escape that YAML must know.",
    "Use single quotes outside, or write the backslash twice.",
    "until: no warmth is left",
    'until: "no \\warmth is left"',
)
NO_KEY = _error(
    "line-without-key",
    "A line has neither a key with a colon nor a dash, and does not continue the text above.",
    "Write 'key: text', begin it with '- ', or indent it to continue the text above.",
    "tin: muffin 12\n",
    "tin: muffin 12\nor paper cases\n",
)
INDENT = _error(
    "indentation",
    "A line is indented otherwise than its neighbours, so that YAML cannot tell where it belongs.",
    "Give all keys, or all dashes, of the same list the same indentation.",
    "    keeps: 2 days",
    "      keeps: 2 days",
)
BRACES_OPEN = _error(
    "braces-open",
    "A list in square brackets or a mapping in braces is not closed, or a comma is missing in it.",
    "Close the bracket; put texts with brackets, commas or colons in quotes.",
    "tags: [cupcakes, soft fruit]",
    "tags: [cupcakes, soft fruit",
)
BLOCK_MARK = _error(
    "block-mark",
    "A text that begins with '|' or '>' must begin on the next line.",
    "Write the text on the next line, indented, or put it in quotes.",
    "- text: Bake.",
    "- text: > Bake.",
)
KEY_KIND = _error(
    "key-kind",
    "A key is itself a list or a mapping.",
    "Use plain words as the key.",
    "tin: muffin 12",
    "[tin]: muffin 12",
)
LONG_KEY = _error(
    "key-too-long",
    f"A key has more than {limits.KEY_CHARACTERS} letters: most likely it is a text with a colon in it.",
    "Put the whole text in quotes.",
    "tin: muffin 12",
    f"{'tin ' * 60}: muffin 12",
)
TOO_DEEP = _error(
    "too-deep",
    "Values lie in each other deeper than any recipe needs.",
    "Write it flatter.",
    "tags: [cupcakes, soft fruit]",
    f"tags: {'[' * 40}{']' * 40}",
)
TOO_MANY = _error("too-many-values", "The file holds more values than any recipe needs.", "Split the file.")
DIRECTIVE = _error(
    "yaml-directive",
    "A line that begins with '%' is an order to the YAML parser; recipes need none.",
    "Delete the line.",
    "title: Blackcurrant",
    "%YAML 9.9\n---\ntitle: Blackcurrant",
)
YAML = _error("yaml", "YAML cannot read the file from here on.", "Look at the line and the one above it.")

CODES = (
    TAB, BRACE, COMMA, COLON, COMMENT, KEY_TWICE, SECOND_DOCUMENT, ALIAS, TAG, RESERVED, QUOTE_OPEN,
    AFTER_QUOTE, ESCAPE, NO_KEY, INDENT, BRACES_OPEN, BLOCK_MARK, KEY_KIND, LONG_KEY, TOO_DEEP, TOO_MANY,
    DIRECTIVE, YAML,
)  # fmt: skip


_CUT = re.compile(r"[|>:+\-\d]*\s+(#.*)")


def tabs(lines: Sequence[str], shown: str) -> Iterator[Fault]:
    """A fault for the first tab of each line."""
    for number, line in enumerate(lines, start=1):
        if "\t" in line:
            yield TAB.fault(Place(shown, number, line.index("\t") + 1, 1), "a tab stands here")


def begins_with_brace(place: Place, written: str) -> Fault:
    return BRACE.fault(place, f"a text must not begin with '{written[:1]}'", QUOTE)


def comma_in_braces(place: Place, words: str) -> Fault:
    return COMMA.fault(place, f"the comma before it cuts '{words}' off")


def key_twice(place: Place, key: str, first_line: int) -> Fault:
    return KEY_TWICE.fault(place, f"'{key}' stands on line {first_line} already")


def cut_by_comment(
    lines: Sequence[str], shown: str, event: yaml.ScalarEvent, key_place: Place | None
) -> Iterator[Fault]:
    """A fault where words behind ' #' on the line of a text are dropped.

    key_place: the place of the key where there is no value at all. A comment behind closing quotes or
    brackets drops nothing.
    """
    if event.style in ("'", '"'):
        return
    number, column = _text_end(event, key_place)
    cut = _CUT.match(line_at(lines, number), column)
    if cut:
        place = Place(shown, number, cut.start(1) + 1, len(cut[1].rstrip()))
        yield COMMENT.fault(place, f"YAML drops '{cut[1].strip()}' as a comment")


def _text_end(event: yaml.ScalarEvent, key_place: Place | None) -> tuple[int, int]:
    """Line (from 1) and column (from 0) behind which a comment would hide words of this text."""
    extent = Extent.of(event)
    if event.style:
        return extent.start_line + 1, extent.start_column
    if key_place is not None:
        return key_place.line, key_place.column + key_place.length - 1
    return extent.end_line + 1, extent.end_column


def line_at(lines: Sequence[str], number: int) -> str:
    """The line of a number from 1; '' where the file has none."""
    return lines[number - 1] if 0 < number <= len(lines) else ""
