"""A document against a file model: the validator's errors, by kind, as faults at their places."""

from collections.abc import Callable, Iterator, Mapping, Sequence
from difflib import get_close_matches
from functools import partial
from types import UnionType
from typing import Any, TypeVar, Union, get_args, get_origin

from pydantic import BaseModel, RootModel, ValidationError

from sitegen import limits
from sitegen.faults import Fault, FaultCode, Place, Severity
from sitegen.source import traps
from sitegen.source.nodes import Data, Path, paths_in
from sitegen.source.reader import Document

UNKNOWN_KEY = FaultCode(
    "unknown-key",
    Severity.ERROR,
    "A key that no file of this kind has: most often a slip of the pen, and what it says would be lost.",
    "Mend the key, or delete it.",
    good="summary: A buttermilk crumb",
    bad="sumary: A buttermilk crumb",
)
MISSING_KEY = FaultCode(
    "missing-key",
    Severity.ERROR,
    "A key that every file of this kind needs is not there.",
    "Write it.",
    good="makes: 12 cupcakes\n",
    bad="",
)
ALT_MISSING = FaultCode(
    "alt-missing",
    Severity.ERROR,
    "A picture has no `alt` text, so that readers who cannot see it get nothing.",
    "Say in a sentence what the picture shows.",
    good="file: whisk.jpg\n          alt: A loose yellow batter under a whisk",
    bad="file: whisk.jpg",
)
EMPTY_VALUE = FaultCode(
    "empty-value",
    Severity.ERROR,
    "A key stands there with nothing behind it.",
    "Write its value, or delete the key.",
    good="tin: muffin 12",
    bad="tin:",
)
WRONG_KIND = FaultCode(
    "wrong-kind",
    Severity.ERROR,
    "A value is of another kind than its key asks for: a list where a text is wanted, or the reverse.",
    "Write it as the example under the key shows.",
    good="tags: [cupcakes, soft fruit]",
    bad="tags: cupcakes",
)
TOO_LONG = FaultCode(
    "too-long",
    Severity.ERROR,
    "A text is longer than its place on the page allows.",
    "Shorten it.",
    good="title: Blackcurrant and bay cupcakes",
    bad="title: Blackcurrant" + " and bay" * 20 + "",
)
TOO_MANY = FaultCode(
    "too-many-entries",
    Severity.ERROR,
    "A list has more entries than any recipe needs, so that its sheets could not be set in a bearable time.",
    "Divide it: a long component into two, a recipe into a base recipe and another.",
    good="batches: [6 cupcakes,",
    bad=f"batches: [{'6 cupcakes, ' * limits.BATCHES}",
)
TOO_TANGLED = FaultCode(
    "too-tangled",
    Severity.ERROR,
    "A text has more marks of Markdown, or more quotes and lists in each other, than can be set.",
    "Take out what was pasted in by mistake, or write it flatter.",
    good="notes: Bay from",
    bad=f"notes: {'1. ' * (limits.MARKDOWN_DEPTH + 2)}Bay from",
)
MORE_FAULTS = FaultCode(
    "more-faults",
    Severity.ERROR,
    f"The file has more than {limits.SHAPE_FAULTS} faults of its keys and values; the others are not listed.",
    "Mend those that are listed, and proof again.",
    file="",
)
TOO_SHORT = FaultCode(
    "nothing-in-it",
    Severity.ERROR,
    "A text or a list has nothing in it.",
    "Fill it, or delete the key.",
    good="tags: [cupcakes, soft fruit]",
    bad="tags: ['']",
)
UNKNOWN_WORD = FaultCode(
    "unknown-word",
    Severity.ERROR,
    "The key knows a few words only, and this is none of them.",
    "Use one of them.",
    good="public-shows: ingredients",
    bad="public-shows: ingredient",
)
NOT_A_DAY = FaultCode(
    "not-a-day",
    Severity.ERROR,
    "A day is written as 2026-07-03: other orders mean different days in different places.",
    "Write it as 2026-07-03.",
    good="date: 2026-07-20",
    bad="date: 20/7/2026",
)
NOT_YES_OR_NO = FaultCode(
    "not-yes-or-no",
    Severity.ERROR,
    "This key takes `yes` or `no`.",
    "Write yes or no.",
    good="notify: yes",
    bad="notify: perhaps",
)
WRONG_FORM = FaultCode(
    "wrong-form",
    Severity.ERROR,
    "An address, a language tag or a slug is not in its usual form.",
    "Write an address with https://, a language as en-GB, a slug in small letters, figures and dashes.",
    good='address: "https://video',
    bad='address: "video',
)

