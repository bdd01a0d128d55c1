"""The ingredient that a run of words means: the larder's name, and what stands around it."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import cache

from sitegen.kitchen.larder import Ingredient, Larder
from sitegen.notes.word_table import note_words

_MOST_WORDS = 8
"""Of a name with all that stands around it."""
_JOINTS = frozenset({"and", "but", "then", "very", "&"})


@dataclass(frozen=True)
class Named:
    """name: as the file will have it. before, after: how it comes. row: None where the larder lacks it."""

    name: str
    row: Ingredient | None
    before: str = ""
    after: str = ""

    @property
    def comes(self) -> tuple[str, ...]:
        return tuple(words for words in (self.before, self.after) if words)


def named(words: str, larder: Larder, region: str) -> Named:
    """The longest name of the larder among words of which all others say how it comes."""
    tokens = words.split()
    if 0 < len(tokens) <= _MOST_WORDS:
        for begin, end in _windows(len(tokens)):
            if not (_say_how(tokens[:begin]) and _say_how(tokens[end:])):
                continue
            row, name = _row(tokens[begin:end], larder)
            if row is not None:
                before, after = " ".join(tokens[:begin]).lower(), " ".join(tokens[end:]).lower()
                return Named(_regional(name, row, region), row, before, after)
    return Named(words, None)


def kind_behind(name: str, words: str, larder: Larder) -> str:
    """'flour' with 'plain' behind the comma is 'plain flour'; '' where the larder has no such name."""
    whole = f"{words} {name}"
    return whole if 0 < len(words.split()) <= 2 and larder.find(whole) is not None else ""


def _windows(count: int) -> Iterator[tuple[int, int]]:
    """Every run of words: longer first, and of the same length the later one first."""
    for length in range(count, 0, -1):
        for begin in range(count - length, -1, -1):
            yield begin, begin + length


def _row(tokens: Sequence[str], larder: Larder) -> tuple[Ingredient | None, str]:
    """The row of these words as they stand, with the last first ('cardamom ground'), or of one for many."""
    name = " ".join(tokens)
    turned = " ".join((tokens[-1], *tokens[:-1]))
    said = note_words().said_for.get(name.casefold(), name)
    joined = (
        " ".join((*tokens[:at], "-".join(tokens[at : at + 2]), *tokens[at + 2 :]))
        for at in range(len(tokens) - 1)
    )
    for tried in (name, said, turned, name.replace("-", " "), name.removesuffix("s"), f"{name}s", *joined):
        row = larder.find(tried)
        if row is not None:
            return row, tried
    return None, name


def _regional(name: str, row: Ingredient, region: str) -> str:
    """The region's own name for what another region calls so; any other spelling stays."""
    own = row.name_in(region)
    others = {word.casefold(): place for place, word in row.names.items() if place != region}
    plurals = {word.casefold() for place, word in row.plurals.items() if place != region}
    if name.casefold() in plurals and name.casefold() not in others:
        return row.plurals.get(region) or row.plural or own
    is_foreign = name.casefold() in others and name.casefold() != own.casefold()
    return own if is_foreign else _in_small_letters(name, row)


def _in_small_letters(name: str, row: Ingredient) -> str:
    """'Caster sugar' and 'PLAIN FLOUR' in small letters, unless the larder writes them so."""
    spelled = (row.key, row.plural, *row.names.values(), *row.aliases, *row.plurals.values())
    return name if name in spelled else next((one for one in spelled if one == name.lower()), name)


def _say_how(tokens: Sequence[str]) -> bool:
    """Whether words say how an ingredient comes, and nothing of what it is."""
    index = 0
    while index < len(tokens):
        step = _how_at([token.casefold().strip(",") for token in tokens[index:]])
        if not step:
            return False
        index += step
    return True


def _how_at(tokens: Sequence[str]) -> int:
    """How many words at the head say how it comes."""
    for count in range(min(len(tokens), 3), 0, -1):
        if " ".join(tokens[:count]) in _adjectives():
            return count
    return int(tokens[0] in _JOINTS)


@cache
def _adjectives() -> frozenset[str]:
    return frozenset(word.casefold() for word in note_words().adjectives)


def mentions(words: str, larder: Larder) -> int:
    """How many ingredients of the larder a text names, each of its words taken once."""
    tokens = [token.casefold().strip(".,;:!?()") for token in words.split()]
    index = count = 0
    while index < len(tokens):
        for length in (4, 3, 2, 1):
            if larder.find(" ".join(tokens[index : index + length])):
                count += 1
                index += length
                break
        else:
            index += 1
    return count
