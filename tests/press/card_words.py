"""Where each word stands on a printed card (poppler's `pdftotext -bbox`), and what its HTML says."""

import re
import subprocess
from dataclasses import dataclass
from html import unescape
from itertools import islice, takewhile
from pathlib import Path

PAGE = re.compile(r'<page width="([\d.]+)" height="([\d.]+)">(.*?)</page>', re.DOTALL)
WORD = re.compile(r'<word xMin="([\d.-]+)" yMin="([\d.-]+)" xMax="([\d.-]+)" yMax="([\d.-]+)">(.*?)</word>')
BODY = re.compile(r"<body>(.*)</body>", re.DOTALL)
HAIR = 0.5
"""Points that two words may share without touching to the eye."""
LEADING = 0.35
"""Share of a word's height that its line may reach into the next one's: boxes are taller than letters."""


@dataclass(frozen=True)
class Word:
    """page: from 1. The sides in points from the top left corner."""

    page: int
    left: float
    top: float
    right: float
    bottom: float
    text: str

    def reaches(self, later: "Word") -> bool:
        """Whether a word that begins no higher begins above the end of this one."""
        return self.page == later.page and later.top < self.bottom

    def covers(self, other: "Word") -> bool:
        across = min(self.right, other.right) - max(self.left, other.left)
        down = min(self.bottom, other.bottom) - max(self.top, other.top)
        lower = min(self.bottom - self.top, other.bottom - other.top)
        return self.page == other.page and across > HAIR and down > LEADING * lower


@dataclass(frozen=True)
class PrintedWords:
    """sizes: width and height of each page in points.

    text: all that is printed, in the order of the file, without any space, so that a word cut at a line's
    end is still one.
    """

    sizes: tuple[tuple[float, float], ...]
    words: tuple[Word, ...]
    text: str

    def overlaps(self) -> list[tuple[str, str]]:
        """Pairs of words of which one is printed over the other. Words that begin below it are not asked."""
        downwards = sorted(self.words, key=lambda word: (word.page, word.top))
        return [
            (one.text, other.text)
            for place, one in enumerate(downwards, 1)
            for other in takewhile(one.reaches, islice(downwards, place, None))
            if one.covers(other)
        ]

    def outside(self, margin: float) -> list[str]:
        """Words that come nearer to an edge of the paper than `margin`, in points."""
        return [word.text for word in self.words if not self._lies_within(word, margin)]

    def _lies_within(self, word: Word, margin: float) -> bool:
        width, height = self.sizes[word.page - 1]
        across = margin <= word.left and word.right <= width - margin
        return across and margin <= word.top and word.bottom <= height - margin


def printed_words(pdf: Path) -> PrintedWords:
    pages = PAGE.findall(_pdftotext("-bbox", pdf))
    return PrintedWords(
        tuple((float(width), float(height)) for width, height, _ in pages),
        tuple(
            Word(number, *(float(side) for side in sides), unescape(text))
            for number, (_, _, body) in enumerate(pages, 1)
            for *sides, text in WORD.findall(body)
        ),
        "".join(_pdftotext("-raw", pdf).split()),
    )


def _pdftotext(how: str, pdf: Path) -> str:
    return subprocess.run(["pdftotext", how, pdf, "-"], capture_output=True, text=True, check=True).stdout


def words_of_html(html: str) -> set[str]:
    """Every word between the tags of the body; the titles of drawings are not printed."""
    found = BODY.search(html)
    assert found
    shown = re.sub(r"<svg.*?</svg>", " ", found[1], flags=re.DOTALL)
    return set(unescape(re.sub(r"<[^>]+>", " ", shown)).split())
