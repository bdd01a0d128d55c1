"""Untidy text -> its lines, each without bullets, numbers and marks, and what it looked like before."""

import re
import unicodedata
from collections.abc import Iterator
from dataclasses import dataclass

from sitegen.notes.number_patterns import FIGURE
from sitegen.notes.unwrapping import unwrapped
from sitegen.notes.verbs import begins_with_verb, has_verb
from sitegen.notes.word_table import note_words

_BLANKS = re.compile(r"[\s\u00a0\u2000-\u200a\u202f\u205f\u3000]+")
_QUOTES = str.maketrans(
    {"’": "'", "‘": "'", "´": "'", "`": "'", "“": '"', "”": '"', "º": "°", "˚": "°", "−": "-"}
)
_BULLET = re.compile(
    rf"(?:(?:[-–—•·▪▫●○◦‣∙⁃*+□☐☑✓✔»>~]|\[[ xX]?\])(?:\s+|$))+|[-–—•·▪▫●○◦‣∙⁃□☐☑✓✔»](?=[^\W\d_]|{FIGURE})"
)
_NUMBER = re.compile(
    r"(?:step )?\(?(\d{1,2})(?:[.):]|\s[-–—])(?:\s+|(?=[^\W\d_]{2}))"
    rf"|([a-h])[.)] (?=[A-Z]|{FIGURE})",
    re.IGNORECASE,
)
_BARE_NUMBER = re.compile(r"(\d{1,2}) (?=[A-Z][a-z]+ )")
_GLUED = re.compile(
    r"(?<=[a-z]{3})(?=\d)|(?<=[a-z]{2},)(?=[a-z])|(?<=[a-z]{2})(?=[+&(][a-z\d])|(?<=[+])(?=[a-z])",
    re.IGNORECASE,
)
"""Where a blank was left out: 'bake9 min', 'chopped,sifted', 'butter+sugar'."""
_LEADERS = re.compile(r"(?:\s?[._·]){3,}\s*(?=\d)")
"""Dots that lead from a name to its amount."""
_KEYCAP = re.compile(r"(\d)\ufe0f?\u20e3\s*")
_SYMBOLS = ("So", "Sk", "Mn", "Me")
_COLUMNS = re.compile(rf"\t|\s{{3,}}|(?<=[^\s.!?,;:])\s{{2}}(?={FIGURE})")
_STEP_WORD = re.compile(r"step \d{1,2}\s*[-–—:.]?\s*", re.IGNORECASE)
_MARKDOWN_HEADING = re.compile(r"#{1,6}\s+(?P<words>.*?)\s*#*")
_EMPHASIS = re.compile(r"(\*\*\*|\*\*|__|\*(?=\S)|(?<!\w)_(?=\S))(.+?)\1")
_LINK = re.compile(r"!?\[([^\]]*)\]\([^)\s]*\)")
_TABLE = re.compile(r"\|.*\|")
_RULE = re.compile(r"[\W_]*")


@dataclass(frozen=True)
class NoteLine:
    """A line of the notes.

    number: from 1; of a broken line, its first. written: as it stands there, blanks around it left out.
    text: what it says.
    number_said: its own number in a list ('3.'), 0 for none. bullet: whether a mark stood before it.
    in_words: the text before its number words were put in figures, '' where none were.
    place: the line of the file where that is another than the number, else 0.
    rank: of a Markdown heading, 1 to 6, 0 for none. bold: whether all of it was emphasised.
    after_gap: whether an empty line stands before it. cells: its parts, where tabs or bars divide it.
    """

    number: int
    written: str
    text: str
    number_said: int = 0
    bullet: bool = False
    rank: int = 0
    bold: bool = False
    after_gap: bool = False
    cells: tuple[str, ...] = ()
    place: int = 0
    in_words: str = ""

    @property
    def original(self) -> str:
        """What it says, before its number words were put in figures."""
        return self.in_words or self.text


