"""Plain texts that the baker pastes: a post for subscribers, a notice of a change."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from sitegen.press.choices import CardFile
from sitegen.sheet.values import Head, RevisedLine, Sheet, SheetLine


@dataclass(frozen=True)
class RevisedNote:
    """What changed, in the baker's words, and the lines that it speaks of as they read now."""

    note: str
    lines: tuple[RevisedLine, ...] = ()


def subscriber_post(sheets: Sequence[Sheet], page: str, cards: Sequence[CardFile]) -> str:
    """What tells subscribers that a recipe is there: what is new, the files, the times, the allergens.

    sheets: the recipe in each edition, the site's own first. page: address of their page.
    cards: the printed cards with their full addresses.
    """
    sheet = sheets[0]
    head = sheet.head
    return blocks_text(
        [
            [f"New: {head.title}", head.summary],
            [f"The page with every step: {page}", *_card_list(cards), *_video(sheet)],
            [f"Makes: {head.makes}", *times_told(head), *_measures(sheets), *_swaps(sheets)],
            [*sheet.allergens, *sheet.unknowns, *_care(sheet), sheet.estimates_note],
        ]
    )


def change_notice(
    title: str, day: str, notes: Sequence[RevisedNote], page: str, cards: Sequence[CardFile]
) -> str:
    """What tells holders of an earlier card that it was changed, and how to mend that card by hand.

    title: the recipe's. day: of the change, as print sets it. notes: those of that day that readers must
    hear of. page: address of the subscribers' page. cards: with their full addresses.
    """
    return blocks_text(
        [
            [f"A change to {title}, {day}"],
            ["What changed:", *(f"- {one.note}" for one in notes)],
            *_by_hand(day, [line for one in notes for line in one.lines]),
            [f"Or print the card again; the new one tells of this change under {day}.", *_card_list(cards)],
            [f"The page is up to date: {page}"],
        ]
    )


def _by_hand(day: str, lines: Sequence[RevisedLine]) -> Iterable[Sequence[str]]:
    """The lines of an earlier card that are to be mended, or where to write it where none is told."""
    if not lines:
        return [[f"On a card from before {day}, write it in by hand."]]
    told = f"On a card from before {day}, strike out the old figure and write in the new one. It now reads:"
    return [[told], *_by_edition(lines)]


def _by_edition(lines: Sequence[RevisedLine]) -> Iterable[Sequence[str]]:
    for edition in dict.fromkeys(line.edition for line in lines):
        yield [edition, *(_mended(line) for line in lines if line.edition == edition)]


def _mended(line: RevisedLine) -> str:
    steps = ", ".join(map(str, line.steps))
    also = f" (also beside step {steps})" if steps else ""
    return f"- {line.component}: {line_text(line.line)}{also}"


def blocks_text(blocks: Iterable[Sequence[str]]) -> str:
    """Blocks of lines with an empty line between, in ordinary spaces and without angle brackets.

    Some hosts of videos refuse a description with '<' or '>' in it.
    """
    kept = ("\n".join(line for line in block if line) for block in blocks)
    text = "\n\n".join(block for block in kept if block) + "\n"
    return text.replace("\N{NO-BREAK SPACE}", " ").replace("<", "‹").replace(">", "›")


def line_text(line: SheetLine) -> str:
    """An ingredient line: '1 cup (125 g) plain flour, sifted'."""
    beside = f" ({line.beside})" if line.beside else ""
    extra = f", {line.extra}" if line.extra else ""
    alternatives = f" {line.alternatives}" if line.alternatives else ""
    optional = " (optional)" if line.optional else ""
    return f"{line.amount}{beside} {line.name}{alternatives}{extra}{optional}".strip()


def times_told(head: Head) -> list[str]:
    """How long it takes, a line for each of the two times."""
    said = []
    if head.times.hands_on:
        said.append(f"Hands-on time: {head.times.hands_on}")
    if head.times.start_to_finish:
        said.append(f"Start to finish: {head.times.start_to_finish}")
    return said


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
