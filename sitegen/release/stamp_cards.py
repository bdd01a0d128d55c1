"""The cards that are to be stamped: which files they are, and which of them can be."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from hashlib import sha256
from pathlib import Path

from sitegen.faults import Fault, Place
from sitegen.press.stamp import CardUnfit, Unfit
from sitegen.release import stamp_codes
from sitegen.release.stamp_work import opened_card

_UNFIT = {
    Unfit.NOT_PDF: (stamp_codes.CARD_NOT_PDF, "this is no whole PDF"),
    Unfit.ENCRYPTED: (stamp_codes.CARD_ENCRYPTED, "the card is encrypted"),
    Unfit.STAMPED: (stamp_codes.CARD_STAMPED, "this is a copy that bears a number already"),
    Unfit.NO_MARGIN: (stamp_codes.CARD_WITHOUT_MARGIN, "page {page} has no side margin of 6 mm"),
}


@dataclass(frozen=True)
class Card:
    """name: of its file, without the ending. shown: as the baker is told it. digest: of its bytes."""

    name: str
    shown: str
    body: bytes
    digest: str


class NotStamped(Exception):
    """Something in the question itself is wrong. sentence: what; way_out: what to ask instead."""

    def __init__(self, sentence: str, way_out: str) -> None:
        super().__init__(sentence, way_out)
        self.sentence = sentence
        self.way_out = way_out


def card_paths(named: Sequence[Path]) -> Iterator[Path]:
    """Files as they are named, and the PDFs of folders by name. Raises NotStamped for a folder without."""
    for path in named:
        if not path.is_dir():
            yield path
            continue
        within = sorted(file for file in path.iterdir() if file.suffix.lower() == ".pdf" and file.is_file())
        if not within:
            raise NotStamped(f"there is no PDF in '{path}'", "publish first, or name a card")
        yield from within


def fit_cards(paths: Sequence[tuple[Path, str]]) -> tuple[list[Card], list[Fault]]:
    """The cards that can be stamped, and a fault for each other.

    paths: of files, and as the baker is told them. Raises OSError for one that cannot be read.
    """
    cards: dict[str, Card] = {}
    faults = []
    for path, shown in paths:
        place, body = Place(shown), path.read_bytes()
        try:
            opened_card(body)
        except CardUnfit as problem:
            code, sentence = _UNFIT[problem.why]
            faults.append(code.fault(place, sentence.format(page=problem.page)))
            continue
        if path.stem in cards:
            sentence = f"'{cards[path.stem].shown}' has the same file name"
            faults.append(stamp_codes.CARD_TWICE.fault(place, sentence))
            continue
        cards[path.stem] = Card(path.stem, shown, body, sha256(body).hexdigest())
    return list(cards.values()), faults
