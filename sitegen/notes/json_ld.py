"""A recipe in the vocabulary of schema.org -> a Book.

Sources: schema.org/Recipe, schema.org/HowToStep, schema.org/HowToSection, ISO 8601 durations.
"""

import re
from collections.abc import Mapping, Sequence
from html import unescape

from sitegen import limits
from sitegen.notes.book import Block, Book, Group, Said
from sitegen.notes.facts import NO_KEY, WORKED_OUT, Fact, facts_in
from sitegen.notes.ingredients import ingredient_of
from sitegen.notes.json_values import Json, texts_of
from sitegen.notes.note_headings import component_title
from sitegen.notes.note_lines import NoteLine, tidied
from sitegen.notes.values import Lore
from sitegen.notes.yields_in_notes import counted_in

_TAG = re.compile(r"<[^<>]{1,500}>")
_LINE_ENDS = re.compile(r"<br ?/?>|</(?:p|li)>|\n+")

_ASIDE = {
    "cookTime": WORKED_OUT,
    "prepTime": WORKED_OUT,
    "totalTime": WORKED_OUT,
    "performTime": WORKED_OUT,
    "author": NO_KEY,
    "datePublished": "the days of `release` are yours to set",
    "recipeCuisine": NO_KEY,
    "recipeCategory": "write it under `tags` if readers should find it by that",
    "keywords": "write them under `tags` if readers should find it by them",
    "suitableForDiet": "what a recipe does without is worked out",
    "cookingMethod": NO_KEY,
    "tool": "write them under `tools` of the steps that need them",
}
_DURATION = re.compile(
    r"P(?:(?P<days>\d+(?:\.\d+)?)D)?(?:T(?:(?P<hours>\d+(?:\.\d+)?)H)?(?:(?P<minutes>\d+(?:\.\d+)?)M)?(?:(?P<seconds>\d+(?:\.\d+)?)S)?)?",
    re.IGNORECASE,
)


def book_of_recipe(recipe: Mapping[str, Json], source: str, lore: Lore) -> Book:
    """source: the text of the file, in which each of the recipe's texts has its line."""
    reading = _Reading(source, lore)
    book = reading.book
    for name in texts_of(recipe.get("name"))[:1]:
        book.title_line = reading.line(name)
        book.title = book.title_line.text[:110]
    for words in texts_of(recipe.get("description"))[:1]:
        reading.add(book.top, words)
    yields = [*texts_of(recipe.get("recipeYield")), *texts_of(recipe.get("yield"))]
    for words in sorted(yields, key=str.isdigit):
        reading.portions(words)
    for key, reason in _ASIDE.items():
        for words in texts_of(recipe.get(key)):
            reading.aside(words, reason)
    ingredients = texts_of(recipe.get("recipeIngredient")) or texts_of(recipe.get("ingredients"))
    if ingredients:
        book.groups.append(Group(""))
    for words in (part for text in ingredients for part in _LINE_ENDS.split(text)):
        reading.ingredient(words)
    reading.instructions(recipe.get("recipeInstructions"), "")
    return book


class _Reading:
    """One recipe while it becomes a book."""

    def __init__(self, source: str, lore: Lore) -> None:
        self.book = Book()
        self._source = source
        self._lore = lore

    def line(self, words: str) -> NoteLine:
        """The text as a line of the notes, with the line of the file where it stands."""
        text = tidied(_TAG.sub(" ", unescape(words)))
        index = self._source.find(words[:40]) if words else -1
        number = self._source.count("\n", 0, max(index, 0)) + 1
        line = NoteLine(len(self.book.lines) + 1, text, text, place=number)
        self.book.lines.append(line)
        return line

    def add(self, where: list[Said], words: str) -> None:
        for paragraph in _LINE_ENDS.split(words):
            if _says_something(paragraph):
                line = self.line(paragraph)
                where.append(Said(line.text, line))

    def portions(self, words: str) -> None:
        line = self.line(words)
        text = line.text if re.match(r"\D", line.text) else f"makes {line.text}"
        facts = facts_in(text, self._lore)
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
        """A figure alone counts what the title names in the plural, else portions; None for what is known."""
        known = [one.fact.value.partition(" ")[0] for one in self.book.facts if one.fact]
        if count in known:
            return None
        counted = counted_in(self.book.title)
        if self._is_new("makes") and counted:
            return (Fact("makes", f"{count} {counted}"),)
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
        found = ingredient_of(line.text, self._lore)
        is_heading = found is None and line.text.rstrip().endswith(":")
        if is_heading:
            self.book.groups.append(Group(component_title(line.text.rstrip(" :"))[:100], line))
        else:
            self.book.groups[-1].said.append(Said(line.text, line, found))

    def instructions(self, value: Json, title: str, depth: int = 0) -> None:
        """Text, HowToStep, HowToSection, or a list of them."""
        if depth > limits.DEPTH:
            return
        if isinstance(value, str):
            for paragraph in _LINE_ENDS.split(value):
                self._step(paragraph, title)
        elif isinstance(value, Mapping):
            self._how_to(value, title, depth)
        elif isinstance(value, Sequence):
            for one in value:
                self.instructions(one, title, depth + 1)

    def _how_to(self, value: Mapping[str, Json], title: str, depth: int) -> None:
        below = value.get("itemListElement") or value.get("steps")
        names = texts_of(value.get("name"))[:1]
        if below is not None and "HowToStep" in texts_of(value.get("@type")):
            for name in names:
                self.line(name)
            self.instructions(below, title, depth + 1)
        elif below is not None:
            self._section(names, below, title, depth)
        elif isinstance(value.get("item"), Mapping):
            self.instructions(value["item"], title, depth + 1)
        elif "HowToTip" in texts_of(value.get("@type")):
            for words in texts_of(value.get("text")) or names:
                self.add(self.book.remarks, words)
        else:
            texts = (texts_of(value.get("text")) or texts_of(value.get("description")))[:1]
            for name in names if texts else ():
                self._label(name, texts[0])
            for words in texts or names:
                self.instructions(words, title, depth + 1)

    def _label(self, name: str, text: str) -> None:
        """The name of a step, as a line beside its text where it says more."""
        if name.casefold() not in text.casefold():
            self.line(name)

    def _section(self, names: Sequence[str], below: Json, title: str, depth: int) -> None:
        """A HowToSection, or a list without a name, which goes on with what stands above it."""
        section = title
        for name in names:
            section = component_title(tidied(unescape(name)))[:100]
            self.book.blocks.append(Block(section, self.line(name), groups_before=len(self.book.groups)))
        self.instructions(below, section, depth + 1)

    def _step(self, words: str, title: str) -> None:
        if not _says_something(words):
            return
        if not self.book.blocks or self.book.blocks[-1].title != title:
            self.book.blocks.append(Block(title, groups_before=len(self.book.groups)))
        line = self.line(words)
        self.book.blocks[-1].said.append(Said(line.text, line))


def _says_something(words: str) -> bool:
    return any(letter.isalpha() for letter in _TAG.sub(" ", words))


def duration_words(text: str) -> str:
    """'PT1H20M' -> '1 h 20 min' (ISO 8601); '' for what is none."""
    found = _DURATION.fullmatch(text.strip())
    if not found or not any(found.groups()):
        return ""
    units = {"days": "days", "hours": "h", "minutes": "min", "seconds": "s"}
    return " ".join(f"{found[key]} {unit}" for key, unit in units.items() if found[key])
