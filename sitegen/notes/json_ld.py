"""A recipe in the vocabulary of schema.org (JSON-LD, alone or in a page's script) -> a Book.

Sources: schema.org/Recipe, schema.org/HowToStep, schema.org/HowToSection, ISO 8601 durations; JSON-LD 1.1,
section 7.2 (script elements of type application/ld+json).
"""

import json
import re
from collections.abc import Iterator, Mapping, Sequence
from html import unescape
from html.parser import HTMLParser

from sitegen import limits
from sitegen.notes.book import Block, Book, Group, Said
from sitegen.notes.facts import Fact, facts_in
from sitegen.notes.ingredients import ingredient_of
from sitegen.notes.note_lines import NoteLine, tidied
from sitegen.notes.values import Desk

Json = str | int | float | bool | None | Sequence["Json"] | Mapping[str, "Json"]

_SCRIPT = "application/ld+json"
_TAG = re.compile(r"<[^<>]{1,500}>")

_UNSAID = {
    "cookTime": "times are worked out from the steps",
    "prepTime": "times are worked out from the steps",
    "totalTime": "times are worked out from the steps",
    "performTime": "times are worked out from the steps",
    "author": "no key of a recipe file holds it",
    "datePublished": "the days of `release` are yours to set",
    "recipeCuisine": "no key of a recipe file holds it",
    "recipeCategory": "write it under `tags` if readers should find it by that",
    "keywords": "write them under `tags` if readers should find it by them",
    "suitableForDiet": "what a recipe does without is worked out",
    "cookingMethod": "no key of a recipe file holds it",
}
_DURATION = re.compile(
    r"P(?:(?P<days>\d+(?:\.\d+)?)D)?(?:T(?:(?P<hours>\d+(?:\.\d+)?)H)?(?:(?P<minutes>\d+(?:\.\d+)?)M)?(?:(?P<seconds>\d+(?:\.\d+)?)S)?)?",
    re.IGNORECASE,
)


class TooDeep(Exception):
    """Values lie in each other deeper than any recipe has them."""


class _Scripts(HTMLParser):
    """Gathers the scripts of a page that hold JSON-LD."""

    def __init__(self) -> None:
        super().__init__(convert_charrefs=True)
        self.found: list[str] = []
        self._inside = False

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        kind = next((value for name, value in attrs if name == "type"), "") or ""
        self._inside = tag == "script" and kind.partition(";")[0].strip().casefold() == _SCRIPT
        if self._inside:
            self.found.append("")

    def handle_endtag(self, tag: str) -> None:  # noqa: ARG002 (the parser's signature)
        self._inside = False

    def handle_data(self, data: str) -> None:
        if self._inside:
            self.found[-1] += data


def scripts_in(html: str) -> list[str]:
    """The texts of a page's scripts of JSON-LD, in order; none for a page that cannot be read."""
    parser = _Scripts()
    try:
        parser.feed(html)
        parser.close()
    except (AssertionError, ValueError):
        return []
    return parser.found


def json_in(text: str) -> Json:
    """The value that a text is. Raises TooDeep, and ValueError for what is no JSON."""
    if _depth(text) > limits.DEPTH:
        raise TooDeep
    return json.loads(text, parse_int=str, parse_float=str, parse_constant=str)  # type: ignore[no-any-return]


def _depth(text: str) -> int:
    """How deep brackets lie in each other, those in strings left out."""
    deepest = depth = 0
    for found in re.finditer(r'"(?:[^"\\]|\\.)*"|[\[{]|[\]}]', text):
        mark = found.group(0)
        depth += 1 if mark in "[{" else -1 if mark in "]}" else 0
        deepest = max(deepest, depth)
    return deepest


def recipe_in(value: Json) -> Mapping[str, Json] | None:
    """The first Recipe of a value: itself, one of a list or of its `@graph`, or one that lies in it."""
    waiting: list[Json] = [value]
    while waiting:
        here = waiting.pop(0)
        if isinstance(here, Mapping):
            if "recipe" in [kind.rpartition("/")[2].casefold() for kind in _texts(here.get("@type"))]:
                return here
            waiting += here.values()
        elif isinstance(here, Sequence) and not isinstance(here, str):
            waiting += here
    return None


def book_of_recipe(recipe: Mapping[str, Json], source: str, desk: Desk) -> Book:
    """source: the text of the file, in which each of the recipe's texts has its line."""
    reading = _Reading(source, desk)
    book = reading.book
    for name in _texts(recipe.get("name"))[:1]:
        book.title_line = reading.line(name)
        book.title = book.title_line.text[:110]
    for words in _texts(recipe.get("description"))[:1]:
        reading.add(book.top, words)
    for words in [*_texts(recipe.get("recipeYield")), *_texts(recipe.get("yield"))]:
        reading.portions(words)
    for key, reason in _UNSAID.items():
        for words in _texts(recipe.get(key)):
            reading.aside(words, reason)
    ingredients = _texts(recipe.get("recipeIngredient")) or _texts(recipe.get("ingredients"))
    if ingredients:
        book.groups.append(Group(""))
    for words in ingredients:
        reading.ingredient(words)
    reading.instructions(recipe.get("recipeInstructions"), "")
    return book


