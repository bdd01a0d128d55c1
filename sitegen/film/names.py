"""What a film may name: the recipe's ingredient lines, its components, and what else the larder has."""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field

from sitegen.film.phrases import Phrases
from sitegen.film.stems import stem
from sitegen.film.vocabulary import SpokenWords
from sitegen.film.words import tokens
from sitegen.kitchen.larder import Ingredient, Larder
from sitegen.kitchen.method import Words
from sitegen.kitchen.recipe import Component, IngredientLine, PartLine, Recipe

LONGEST_NAME = 5
"""Words that a name is looked for in; one name may be heard as several words ('butter milk')."""
LEAST_LETTERS = 3

LineKey = tuple[int, int]
"""Number of the component in the recipe and of the line in the component, from 0."""


@dataclass(frozen=True)
class Name:
    """What a word or phrase stands for.

    lines: of the recipe; full: those of them whose whole name it is. components: titles that it is.
    row: key of a row of the larder that no line has; '' for none. doubtful: heard as a word that means
    something else as well.
    """

    lines: frozenset[LineKey] = frozenset()
    full: frozenset[LineKey] = frozenset()
    components: frozenset[str] = frozenset()
    row: str = ""
    doubtful: bool = False


@dataclass(frozen=True)
class Mention:
    """A name where it is said: words [begin, end)."""

    name: Name
    begin: int
    end: int


@dataclass(frozen=True)
class NameIndex:
    """All names by their letters: 'buttermilk' and 'butter milk' are the same."""

    by_letters: Mapping[str, Name] = field(hash=False)

    def mentions(self, norms: Sequence[str]) -> tuple[Mention, ...]:
        """Every name in a row of normed words, the longest first at each place, none within another."""
        found = []
        index, last = 0, len(norms)
        while index < last:
            letters, best = "", None
            for end in range(index + 1, min(index + LONGEST_NAME, last) + 1):
                letters += norms[end - 1]
                name = self.by_letters.get(letters)
                if name is not None:
                    best = Mention(name, index, end)
            if best is not None:
                found.append(best)
            index = best.end if best is not None else index + 1
        return tuple(found)


def name_index(recipe: Recipe, bases: Iterable[Recipe], larder: Larder, known: SpokenWords) -> NameIndex:
    """All names that a film of the recipe may say. bases: the recipes that it draws on, at any depth."""
    builder = _Builder(larder, known)
    for number, component in enumerate(recipe.components):
        builder.take_component(number, component)
    builder.take_quiet(recipe, bases)
    builder.take_larder()
    return NameIndex(builder.names)


def other_recipes(recipe: Recipe, titles: Iterable[str], known: SpokenWords) -> Phrases:
    """How other recipes are called: 'the brownies', 'plum cake' for 'Plum and cardamom layer cake'; not by
    what is ours.

    titles: of all recipes of the school.
    """
    texts = [recipe.title, recipe.makes.noun, *(component.title for component in recipe.components)]
    texts += [line.text for component in recipe.components for line in component.lines]
    own = "|".join(" ".join(tokens(text)) for text in texts)
    found: set[str] = set()
    for title in titles:
        words = [word for word in tokens(title) if stem(word) not in known.little]
        if title == recipe.title or not words:
            continue
        noun = words[-1]
        pairs = {f"{word} {noun}" for word in words[:-1]}
        found.update(pair for pair in pairs | {pair.removesuffix("s") for pair in pairs} if pair not in own)
        if noun.endswith("s") and noun not in own:
            found.add(f"the {noun}")
    return Phrases.of(found)


