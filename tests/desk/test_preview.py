"""`sitegen preview` as a baker runs it: begun, asked over a socket, and ended by Ctrl-C."""

import os
import pty
import re
import shutil
import signal
import socket
import stat
import subprocess
import sys
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

import pytest
from click.testing import CliRunner

from sitegen.cli.main import group
from tests.release.small_school import write_school

PROJECT = Path(__file__).parents[2]
# A signal that is ignored from the start stays ignored: so it is in the background jobs of some shells.
HEEDING = (
    "import signal; signal.signal(signal.SIGINT, signal.default_int_handler);"
    "from sitegen.cli.main import main; main()"
)
PATIENCE_S = 30


@contextmanager
def begun(folder: Path, *arguments: str, out: int, **environment: str) -> Iterator[subprocess.Popen[str]]:
    """`sitegen preview` in a process group of its own, which is gone afterwards. out: where it prints."""
    command = [sys.executable, "-c", HEEDING, "preview", *arguments]
    with subprocess.Popen(
        command, cwd=folder, env={**os.environ, "PYTHONPATH": str(PROJECT), **environment}, text=True,
        start_new_session=True, stdout=out, stderr=subprocess.PIPE,
    ) as child:  # fmt: skip
        try:
            yield child
        finally:
            if child.poll() is None:
                os.killpg(child.pid, signal.SIGKILL)


def address_of(told: str) -> tuple[int, str]:
    """Port and token, as they are printed."""
    found = re.search(r"http://127\.0\.0\.1:(\d+)/([\w-]{32,})/", told)
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
    """One recipe will do, and is soon read."""
    root = write_school(tmp_path / "school")
    for recipe in (root / "content" / "recipes").iterdir():
        if recipe.name != "open-biscuits":
            shutil.rmtree(recipe)
    return root


@pytest.fixture
def browser(tmp_path: Path) -> Path:
    """A program that keeps what it was begun with in `told`, beside it."""
    program = tmp_path / "browser"
    program.write_text(f"#!/bin/sh\nprintf '%s' \"$*\" > '{tmp_path / 'told'}'\n")
    program.chmod(0o755)
    return program


def test_from_its_beginning_to_ctrl_c(school: Path, browser: Path) -> None:
    """One preview for all, since to begin one costs seconds."""
    terminal, end_of_it = pty.openpty()  # only at a terminal somebody sits who would see a browser
    environment = {"BROWSER": f"{browser} %s", "DISPLAY": ":0"}
    with socket.create_server(("127.0.0.1", 0)) as taken:
        asked = taken.getsockname()[1]
        with begun(school, "--on", "2026-07-15", "--port", str(asked), out=end_of_it, **environment) as child:
            os.close(end_of_it)
            port, token = address_of(os.read(terminal, 1000).decode())
            assert port != asked
            assert_answers_by_its_address_alone(port, token)
            door = assert_leads_the_browser_without_telling_it_the_token(
                browser.with_name("told"), f"http://127.0.0.1:{port}/{token}/"
            )
            with socket.create_connection(("127.0.0.1", port), PATIENCE_S) as listening:
                request = f"GET /{token}/news HTTP/1.1\r\nHost: 127.0.0.1:{port}\r\n\r\n"
                listening.sendall(request.encode())
                assert listening.recv(1024).startswith(b"HTTP/1.1 200")
                os.killpg(child.pid, signal.SIGINT)
                _, told = child.communicate(timeout=PATIENCE_S)
            assert child.returncode == 130
            with pytest.raises(ProcessLookupError):
                os.killpg(child.pid, 0)
    os.close(terminal)
    assert told.splitlines() == [
        f"port {asked} is taken: another is used", "", "the preview has ended; it published nothing"
    ]  # fmt: skip
    assert not door.parent.exists()
    assert not (school / "output").exists()


def assert_answers_by_its_address_alone(port: int, token: str) -> None:
    own = f"127.0.0.1:{port}"
    assert "Tansy Row" in answer(port, f"/{token}/", own)
    assert "Open biscuits" in answer(port, f"/{token}/public/recipes/open-biscuits.html", own)
    assert answer(port, f"/{token}/", "evil.example").startswith("HTTP/1.1 403")
    assert answer(port, "/", own).startswith("HTTP/1.1 404")
    outside = answer(port, f"/{token}/public/../../content/site.yaml", own)
    assert "content" not in outside.partition("\r\n\r\n")[2]
    assert listening_at(port) == {f"0100007F:{port:04X}"}  # 127.0.0.1, and no other address


def assert_leads_the_browser_without_telling_it_the_token(told: Path, address: str) -> Path:
    """The file that it was begun with, which nobody else can read."""
    begun_with = told.read_text()
    door = Path(begun_with.removeprefix("file://"))
    assert f'content="0; url={address}"' in door.read_text()
    assert address.split("/")[3] not in begun_with
    assert [stat.S_IMODE(path.stat().st_mode) for path in (door, door.parent)] == [0o600, 0o700]
    return door


def test_a_folder_that_is_no_school_is_wrong_use(tmp_path: Path) -> None:
    ended = CliRunner().invoke(group, ["preview", "--root", str(tmp_path)])
    assert ended.exit_code == 2
    assert "there is no content/ folder" in ended.output
