"""What readers choose recipes by, as the cards of a drawer: each word with the recipes that it leads to."""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass

from sitegen.press import addresses
from sitegen.press.entries import IndexEntry
from sitegen.sheet.facet_values import KIND, TIME, TIN, WITHOUT, WORK, Facet


@dataclass(frozen=True)
class DrawerWord:
    """One word to choose by. title: on its card, 'nuts'. says: by itself, 'without nuts'.

    number: how many recipes it leads to, in figures. entries: these, in the order of the list.
    """

    group: str
    key: str
    title: str
    says: str
    number: str
    entries: tuple[IndexEntry, ...]

    @property
    def place(self) -> str:
        """Its name on the page of contents, for links."""
        return f"{self.group}-{self.key}"

    @property
    def path(self) -> str:
        """Where the same recipes are listed without a script: a tag has a page of its own."""
        return addresses.tag_page(self.key) if self.group == KIND else f"{addresses.CONTENTS}#{self.place}"


Drawer = Mapping[str, tuple[DrawerWord, ...]]


def drawer(entries: Sequence[IndexEntry]) -> Drawer:
    """Group -> its words: those that at least one recipe has; kinds by the alphabet, others by their table.

    Tags that share an address are one word.
    """
    found: dict[tuple[str, str], list[IndexEntry]] = {}
    for entry in entries:
        for key in dict.fromkeys((mark.group, mark.key) for mark in entry.marks):
            found.setdefault(key, []).append(entry)
    marks = {mark for entry in entries for mark in entry.marks}
    return {
        group: tuple(
            _word(mark, tuple(found[group, mark.key]))
            for mark in _first_of_each_key(mark for mark in marks if mark.group == group)
        )
        for group in (KIND, TIME, WORK, TIN, WITHOUT)
    }


def _first_of_each_key(marks: Iterable[Facet]) -> Sequence[Facet]:
    first = {mark.key: mark for mark in sorted(marks, key=_order, reverse=True)}
    return sorted(first.values(), key=_order)


def _order(mark: Facet) -> tuple[int, str, str]:
    return mark.place, mark.title.casefold(), mark.title


def _word(mark: Facet, found: tuple[IndexEntry, ...]) -> DrawerWord:
    says = f"without {mark.title}" if mark.group == WITHOUT else mark.title
    return DrawerWord(mark.group, mark.key, mark.title, says, str(len(found)), found)
