"""`sitegen preview` as a baker runs it: begun, asked over a socket, and ended by Ctrl-C."""

import os
import re
import signal
import socket
import subprocess
import sys
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

import pytest

from tests.release.small_school import write_school

PROJECT = Path(__file__).parents[2]
# A signal that is ignored from the start stays ignored: so it is in the background jobs of some shells.
HEEDING = (
    "import signal; signal.signal(signal.SIGINT, signal.default_int_handler);"
    "from sitegen.cli.main import main; main()"
)
PATIENCE_S = 30


@contextmanager
def begun(folder: Path, *arguments: str) -> Iterator[subprocess.Popen[str]]:
    """`sitegen preview` in a process group of its own, which is gone afterwards."""
    command = [sys.executable, "-c", HEEDING, "preview", "--no-open", *arguments]
    environment = {**os.environ, "PYTHONPATH": str(PROJECT)}
    with subprocess.Popen(
        command, cwd=folder, env=environment, text=True, start_new_session=True,
        stdout=subprocess.PIPE, stderr=subprocess.PIPE,
    ) as child:  # fmt: skip
        try:
            yield child
        finally:
            if child.poll() is None:
                os.killpg(child.pid, signal.SIGKILL)


def address_of(child: subprocess.Popen[str]) -> tuple[int, str]:
    """Port and token, as they are printed."""
    assert child.stdout is not None
    found = re.search(r"http://127\.0\.0\.1:(\d+)/([\w-]{32,})/", child.stdout.readline())
    assert found
    return int(found[1]), found[2]


def answer(port: int, path: str, host: str) -> str:
    """What comes over the wire."""
    with socket.create_connection(("127.0.0.1", port), PATIENCE_S) as wire:
        wire.sendall(f"GET {path} HTTP/1.1\r\nHost: {host}\r\nConnection: close\r\n\r\n".encode())
        return b"".join(iter(lambda: wire.recv(65536), b"")).decode(errors="replace")


def listening_at(port: int) -> set[str]:
    """Local addresses on which anybody listens at a port, as Linux writes them (proc(5), /proc/net/tcp)."""
    rows = [line.split() for line in Path("/proc/net/tcp").read_text().splitlines()[1:]]
    return {row[1] for row in rows if row[1].endswith(f":{port:04X}") and row[3] == "0A"}


@pytest.fixture
def school(tmp_path: Path) -> Path:
    return write_school(tmp_path / "school")


def test_it_answers_by_its_address_alone_and_ends_with_ctrl_c(school: Path) -> None:
    with begun(school, "--on", "2026-07-15") as child:
        port, token = address_of(child)
        own = f"127.0.0.1:{port}"
        assert "Tansy Row" in answer(port, f"/{token}/", own)
        assert "Open biscuits" in answer(port, f"/{token}/public/recipes/open-biscuits.html", own)
        assert answer(port, f"/{token}/", "evil.example").startswith("HTTP/1.1 403")
        assert answer(port, "/", own).startswith("HTTP/1.1 404")
        assert (
            "content"
            not in answer(port, f"/{token}/public/../../content/site.yaml", own).partition("\r\n\r\n")[2]
        )
        assert listening_at(port) == {f"0100007F:{port:04X}"}  # 127.0.0.1, and no other address
        with socket.create_connection(("127.0.0.1", port), PATIENCE_S) as listening:
            listening.sendall(f"GET /{token}/news HTTP/1.1\r\nHost: {own}\r\n\r\n".encode())
            assert listening.recv(1024).startswith(b"HTTP/1.1 200")
            os.killpg(child.pid, signal.SIGINT)
            _, told = child.communicate(timeout=PATIENCE_S)
        assert child.returncode == 130
        assert "Traceback" not in told
        with pytest.raises(ProcessLookupError):
            os.killpg(child.pid, 0)
    assert not (school / "output").exists()


def test_two_at_once_have_two_ports(school: Path) -> None:
    with socket.create_server(("127.0.0.1", 0)) as taken:
        port = taken.getsockname()[1]
        with begun(school, "--port", str(port)) as child:
            other, token = address_of(child)
            assert other != port
            assert "Tansy Row" in answer(other, f"/{token}/", f"127.0.0.1:{other}")
            os.kill(child.pid, signal.SIGTERM)
            _, told = child.communicate(timeout=PATIENCE_S)
    assert f"port {port} is taken" in told
    assert child.returncode == 143


def test_a_folder_that_is_no_school_is_wrong_use(tmp_path: Path) -> None:
    with begun(tmp_path) as child:
        _, told = child.communicate(timeout=PATIENCE_S)
    assert child.returncode == 2
    assert "there is no content/ folder" in told
