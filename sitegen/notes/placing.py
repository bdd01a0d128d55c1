"""Which component each step of the method belongs to: by headings, else by the ingredients that it names.

Steps without a heading of their own are laid along the components by dynamic programming: a step earns
what it names of a component, and to go from one component to another costs something, so that a step that
names nothing stays where its neighbours are.
"""

import re
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field

from sitegen.film.stems import stem
from sitegen.notes.best_way import best_way
from sitegen.notes.book import Block, Book, Group, Said
from sitegen.notes.group_words import making_of
from sitegen.notes.sentences import sentences
from sitegen.notes.verbs import words_of
from sitegen.notes.word_table import note_words

_TURN, _TURN_BACK = 0.8, 1.2
"""What it costs to go on to a later component, and back to an earlier one."""
_TITLE, _PURPOSE = 0.5, 1.5
"""What a title earns that is merely named, and what 'for the glaze' does: a step may put it there."""
_LONGEST_NAME = 4
"""Words of an ingredient's name."""
_MANY_SENTENCES = 3
"""From here on a paragraph is laid sentence by sentence."""
_LATER_START = 0.3
"""What it costs to begin with a later component, for each that is passed over."""
_TOLD = 50.0
"""What it earns a component that a step names itself: 'Top: warm the jam'."""
_PREFIX = re.compile(r"(?P<title>[^\W\d][\w' -]{1,28}?) ?[:–—] +(?=\S)")


@dataclass
class Placed:
    """A component: its group of ingredients, None where it has none, and its steps in order.

    title: '' where the notes have none. headings: the stretches of the method whose headings name it.
    """

    title: str
    group: Group | None = None
    said: list[Said] = field(default_factory=list)
    headings: list[Block] = field(default_factory=list)


def placed(book: Book) -> list[Placed]:
    """The components in the order of the notes, each with its steps.

    Where all ingredients stand in one list without a title, headings of the method are its stages.
    """
    parts = [Placed(group.title, group) for group in book.groups]
    is_one_list = len(parts) == 1 and not parts[0].title
    seen = 0
    for block in book.blocks:
        named = _titled(block.title, parts) if block.title else None
        if named is None and is_one_list:
            named = parts[0]
        elif block.title and named is None:
            named = Placed(block.title)
            parts.append(named)
        if named is not None:
            named.headings += [] if is_one_list else [block]
            _lay(block.said, [named], named, parts)
        else:
            near = parts[seen : block.groups_before] or parts[: block.groups_before] or parts
            _lay(block.said, near, None, parts)
        seen = block.groups_before
    return parts


def _lay(said: Sequence[Said], near: list[Placed], named: Placed | None, parts: list[Placed]) -> None:
    """Lays steps along the components near them; sentences of a line that stay together are one text.

    named: the component of the heading, to which all go that name no other. parts: of the notes; may grow.
    """
    if not near:
        near = [Placed("")]
        parts.append(near[0])
    rows, forced = [], []
    before: Placed | None = None
    for one in said if named is not None or len(near) == 1 else _exploded(said):
        text, target = _prefixed(one, parts)
        rows.append(text)
        forced.append(target)
    if named is not None:
        ways = [target or named for target in forced]
    else:
        ways = _best_way([one.text for one in rows], near, forced)
    for row, target in zip(rows, ways, strict=True):
        last = target.said[-1] if target.said else None
        if last is not None and last.line == row.line and target is before:
            target.said[-1] = Said(f"{last.text} {row.text}", row.line)
        else:
            target.said.append(row)
        before = target


def _exploded(said: Iterable[Said]) -> Iterator[Said]:
    """A long paragraph by its sentences: it may speak of one component after the other."""
    for one in said:
        parts = sentences(one.text)
        is_long = len(parts) >= _MANY_SENTENCES and not one.line.number_said
        yield from (Said(part, one.line) for part in parts) if is_long else (one,)


def _prefixed(one: Said, parts: Sequence[Placed]) -> tuple[Said, Placed | None]:
    """'Top: warm the jam' belongs to the component 'Top'."""
    found = _PREFIX.match(one.text)
    target = _titled(found["title"], parts) if found else None
    if found is None or target is None:
        return one, None
    return Said(one.text[found.end() :], one.line), target


def _titled(title: str, parts: Sequence[Placed]) -> Placed | None:
    """The component of that title: the same words, or the same last word, or all of its words."""
    folded = title.casefold().strip()
    for part in parts:
        if part.title.casefold() == folded:
            return part
    words = set(re.findall(r"\w+", folded)) - {"the", "for", "to", "make"}
    for part in parts:
        own = set(re.findall(r"\w+", part.title.casefold()))
        if own and words and (own <= words or words <= own):
            return part
    near = [part for part in parts if words & set(re.findall(r"\w{4,}", part.title.casefold()))]
    return near[0] if len(near) == 1 else None


def _best_way(texts: Sequence[str], near: list[Placed], forced: Sequence[Placed | None]) -> list[Placed]:
    """The component of each step; where there is only one, all are its own."""
    if len(near) == 1 and not any(forced):
        return near * len(texts)
    choices = [*near, *(one for one in forced if one is not None and one not in near)]
    forms = _forms(choices)
    worths = []
    for text, target in zip(texts, forced, strict=True):
        worths.append(_earned(text, choices, forms))
        if target is not None:
            worths[-1][choices.index(target)] += _TOLD
    start = [_LATER_START * index for index in range(len(choices))]
    return [choices[at] for at in best_way(worths, start, _turn)]


def _turn(there: int, here: int, _: int) -> float:
    return 0.0 if there == here else _TURN if here > there else _TURN_BACK


def _forms(choices: Sequence[Placed]) -> Mapping[str, frozenset[int]]:
    """Every name by which a step may call an ingredient, in stems -> the components that have it."""
    found: dict[str, set[int]] = {}
    for index, part in enumerate(choices):
        for one in part.group.said if part.group else ():
            if one.ingredient is None:
                continue
            words = one.ingredient.name.casefold().split()
            names = {" ".join(words[begin:]) for begin in range(len(words))}
            names |= {words[0]} if words[0] not in note_words().weak_words else set()
            for name in names:
                found.setdefault(" ".join(map(stem, name.split())), set()).add(index)
    return {name: frozenset(places) for name, places in found.items()}


def _earned(text: str, choices: Sequence[Placed], forms: Mapping[str, frozenset[int]]) -> list[float]:
    """What a step names of each component: the longest names first, and what several have counts for less."""
    words = [stem(word) for word in words_of(text)]
    worth = [0.0] * len(choices)
    seen: set[str] = set()
    index = 0
    while index < len(words):
        for length in range(min(_LONGEST_NAME, len(words) - index), 0, -1):
            raw = " ".join(words[index : index + length])
            if raw in forms:
                if raw not in seen:
                    for place in forms[raw]:
                        worth[place] += 1 / len(forms[raw])
                seen.add(raw)
                index += length
                break
        else:
            index += 1
    folded = text.casefold()
    for place, part in enumerate(choices):
        title = part.title.casefold()
        if title and (_stands_in(f"for the {title}", folded) or making_of(title, text)):
            worth[place] += _PURPOSE
        elif title and _stands_in(title, folded):
            worth[place] += _TITLE
    return worth


def _stands_in(words: str, text: str) -> bool:
    one = re.escape(words.removesuffix("s"))
    return re.search(rf"(?<!\w){one}s?(?!\w)", text) is not None
