"""The real server in a thread, and whoever listens to its news."""

import threading
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path
from queue import Queue

import httpx

from sitegen.desk.bench import Bench
from sitegen.desk.reading import Reading
from sitegen.desk.serving import place_at, server
from sitegen.release.theme_work import FaceWork
from tests.release.small_school import NOON, SUMMER

PATIENCE_S = 30.0
"""A test that waits longer has failed; none waits for its own sake."""


@dataclass(frozen=True)
class Running:
    """root: the school's folder. address: of the desk, ending in '/'."""

    root: Path
    address: str

    def get(self, path: str = "") -> httpx.Response:
        return httpx.get(self.address + path, timeout=PATIENCE_S)

    def recipe(self, slug: str) -> Path:
        return self.root / "content" / "recipes" / slug / "recipe.yaml"

    @contextmanager
    def news(self, query: str = "") -> Iterator["News"]:
        """Listen; by the time it is entered the server knows of it."""
        with httpx.stream("GET", f"{self.address}news{query}", timeout=PATIENCE_S) as answer:
            yield News(answer)


class News:
    """Events as they come."""

    def __init__(self, answer: httpx.Response) -> None:
        self._events: Queue[str] = Queue()
        threading.Thread(target=self._hear, args=(answer,), daemon=True).start()

    def next(self) -> str:
        """The data of the next event. Raises Empty where none comes."""
        return self._events.get(timeout=PATIENCE_S)

    def is_quiet(self) -> bool:
        """Whether none has come that was not asked for."""
        return self._events.empty()

    def _hear(self, answer: httpx.Response) -> None:
        try:
            for line in answer.iter_lines():
                if line.startswith("data:"):
                    self._events.put(line.removeprefix("data:").strip())
        except (httpx.HTTPError, httpx.StreamError):
            return


@contextmanager
def running(root: Path) -> Iterator[Running]:
    """The desk of a school on a day in summer, all of it read."""
    place = place_at(0)
    reading = Reading(root, lambda: NOON, SUMMER)
    put_faces(reading.bench)
    read_all(reading)
    serving = server(place, reading, lambda: NOON)
    thread = threading.Thread(target=serving.run, kwargs={"sockets": [place.socket]}, daemon=True)
    thread.start()
    try:
        yield Running(root, place.address)
    finally:
        serving.should_exit = serving.force_exit = True
        thread.join(PATIENCE_S)


def read_all(reading: Reading) -> None:
    """Read whatever is pending."""
    for slug in sorted(reading.bench.pending):
        reading.read(slug)
    reading.read_kitchen()


def read_again(reading: Reading) -> None:
    """What a save brings about."""
    reading.renewed()
    read_all(reading)


def put_faces(bench: Bench) -> None:
    """Whole faces in place of cut ones: cutting costs seconds, and pages and cards are as good."""
    assert bench.theme is not None
    for font in bench.theme.fonts:
        work = FaceWork(font, bench.cache)
        bench.cache.put(work.card_key, font.read())
        bench.cache.put(work.page_key, font.read())
