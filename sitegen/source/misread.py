"""What a reader of small texts raises: a stretch of the text that cannot be read, without its file."""

from sitegen.faults import FaultCode


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
