"""What a reader of small texts raises: a stretch of the text that cannot be read, without its file."""

from collections.abc import Callable
from typing import TypeVar

from sitegen.faults import Fault, FaultCode, Place

Value = TypeVar("Value")


class Misread(Exception):
    """A text that says nothing we know.

    code: the row of the catalogue. start, end: the letters of the text that are at fault, end exclusive.
    The caller, who knows where the text stands, makes the Fault.
    """

    def __init__(self, code: FaultCode, sentence: str, way_out: str, start: int, end: int) -> None:
        super().__init__(sentence)
        self.code = code
        self.sentence = sentence
        self.way_out = way_out
        self.start = start
        self.end = end

    def moved(self, by: int) -> "Misread":
        """The same fault of a text that stands `by` letters further on in a longer one."""
        return Misread(self.code, self.sentence, self.way_out, self.start + by, self.end + by)


def read_or_told(
    text: str | None, at: Place, read: Callable[[str], Value], faults: list[Fault]
) -> Value | None:
    """What a text says; None where there is none, or where it cannot be read, which `faults` then tells."""
    if text is None:
        return None
    try:
        return read(text)
    except Misread as problem:
        faults.append(problem.code.fault(at, problem.sentence, problem.way_out))
        return None
