"""`content/tutorials/<slug>.md` -> Tutorial: front matter, then Markdown with pictures beside the file."""

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from sitegen import limits
from sitegen.faults import Fault, FaultCode, Place, Severity
from sitegen.kitchen.method import Photo
from sitegen.source.markdown_bounds import too_tangled
from sitegen.source.models import TutorialFile
from sitegen.source.photos import Folder, photo_named
from sitegen.source.reader import parse_document
from sitegen.source.school import Tutorial
from sitegen.source.shapes import ALT_MISSING, TOO_LONG, TOO_TANGLED, shaped
from sitegen.source.textfile import OUTSIDE, read_text

NO_FRONT_MATTER = FaultCode(
    "front-matter-missing",
    Severity.ERROR,
    "A technique page begins with its title and summary between two lines of three dashes.",
    "Write '---', the keys title and summary, and '---' again at the top of the file.",
    good="---\ntitle: ",
    bad="title: ",
    file="tutorial.md",
)
NO_PROSE = FaultCode(
    "empty-page",
    Severity.ERROR,
    "A technique page has no text under its front matter.",
    "Write the text, or delete the file.",
    file="",
)

CODES = (NO_FRONT_MATTER, NO_PROSE)

_FENCE = re.compile(r"^\s*(```|~~~)")
_PICTURE = re.compile(r"!\[(?P<alt>[^\]]*)\]\(\s*(?P<file>[^)\s]+)[^)]*\)")


@dataclass(frozen=True)
class _Page:
    """front: the front matter, an empty line in place of the dashes; body_line: its first line, from 1."""

    front: str
    body: str
    body_line: int


def tutorial_from(folder: Folder, slug: str) -> tuple[Tutorial | None, tuple[Fault, ...], tuple[str, ...]]:
    """The technique page of a slug in the folder of tutorials, its faults, and the lines of its file."""
    shown = folder.shown_file(f"{slug}.md")
    text, faults = read_text(folder.path / f"{slug}.md", shown, folder.path)
    if text is None:
        return None, faults, ()
    lines = tuple(text.split("\n"))
    page = _page(lines)
    if page is None:
        fault = NO_FRONT_MATTER.fault(Place(shown, 1, 1, 1), "the file has no front matter")
        return None, (*faults, fault), lines
    too_much = _too_much(page, shown)
    if too_much:
        return None, (*faults, too_much), lines
    tutorial, more = _tutorial(page, folder, slug, shown)
    return tutorial, (*faults, *more), lines


def _page(lines: Sequence[str]) -> _Page | None:
    dashes = [number for number, line in enumerate(lines) if line.rstrip() == "---"]
    if len(dashes) < 2 or dashes[0] != 0:
        return None
    end = dashes[1]
    return _Page("\n".join(("", *lines[1:end])), "\n".join(lines[end + 1 :]), end + 2)


def _too_much(page: _Page, shown: str) -> Fault | None:
    """The fault of a text that is too long or too tangled to be looked through."""
    place = Place(shown, page.body_line, 1, 1)
    if len(page.body) > limits.MARKDOWN_CHARACTERS:
        return TOO_LONG.fault(place, f"a page takes at most {limits.MARKDOWN_CHARACTERS:,} letters")
    reason = too_tangled(page.body)
    return TOO_TANGLED.fault(place, f"the page {reason}") if reason else None


def _tutorial(
    page: _Page, folder: Folder, slug: str, shown: str
) -> tuple[Tutorial | None, tuple[Fault, ...]]:
    document, faults = parse_document(page.front, shown)
    file, misshapen = shaped(document, TutorialFile) if document else (None, ())
    photos, unseen = _photos(page, folder, shown)
    faults += misshapen + unseen
    if not page.body.strip():
        faults += (NO_PROSE.fault(Place(shown, page.body_line, 1, 1), "the page has no text"),)
    if document is None or file is None:
        return None, faults
    head = None
    if file.photo is not None:
        place = document.place(("photo", "file"))
        head, more = photo_named(folder, file.photo.file, file.photo.alt, place)
        faults += more
    at = document.place(("title",))
    return Tutorial(slug, file.title, file.summary, page.body.strip() + "\n", head, photos, at), faults


def _photos(page: _Page, folder: Folder, shown: str) -> tuple[tuple[Photo, ...], tuple[Fault, ...]]:
    photos: list[Photo] = []
    faults: list[Fault] = []
    for match, number in _pictures(page):
        place = Place(shown, number, match.start("file") + 1, len(match["file"]))
        if not match["alt"].strip():
            faults.append(ALT_MISSING.fault(place, "this picture has no words between [ and ]"))
        if re.match(r"[a-z]+:", match["file"]):
            faults.append(OUTSIDE.fault(place, "a picture must lie beside the file"))
            continue
        photo, more = photo_named(folder, match["file"], match["alt"].strip(), place)
        faults += more
        photos += [photo] if photo else []
    return tuple(photos), tuple(faults)


def _pictures(page: _Page) -> Iterator[tuple[re.Match[str], int]]:
    """Each picture of the Markdown with its line; what stands in a fenced block is no picture."""
    fenced = False
    for number, line in enumerate(page.body.split("\n"), start=page.body_line):
        fenced ^= bool(_FENCE.match(line))
        if not fenced:
            yield from ((match, number) for match in _PICTURE.finditer(line))
