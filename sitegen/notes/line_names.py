"""Which line of a component a step means by its words: by the format's rules, then by the notes' names."""

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass

from sitegen.kitchen.amounts import NOWHERE
from sitegen.kitchen.method import Reference, RefKind
from sitegen.kitchen.recipe import IngredientLine, Line, PartLine
from sitegen.notes.amounts_in_notes import amount_at
from sitegen.notes.names_in_notes import named
from sitegen.notes.values import Lore
from sitegen.notes.word_table import note_words
from sitegen.source.context import Context
from sitegen.source.lines import read_line
from sitegen.source.misread import Misread
from sitegen.source.quantities import amount_at as read_amount
from sitegen.source.references import read_reference
from sitegen.source.stretches import Stretch


@dataclass(frozen=True)
class NamedLine:
    """A line of the component, and the other names that the notes use for it, in small letters."""

    line: Line
    others: tuple[str, ...] = ()


class LineNames:
    """The lines of one component by all their names; lines that only its method has may be added.

    may_name: whether a step may name another component, of that title, without a circle.
    """

    def __init__(
        self,
        title: str,
        lines: Sequence[NamedLine],
        lore: Lore,
        context: Context,
        may_name: Callable[[str], bool],
    ) -> None:
        self._lines = list(lines)
        self._listed = len(self._lines)
        self._title = title
        self._lore = lore
        self._context = context
        self._may_name = may_name

    def add(self, text: str) -> int:
        """The index of a new line, which later steps may name."""
        self._lines.append(NamedLine(read_line(text, NOWHERE, self._context)))
        return len(self._lines) - 1

    def is_listed(self, index: int) -> bool:
        """Whether a line stands among the ingredients of the notes, and was not added."""
        return index < self._listed

    def has(self, ingredient: str) -> bool:
        """Whether a line is of an ingredient, by its name in the larder."""
        return any(
            choice.ingredient == ingredient
            for one in self._lines
            if isinstance(one.line, IngredientLine)
            for choice in one.line.choices
        )

    def name_of(self, index: int) -> str:
        """What stands in braces for a line; '' where every name of it could be another line's."""
        for name in _full_names(self._lines[index].line):
            reference = self.read(name)
            if reference is not None and reference.line == index:
                return name
        return ""

    def inside(self, name: str) -> str | None:
        """What stands in the braces for a name of the notes; None where it means no line and no component."""
        reference = self.read(name)
        return self._by_other_name(name.casefold()) if reference is None else self._regional(name, reference)

    def read(self, inside: str) -> Reference | None:
        """The line or component that stands in braces; None for any other thing."""
        lines = [one.line for one in self._lines]
        try:
            reference = read_reference(Stretch(inside, 0), lines, self._context)
        except Misread:
            return None
        if reference.kind is RefKind.COMPONENT and reference.line is None:
            is_other = reference.target.casefold() != self._title.casefold()
            return reference if is_other and self._may_name(reference.target) else None
        return reference if reference.kind in (RefKind.INGREDIENT, RefKind.COMPONENT) else None

    def is_whole(self, amount: str, index: int) -> bool:
        """Whether an amount in the method is the one of the line."""
        own = self._lines[index].line.amount
        said = amount_at(amount, self._lore)
        if said is None or own is None:
            return False
        try:
            read, _ = read_amount(Stretch(f"{said[0].text} water", 0), self._context)
        except Misread:
            return False
        return read == own

    def _regional(self, name: str, reference: Reference) -> str:
        """The line's own name for what the notes call by another region's: 'cornstarch'."""
        line = self._lines[reference.line].line if reference.line is not None else None
        own = named(name, self._context.tables.larder, self._lore.region)
        is_foreign = own.row is not None and own.name.casefold() != name.casefold()
        return line.chosen.name if is_foreign and isinstance(line, IngredientLine) else name

    def _by_other_name(self, folded: str) -> str | None:
        """By what the notes called it, by its part alone ('zest'), or by a word that only one line has."""
        fits = [
            index for index, one in enumerate(self._lines) if folded in (*one.others, *_short_names(one.line))
        ]
        fits = fits or self._kin(folded)
        return (self.name_of(fits[0]) or None) if len(fits) == 1 else None

    def _kin(self, folded: str) -> list[int]:
        """The lines of the role that a word stands for: 'salt' for sea salt flakes."""
        role = note_words().kin.get(folded)
        return [index for index, one in enumerate(self._lines) if role and role in self._roles(one.line)]

    def _roles(self, line: Line) -> frozenset[str]:
        if not isinstance(line, IngredientLine):
            return frozenset()
        row = self._context.tables.larder.find(line.chosen.ingredient)
        return row.roles if row is not None else frozenset()


def _full_names(line: Line) -> Iterator[str]:
    """What may stand in braces for a line, the best first: 'zest of lemon', 'lemon', 'large egg'."""
    if isinstance(line, PartLine):
        yield line.source
        return
    chosen = line.chosen
    if chosen.part:
        yield f"{chosen.part} of {chosen.name}"
    yield chosen.name
    yield f"{chosen.size} {chosen.name}".strip()


def _short_names(line: Line) -> Iterator[str]:
    """What a step may call a line for short: its last words, or the part that is taken of it."""
    if isinstance(line, PartLine):
        return
    words = line.chosen.name.casefold().split()
    for begin in range(1, len(words)):
        yield " ".join(words[begin:])
    if len(words) > 1 and words[0] not in note_words().weak_words:
        yield words[0]
    if line.chosen.part:
        yield f"{line.chosen.ingredient} {line.chosen.part}"
        yield line.chosen.part
        yield f"{line.chosen.part}s"
