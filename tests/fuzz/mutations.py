"""Slips of a pen, small and large, on a text that a baker could have written."""

import re
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from random import Random

from sitegen.source.models import RecipeFile, SiteFile, StepFile
from tests.fuzz.proving_school import FILES, SAMPLE

CONTENT = Path(__file__).parent.parent.parent / "content"
MARKS = (
    *"{}[]:#'\"\n\t*!|>%0/-,\\é€&@`~^()<=+_.;?½²١Ⅷ\u2028\u00a0\u0301\U0001f36a",
    ": ", " # ", "\n  ", "- ", "1/0", ", ", "half of ", "---\n", "...\n", "{", "}", "{{", " or ",
    ", optional",
    " of ", "zest of ", "the rest of ", "a ", "%YAML 1.2\n", "<<: ", "? ", "![a](b.jpg)", "\r\n", "\ufeff",
)  # fmt: skip
FIGURES = (
    "0", "1", "-1", "00", "0.5", ".5", "1.", "1/3", "3/0", "0/1", "1 1/2", "½", "1½", "²", "١٢", "1e9",
    "1e999", "999999999", "9" * 12, "9" * 110, "0.000001", "0.0000001", "1,5", "1,500", "10-12", "12-10",
    "1-1",
    "2 to 3", "nan", "inf", "1_000", "0x10", "1:30", "∞", "−3", "a dozen", "half", "a",
)  # fmt: skip
WORDS = (
    "g", "kg", "ml", "l", "tsp", "tbsp", "cup", "oz", "lb", "fl oz", "pinch", "sheet", "packet", "cm", "in",
    "mm", "C", "F", "fan", "conventional", "gas", "min", "h", "days", "s", "medium eggs", "egg whites",
    "egg yolks",
    "plain flour", "caster sugar", "unsalted butter", "water", "fine salt", "lemons", "instant yeast",
    "honey",
    "dark rum", "Bay sponge", "Base buttercream", "all of Bay sponge", "1/3 of Bay custard", "hob", "fridge",
    "freezer", "yes", "no", "null", "~", "true", "2026-07-03", "2026-02-30", "0001-01-01", "9999-12-31",
    "muffin 12", "two 20 cm round", "900 g loaf", "23 cm square", "20 x 30 cm rectangular", "3 litre bowl",
    "double", "times 3/2", "using 200 g butter", "24 cupcakes", "1 cupcake", "12 rolls of 85 g dough",
    "everything", "teaser", "ingredients", "gas 4", "180 C fan", "350 F", "8-12 h", "1 h 30 min", "vegan",
    "gluten-free", "hearth loaf", "creamed cake", "../x.jpg", "/dev/zero", "x" * 130, "é" * 401,
)  # fmt: skip
_NUMBER = re.compile(r"\d+(?:[./]\d+)?")
_WORD = re.compile(r"[^\W\d_][\w-]*")
_VALUE = re.compile(r"(?m)^(\s*(?:- )*[\w-]+: )(.*)$")


@cache
def seeds(kind: str) -> tuple[str, ...]:
    """Files of that kind which a baker wrote: the sample's, then the demo's."""
    first = SAMPLE / FILES[kind]
    patterns = {
        "recipe": "recipes/*/recipe.yaml", "tutorial": "tutorials/*.md", "site": "site.yaml",
        "larder": "larder.yaml", "prices": "prices.yaml", "order": "orders/*.yaml",
    }  # fmt: skip
    rest = [*SAMPLE.glob(f"content/{patterns[kind]}"), *CONTENT.glob(patterns[kind])]
    return tuple(path.read_text(encoding="utf-8") for path in dict.fromkeys((first, *sorted(rest))))


@cache
def keys() -> tuple[str, ...]:
    """Every key that a recipe, a step or the site may have."""
    models = (RecipeFile, StepFile, SiteFile)
    return tuple(field.alias or name for model in models for name, field in model.model_fields.items())


