"""Builds of a school as processes of their own, with what they used of the machine."""

import os
import shutil
import subprocess
import sys
import threading
from collections.abc import Iterator
from dataclasses import dataclass, field
from pathlib import Path
from time import perf_counter

import psutil

from tests.bench.bench_cards import ROOT
from tests.bench.library import ON

LOOKED_EVERY_S = 0.1


@dataclass(frozen=True)
class Run:
    """What one build used. cpu, wall: seconds; cpu is that of all its processes.

    peak, main_peak: resident bytes at the highest, of all its processes together and of the first one.
    What two processes share counts twice.
    """

    cpu: float
    wall: float
    peak: int
    main_peak: int


def built(root: Path, jobs: int) -> Run:
    """Publish the school. Raises SystemExit with what it said where it does not end well."""
    command = [
        sys.executable,
        "-m",
        "sitegen",
        "publish",
        "--root",
        str(root),
        "--on",
        ON,
        "--jobs",
        str(jobs),
    ]
    begun = perf_counter()
    process = subprocess.Popen(command, cwd=ROOT, stdout=subprocess.PIPE, stderr=subprocess.STDOUT)
    said: list[bytes] = []
    reader = threading.Thread(target=lambda: said.extend(process.stdout or ()))
    reader.start()
    memory = _Memory(process.pid)
    memory.start()
    reader.join()
    _, status, used = os.wait4(process.pid, 0)
    wall = perf_counter() - begun
    process.returncode = os.waitstatus_to_exitcode(status)
    memory.stop()
    if process.returncode != 0:
        raise SystemExit(b"".join(said).decode())
    return Run(used.ru_utime + used.ru_stime, wall, memory.peak, memory.main_peak)


def forget(root: Path) -> None:
    """Take away all that was built and kept."""
    for name in ("output", ".sitegen"):
        shutil.rmtree(root / name, ignore_errors=True)


@dataclass
class _Memory:
    """Looks again and again how much memory a process and its children hold."""

    pid: int
    peak: int = 0
    main_peak: int = 0
    _ended: threading.Event = field(default_factory=threading.Event)

    def start(self) -> None:
        self._thread = threading.Thread(target=self._look)
        self._thread.start()

    def stop(self) -> None:
        self._ended.set()
        self._thread.join()

    def _look(self) -> None:
        while not self._ended.wait(LOOKED_EVERY_S):
            held = list(self._held())
            self.peak = max(self.peak, sum(held))
            self.main_peak = max(self.main_peak, *held[:1], 0)

    def _held(self) -> Iterator[int]:
        try:
            main = psutil.Process(self.pid)
            processes = [main, *main.children(recursive=True)]
        except psutil.NoSuchProcess:
            return
        for process in processes:
            try:
                yield process.memory_info().rss
            except psutil.NoSuchProcess:
                yield 0
