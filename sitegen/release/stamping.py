"""A run of stamping: cards and a list of names in, numbered copies and a longer register out.

Numbers are in the register before the first copy is made, and copies as soon as a part of the run is done: a
run that is killed leaves whole copies, and the next one makes those that are missing. What is there already,
by the register's hashes, is not made again.
"""

import re
import shutil
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import datetime
from hashlib import sha256
from pathlib import Path
from unicodedata import normalize

from sitegen.faults import Fault, Place, Severity
from sitegen.press.stamp import Lock, mark_text
from sitegen.release import codes, stamp_codes
from sitegen.release.days import school_day
from sitegen.release.exchange import flush
from sitegen.release.lock import AnotherBuildRuns, only_build
from sitegen.release.register import Entry, Register, RegisterDamaged, read_register, write_register
from sitegen.release.stamp_cards import Card, NotStamped, card_paths, fit_cards
from sitegen.release.stamp_work import UNFINISHED, Copy, StampWork, Wanted, mark_face
from sitegen.release.subscriber_list import Subscriber, SubscriberList, read_list
from sitegen.release.workers import WorkerDied, Workers
from sitegen.source.library import read_school

STAMPED = "stamped"
"""The usual folder of copies, beside `content/`."""
REGISTER = "register.csv"
"""Of a school, in that folder, wherever the copies go: one register, so that one number is one name."""

NEVER_INTO = ("output", "content", "themes")
"""What is published or read: no copy may lie there."""

_WORKSHOP = ".sitegen"
"""Where the lock of a build lies: while cards are read, no build puts others in their place."""

_A_PIECE = 25
"""Copies that one process makes at a go: a third of a second."""
_PARTS = 20
"""Into how many parts a run is cut at most, after each of which the register is written."""
_LEAST_PART = 8
"""Pieces in a part, at least."""
_LONGEST_SLUG = 40


@dataclass(frozen=True)
class StampOrder:
    """What is asked for.

    root: the folder that holds `content/`. cards: PDF files, and folders of them. names: the list.
    now: aware of its zone; its date in the school's zone goes into the register. into: the folder of copies,
    None for the usual one. lock: None for none. jobs: processes to work with, at least 1.
    """

    root: Path
    cards: tuple[Path, ...]
    names: Path
    now: datetime
    into: Path | None = None
    lock: Lock | None = None
    jobs: int = 1


@dataclass(frozen=True)
class Stamped:
    """What came of it, all of it whole.

    made, kept: copies that were made now, and that were there already. into: their folder. texts: file ->
    lines, to show faults.
    """

    made: int
    kept: int
    into: Path
    register: Path
    faults: tuple[Fault, ...]
    texts: Mapping[str, tuple[str, ...]]


def stamp(order: StampOrder, begin: Callable[[int], None], on_each: Callable[[], None]) -> Stamped:
    """Make every copy that is wanted and not there.

    begin: told in how many pieces the work is. on_each: called as each is done. Raises NotStamped, and
    OSError where a file that was named cannot be read.
    """
    run = _Run(order)
    paths = tuple(card_paths(order.cards))
    try:
        with only_build(run.root / _WORKSHOP):
            return run.stamped(paths, begin, on_each)
    except AnotherBuildRuns:
        sentence = "another command is at work in this folder"
        fault = codes.ANOTHER_BUILD.fault(Place(run.shown(run.into)), sentence, "wait until it has ended")
        return run.ended([fault])


