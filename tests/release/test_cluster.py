"""The same work on a cluster: the same bytes, and a reason wherever it cannot be."""

import os
import signal
import sys
from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace
from pathlib import Path

import dask
import pytest
from click.testing import CliRunner
from distributed import LocalCluster

from sitegen.cli.main import group
from sitegen.press.theme import load_theme
from sitegen.press.theme_folder import find_theme
from sitegen.release import cluster
from sitegen.release.build import WORKSHOP, Order, Refused, publish
from sitegen.release.cache import Cache, makers_hash, program_hash
from sitegen.release.cluster import ClusterUnusable, joined
from sitegen.release.steps import Silent
from sitegen.release.theme_work import face_work
from sitegen.release.workers import Task, WorkerDied, Workers
from tests.release.conftest import Done
from tests.release.small_school import NOON, SUMMER, tree_hashes, write_school

NOBODY = "tcp://127.0.0.1:9"
"""The port for what is thrown away (RFC 863): nothing listens there."""


@pytest.fixture(scope="module")
def address() -> Iterator[str]:
    """The scheduler of two workers, a process each, who see this machine's folders."""
    with (
        dask.config.set({"distributed.scheduler.allowed-failures": 0}),
        LocalCluster(  # type: ignore[no-untyped-call]
            n_workers=2, threads_per_worker=1, processes=True, dashboard_address=":0"
        ) as local,
    ):
        yield local.scheduler_address


@dataclass(frozen=True)
class Who:
    """The process that does it."""

    def made(self) -> int:
        return os.getpid()


@dataclass(frozen=True)
class Kill:
    def made(self) -> int:
        os.kill(os.getpid(), signal.SIGKILL)
        return 0


def test_a_cluster_gives_the_same_bytes(done: Done, tmp_path: Path, address: str) -> None:
    there = write_school(tmp_path)
    _have_faces(there, done.root)
    publish(there, Order(NOON, SUMMER, cluster=address), Silent())
    assert tree_hashes(there / "output") == tree_hashes(done.output)


def _have_faces(root: Path, other: Path) -> None:
    """Take over the faces of the type, which take seconds to cut, and nothing else that was kept."""
    kept, fresh = (Cache(folder / WORKSHOP / "cache", makers_hash()) for folder in (other, root))
    for face in face_work(load_theme(find_theme(root, "oatcloth")), kept):
        for key in (face.card_key, face.page_key):
            fresh.put(key, kept.fetch(key))


def test_the_work_is_done_by_the_cluster(tmp_path: Path, address: str) -> None:
    with Workers(1, cluster=lambda: joined(address, tmp_path)) as workers:
        done_by = set(workers.worked_off([Who()] * 20, lambda: None))
    assert done_by
    assert os.getpid() not in done_by


def test_a_scheduler_that_does_not_answer_is_told_and_the_old_output_kept(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(cluster, "ANSWERS_WITHIN_S", 0.2)
    root = write_school(tmp_path)
    with pytest.raises(Refused) as refused:
        publish(root, Order(NOON, SUMMER, cluster=NOBODY), Silent())
    (fault,) = refused.value.faults
    assert fault.code == "cluster-unusable"
    assert NOBODY in fault.sentence
    assert not (root / "output").exists()


@pytest.mark.parametrize(
    ("answer", "told"),
    [
        (lambda true: replace(true, token=None), "does not see the folder"),
        (lambda true: replace(true, program="0" * 64), "another version of sitegen"),
        (lambda true: replace(true, python="3.9"), "runs Python 3.9"),
        (lambda _: ModuleNotFoundError("No module named 'sitegen'"), "cannot load sitegen"),
    ],
)
def test_a_worker_that_would_make_something_else_is_told(
    tmp_path: Path,
    address: str,
    monkeypatch: pytest.MonkeyPatch,
    answer: Callable[[cluster.Answer], object],
    told: str,
) -> None:
    from distributed import Client

    def run(_client: Client, _ask: object, path: str, **_options: object) -> dict[str, object]:
        true = cluster.Answer(Path(path).read_text(), program_hash(), cluster._python())
        return {"tcp://10.0.0.7:4100": answer(true)}

    monkeypatch.setattr(Client, "run", run)
    with pytest.raises(ClusterUnusable) as unusable:
        joined(address, tmp_path)
    assert told in unusable.value.reason
    assert "tcp://10.0.0.7:4100" in unusable.value.reason
    assert list(tmp_path.iterdir()) == []


@pytest.mark.parametrize(
    ("workers", "told"),
    [({}, "has no workers"), ({"tcp://10.0.0.7:4100": {"nthreads": 4}}, "4 things at once")],
)
def test_a_cluster_that_cannot_print_is_told(
    tmp_path: Path, address: str, monkeypatch: pytest.MonkeyPatch, workers: object, told: str
) -> None:
    monkeypatch.setattr(cluster, "_workers", lambda _client: workers)
    with pytest.raises(ClusterUnusable, match=told):
        joined(address, tmp_path)


def test_without_dask_the_line_that_brings_it_is_told(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setitem(sys.modules, "distributed", None)
    root = write_school(tmp_path)
    told = CliRunner().invoke(group, ["publish", "--root", str(root), "--cluster", NOBODY])
    assert told.exit_code == 3
    assert "pip install 'sitegen[cluster]'" in told.output


def _then_killed() -> list[Task[int]]:
    return [*[Who()] * 8, Kill()]


def test_a_worker_that_is_killed_ends_the_work_with_a_reason(tmp_path: Path, address: str) -> None:
    with Workers(1, cluster=lambda: joined(address, tmp_path)) as workers, pytest.raises(WorkerDied):
        workers.worked_off(_then_killed(), lambda: None)
