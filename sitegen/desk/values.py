"""All that the desk's page shows, as frozen values: its templates print them and work nothing out.

Addresses are relative to the desk's own, which ends in the token.
"""

from dataclasses import dataclass
from enum import StrEnum


@dataclass(frozen=True)
class ShownFault:
    """A fault with the line that it stands in.

    place: 'content/recipes/bay/recipe.yaml, line 14'. line: 0 for a fault of a whole file.
    before, marked, after: the parts of that line, `marked` where the fault is; all '' where there is no line.
    """

    code: str
    sentence: str
    way_out: str
    place: str
    line: int
    before: str
    marked: str
    after: str


class Stands(StrEnum):
    """How a recipe stands on the day, in one word for a template's classes."""

    READING = "reading"
    FAULTY = "faulty"
    DRAFT = "draft"
    COMING = "coming"
    OUT = "out"


@dataclass(frozen=True)
class ReleaseRow:
    """A day on which an audience gets something.

    to: 'subscribers' or 'everyone'. day: '3 July 2026'. iso: the same for `datetime`. sees: 'everything',
    'the ingredients', 'a teaser', and '' of subscribers, who always see all. is_past: whether it has come.
    """

    to: str
    day: str
    iso: str
    sees: str
    is_past: bool


@dataclass(frozen=True)
class PageLink:
    """A page of the live site. title: 'as everyone sees it'. note: 'not out yet', '' for what is out."""

    title: str
    address: str
    note: str = ""


@dataclass(frozen=True)
class DeskRow:
    """A recipe.

    told: how it stands, a sentence. film: open findings of its film. lacks: 'no photo of the finished bake',
    'no photo of 3 of 5 steps'. published: how it differs from what was published last, a sentence;
    is_changed: whether it does. pages: of the live site, () while it has errors. what_if: address of its
    what-if page, '' likewise.
    """

    slug: str
    title: str
    stands: Stands
    told: str
    errors: tuple[ShownFault, ...] = ()
    advice: tuple[ShownFault, ...] = ()
    film: tuple[ShownFault, ...] = ()
    lacks: tuple[str, ...] = ()
    releases: tuple[ReleaseRow, ...] = ()
    published: str = ""
    is_changed: bool = False
    pages: tuple[PageLink, ...] = ()
    what_if: str = ""


@dataclass(frozen=True)
class Desk:
    """The desk as a whole.

    school: its name, '' where `site.yaml` cannot be read. day: that the live site is made for, '28 November
    2026'. told: '12 recipes: 2 errors, 5 pieces of advice'. rows: in the order of their titles. faults: of
    what all recipes have in common. fronts: the front pages of the live site. published: when and how the
    school was published last. still: how many recipes are still to be read, a sentence, '' for none.
    """

    school: str
    day: str
    told: str
    rows: tuple[DeskRow, ...]
    faults: tuple[ShownFault, ...]
    fronts: tuple[PageLink, ...]
    published: str
    still: str = ""
