"""How fast cards are stamped: `python -m tests.bench.stamp_speed [CARD.pdf]`.

Prints the CPU time of a copy against a bare opening and saving of the same card by pikepdf, with and without
encryption, and then a whole run for 1,000 names with two processes. Without a card it prints a
sample of three pages.
"""

import sys
import tempfile
from datetime import UTC, datetime
from io import BytesIO
from itertools import count
from pathlib import Path
from resource import RUSAGE_CHILDREN, RUSAGE_SELF, getrusage
from time import perf_counter

import pikepdf

from sitegen.press.card import CardPress
from sitegen.press.mark_face import MarkFace
from sitegen.press.stamp import CardStamp, Lock
from sitegen.press.theme import load_theme
from sitegen.press.theme_folder import find_theme
from sitegen.release.stamping import StampOrder, stamp
from tests.bench.paired import Work, in_rounds, table
from tests.press.sample_cards import PAGE, card_photos, sample_sheet
from tests.press.sample_parts import TABLE_IMPRINT
from tests.release.small_school import SITE

ROOT = Path(__file__).resolve().parents[2]
ROUNDS = 40
NAMES = 1000
JOBS = 2
BARE = "pikepdf: open and save"


def main() -> None:
    card = Path(sys.argv[1]).read_bytes() if len(sys.argv) > 1 else sample_card()
    with pikepdf.open(BytesIO(card)) as pdf:
        print(f"a card of {len(pdf.pages)} pages, {len(card) / 1000:.0f} kB")
    tell_ratios(card)
    for lock in (None, Lock(printing=True)):
        tell_run(card, lock)


def sample_card() -> bytes:
    sheet = sample_sheet(steps=18, photos=5)
    press = CardPress(load_theme(find_theme(ROOT, "oatcloth")))
    return press.print_card(sheet, TABLE_IMPRINT, "a4", card_photos(sheet), PAGE)


def tell_ratios(card: bytes) -> None:
    opened = CardStamp(card, MarkFace())
    number = count(1)
    lock = Lock(printing=True)
    works = [
        Work(BARE, lambda _: bare(card)),
        Work("a numbered copy", lambda _: opened.copy(next(number), "Ada Marrow")),
        Work("pikepdf: open and save, AES-256", lambda _: bare(card, pikepdf.Encryption(owner="o", user=""))),
        Work("a numbered copy, AES-256", lambda _: opened.copy(next(number), "Ada Marrow", lock)),
        Work("a card opened, its margins measured", lambda _: CardStamp(card, MarkFace())),
    ]
    print(table(in_rounds(works, ROUNDS), BARE))
    print(
        f"a copy is {len(opened.copy(NAMES, 'Ada Marrow')) - len(bare(card))} bytes larger than a bare one\n"
    )


def bare(card: bytes, encryption: pikepdf.Encryption | None = None) -> bytes:
    out = BytesIO()
    with pikepdf.open(BytesIO(card)) as pdf:
        pdf.save(out, encryption=encryption, deterministic_id=encryption is None)
    return out.getvalue()


def tell_run(card: bytes, lock: Lock | None) -> None:
    with tempfile.TemporaryDirectory() as folder:
        root = Path(folder)
        (root / "content").mkdir()
        (root / "content" / "site.yaml").write_text(SITE)
        (root / "card.pdf").write_bytes(card)
        (root / "names.csv").write_text("".join(f"Reader {at} of the Long Table\n" for at in range(NAMES)))
        order = StampOrder(
            root, (root / "card.pdf",), root / "names.csv", datetime.now(UTC), lock=lock, jobs=JOBS
        )
        begun, used = perf_counter(), cpu()
        made = stamp(order, lambda _: None, lambda: None).made
        taken, spent = perf_counter() - begun, cpu() - used
        size = sum(file.stat().st_size for file in (root / "stamped").rglob("*.pdf")) / made
    print(f"{made} copies{', AES-256' if lock else ''}, {JOBS} processes, with their start and their end:")
    print(
        f"  {taken:.1f} s, {made / taken * 60:.0f} a minute, {spent:.1f} s of CPU, {size / 1000:.0f} kB each"
    )


def cpu() -> float:
    return sum(used.ru_utime + used.ru_stime for used in (getrusage(RUSAGE_SELF), getrusage(RUSAGE_CHILDREN)))


if __name__ == "__main__":
    main()
