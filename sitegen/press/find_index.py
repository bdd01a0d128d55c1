"""The index that the front page is searched by, made beforehand: words and marks -> numbers of entries.

What a search may find of a recipe is what the views of its tree show, and nothing else: a teaser has no
ingredients, so nobody finds it by one.
"""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import chain
from typing import TypeVar

from markupsafe import Markup

from sitegen.press.entries import TutorialEntry, marks_of
from sitegen.press.json_ld_text import block
from sitegen.press.search_words import WordRules
from sitegen.sheet.values import Head, Teaser, View

Thing = TypeVar("Thing")


@dataclass(frozen=True)
class Sought:
    """By what one entry is found.

    texts: title, summary, tags. names: of ingredients and components, as printed in the school's own edition;
    a search tells which it found. other_names: those of its other editions. marks: (group, key).
    """

    texts: tuple[str, ...]
    names: tuple[str, ...] = ()
    other_names: tuple[str, ...] = ()
    marks: tuple[tuple[str, str], ...] = ()


def sought_recipe(views: Sequence[View]) -> Sought:
    """A recipe by what its audience sees of the tested batch in each edition, the school's own first."""
    own, *others = views
    texts = dict.fromkeys(text for view in views for text in _texts(view.head))
    names = dict.fromkeys(_names(own))
    marks = tuple((mark.group, mark.key) for mark in marks_of(own.head))
    elsewhere = dict.fromkeys(name for view in others for name in _names(view) if name not in names)
    return Sought(tuple(texts), tuple(names), tuple(elsewhere), marks)


def sought_technique(tutorial: TutorialEntry) -> Sought:
    return Sought((tutorial.title, tutorial.summary))


def find_index(sought: Sequence[Sought], rules: WordRules) -> Markup:
    """A JSON data block for the page. An entry's number is its place in `sought`.

    marks: group -> key -> numbers. words, names: rows of texts that the same entries have, and their
    numbers; of the forms of a word for one and for many one stands for all; names of the school's own edition
    come first. The rules by which the script has to compare words are told with them.
    """
    own, others = _numbers(each.names for each in sought), _numbers(each.other_names for each in sought)
    return block(
        {
            "marks": _marks(sought),
            "words": _rows(_by_word(sought, rules).items()),
            "names": _rows(chain(own.items(), others.items())),
            "passedOver": rules.passed_over,
            "letters": rules.letters,
            "endings": rules.endings,
        }
    )


def _texts(head: Head) -> Iterator[str]:
    yield from (head.title, head.summary, *head.tags)


def _names(view: View) -> Iterator[str]:
    if isinstance(view, Teaser):
        return
    for component in view.components:
        for line in component.lines:
            yield from (line.name, *(other.name for other in line.others))
    yield from (component.title for component in view.components)


def _marks(sought: Sequence[Sought]) -> Mapping[str, Mapping[str, Sequence[int]]]:
    groups: dict[str, dict[str, Sequence[int]]] = {}
    for (group, key), numbers in _numbers(each.marks for each in sought).items():
        groups.setdefault(group, {})[key] = numbers
    return groups


def _by_word(sought: Sequence[Sought], rules: WordRules) -> Mapping[str, Sequence[int]]:
    words = [{word for text in each.texts for word in rules.words(text)} for each in sought]
    forms = rules.one_of_each({word for own in words for word in own})
    return _numbers(sorted({forms[rules.stem(word)] for word in own}) for own in words)


def _numbers(things: Iterable[Iterable[Thing]]) -> dict[Thing, list[int]]:
    """Each thing -> the numbers of the entries that have it, ascending."""
    found: dict[Thing, list[int]] = {}
    for number, own in enumerate(things):
        for thing in own:
            found.setdefault(thing, []).append(number)
    return found


def _rows(found: Iterable[tuple[str, Sequence[int]]]) -> list[tuple[list[str], list[int]]]:
    """Texts that the same entries have share a row, in the order given: half the bytes of a row for each."""
    rows: dict[tuple[int, ...], list[str]] = {}
    for text, numbers in found:
        rows.setdefault(tuple(numbers), []).append(text)
    return [(texts, list(numbers)) for numbers, texts in rows.items()]
