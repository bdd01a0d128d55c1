"""Processes of an existing Dask cluster, as a pool of workers.

They read the content and keep what they made in the folder itself, so each must see it under the same path;
and what they make must be what this program would make. Both are asked of each before it is handed anything.
"""

# mypy: disable-error-code="no-untyped-call"

import sys
from asyncio import CancelledError as TaskCancelled
from collections.abc import Mapping
from concurrent.futures import CancelledError, Executor, Future
from contextlib import suppress
from dataclasses import dataclass
from pathlib import Path
from secrets import token_hex
from tempfile import NamedTemporaryFile
from typing import TYPE_CHECKING, Any
from warnings import catch_warnings, simplefilter

from sitegen.release.cache import program_hash
from sitegen.release.workers import Made, Task, made

if TYPE_CHECKING:
    from distributed import Client

ANSWERS_WITHIN_S = 10
"""Seconds in which the scheduler must answer."""


class ClusterPackageMissing(Exception):
    """Dask is not installed: the extra `cluster` brings it."""


class ClusterUnusable(Exception):
    """The cluster cannot do the work. address: as it was asked for; reason, way_out: in words."""

    def __init__(self, address: str, reason: str, way_out: str) -> None:
        super().__init__(address, reason, way_out)
        self.address = address
        self.reason = reason
        self.way_out = way_out


@dataclass(frozen=True)
class Answer:
    """What a worker says of itself. token: what it read where the folder should be; None where nothing is."""

    token: str | None
    program: str
    python: str


class ClusterPool:
    """The workers of a cluster that has been joined."""

    def __init__(self, client: "Client", size: int) -> None:
        from distributed.scheduler import KilledWorker

        self._client = client
        self._executor: Executor = client.get_executor()
        self.size = size
        self.deaths: tuple[type[BaseException], ...] = (KilledWorker, CancelledError, TaskCancelled)

    def submit(self, task: Task[Made]) -> "Future[Made]":
        """Hand a task on."""
        return self._executor.submit(made, task)

    def has_anybody(self) -> bool:
        """Whether the scheduler is there and has a worker left."""
        return self._client.status == "running" and bool(_workers(self._client))

    def end(self, at_once: bool) -> None:
        """Leave the cluster, which goes on; what it was still asked for is dropped."""
        self._executor.shutdown(wait=not at_once)
        self._client.close()


def joined(address: str, folder: Path) -> ClusterPool:
    """Join a cluster. address: of its scheduler, such as tcp://10.0.0.7:8786.

    folder: one that all workers must see, and that is theirs and this process's to write to.
    Raises ClusterUnusable, and ClusterPackageMissing.
    """
    client = _client(address)
    try:
        workers = _workers(client)
        if not workers:
            raise ClusterUnusable(address, "it has no workers", "start some with 'dask worker'")
        for name, row in workers.items():
            if row["nthreads"] != 1:
                reason = f"the worker {name} does {row['nthreads']} things at once, and a press only one"
                raise ClusterUnusable(address, reason, "start workers with '--nthreads 1'")
        _ask_scheduler(client, address)
        _ask_workers(client, address, folder)
    except BaseException:
        client.close()
        raise
    return ClusterPool(client, len(workers))


def _client(address: str) -> "Client":
    try:
        from distributed import Client
        from distributed.versions import VersionMismatchWarning
    except ImportError as problem:
        raise ClusterPackageMissing from problem
    try:
        with catch_warnings():
            simplefilter("ignore", VersionMismatchWarning)  # what differs and matters is told as a fault
            return Client(address, timeout=ANSWERS_WITHIN_S, set_as_default=False)
    except (OSError, ValueError, RuntimeError) as problem:
        reason = f"no scheduler answered within {ANSWERS_WITHIN_S} seconds"
        raise ClusterUnusable(address, reason, "is the address right, and is it running?") from problem


def _workers(client: "Client") -> Mapping[str, Mapping[str, Any]]:
    workers: Mapping[str, Mapping[str, Any]] = client.scheduler_info(n_workers=-1)["workers"]
    return workers


def _ask_scheduler(client: "Client", address: str) -> None:
    versions: Mapping[str, Any] = client.sync(client._get_versions)
    ours, theirs = (versions[whose]["packages"]["distributed"] for whose in ("client", "scheduler"))
    if ours != theirs:
        reason = f"its scheduler runs distributed {theirs}, and this machine {ours}"
        raise ClusterUnusable(address, reason, "install the same version on both")


def _ask_workers(client: "Client", address: str, folder: Path) -> None:
    """Have each worker read what was just written, and say which program it runs."""
    token = token_hex()
    with NamedTemporaryFile("w", dir=folder, prefix="seen-", suffix=".token") as file:
        file.write(token)
        file.flush()
        answers = client.run(_answer, file.name, on_error="return")
    expected = Answer(token, program_hash(), _python())
    for name, answer in sorted(answers.items()):
        if answer != expected:
            raise ClusterUnusable(address, f"the worker {name} {_amiss(answer, expected)}", _way_out(answer))


def _answer(path: str) -> Answer:
    """What is called in each worker."""
    token = None
    with suppress(OSError, UnicodeDecodeError):
        token = Path(path).read_text()
    return Answer(token, program_hash(), _python())


def _amiss(answer: object, expected: Answer) -> str:
    match answer:
        case Answer(python=python) if python != expected.python:
            return f"runs Python {python}, and this machine {expected.python}"
        case Answer(program=program) if program != expected.program:
            return "has another version of sitegen or of its libraries"
        case Answer():
            return "does not see the folder"
        case _:
            return f"cannot load sitegen: {answer}"


def _way_out(answer: object) -> str:
    if isinstance(answer, Answer) and answer.token is None:
        return "all machines must share the folder, under the same path"
    return "install on it what is installed here, and start it anew"


def _python() -> str:
    return ".".join(map(str, sys.version_info[:2]))