CODES = (
    UNKNOWN_KEY, MISSING_KEY, ALT_MISSING, EMPTY_VALUE, WRONG_KIND, TOO_LONG, TOO_SHORT, TOO_MANY,
    TOO_TANGLED, MORE_FAULTS, UNKNOWN_WORD, NOT_A_DAY, NOT_YES_OR_NO, WRONG_FORM,
)  # fmt: skip

_LONGEST_SHOWN = 60
"""Letters of a value that a sentence repeats."""

Model = TypeVar("Model", bound=BaseModel)


class _Error:
    """One error of the validator with what the sentence-makers need."""

    def __init__(self, document: Document, model: type[BaseModel], details: Mapping[str, Any]) -> None:
        self.document = document
        self.model = model
        self.kind: str = details["type"]
        self.path: Path = tuple(part for part in details["loc"] if part != "[key]")
        self.context: Mapping[str, Any] = details.get("ctx", {})

    @property
    def key(self) -> str:
        return next((str(part) for part in reversed(self.path) if isinstance(part, str)), "")

    @property
    def place(self) -> Place:
        return self.document.place(self.path)


def shaped(document: Document, model: type[Model]) -> tuple[Model | None, tuple[Fault, ...]]:
    """The document as a file model; None with every fault of shape where it does not fit."""
    empty = {path: None for path in paths_in(document.data) if path and document.value(path) is None}
    makers = [partial(_empty_value, document, path) for path in empty]
    try:
        fitted = model.model_validate(document.data)
    except ValidationError as problem:
        errors = [_Error(document, model, dict(details)) for details in problem.errors(include_url=False)]
        makers += [partial(KINDS[error.kind], error) for error in errors if error.path not in empty]
        return None, _first_faults(makers, document.shown)
    return (None if makers else fitted), _first_faults(makers, document.shown)


def _first_faults(makers: Sequence[Callable[[], Fault]], shown: str) -> tuple[Fault, ...]:
    """As many as are told of one file: each looks for near words, which takes its time."""
    faults = tuple(make() for make in makers[: limits.SHAPE_FAULTS])
    left = len(makers) - len(faults)
    return (*faults, MORE_FAULTS.fault(Place(shown), f"{left:,} more faults stand in it")) if left else faults


def _empty_value(document: Document, path: Path) -> Fault:
    name = f"'{path[-1]}'" if isinstance(path[-1], str) else "the dash"
    return EMPTY_VALUE.fault(document.key_place(path), f"nothing is written behind {name}")


def _unknown_key(error: _Error) -> Fault:
    known = list(_keys_of(_model_at(error.model, error.path[:-1])))
    place = error.document.key_place(error.path)
    return UNKNOWN_KEY.fault(place, f"'{error.key}' is no key of this place", _did_you_mean(error.key, known))


def _missing_key(error: _Error) -> Fault:
    parent = error.path[:-1]
    place = error.document.key_place(parent) if parent else Place(error.document.shown, 1, 1, 1)
    if error.key == "alt":
        return ALT_MISSING.fault(place, "this picture has no 'alt' text")
    return MISSING_KEY.fault(place, f"'{error.key}' is missing here", f"write '{error.key}: ...'")


def _no_text(error: _Error) -> Fault:
    value = error.document.value(error.path)
    if error.path in error.document.braced:
        return traps.begins_with_brace(error.place, "{" if isinstance(value, dict) else "[")
    if isinstance(value, dict):
        key_place = error.document.key_place((*error.path, next(iter(value), "")))
        return traps.COLON.fault(key_place, "a colon cuts this text into a key and a value", traps.QUOTE)
    return _wrong_kind("a text")(error)


def _wrong_kind(wanted: str) -> "SentenceMaker":
    def say(error: _Error) -> Fault:
        found = _kind_of(error.document.value(error.path))
        name = f"'{error.key}'" if error.path else "the file"
        sentence = f"{name} wants {wanted}, and {found} stands here"
        return WRONG_KIND.fault(error.place, sentence, _way_to(wanted))

    return say


