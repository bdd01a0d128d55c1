"""The demo, published once for all checks that look at finished pages and cards."""

import functools
import http.server
import os
import shutil
import subprocess
import sys
import threading
from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser, sync_playwright

from tests.outside.demo import Demo

PROJECT = Path(__file__).parents[2]
CHECKERS = PROJECT / "tests" / "checkers" / "node_modules"
DAY = "2026-11-25"

# Debian's Chromium in a closed network, as root: no sandbox, and nothing of its own over the wire.
CHROMIUM_FLAGS = [
    "--no-sandbox",
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
]


@pytest.fixture(scope="session")
def demo(tmp_path_factory: pytest.TempPathFactory) -> Demo:
    """The demo of the repository, published into a folder of its own."""
    root = tmp_path_factory.mktemp("demo")
    shutil.copytree(PROJECT / "content", root / "content")
    done = subprocess.run(
        [sys.executable, "-m", "sitegen", "publish", "--on", DAY],
        cwd=root,
        capture_output=True,
        text=True,
        check=False,
        env={**os.environ, "PYTHONPATH": str(PROJECT)},
    )
    assert done.returncode == 0, done.stdout + done.stderr
    output = root / "output"
    return Demo(output / "public", output / "subscribers", output / "texts")


@pytest.fixture(scope="session")
def checkers() -> Path:
    """The folder of the npm packages that `bin/test` installs."""
    assert CHECKERS.is_dir(), "run bin/test, which installs the checkers"
    return CHECKERS


@pytest.fixture(scope="session")
def browser() -> Iterator[Browser]:
    """Debian's Chromium, headless."""
    path = shutil.which("chromium")
    assert path, "run bin/test, which installs Chromium"
    with sync_playwright() as playwright:
        started = playwright.chromium.launch(executable_path=path, args=CHROMIUM_FLAGS)
        yield started
        started.close()


class _Quiet(http.server.SimpleHTTPRequestHandler):
    def log_message(self, format: str, *args: object) -> None:
        """Say nothing."""


@pytest.fixture(scope="session")
def served(demo: Demo) -> Iterator[str]:
    """The address of the demo's output on this machine, ending in '/'."""
    handler = functools.partial(_Quiet, directory=str(demo.public.parent))
    server = http.server.ThreadingHTTPServer(("127.0.0.1", 0), handler)
    thread = threading.Thread(target=server.serve_forever, daemon=True)
    thread.start()
    yield f"http://127.0.0.1:{server.server_address[1]}/"
    server.shutdown()
    server.server_close()
    thread.join()
