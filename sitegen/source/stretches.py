"""A stretch of a text that remembers where it stands, so that a fault can point at the word."""

from dataclasses import dataclass


@dataclass(frozen=True)
class Stretch:
    """text: without blanks at either end. start: the index of its first letter in the whole text."""

    text: str
    start: int

    @property
    def end(self) -> int:
        """The index behind its last letter in the whole text."""
        return self.start + len(self.text)

    @property
    def words(self) -> str:
        """The text with each run of blanks as one."""
        return " ".join(self.text.split())

    def after(self, index: int) -> "Stretch":
        """What follows an index, less the blanks around it."""
        return self.between(index, len(self.text))

    def between(self, begin: int, end: int) -> "Stretch":
        """What stands between two indices, less the blanks around it."""
        part = self.text[begin:end]
        return Stretch(part.strip(), self.start + begin + len(part) - len(part.lstrip()))