class _Run:
    """One run. Raises NotStamped for a folder of copies that would be published."""

    def __init__(self, order: StampOrder) -> None:
        self.root = order.root.resolve()
        self.into = (order.into or self.root / STAMPED).resolve()
        self._order = order
        self._register_file = self.root / STAMPED / REGISTER
        self._texts: dict[str, tuple[str, ...]] = {}
        self._made = self._kept = 0
        for folder in NEVER_INTO:
            if self.into.is_relative_to((self.root / folder).resolve()):
                sentence = f"copies for subscribers may not lie in '{folder}/'"
                raise NotStamped(sentence, f"name another folder, or none: '{STAMPED}/' is the usual one")

    def stamped(
        self, paths: Sequence[Path], begin: Callable[[int], None], on_each: Callable[[], None]
    ) -> Stamped:
        content, _ = read_school(self.root)
        if content.school is None:
            self._texts |= content.texts
            return self.ended([fault for fault in content.faults if fault.severity is Severity.ERROR])
        day = school_day(self._order.now, content.school.time_zone).isoformat()
        names = self._names()
        cards, faults = fit_cards([(path, self.shown(path)) for path in paths])
        faults += names.faults
        try:
            register = read_register(self._register_file)
        except RegisterDamaged as damage:
            place = Place(self.shown(self._register_file), damage.line, min(damage.line, 1), 0)
            return self.ended([*faults, stamp_codes.REGISTER_DAMAGED.fault(place, damage.sentence)])
        if cards and names.subscribers:
            pieces = self._pieces(cards, names.subscribers, register)
            begin(len(pieces))
            try:
                faults += self._work_off(pieces, register, day, on_each)
            except WorkerDied:
                sentence = "a process that stamps was ended from outside, perhaps for want of memory"
                place = Place(self.shown(self.into))
                faults.append(codes.WORKER_DIED.fault(place, sentence, "stamp again with '--jobs 1'"))
            except OSError as problem:
                place = Place(self.shown(Path(problem.filename or self.into)))
                sentence = f"it cannot be written: {problem.strerror}"
                faults.append(stamp_codes.COPY_NOT_WRITTEN.fault(place, sentence))
        return self.ended(faults)

    def ended(self, faults: Iterable[Fault]) -> Stamped:
        told = tuple(sorted(faults, key=lambda fault: (fault.place, fault.code)))
        return Stamped(self._made, self._kept, self.into, self._register_file, told, self._texts)

    def shown(self, path: Path) -> str:
        """A path as the baker is told it."""
        whole = path.absolute()
        return (whole.relative_to(self.root) if whole.is_relative_to(self.root) else path).as_posix()

    def _names(self) -> SubscriberList:
        shown = self.shown(self._order.names)
        names = read_list(self._order.names.read_bytes(), shown, mark_face().lacking)
        self._texts[shown] = names.lines
        return names

    def _pieces(
        self, cards: Sequence[Card], subscribers: Sequence[Subscriber], register: Register
    ) -> list[StampWork]:
        """The work that is still to do, in pieces of one card each."""
        pieces = []
        for card in cards:
            wanted = []
            for subscriber in subscribers:
                copy = self._wanted(card, subscriber, register.number_of(subscriber.name))
                if self._is_there(copy, register):
                    self._kept += 1
                else:
                    wanted.append(copy)
            for at in range(0, len(wanted), _A_PIECE):
                some = tuple(wanted[at : at + _A_PIECE])
                pieces.append(StampWork(card.body, card.shown, some, self._order.lock, self.into))
        return pieces

    def _wanted(self, card: Card, subscriber: Subscriber, number: int) -> Wanted:
        made_from = f"{card.digest}\n{mark_text(number, subscriber.name)}\n{self._order.lock}"
        return Wanted(
            number=number,
            subscriber=subscriber,
            file=copy_file(number, subscriber.name, card.name),
            made_from=sha256(made_from.encode()).hexdigest(),
        )

    def _is_there(self, wanted: Wanted, register: Register) -> bool:
        file = self.into / wanted.file
        last = register.last_copy(self.shown(file))
        if last is None or last.made_from != wanted.made_from or not file.is_file():
            return False
        return sha256(file.read_bytes()).hexdigest() == last.sha256

    def _work_off(
        self, pieces: Sequence[StampWork], register: Register, day: str, on_each: Callable[[], None]
    ) -> list[Fault]:
        """Make the copies, part by part, and register each part. Returns a fault for each name too wide."""
        faults: list[Fault] = []
        unfinished = self.into / UNFINISHED
        shutil.rmtree(unfinished, ignore_errors=True)
        unfinished.mkdir(parents=True)
        write_register(register, self._register_file)
        part = max(_LEAST_PART, -(-len(pieces) // _PARTS))
        with Workers(self._order.jobs) as workers:
            for at in range(0, len(pieces), part):
                some = pieces[at : at + part]
                for piece, copies in zip(some, workers.worked_off(some, on_each), strict=True):
                    faults += self._registered(piece, copies, register, day)
                flush(self.into)
                write_register(register, self._register_file)
        unfinished.rmdir()
        return faults

    def _registered(
        self, piece: StampWork, copies: Sequence[Copy], register: Register, day: str
    ) -> Iterator[Fault]:
        for copy in copies:
            wanted = copy.wanted
            if not copy.sha256:
                sentence = f"the name is wider than the margin of '{piece.card_shown}' is high"
                yield stamp_codes.NAME_TOO_LONG.fault(wanted.subscriber.place, sentence)
                continue
            self._made += 1
            file = self.shown(self.into / wanted.file)
            name = wanted.subscriber.name
            register.add(Entry(wanted.number, name, file, copy.sha256, day, wanted.made_from))


def copy_file(number: int, name: str, card: str) -> str:
    """Where a copy goes, below the folder of all: a folder a subscriber, told by number and name.

    Of the name only unaccented Latin letters and digits are left, so that it can lead nowhere else.
    """
    letters = normalize("NFKD", name).encode("ascii", "ignore").decode().lower()
    slug = re.sub("[^a-z0-9]+", "-", letters)[:_LONGEST_SLUG].strip("-")
    folder = f"{number:04d}-{slug}" if slug else f"{number:04d}"
    return f"{folder}/{card}-copy-{number}.pdf"
