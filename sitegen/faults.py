"""Places, faults and severities: values only, the one leaf that any room may import.

in:        nothing
out:       Place, Severity, Fault
imports:   the standard library
never:     prints, reads files, or knows a rule of the trade
"""

from dataclasses import dataclass
from enum import StrEnum


class Severity(StrEnum):
    """How much a fault matters: an error stops a publish, advice never does."""

    ERROR = "error"
    ADVICE = "advice"


@dataclass(frozen=True, order=True)
class Place:
    """Where something stands in a file.

    file: path as shown to the baker, relative to the folder that holds `content/`.
    line, column: counted from 1; both 0 where the fault is about the file as a whole.
    length: how many characters the mark covers, at least 1 (0 for a whole file).
    """

    file: str
    line: int = 0
    column: int = 0
    length: int = 0


@dataclass(frozen=True)
class Fault:
    """One thing that is wrong, said in a baker's words.

    code: its name in the catalogue (`sitegen proof --explain CODE`), such as `unknown-ingredient`.
    sentence: what is wrong, without a full stop at the end.
    way_out: what to do or what was probably meant; empty where nobody can know.
    """

    place: Place
    code: str
    sentence: str
    way_out: str = ""
    severity: Severity = Severity.ERROR


@dataclass(frozen=True)
class FaultCode:
    """A row of the catalogue of faults.

    meaning: what the code says and why it matters, one or two sentences.
    good, bad: text of a sample file that is right, and the same text gone wrong so that it provokes
    the code; cure: how to mend it, in a sentence. file: which file of a school it stands in
    ('recipe.yaml', 'site.yaml', 'larder.yaml', 'prices.yaml', 'order.yaml', 'tutorial.md', or the list of
    names 'subscribers.csv'), or '' where no text can show it.
    """

    code: str
    severity: Severity
    meaning: str
    cure: str
    good: str = ""
    bad: str = ""
    file: str = "recipe.yaml"

    def fault(self, place: Place, sentence: str, way_out: str = "") -> Fault:
        """A fault of this code.

        way_out: the code's cure where nothing nearer is known.
        """
        cure = self.cure[:1].lower() + self.cure[1:].rstrip(".")
        return Fault(place, self.code, sentence, way_out or cure, self.severity)
