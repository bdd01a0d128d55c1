"""The desk at work: one thread reads and sets pages, others cut and print; each save goes its way once."""

import asyncio
from collections.abc import Callable
from concurrent.futures import ThreadPoolExecutor
from contextlib import suppress
from itertools import chain
from typing import ParamSpec, TypeVar

from sitegen.desk.bench import Bench
from sitegen.desk.dressing import mark_of
from sitegen.desk.live_pictures import LivePictures
from sitegen.desk.live_site import LiveSite, NotMade, Page
from sitegen.desk.news import News
from sitegen.desk.reading import Reading
from sitegen.press.leaf import Tree

_P = ParamSpec("_P")
_R = TypeVar("_R")
_BETWEEN_NEWS_S = 0.3
"""While a school is read for the first time, open pages hear of it so often and no more."""

_QUIET_S = 1.0
"""After so long without a save, prices and orders are proofed, which no page waits for."""


class LiveDesk:
    """What was read, the pages made of it, and who shows them. Lives in one event loop.

    saved: set by whoever notices a save.
    """

    def __init__(self, reading: Reading) -> None:
        self.reading = reading
        self.pictures = LivePictures(reading.bench.root, reading.bench.cache)
        self.site = LiveSite(reading, self.pictures)
        self.news = News(self._mark)
        self.saved = asyncio.Event()
        self.saved.set()
        # Whatever reads or sets pages has this one thread, so that no page is made of two states.
        self._reader = ThreadPoolExecutor(1, "reader")
        self._press = ThreadPoolExecutor(2, "press")

    @property
    def bench(self) -> Bench:
        """What was read last."""
        return self.reading.bench

    async def on_reader(self, work: Callable[_P, _R], *args: _P.args, **kwargs: _P.kwargs) -> _R:
        """Do something on the thread that reads."""
        call = asyncio.get_running_loop().run_in_executor
        return await call(self._reader, lambda: work(*args, **kwargs))

    async def on_press(self, work: Callable[_P, _R], *args: _P.args, **kwargs: _P.kwargs) -> _R:
        """Do something that takes long, and that no page waits for: cut a picture or a face, print a card."""
        call = asyncio.get_running_loop().run_in_executor
        return await call(self._press, lambda: work(*args, **kwargs))

    async def page(self, tree: Tree, path: str) -> Page | None:
        """A page of the live site; None where there is none. path: in its tree. Raises NotMade."""
        return await self.on_reader(self.site.page, tree, path)

    async def keep_up(self, look_again: Callable[[], None]) -> None:
        """Read the school, then whatever is saved, for ever. look_again: called after each renewal."""
        while True:
            await self.saved.wait()
            self.saved.clear()
            try:
                await self._renew()
            except Exception as problem:  # whatever it was: the desk says so, and lives on to the next save
                await self.on_reader(self.reading.failed, problem)
                await self.news.tell()
            look_again()

    def end(self) -> None:
        """Let the threads go; what is being made is nobody's any more."""
        self._reader.shutdown(wait=False, cancel_futures=True)
        self._press.shutdown(wait=False, cancel_futures=True)

    async def _renew(self) -> None:
        """Read what a save touched: first what is open. A new save begins anew."""
        before = self.bench
        await self.on_reader(self.reading.renewed)
        clock = asyncio.get_running_loop().time
        told_at = clock()
        while (slug := self._next()) and not self.saved.is_set():
            is_open = slug in self._opened()
            await self.on_reader(self.reading.read, slug)
            if is_open or clock() - told_at > _BETWEEN_NEWS_S:
                await self.news.tell()
                before, told_at = self.bench, clock()
        if _differ(before, self.bench):
            await self.news.tell()
        with suppress(TimeoutError):
            await asyncio.wait_for(self.saved.wait(), _QUIET_S)
        if not self.saved.is_set():
            before = self.bench
            await self.on_reader(self.reading.read_kitchen)
            if _differ(before, self.bench):
                await self.news.tell()

    def _next(self) -> str:
        """The recipe to read next, one whose page is open before all others; '' for none."""
        pending = self.bench.pending
        return next((slug for slug in self._opened() if slug in pending), min(pending, default=""))

    def _opened(self) -> tuple[str, ...]:
        """Slugs of the recipes whose pages are open; other parts of their addresses among them."""
        parts = (page.removesuffix(".html").split("/") for page in self.news.pages)
        return tuple(chain.from_iterable(parts))

    async def _mark(self, page: str) -> str:
        """What tells whether a page of the live site is still the one that is open."""
        tree, _, path = page.partition("/")
        if tree not in list(Tree):
            return ""
        try:
            made = await self.page(Tree(tree), path)
        except NotMade as problem:
            return problem.mark
        return mark_of(made.body) if made else ""


def _differ(before: Bench, after: Bench) -> bool:
    """Whether anything that a page can show is another."""
    return _shown(before) != _shown(after)


def _shown(bench: Bench) -> object:
    keys = {slug: state.key for slug, state in bench.states.items()}
    return (
        bench.day, bench.slugs, bench.marks, bench.theme, bench.own, bench.kitchen, bench.since, keys,
        bench.pending,
    )  # fmt: skip
