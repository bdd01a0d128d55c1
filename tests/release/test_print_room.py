"""The print room has its processes begin early where there is work for certain."""

from dataclasses import dataclass, field
from pathlib import Path

import pytest

from sitegen.release.cache import Cache
from sitegen.release.print_room import Imports, PrintRoom
from sitegen.release.workers import Task, Workers
from tests.release.small_school import Silent


@dataclass
class Told(Workers):
    """Workers that write down what they are to be ready for."""

    ready_for: list[object] = field(default_factory=list)

    def make_ready(self, task: Task[object]) -> None:
        self.ready_for.append(task)


@pytest.mark.parametrize(("is_kept", "ready_for"), [(False, [Imports()]), (True, [])])
def test_processes_begin_early_only_where_nothing_is_kept(
    is_kept: bool, ready_for: list[object], tmp_path: Path
) -> None:
    cache = Cache(tmp_path / "cache", "makers")
    if is_kept:
        cache.put(cache.key("card"), b"%PDF")
    workers = Told()
    PrintRoom(tmp_path, cache, workers, Silent()).make_ready()
    assert workers.ready_for == ready_for
