"""Who has which page open, and is told when it is no more what was read last."""

import asyncio
import json
from collections.abc import AsyncIterator, Awaitable, Callable
from dataclasses import dataclass, field

_JUST_NOW_S = 3.0
"""A page that begins to listen so soon after a renewal may have been fetched before it."""


@dataclass(eq=False)
class _Listener:
    """An open page. page: its path below the token, '' for all news. mark: of what it shows."""

    page: str
    mark: str
    woken: asyncio.Event = field(default_factory=asyncio.Event)


class News:
    """Lives in one event loop."""

    def __init__(self, mark: Callable[[str], Awaitable[str]]) -> None:
        """mark: page -> the mark of what it would show now, '' where it is gone."""
        self._mark = mark
        self._listeners: set[_Listener] = set()
        self._number = 0
        self._told_at = float("-inf")

    @property
    def pages(self) -> tuple[str, ...]:
        """The pages of the live site that are open."""
        return tuple({listener.page: None for listener in self._listeners if listener.page})

    async def tell(self) -> None:
        """Something that was read is another: wake whoever shows it."""
        self._number += 1
        self._told_at = asyncio.get_running_loop().time()
        marks = {page: await self._mark(page) for page in self.pages}
        for listener in self._listeners:
            if not listener.page or marks.get(listener.page, listener.mark) != listener.mark:
                listener.woken.set()

    async def stream(self, page: str, mark: str, last: str) -> AsyncIterator[dict[str, str]]:
        """Events for one open page, for ever, as server-sent events have them.

        page: its path below the token, '' for all news. mark: of what it shows. last: the number that it
        heard last, '' for none.
        """
        listener = _Listener(page, mark)
        self._listeners.add(listener)
        try:
            if await self._has_missed(listener, last):
                listener.woken.set()
            while True:
                await listener.woken.wait()
                listener.woken.clear()
                yield {"id": str(self._number), "data": json.dumps({"number": self._number})}
        finally:
            self._listeners.discard(listener)

    async def _has_missed(self, listener: _Listener, last: str) -> bool:
        if listener.page:
            return await self._mark(listener.page) != listener.mark
        if last:
            return last != str(self._number)
        return asyncio.get_running_loop().time() - self._told_at < _JUST_NOW_S
