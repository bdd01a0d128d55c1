"""What pages are built of, without their words: pages built of the same parts need one look, not many."""

from collections.abc import Iterable
from html.parser import HTMLParser
from pathlib import Path

VOID = {"area", "base", "br", "col", "embed", "hr", "img", "input", "link", "meta", "source", "track", "wbr"}


class _Parts(HTMLParser):
    """Collects the way to each element: what stands around it, with classes and names of attributes."""

    def __init__(self) -> None:
        super().__init__()
        self._around: list[tuple[str, str]] = []
        self.parts: set[str] = set()

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        part = self._seen(tag, attrs)
        if tag not in VOID:
            self._around.append((tag, part))

    def handle_startendtag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self._seen(tag, attrs)

    def handle_endtag(self, tag: str) -> None:
        while tag not in VOID and self._around and self._around.pop()[0] != tag:
            pass

    def _seen(self, tag: str, attrs: list[tuple[str, str | None]]) -> str:
        named = {key: value or "" for key, value in attrs}
        part = f"{tag}.{named.pop('class', '')}[{' '.join(sorted(named))}]"
        self.parts.add("/".join([*(outer for _, outer in self._around), part]))
        return part


def parts_of(page: Path) -> frozenset[str]:
    """The parts of a page. A list of five lines has the same as one of six; texts do not count."""
    found = _Parts()
    found.feed(page.read_text(encoding="utf-8"))
    return frozenset(found.parts)


def first_of_their_build(pages: Iterable[Path]) -> frozenset[Path]:
    """Those pages that have a part which no page before them had."""
    seen: set[str] = set()
    firsts = set()
    for page in pages:
        parts = parts_of(page)
        if not parts <= seen:
            firsts.add(page)
            seen |= parts
    return frozenset(firsts)