def note_lines(text: str) -> Iterator[NoteLine]:
    """Every line that says something: with a letter or a figure in it."""
    gap = True
    for number, raw, written in unwrapped(text):
        if _RULE.fullmatch(raw):
            gap = True
            continue
        yield _line(number, raw, written, gap)
        gap = False


def _line(number: int, raw: str, written: str, gap: bool) -> NoteLine:
    written = _BLANKS.sub(" ", written).strip()
    cells = _cells(_KEYCAP.sub(r"\1. ", raw))
    text = without_symbols(_plain(tidied(" ".join(cells))))
    is_numbered = len(cells) > 1 and cells[0].isdigit() and len(cells[1].split()) > 2
    if is_numbered:
        return NoteLine(number, written, text.partition(" ")[2], number_said=int(cells[0][:3]), after_gap=gap)
    heading = _MARKDOWN_HEADING.fullmatch(text)
    if heading and heading["words"]:
        words = _plain(heading["words"])
        return NoteLine(number, written, words, rank=text.index(" "), after_gap=gap)
    bullet = _BULLET.match(text)
    body = text[bullet.end() :] if bullet else text
    said = _NUMBER.match(body) or _bare_number(body)
    body = body[said.end() :] if said else _STEP_WORD.sub("", body, count=1)
    plain = _plain(body)
    return NoteLine(
        number=number,
        written=written,
        text=plain or body or text,
        number_said=_number_of(said) if said else 0,
        bullet=bool(bullet),
        bold=bool(_EMPHASIS.fullmatch(tidied(raw).strip("-*• "))) or bool(_EMPHASIS.fullmatch(tidied(raw))),
        after_gap=gap,
        cells=cells if len(cells) > 1 else (),
    )


def without_symbols(text: str) -> str:
    """Without pictures at either end: '✅ 50 g sugar' is a line of a list like any other."""
    begin, end = 0, len(text)
    while begin < end and _is_symbol(text[begin]):
        begin += 1
    while end > begin and _is_symbol(text[end - 1]):
        end -= 1
    return text[begin:end].strip() or text


def _is_symbol(letter: str) -> bool:
    return letter == " " or unicodedata.category(letter) in _SYMBOLS


def _bare_number(body: str) -> re.Match[str] | None:
    """'1 Preheat the oven', '2 For the glaze, melt ...': a number without a mark, before work."""
    found = _BARE_NUMBER.match(body)
    rest = body[found.end() :] if found else ""
    opens = rest.partition(" ")[0].casefold() in note_words().step_openers and has_verb(rest, 12)
    return found if begins_with_verb(rest) or opens else None


def _number_of(said: re.Match[str]) -> int:
    """'3.' is 3, 'b.' is 2."""
    return int(said.group(1)) if said.group(1) else ord(said.group(2)) - ord("a") + 1


def _cells(raw: str) -> tuple[str, ...]:
    """The parts of a line of a table: between tabs, or between bars that stand at both its ends."""
    row = raw.strip()
    if _TABLE.fullmatch(row):
        return tuple(cell.strip() for cell in row.strip("|").split("|") if cell.strip())
    return tuple(cell.strip() for cell in _COLUMNS.split(row) if cell.strip())


def tidied(text: str) -> str:
    """Single blanks, straight quotes, nothing that cannot be seen, and no braces, which have a meaning."""
    seen = "".join(
        letter
        for letter in text.translate(_QUOTES)
        if unicodedata.category(letter) not in ("Cf", "Cs", "Co", "Cn")
    )
    seen = seen.replace("{", "(").replace("}", ")")
    seen = seen if "://" in seen else _GLUED.sub(" ", seen)
    seen = _LEADERS.sub(" – ", seen).replace(" @ ", " at ")
    return _BLANKS.sub(
        " ", "".join(" " if unicodedata.category(one) == "Cc" else one for one in seen)
    ).strip()


def _plain(text: str) -> str:
    """Without the marks of Markdown for emphasis and links."""
    return _EMPHASIS.sub(r"\2", _LINK.sub(r"\1", text)).strip()
