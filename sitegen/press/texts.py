"""Plain texts that the baker pastes: a video's description, a post for subscribers, a notice of a change."""

from collections.abc import Iterable, Sequence

from sitegen.press.choices import CardFile
from sitegen.sheet.values import (
    Head,
    IngredientSide,
    PublicComponent,
    Sheet,
    SheetComponent,
    SheetLine,
    SheetRevision,
    View,
)

DESCRIPTION_LIMIT = 5_000
"""Bytes of UTF-8, so that it holds for those who count characters and for those who count bytes."""
_GOES_ON = "The rest of the list is on the page above."


def video_description(views: Sequence[View], corrections: Sequence[SheetRevision], page: str) -> str:
    """What stands below a video: two lines that make sense alone, then the ingredients and the facts.

    views: what everyone may see of the recipe, in each edition, the site's own first; at least one.
    page: address of the public page. The result stays within DESCRIPTION_LIMIT: the lists of the later
    editions go first, then the first list is cut at a line's end.
    """
    first = views[0]
    opening = _opening(first.head, page)
    facts = _facts(first) + _corrections(corrections)
    lists = [_ingredient_list(view, with_edition=len(views) > 1) for view in views]
    for kept in range(len(lists), 0, -1):
        text = _set([opening, *lists[:kept], facts])
        if _fits(text):
            return text
    return _cut_to_fit(opening, lists[0], facts)


def subscriber_post(sheets: Sequence[Sheet], page: str, cards: Sequence[CardFile]) -> str:
    """What tells subscribers that a recipe is there: what is new, the files, the times, the allergens.

    sheets: the recipe in each edition, the site's own first. page: address of their page.
    cards: the printed cards with their full addresses.
    """
    sheet = sheets[0]
    head = sheet.head
    return _set(
        [
            [f"New: {head.title}", head.summary],
            [f"The page with every step: {page}", *_card_list(cards), *_video(sheet)],
            [f"Makes: {head.makes}", *_times(head), *_measures(sheets), *_swaps(sheets)],
            [*sheet.allergens, *sheet.unknowns, *_care(sheet), sheet.estimates_note],
        ]
    )


def change_notice(
    sheet: Sheet, revisions: Sequence[SheetRevision], page: str, cards: Sequence[CardFile]
) -> str:
    """What tells holders of an earlier card that it was changed.

    revisions: those of one day that readers must hear of.
    """
    return _set(
        [
            [f"A change to {sheet.head.title}, {revisions[0].day}"],
            [revision.note for revision in revisions],
            ["If you printed the card before this day, please print it again.", *_card_list(cards)],
            [f"The page is up to date: {page}"],
        ]
    )


def _set(blocks: Iterable[Sequence[str]]) -> str:
    """Blocks of lines with an empty line between, in ordinary spaces and without angle brackets.

    Some hosts of videos refuse a description with '<' or '>' in it.
    """
    kept = ("\n".join(line for line in block if line) for block in blocks)
    text = "\n\n".join(block for block in kept if block) + "\n"
    return text.replace("\N{NO-BREAK SPACE}", " ").replace("<", "‹").replace(">", "›")


def _fits(text: str) -> bool:
    return len(text.encode()) <= DESCRIPTION_LIMIT


def _cut_to_fit(opening: Sequence[str], lines: Sequence[str], facts: Sequence[str]) -> str:
    """The longest head of the list that fits; long facts are cut in the same way once the list is gone."""
    for kept in range(len(lines) - 1, 0, -1):
        text = _set([opening, [*lines[:kept], _GOES_ON], facts])
        if _fits(text):
            return text
    for kept in range(len(facts), 0, -1):
        text = _set([opening, facts[:kept]])
        if _fits(text):
            return text
    return _set([opening])


def _opening(head: Head, page: str) -> list[str]:
    return [f"{head.title}: {head.summary}", f"Makes {head.makes}. The recipe: {page}"]


def _ingredient_list(view: View, with_edition: bool) -> list[str]:
    if not isinstance(view, Sheet | IngredientSide):
        return []
    title = f"INGREDIENTS ({view.head.edition.title})" if with_edition else "INGREDIENTS"
    parts = (line for part in view.components for line in _part(part))
    return [title, *parts, *(f"No {swap.instead_of}? {swap.use}" for swap in view.swaps)]


def _part(part: SheetComponent | PublicComponent) -> list[str]:
    """Its lines under its title; 'all of the sponge' is no news to someone who makes it from this list."""
    told = [line for line in part.lines if not line.is_part or line.exact_g is not None]
    return [f"{part.title}:", *(f"- {_line(line)}" for line in told)] if told else []


def _line(line: SheetLine) -> str:
    beside = f" ({line.beside})" if line.beside else ""
    extra = f", {line.extra}" if line.extra else ""
    alternatives = f" {line.alternatives}" if line.alternatives else ""
    optional = " (optional)" if line.optional else ""
    return f"{line.amount}{beside} {line.name}{alternatives}{extra}{optional}".strip()


def _facts(view: View) -> list[str]:
    if not isinstance(view, Sheet | IngredientSide):
        return [*_times(view.head), *view.allergens, view.estimates_note]
    tin = [f"Tin: {view.tin}"] if view.tin else []
    oven = [f"Oven: {view.oven}"] if view.oven else []
    notes = [view.egg_note, view.measure_note]
    return [
        f"Makes: {view.head.makes}",
        *tin,
        *oven,
        *_times(view.head),
        *notes,
        *view.allergens,
        *view.unknowns,
        view.estimates_note,
    ]


def _times(head: Head) -> list[str]:
    said = []
    if head.times.hands_on:
        said.append(f"Hands-on time: {head.times.hands_on}")
    if head.times.start_to_finish:
        said.append(f"Start to finish: {head.times.start_to_finish}")
    return said


def _corrections(revisions: Sequence[SheetRevision]) -> list[str]:
    return [f"Corrected on {revision.day}: {revision.note}" for revision in revisions]


def _measures(sheets: Sequence[Sheet]) -> list[str]:
    if len(sheets) < 2:
        return []
    return ["In these measures: " + "; ".join(sheet.head.edition.title for sheet in sheets)]


def _card_list(cards: Sequence[CardFile]) -> list[str]:
    return [f"Card, {card.title}: {card.path}" for card in cards]


def _video(sheet: Sheet) -> list[str]:
    return [f"The video: {sheet.video.address}"] if sheet.video else []


def _swaps(sheets: Sequence[Sheet]) -> list[str]:
    """Names alone: the amounts differ from edition to edition, and stand on each one's page."""
    names = dict.fromkeys(swap.instead_of for sheet in sheets for swap in sheet.swaps)
    return [f"The page says what to take in place of: {'; '.join(names)}"] if names else []


def _care(sheet: Sheet) -> list[str]:
    titles = "; ".join(caution.title for caution in sheet.cautions)
    return [f"Take care: {titles}"] if titles else []
