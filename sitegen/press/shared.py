"""What a page says of itself when its link is passed on: the Open Graph protocol (https://ogp.me)."""

import re
from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass
from textwrap import shorten

from sitegen.press.imprint import Imprint
from sitegen.press.picture import Picture
from sitegen.sheet.values import SheetPhoto, View

LONGEST_DESCRIPTION = 160
"""Characters; longer ones are cut where they are shown."""
_SENTENCE = re.compile(r"(?<=[.!?])\s+")


@dataclass(frozen=True)
class SharedPicture:
    """address: absolute. width, height: in pixels. alt: what it shows."""

    address: str
    width: int
    height: int
    alt: str


@dataclass(frozen=True)
class Translation:
    """The same page in another language. language: BCP 47 tag. path: relative to the tree."""

    language: str
    path: str


def shared_picture(
    imprint: Imprint, photo: SheetPhoto | None, pictures: Mapping[str, Picture]
) -> SharedPicture | None:
    """The largest JPEG cut of a photo, which every program reads; None where there is no picture."""
    picture = pictures.get(photo.file) if photo else None
    if photo is None or picture is None:
        return None
    cut = picture.jpeg[-1]
    return SharedPicture(imprint.address + cut.path, cut.width, cut.height, photo.alt)


def translations_of(views: Iterable[View], path: Callable[[View], str]) -> tuple[Translation, ...]:
    """The first page in each language; () where all are in one.

    views: one recipe at one batch, in each edition. path: of a view's page.
    """
    found: dict[str, str] = {}
    for view in views:
        found.setdefault(view.head.edition.language, path(view))
    return tuple(Translation(*each) for each in found.items()) if len(found) > 1 else ()


def locale_of(language: str) -> str:
    """'en-GB' -> 'en_GB', as og:locale is written; '' where the tag names no region."""
    parts = language.split("-")
    return f"{parts[0]}_{parts[-1]}" if len(parts) > 1 and len(parts[-1]) == 2 else ""


def described(*texts: str) -> str:
    """A description of a page: whole sentences as far as they fit, else as many words of the first.

    texts: plain, each of one or more sentences; a last stop that is missing is set.
    """
    kept = ""
    whole = (text if text.endswith((".", "!", "?")) else f"{text}." for text in texts if text)
    for sentence in _SENTENCE.split(" ".join(whole)):
        longer = f"{kept} {sentence}".lstrip()
        if len(longer) > LONGEST_DESCRIPTION:
            return kept or shorten(sentence, LONGEST_DESCRIPTION, placeholder="…")
        kept = longer
    return kept
