"""Where YAML's parser trips: its problem, by kind and by what stands there, as a fault in a baker's words."""

import re
from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace

import yaml

from sitegen.faults import Fault, FaultCode, Place
from sitegen.source.traps import (
    AFTER_QUOTE,
    ALIAS,
    BLOCK_MARK,
    BRACES_OPEN,
    COLON,
    COMMENT,
    DIRECTIVE,
    ESCAPE,
    INDENT,
    NO_KEY,
    QUOTE,
    QUOTE_OPEN,
    RESERVED,
    SECOND_DOCUMENT,
    TAG,
    TOO_DEEP,
    YAML,
    begins_with_brace,
    line_at,
)


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
        return line_at(self.lines, self.place.line)


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


def _to_line_end(place: Place, line: str) -> Place:
    return replace(place, length=max(1, len(line.rstrip()) - place.column + 1))


def _here(code: FaultCode, sentence: str) -> Explanation:
    return lambda trip: code.fault(trip.place, sentence)


def _from_start(code: FaultCode, sentence: str) -> Explanation:
    """The same, pointing at where the unfinished thing began."""

    def say(trip: _Trip) -> Fault:
        return code.fault(_to_line_end(trip.start, line_at(trip.lines, trip.start.line)), sentence)

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
    above = line_at(trip.lines, trip.place.line - 1)
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
