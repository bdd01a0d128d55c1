"""Waits for saves: in `content/`, in the theme, and for either of them to come and go."""

import asyncio
from collections.abc import AsyncIterator, Callable, Sequence
from pathlib import Path

from watchfiles import awatch

STEP_MS = 20
"""So long nothing more may be saved before a save is told: editors write a file in several strokes."""
MOST_MS = 400
"""A burst that does not end is told all the same after this time."""
_QUIET_MS = 10_000
"""After so long without a save one is told anyway: a network's disk tells none, and a day may have ended."""
_BEGUN_S = 0.3
"""After so long a watch that was begun sees everything: what was saved before is then looked for."""


class Watch:
    """root: the folder that holds `content/`. folders: those that are looked into. on_save: called in the
    event loop, once for a burst of saves."""

    def __init__(
        self, root: Path, folders: Callable[[], Sequence[Path]], on_save: Callable[[], None]
    ) -> None:
        self._root = root
        self._folders = folders
        self._on_save = on_save
        self._is_over = False
        self._others = asyncio.Event()
        self._end = asyncio.Event()
        self._watched: Sequence[tuple[Path, int]] = ()

    async def run(self) -> None:
        """Until `end`."""
        await asyncio.gather(self._watch_root(), self._watch_folders())

    def end(self) -> None:
        self._is_over = True
        self._end.set()
        self._others.set()

    def look_again(self) -> None:
        """Ask whether other folders are to be looked into."""
        if self._there() != self._watched:
            self._others.set()

    async def _watch_root(self) -> None:
        """What stands beside `content/`: whether it, a theme or `output/` was put in another's place."""
        while not self._is_over:
            async for _ in _saves([self._root], self._end, recursive=False):
                self._on_save()
                self.look_again()

    async def _watch_folders(self) -> None:
        while not self._is_over:
            self._others.clear()
            self._watched = self._there()
            if self._watched:
                asyncio.get_running_loop().call_later(_BEGUN_S, self._on_save)
                async for _ in _saves([folder for folder, _ in self._watched], self._others, recursive=True):
                    self._on_save()
            else:
                await self._others.wait()

    def _there(self) -> Sequence[tuple[Path, int]]:
        """The folders that are there, each with what tells it from another of the same name."""
        found = ((folder, _number_of(folder)) for folder in self._folders())
        return [(folder, number) for folder, number in found if number is not None]


def _number_of(folder: Path) -> int | None:
    """What tells a folder from another of the same name; None where it is not there, or goes just now."""
    try:
        return folder.stat().st_ino if folder.is_dir() else None
    except OSError:
        return None


async def _saves(folders: Sequence[Path], over: asyncio.Event, *, recursive: bool) -> AsyncIterator[object]:
    """A value for each burst, until `over` is set. What editors keep for themselves is no save."""
    for by_asking in (False, True):
        try:
            async for burst in awatch(
                *folders,
                debounce=MOST_MS,
                step=STEP_MS,
                stop_event=over,
                rust_timeout=_QUIET_MS,
                yield_on_timeout=True,
                recursive=recursive,
                force_polling=by_asking or None,
                ignore_permission_denied=True,
            ):
                yield burst
            return
        except (OSError, RuntimeError):
            # The system watches no more folders for us, or one is gone: ask it again and again instead.
            await asyncio.sleep(_BEGUN_S)
