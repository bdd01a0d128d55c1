"""What a cook should know before the method: short notes, for the end of the ingredient list."""

from collections.abc import Iterator
from dataclasses import dataclass

from sitegen.sheet.values import Sheet


@dataclass(frozen=True)
class CardNote:
    """title: what it is about, set bold before the text. source: who says so. is_allergens: set bold."""

    text: str
    title: str = ""
    source: str = ""
    is_allergens: bool = False

    @property
    def letters(self) -> int:
        return len(f"{self.title} {self.text} ({self.source})")


def notes_before(sheet: Sheet) -> tuple[CardNote, ...]:
    """Allergens, what could not be worked out, measures, substitutes, and cautions that are not red."""
    return tuple(_notes(sheet))


def _notes(sheet: Sheet) -> Iterator[CardNote]:
    if sheet.allergens:
        yield CardNote(" ".join(sheet.allergens), is_allergens=True)
    yield from (CardNote(sentence, "Not worked out.") for sentence in sheet.unknowns)
    yield from map(CardNote, filter(None, (*sheet.batch_notes, sheet.egg_note, sheet.measure_note)))
    for swap in sheet.swaps:
        title = f"If you cannot get {swap.instead_of}:"
        yield CardNote(f"{swap.use}. {swap.changes}".strip(), title, swap.reason)
    for caution in sheet.cautions:
        if caution.level != "red":
            yield CardNote(caution.text, f"{caution.title}.", caution.source)
