"""YAML's traps for people who write prose: what the parser trips over, said in a baker's words."""

import re
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, replace

import yaml

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
    AFTER_QUOTE, ESCAPE, NO_KEY, INDENT, BRACES_OPEN, BLOCK_MARK, KEY_KIND, TOO_DEEP, TOO_MANY, DIRECTIVE,
    YAML,
)  # fmt: skip


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
    cut = re.match(r"[|>:+\-\d]*\s+(#.*)", _line_at(lines, number)[column:])
    if cut:
        place = Place(shown, number, column + cut.start(1) + 1, len(cut[1].rstrip()))
        yield COMMENT.fault(place, f"YAML drops '{cut[1].strip()}' as a comment")


def _text_end(event: yaml.ScalarEvent, key_place: Place | None) -> tuple[int, int]:
    """Line (from 1) and column (from 0) behind which a comment would hide words of this text."""
    extent = Extent.of(event)
    if event.style:
        return extent.start_line + 1, extent.start_column
    if key_place is not None:
        return key_place.line, key_place.column + key_place.length - 1
    return extent.end_line + 1, extent.end_column


@dataclass(frozen=True)
class _Trip:
    """Where the parser tripped.

    place: where it noticed. start: where the thing began that it could not finish. lines: of the file.
    """

    place: Place
    start: Place
    lines: Sequence[str]

    @property
    def line(self) -> str:
        return _line_at(self.lines, self.place.line)


Explanation = Callable[[_Trip], Fault]


def explain(problem: yaml.YAMLError, lines: Sequence[str], shown: str) -> Fault:
    """The parser's problem as a fault of ours; a kind that we don't know gets the code `yaml`."""
    if not isinstance(problem, yaml.MarkedYAMLError) or problem.problem_mark is None:
        return YAML.fault(Place(shown), "YAML cannot read the file")
    noticed, begun = problem.problem_mark, problem.context_mark or problem.problem_mark
    place = _marked(noticed.line, noticed.column, lines, shown)
    start = _marked(begun.line, begun.column, lines, shown)
    for begins, explanation in _PROBLEMS:
        if str(problem.problem).startswith(begins):
            return explanation(_Trip(place, start, lines))
    return YAML.fault(place, "YAML cannot read the file from here on")


def _marked(line: int, column: int, lines: Sequence[str], shown: str) -> Place:
    """The place of a mark, counted from 0; one behind the last line is drawn back to its end."""
    if line < len(lines):
        return Place(shown, line + 1, column + 1, 1)
    return Place(shown, max(1, len(lines)), len(lines[-1]) + 1 if lines else 1, 1)


def _line_at(lines: Sequence[str], number: int) -> str:
    return lines[number - 1] if 0 < number <= len(lines) else ""


def _to_line_end(place: Place, line: str) -> Place:
    return replace(place, length=max(1, len(line.rstrip()) - place.column + 1))


def _here(code: FaultCode, sentence: str) -> Explanation:
    return lambda trip: code.fault(trip.place, sentence)


def _from_start(code: FaultCode, sentence: str) -> Explanation:
    """The same, pointing at where the unfinished thing began."""

    def say(trip: _Trip) -> Fault:
        return code.fault(_to_line_end(trip.start, _line_at(trip.lines, trip.start.line)), sentence)

    return say


_VALUE_BEGINS = re.compile(r"^\s*(?:- +)*(?:[^\s{\[\"'#][^:#]*: +)?(?:- +)*(?P<value>\S)")
_OWN_KEY = re.compile(r"^\s*(?:- +)*[\w-]+:\s")
_COMMENT = re.compile(r"(?<=\s)#.*")


def _colon(trip: _Trip) -> Fault:
    """A second colon on a line is prose; the first one behind a single word is a key too far to the right."""
    own_key = _OWN_KEY.match(trip.line)
    if own_key and trip.place.column <= own_key.end():
        return INDENT.fault(trip.place, "this line is indented deeper than the text above allows")
    return COLON.fault(trip.place, "a colon inside a plain text", QUOTE)