def _way_to(wanted: str) -> str:
    if wanted == "a list":
        return "begin each entry on its own line with '- '"
    if wanted == "keys and values":
        return "write 'key: value', each on its own line"
    return "write plain words"


def _kind_of(value: Data) -> str:
    if isinstance(value, dict):
        return "a set of keys and values"
    if isinstance(value, list):
        return "a list"
    return "nothing" if value is None else "a text"


def _too_long(error: _Error) -> Fault:
    most = error.context.get("max_length")
    return TOO_LONG.fault(error.place, f"'{error.key}' takes at most {most} letters")


def _too_many(error: _Error) -> Fault:
    most = error.context["max_length"]
    return TOO_MANY.fault(error.document.key_place(error.path), f"'{error.key}' takes at most {most} entries")


def _too_tangled(error: _Error) -> Fault:
    return TOO_TANGLED.fault(error.place, f"'{error.key}' {error.context['reason']}")


def _too_short(error: _Error) -> Fault:
    return TOO_SHORT.fault(error.place, f"'{error.key}' has nothing in it")


def _unknown_word(error: _Error) -> Fault:
    value = str(error.document.value(error.path))
    expected = str(error.context["expected"]).replace("'", "").replace(" or ", ", ").split(", ")
    shown = value if len(value) <= _LONGEST_SHOWN else f"{value[:_LONGEST_SHOWN]}..."
    return UNKNOWN_WORD.fault(
        error.place, f"'{shown}' is none of: {', '.join(expected)}", _did_you_mean(shown, expected)
    )


def _said(code: FaultCode, sentence: str) -> "SentenceMaker":
    return lambda error: code.fault(error.place, sentence.format(key=error.key))


def _did_you_mean(word: str, known: list[str]) -> str:
    near = get_close_matches(word.casefold(), known, n=1, cutoff=0.6)
    return f"did you mean '{near[0]}'?" if near else f"known here: {', '.join(known)}"


SentenceMaker = Callable[[_Error], Fault]

KINDS: Mapping[str, SentenceMaker] = {
    "extra_forbidden": _unknown_key,
    "missing": _missing_key,
    "string_type": _no_text,
    "literal_error": _unknown_word,
    "model_type": _wrong_kind("keys and values"),
    "dict_type": _wrong_kind("keys and values"),
    "list_type": _wrong_kind("a list"),
    "string_too_long": _too_long,
    "string_too_short": _too_short,
    "too_short": _too_short,
    "too_long": _too_many,
    "too_tangled": _too_tangled,
    "string_pattern_mismatch": _said(WRONG_FORM, "'{key}' is not in its usual form"),
    "not_a_day": _said(NOT_A_DAY, "'{key}' is no day written as 2026-07-03"),
    "no_such_day": _said(NOT_A_DAY, "'{key}' is a day that no calendar has"),
    "not_yes_or_no": _said(NOT_YES_OR_NO, "'{key}' takes yes or no"),
}
"""The validator's kinds of error -> how each is said. A kind that is missing here fails a test."""


def _model_at(model: type[BaseModel], path: Path) -> type[BaseModel]:
    """The model that describes the value at a path."""
    here: Any = model
    for part in path:
        here = _without_none(_inside(_without_root(here), part))
    here = _without_root(here)
    return here if isinstance(here, type) and issubclass(here, BaseModel) else model


def _inside(kind: Any, part: str | int) -> Any:
    """The type of an entry or of a key's value."""
    if isinstance(kind, type) and issubclass(kind, BaseModel):
        return next(row.annotation for name, row in kind.model_fields.items() if part in (row.alias, name))
    return get_args(kind)[-1]


def _without_root(kind: Any) -> Any:
    """What a file that is all rows and no keys of its own consists of."""
    if isinstance(kind, type) and issubclass(kind, RootModel):
        return kind.model_fields["root"].annotation
    return kind


def _without_none(kind: Any) -> Any:
    if get_origin(kind) in (Union, UnionType):
        return next(part for part in get_args(kind) if part is not type(None))
    return kind


def _keys_of(model: type[BaseModel]) -> Iterator[str]:
    """The keys of a file as they are written."""
    return (field.alias or name for name, field in model.model_fields.items())