@cache
def _values() -> Mapping[str, tuple[str, ...]]:
    """Key -> every value that it has in a file of the sample or the demo."""
    found: dict[str, list[str]] = {}
    for kind in FILES:
        for text in seeds(kind):
            for head, value in _VALUE.findall(text):
                found.setdefault(head.strip(" -:"), []).append(value)
    return {key: tuple(dict.fromkeys(values)) for key, values in found.items()}


@dataclass(frozen=True)
class Pen:
    """Where chance comes from. kind: of the file that is written."""

    chance: Random
    kind: str

    def slipped(self, text: str, times: int) -> str:
        """The text after so many slips."""
        for _ in range(times):
            text = self.chance.choice(SLIPS)(self, text)
        return text

    def mark(self, text: str) -> str:
        """A few letters give way to a mark."""
        start = self.chance.randint(0, len(text))
        end = start + self.chance.choice((0, 0, 1, 3, 12))
        return text[:start] + self.chance.choice(MARKS) + text[end:]

    def figure(self, text: str) -> str:
        """A number gives way to another."""
        return self._replaced(text, _NUMBER, FIGURES)

    def word(self, text: str) -> str:
        """A word gives way to words of the trade."""
        return self._replaced(text, _WORD, WORDS)

    def value(self, text: str) -> str:
        """What stands behind a key gives way to what stands behind it, or another, elsewhere."""
        found = list(_VALUE.finditer(text))
        if not found:
            return text
        here = self.chance.choice(found)
        known = _values().get(here[1].strip(" -:"), ())
        others = (*known, *self._values_of_any()) if self.chance.random() < 0.7 else (*WORDS, *FIGURES, "")
        return text[: here.start(2)] + self.chance.choice(others) + text[here.end(2) :]

    def key(self, text: str) -> str:
        """A line more, with a key and a value that go somewhere."""
        lines = text.split("\n")
        at = self.chance.randint(0, len(lines))
        key = self.chance.choice((*keys(), *_values()))
        indent = " " * self.chance.choice((0, 2, 4, 6, 8))
        values = _values().get(key) or WORDS
        lines.insert(at, f"{indent}{self.chance.choice(('', '- '))}{key}: {self.chance.choice(values)}")
        return "\n".join(lines)

    def lines(self, text: str) -> str:
        """Lines are lost, doubled, moved, or indented otherwise."""
        lines = text.split("\n")
        start = self.chance.randrange(len(lines))
        part = lines[start : start + self.chance.choice((1, 1, 1, 2, 4, 9))]
        rest = lines[:start] + lines[start + len(part) :]
        match self.chance.randrange(4):
            case 0:
                return "\n".join(rest)
            case 1:
                return "\n".join([*lines[:start], *part, *lines[start:]])
            case 2:
                at = self.chance.randint(0, len(rest))
                return "\n".join([*rest[:at], *part, *rest[at:]])
            case _:
                step = self.chance.choice((-4, -2, 1, 2, 4))
                moved = [" " * step + line if step > 0 else line[-step:] for line in part]
                return "\n".join([*lines[:start], *moved, *lines[start + len(part) :]])

    def borrowed(self, text: str) -> str:
        """Lines of another file stand here too."""
        other = self.chance.choice(seeds(self.kind)).split("\n")
        lines = text.split("\n")
        start, at = self.chance.randrange(len(other)), self.chance.randint(0, len(lines))
        part = other[start : start + self.chance.choice((1, 1, 2, 5, 12))]
        return "\n".join([*lines[:at], *part, *lines[at:]])

    def _replaced(self, text: str, pattern: re.Pattern[str], others: Sequence[str]) -> str:
        found = list(pattern.finditer(text))
        if not found:
            return text
        here = self.chance.choice(found)
        return text[: here.start()] + self.chance.choice(others) + text[here.end() :]

    def _values_of_any(self) -> tuple[str, ...]:
        return self.chance.choice(tuple(_values().values()))


Slip = Callable[[Pen, str], str]
SLIPS: tuple[Slip, ...] = (
    Pen.mark, Pen.figure, Pen.figure, Pen.word, Pen.word, Pen.value, Pen.value, Pen.key, Pen.lines,
    Pen.borrowed,
)  # fmt: skip
"""What is likelier stands twice."""
