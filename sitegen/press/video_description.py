"""What stands below a video: the chapters, the ingredients in every measure, allergens, facts and links."""

from bisect import bisect
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from enum import IntEnum

from sitegen.press.texts import blocks_text, line_text, times_told
from sitegen.sheet.values import (
    IngredientSide,
    PublicComponent,
    Sheet,
    SheetComponent,
    SheetRevision,
    SheetVideo,
    View,
)

DESCRIPTION_LIMIT = 5_000
"""Bytes of UTF-8, so that it holds for those who count characters and for those who count bytes."""
_GOES_ON = "The rest of the list is on the page above."


class _Goes(IntEnum):
    """What goes from a text that is too long, the first first; the page has all of it."""

    SWAPS = 1
    NOTES = 2
    LATER_LISTS = 3
    FIRST_LIST = 4
    CORRECTIONS = 5
    UNKNOWNS = 6
    FACTS = 7
    SUMMARY = 8
    NEVER = 9


@dataclass(frozen=True)
class _Block:
    """Lines that stand together. rest: what is said in place of those that went; whole: all go at once."""

    goes: _Goes
    lines: tuple[str, ...]
    whole: bool = False
    rest: str = ""

    def head(self, kept: int) -> "_Block":
        """Its first lines, and what stands for the others."""
        rest = (self.rest,) if self.rest else ()
        return replace(self, lines=(*self.lines[:kept], *rest))


def video_description(
    views: Sequence[View], corrections: Sequence[SheetRevision], pages: Sequence[str], full_page: str
) -> str:
    """Two lines that make sense alone, and then all that a viewer wants to know.

    views: what everyone may see of the recipe, in each edition, the site's own first; at least one.
    corrections: the latest first. pages: address of each view's public page. full_page: where subscribers
    find the recipe in full.
    The result stays within DESCRIPTION_LIMIT: what goes first is told by `_Goes`. Chapters and allergens
    never go; `source/` bounds the one, the law's list the other.
    """
    first, page = views[0], pages[0]
    head = first.head
    opening = (f"{head.title}: {head.summary}", f"Makes {head.makes}. The recipe: {page}")
    blocks = [
        _Block(_Goes.SUMMARY, opening, whole=True, rest=f"{head.title}: {page}"),
        _Block(_Goes.NEVER, tuple(_chapters(first.video))),
        *_lists(views, pages),
        _Block(_Goes.FACTS, tuple(_facts(first))),
        _Block(_Goes.NEVER, (*first.allergens, first.estimates_note)),
        _Block(_Goes.UNKNOWNS, first.unknowns if isinstance(first, Sheet | IngredientSide) else ()),
        _Block(_Goes.CORRECTIONS, tuple(f"Corrected on {one.day}: {one.note}" for one in corrections)),
        _Block(_Goes.FACTS, tuple(_for_subscribers(first, full_page))),
    ]
    return _fitted(blocks)


def _fitted(blocks: list[_Block]) -> str:
    """The blocks within the limit, shortened one by one: of those that go together the last first."""
    last_first = reversed(range(len(blocks)))
    for index in sorted(last_first, key=lambda index: blocks[index].goes):
        if _fits(blocks) or blocks[index].goes is _Goes.NEVER:
            break
        blocks[index] = _shortened(blocks, index)
    return _text(blocks)


def _shortened(blocks: Sequence[_Block], index: int) -> _Block:
    """One of the blocks with as many of its lines as fit beside the others; never all of them."""
    block = blocks[index]

    def is_too_long(kept: int) -> bool:
        return not _fits([*blocks[:index], block.head(kept), *blocks[index + 1 :]])

    fewer = range(1, 1 if block.whole else len(block.lines))
    return block.head(bisect(fewer, False, key=is_too_long))


def _text(blocks: Sequence[_Block]) -> str:
    return blocks_text(block.lines for block in blocks)


def _fits(blocks: Sequence[_Block]) -> bool:
    return len(_text(blocks).encode()) <= DESCRIPTION_LIMIT


def _chapters(video: SheetVideo | None) -> Iterator[str]:
    """Each on its own line, its moment first: hosts of films read them so."""
    if video and video.chapters:
        yield "CHAPTERS"
        yield from (f"{chapter.moment} {chapter.title}" for chapter in video.chapters)


def _lists(views: Sequence[View], pages: Sequence[str]) -> Iterator[_Block]:
    """Each edition's ingredients, then what may stand in for them, then what is to know of the measures."""
    for number, (view, page) in enumerate(zip(views, pages, strict=True)):
        if not isinstance(view, Sheet | IngredientSide):
            continue
        title = f"INGREDIENTS ({view.head.edition.title})" if len(views) > 1 else "INGREDIENTS"
        lines = (title, *(line for part in view.components for line in _part(part)))
        if number:
            yield _Block(_Goes.LATER_LISTS, lines, whole=True, rest=f"{title}: {page}")
        else:
            yield _Block(_Goes.FIRST_LIST, lines, rest=_GOES_ON)
        yield _Block(_Goes.SWAPS, tuple(f"No {swap.instead_of}? {swap.use}" for swap in view.swaps))
        yield _Block(_Goes.NOTES, (view.egg_note, view.measure_note))


def _part(part: SheetComponent | PublicComponent) -> list[str]:
    """Its lines under its title; 'all of the sponge' is no news to someone who makes it from this list."""
    told = [line for line in part.lines if not line.is_part or line.exact_g is not None]
    return [f"{part.title}:", *(f"- {line_text(line)}" for line in told)] if told else []


def _facts(view: View) -> Iterator[str]:
    if isinstance(view, Sheet | IngredientSide):
        yield f"Makes: {view.head.makes}"
        if view.tin:
            yield f"Tin: {view.tin}"
        if view.oven:
            yield f"Oven: {view.oven}"
    yield from times_told(view.head)


def _for_subscribers(view: View, full_page: str) -> Iterator[str]:
    """Where the rest is, for a view that has not all."""
    if not isinstance(view, Sheet):
        yield f"For subscribers, every step with its picture and its time, and a card to print: {full_page}"