def _stray(trip: _Trip) -> Fault:
    """Something stands where a key was expected: most often a text that began with a bracket or quote."""
    match = _VALUE_BEGINS.match(trip.line)
    if match and trip.place.column > match.start("value") + 1:
        if match["value"] in "{[":
            opening = replace(trip.place, column=match.start("value") + 1)
            return begins_with_brace(_to_line_end(opening, trip.line), match["value"])
        if match["value"] in "\"'":
            words = _to_line_end(trip.place, trip.line)
            return AFTER_QUOTE.fault(words, "words stand behind the closing quote")
    above = _line_at(trip.lines, trip.place.line - 1)
    cut = _COMMENT.search(above) if not above.lstrip().startswith("#") else None
    if cut:
        mark = Place(trip.place.file, trip.place.line - 1, cut.start() + 1, len(cut[0].rstrip()))
        return COMMENT.fault(mark, "YAML ends the text at this '#' and drops the words behind it")
    return INDENT.fault(trip.place, "this line is not indented like its neighbours")


def _unclosed(trip: _Trip) -> Fault:
    """A bracket is not closed, or a colon stands in a text inside it."""
    if trip.start.line == trip.place.line and trip.line[trip.place.column - 1 :].startswith(":"):
        return COLON.fault(trip.place, "a colon inside a plain text", QUOTE)
    return _from_start(BRACES_OPEN, "a comma or the closing bracket is missing")(trip)


_BAD_START = _here(RESERVED, "no plain text may begin with this mark")
_POINTER = _from_start(ALIAS, "a text must not begin with '*' or '&'")
_TYPE_NAME = _from_start(TAG, "a value that begins with '!' is read as a tag")
_BLOCK = _here(BLOCK_MARK, "the text must begin on the next line")
_SECOND = _here(SECOND_DOCUMENT, "a second document begins here")
_DASH = _here(RESERVED, "a dash begins a list here, where a text stands")
_ORDER = _here(DIRECTIVE, "a line must not begin with '%'")

# The parsers give no kind beside their wording; both wordings (libyaml's and PyYAML's own) stand here.
_PROBLEMS: tuple[tuple[str, Explanation], ...] = (
    ("mapping values are not allowed", _colon),
    ("did not find expected key", _stray),
    ("expected <block end>", _stray),
    ("did not find expected '-' indicator", _stray),
    ("found character", _BAD_START),
    ("found unexpected end of stream", _from_start(QUOTE_OPEN, "this quoted text is not closed")),
    ("found unknown escape character", _here(ESCAPE, "YAML does not know this escape")),
    ("did not find expected hexdecimal", _here(ESCAPE, "YAML does not know this escape")),
    ("expected escape sequence", _here(ESCAPE, "YAML does not know this escape")),
    ("could not find expected ':'", _from_start(NO_KEY, "this line has no key, and no dash")),
    ("did not find expected ',' or", _unclosed),
    ("expected ',' or", _unclosed),
    ("did not find expected node content", _BAD_START),
    ("expected the node content", _BAD_START),
    ("did not find expected alphabetic", _POINTER),
    ("expected alphabetic", _POINTER),
    ("did not find expected comment or line break", _BLOCK),
    ("expected chomping", _BLOCK),
    ("expected a comment or a line break", _BLOCK),
    ("did not find expected <document start>", _SECOND),
    ("expected '<document start>'", _SECOND),
    ("block sequence entries are not allowed", _DASH),
    ("sequence entries are not allowed", _DASH),
    ("mapping keys are not allowed", _here(RESERVED, "no plain text may begin with '? '")),
    ("found undefined tag handle", _TYPE_NAME),
    ("did not find the expected '>'", _TYPE_NAME),
    ("expected '>'", _TYPE_NAME),
    ("did not find expected whitespace or line break", _TYPE_NAME),
    ("found unknown directive name", _ORDER),
    ("found incompatible YAML document", _ORDER),
    ("exceeded max", _here(TOO_DEEP, "too many levels lie in each other")),
)