class _Reading:
    """One recipe while it becomes a book."""

    def __init__(self, source: str, desk: Desk) -> None:
        self.book = Book()
        self._source = source
        self._desk = desk

    def line(self, words: str) -> NoteLine:
        """The text as a line of the notes, with the line of the file where it stands."""
        text = tidied(_TAG.sub(" ", unescape(words)))
        index = self._source.find(words[:40]) if words else -1
        number = self._source.count("\n", 0, max(index, 0)) + 1
        line = NoteLine(len(self.book.lines) + 1, text, text, place=number)
        self.book.lines.append(line)
        return line

    def add(self, where: list[Said], words: str) -> None:
        for paragraph in re.split(r"<br ?/?>|</p>|\n+", words):
            if _says_something(paragraph):
                line = self.line(paragraph)
                where.append(Said(line.text, line))

    def portions(self, words: str) -> None:
        line = self.line(words)
        text = line.text if re.match(r"\D", line.text) else f"makes {line.text}"
        facts = facts_in(text, self._desk)
        count = text.removeprefix("makes ")
        if count.isdigit():
            bare = self._bare_yield(count)
            if bare is None:
                return
            facts = bare
        self.book.facts += [Said(line.text, line, fact=fact) for fact in facts if self._is_new(fact.key)]
        if not facts:
            self.book.facts.append(Said(line.text, line, fact=Fact("", reason="no yield that can be told")))

    def _bare_yield(self, count: str) -> tuple[Fact, ...] | None:
        """A figure alone counts what the title names in the plural, else portions; None if both are known."""
        last = self.book.title.split()[-1].casefold() if self.book.title else ""
        if self._is_new("makes") and last.isalpha() and last.endswith("s"):
            return (Fact("makes", f"{count} {last}"),)
        return (Fact("serves", count),) if self._is_new("serves") else None

    def _is_new(self, key: str) -> bool:
        return all(one.fact is None or one.fact.key != key for one in self.book.facts)

    def aside(self, words: str, reason: str) -> None:
        said = duration_words(words) or words
        line = self.line(said)
        if line.text:
            self.book.facts.append(Said(line.text, line, fact=Fact("", reason=reason)))

    def ingredient(self, words: str) -> None:
        if not _says_something(words):
            return
        line = self.line(words)
        found = ingredient_of(line.text, self._desk)
        is_heading = found is None and line.text.rstrip().endswith(":")
        if is_heading:
            self.book.groups.append(Group(line.text.rstrip(" :")[:100], line))
        else:
            self.book.groups[-1].said.append(Said(line.text, line, found))

    def instructions(self, value: Json, title: str, depth: int = 0) -> None:
        """Text, HowToStep, HowToSection, or a list of them."""
        if depth > limits.DEPTH:
            return
        if isinstance(value, str):
            for paragraph in re.split(r"<br ?/?>|</(?:p|li)>|\n+", value):
                self._step(paragraph, title)
        elif isinstance(value, Mapping):
            self._how_to(value, title, depth)
        elif isinstance(value, Sequence):
            for one in value:
                self.instructions(one, title, depth + 1)

    def _how_to(self, value: Mapping[str, Json], title: str, depth: int) -> None:
        below = value.get("itemListElement") or value.get("steps")
        names = _texts(value.get("name"))
        if below is not None:
            section = tidied(unescape(names[0]))[:100] if names else title
            heading = self.line(section) if names else None
            self.book.blocks.append(Block(section, heading, groups_before=len(self.book.groups)))
            self.instructions(below, section, depth + 1)
            return
        texts = _texts(value.get("text")) or _texts(value.get("description")) or names
        for words in texts[:1]:
            self.instructions(words, title, depth + 1)

    def _step(self, words: str, title: str) -> None:
        if not _says_something(words):
            return
        if not self.book.blocks or self.book.blocks[-1].title != title:
            self.book.blocks.append(Block(title, groups_before=len(self.book.groups)))
        line = self.line(words)
        self.book.blocks[-1].said.append(Said(line.text, line))


def _says_something(words: str) -> bool:
    return any(letter.isalpha() for letter in _TAG.sub(" ", words))


def _texts(value: Json) -> list[str]:
    """The texts of a value: itself, those of a list, the names and values of things."""
    if isinstance(value, str):
        return [value] if value.strip() else []
    if isinstance(value, Mapping):
        for key in ("name", "@value", "text", "value"):
            if key in value:
                return _texts(value[key]) if not isinstance(value[key], Mapping) else []
        return []
    if isinstance(value, Sequence):
        flat: Iterator[str] = (
            text for one in value[: limits.NOTE_STRINGS] if not _is_list(one) for text in _texts(one)
        )
        return list(flat)
    return []


def _is_list(value: Json) -> bool:
    return isinstance(value, Sequence) and not isinstance(value, str)


def duration_words(text: str) -> str:
    """'PT1H20M' -> '1 h 20 min' (ISO 8601); '' for what is none."""
    found = _DURATION.fullmatch(text.strip())
    if not found or not any(found.groups()):
        return ""
    units = {"days": "days", "hours": "h", "minutes": "min", "seconds": "s"}
    return " ".join(f"{found[key]} {unit}" for key, unit in units.items() if found[key])