class _Builder:
    """names grow, the recipe's own first."""

    def __init__(self, larder: Larder, known: SpokenWords) -> None:
        self.names: dict[str, Name] = {}
        self._larder = larder
        self._known = known
        self._rows: set[str] = set()
        self._quiet: set[str] = set()
        self._quiet_rows: set[str] = set()

    def take_component(self, number: int, component: Component) -> None:
        titles = [(component.title, frozenset[LineKey]())]
        for index, line in enumerate(component.lines):
            if isinstance(line, IngredientLine):
                self._take_line((number, index), line)
            else:
                titles.append((line.source, frozenset({(number, index)})))
        for title, lines in titles:
            for letters, is_full in self._endings(title):
                self._join(letters, lines, lines if is_full else frozenset(), frozenset({title}))

    def take_quiet(self, recipe: Recipe, bases: Iterable[Recipe]) -> None:
        """Ingredients that are no news on film: those of base recipes, and what the method speaks of."""
        for base in bases:
            for line in _ingredient_lines(base):
                for choice in line.choices:
                    self._quiet.update(self._letters(choice.name))
                    self._quiet_rows.add(choice.ingredient)
        for text in _prose_of(recipe):
            norms = self._known.norms(tokens(text))
            for begin in range(len(norms)):
                letters = ""
                for word in norms[begin : begin + LONGEST_NAME]:
                    letters += word
                    self._quiet.add(letters)

    def take_larder(self) -> None:
        """What no line has; what is no news is named too, so that icing sugar is not taken for 'sugar'."""
        for row in self._larder.ingredients:
            if row.key in self._rows:
                continue
            for name in _names_of(row):
                for letters in self._letters(name):
                    if letters not in self.names:
                        is_quiet = row.key in self._quiet_rows or letters in self._quiet
                        self.names[letters] = Name(row="" if is_quiet else row.key)

    def _take_line(self, key: LineKey, line: IngredientLine) -> None:
        lines = frozenset({key})
        for choice in line.choices:
            self._rows.add(choice.ingredient)
            row = self._larder.find(choice.ingredient) if choice.ingredient else None
            names = {choice.name, *(_names_of(row) if row else ())}
            if choice.part:
                names |= {f"{name} {choice.part}" for name in names} | {choice.part}
            for name in names:
                for letters, is_full in self._endings(name):
                    self._join(letters, lines, lines if is_full else frozenset(), frozenset())
            for name in names:
                for heard in self._known.may_be.get(name, ()):
                    for letters in self._letters(heard):
                        if letters not in self.names:
                            self.names[letters] = Name(lines=lines, full=lines, doubtful=True)

    def _join(
        self, letters: str, lines: frozenset[LineKey], full: frozenset[LineKey], components: frozenset[str]
    ) -> None:
        old = self.names.get(letters, Name())
        self.names[letters] = Name(old.lines | lines, old.full | full, old.components | components)

    def _endings(self, name: str) -> Iterator[tuple[str, bool]]:
        """The name, and what is left of it without its first words: 'light muscovado sugar', 'sugar'."""
        norms = self._known.norms(tokens(name))
        for begin in range(len(norms)):
            rest = norms[begin:]
            is_weak = begin > 0 and (rest[0] in self._known.weak_heads or rest[0] in self._known.little)
            letters = "".join(rest)
            if not is_weak and len(letters) >= LEAST_LETTERS:
                yield letters, begin == 0
                yield from ((other, begin == 0) for other in self._misheard(letters))

    def _misheard(self, letters: str) -> Iterator[str]:
        """A name of which a part is a word that is heard for another: 'sun flower oil'."""
        for heard, meant in self._known.heard_as.items():
            if heard in letters:
                yield letters.replace(heard, meant)

    def _letters(self, name: str) -> Iterator[str]:
        letters = "".join(self._known.norms(tokens(name)))
        if len(letters) >= LEAST_LETTERS:
            yield letters


def _names_of(row: Ingredient) -> tuple[str, ...]:
    names = (row.key, *row.names.values(), *row.aliases, row.plural, *row.plurals.values())
    return tuple(name for name in names if name)


def _ingredient_lines(recipe: Recipe) -> Iterator[IngredientLine]:
    for component in recipe.components:
        for line in component.lines:
            if isinstance(line, IngredientLine):
                yield line


def _prose_of(recipe: Recipe) -> Iterator[str]:
    yield recipe.title
    yield recipe.notes
    for component in recipe.components:
        for line in component.lines:
            yield f"{line.preparation} {line.note}"
            if isinstance(line, PartLine):
                yield line.source
        for step in component.steps:
            yield step.until
            yield from (part.text for part in step.prose if isinstance(part, Words))
