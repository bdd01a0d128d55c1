"""The captions of a film -> a Book: amounts that are said become ingredient lines, work becomes steps.

A skeleton and no more: what a film says once and shows beside cannot be known from its words.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction

from sitegen.film.attribution import IMPLIED_GRAMS, Attributed, attributed
from sitegen.film.marks import About
from sitegen.film.names import name_index
from sitegen.film.phrases import Phrases
from sitegen.film.scene import Scene
from sitegen.film.sentences import Sentence, sentences
from sitegen.film.spoken_amounts import Said as What
from sitegen.film.spoken_amounts import SpokenAmount, spoken_amounts
from sitegen.film.values import Cue
from sitegen.film.words import heard_words
from sitegen.kitchen.recipe import Makes, Recipe
from sitegen.notes.book import Block, Book, Group, Said
from sitegen.notes.figures import NoFigure, span_text
from sitegen.notes.ingredients import ingredient_of
from sitegen.notes.note_lines import NoteLine
from sitegen.notes.number_words import figure_of
from sitegen.notes.values import Lore
from sitegen.source.spoken_words import spoken_words

_NOT_THIS_BAKE = About.ASIDE | About.ADVICE | About.OTHER_BATCH | About.AHEAD | About.LISTING | About.LIST
_NEAR = 2
"""Words between an amount and its name: 'of', 'of the'."""
_NO_RECIPE = Recipe("", "", "", Makes(Fraction(1), "piece"), ())
"""A film is read without a recipe: every name is the larder's."""
_OTHER_BATCH = About.ASIDE | About.ADVICE | About.OTHER_BATCH


@dataclass(frozen=True)
class SpokenNotes:
    """book: what was found. moments: number of a line -> seconds from the start. left_out: sentences."""

    book: Book
    moments: dict[int, int]
    left_out: int


def spoken_notes(cues: Sequence[Cue], lore: Lore) -> SpokenNotes:
    """The amounts, the work and the moments of a film; an empty book of one that speaks of no bake."""
    scene = _scene(cues, lore)
    book = Book()
    moments: dict[int, int] = {}
    if not scene.words:
        return SpokenNotes(book, {}, 0)
    group, block = Group(""), Block("", groups_before=1)
    listed: set[str] = set()
    for text, word in _lines(scene, attributed(scene), lore):
        ingredient = ingredient_of(text, lore)
        if ingredient is not None and ingredient.known and ingredient.name not in listed:
            listed.add(ingredient.name)
            line = _line(book, text, scene.second(word), moments)
            group.said.append(Said(text, line, ingredient))
    work = [one for one in scene.sentences if _is_work(one, scene)]
    for sentence in work:
        text = _said(sentence, scene)
        line = _line(book, text, scene.second(sentence.begin), moments)
        block.said.append(Said(text, line))
    book.groups += [group] if group.said else []
    book.blocks += [block] if block.said else []
    return SpokenNotes(book, moments, len(scene.sentences) - len(work))


def _scene(cues: Sequence[Cue], lore: Lore) -> Scene:
    known, tables = spoken_words(), lore.context.tables
    heard = heard_words(cues)
    words = tuple(word.text for word in heard)
    norms = known.norms(words)
    return Scene(
        recipe=_NO_RECIPE,
        tables=tables,
        written=lore.edition,
        known=known,
        heard=heard,
        words=words,
        norms=norms,
        sentences=sentences(heard, known, Phrases.of(())) if heard else (),
        mentions=name_index(_NO_RECIPE, (), tables.larder, known).mentions(norms),
        amounts=spoken_amounts(words, known, tables.measures),
        begun=(),
    )


def _line(book: Book, text: str, second: int, moments: dict[int, int]) -> NoteLine:
    """A line of the book; its words are none of the notes', so that nothing is missed of them."""
    line = NoteLine(len(book.lines) + 1, text, "")
    book.lines.append(line)
    moments[line.number] = second
    return line


def _lines(scene: Scene, said: Sequence[Attributed], lore: Lore) -> Iterator[tuple[str, int]]:
    """Each amount with its ingredient as one would write it, and the word that begins it."""
    for one in said:
        mention, amount = one.mention, one.amount
        row = lore.context.tables.larder.find(mention.name.row) if mention is not None else None
        is_other = bool(scene.about(amount.begin) & _OTHER_BATCH)
        if row is None or is_other or len(one.parts) > 1 or amount.what not in (What.MEASURE, What.BARE):
            continue
        try:
            figure = span_text(amount.span)
        except NoFigure:
            continue
        is_grams = amount.what is What.BARE and amount.span.low >= IMPLIED_GRAMS and row.piece("") is None
        unit = "g" if is_grams else amount.unit
        name = row.name_in(lore.region)
        name = name if unit else row.counted(name, amount.span.high, lore.region)
        yield " ".join(f"{figure} {unit} {name}".split()), amount.begin


def _is_work(sentence: Sentence, scene: Scene) -> bool:
    """Whether a sentence asks for work on this bake: a verb, and something that it is done to or how long."""
    if sentence.about & _NOT_THIS_BAKE or sentence.end - sentence.begin < 3:
        return False
    words = scene.words[sentence.begin : sentence.end]
    has_verb = any(word in scene.known.imperatives for word in words)
    has_name = any(sentence.begin <= one.begin < sentence.end for one in scene.mentions)
    inside = [one.what for one in scene.amounts if sentence.begin <= one.begin < sentence.end]
    has_figure = any(what is not What.BARE for what in inside)
    return (has_verb and (has_name or has_figure)) or (has_name and What.MEASURE in inside)


def _said(sentence: Sentence, scene: Scene) -> str:
    """The words of a sentence, its figures as one writes them."""
    amounts = {
        one.begin: one
        for one in scene.amounts
        if sentence.begin <= one.begin < sentence.end
        and (one.what is not What.MEASURE or _is_named(one, scene))
    }
    out: list[str] = []
    index = sentence.begin
    while index < sentence.end:
        written = figure_of(amounts[index]) if index in amounts else ""
        out.append(written or scene.words[index])
        index = max(amounts[index].end, index + 1) if written else index + 1
    return " ".join(out)


def _is_named(amount: SpokenAmount, scene: Scene) -> bool:
    """Whether what it is of follows at once; any other amount stays in words."""
    return any(0 <= one.begin - amount.end <= _NEAR for one in scene.mentions_from(amount.end))
