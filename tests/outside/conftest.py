"""The demo in each theme, published once a run and served on this machine."""

import functools
import http.server
import sys
import threading
from collections.abc import Iterator
from pathlib import Path

import pytest

from tests.outside.demo import Demo
from tests.outside.publishing import FIRST_THEME, PROJECT, THEMES, published

CHECKERS = PROJECT / "tests" / "checkers" / "node_modules"

CHROMIUM = "chromium-headless-shell"
"""The same engine as with windows, and a page is opened in a third of the time."""
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
def shared(tmp_path_factory: pytest.TempPathFactory, worker_id: str) -> Path:
    """The folder of this run, the same for each process that takes part in it."""
    own = tmp_path_factory.getbasetemp()
    return own if worker_id == "master" else own.parent


@pytest.fixture(scope="session")
def demo(shared: Path) -> Demo:
    """The demo of the repository as it stands."""
    return published(shared, FIRST_THEME)


@pytest.fixture(scope="session", params=THEMES)
def themed(request: pytest.FixtureRequest, shared: Path) -> Demo:
    """The demo in each theme that comes with the program."""
    return published(shared, str(request.param))


class _Quiet(http.server.SimpleHTTPRequestHandler):
    protocol_version = "HTTP/1.1"

    def log_message(self, format: str, *args: object) -> None:
        """Say nothing."""


class _Server(http.server.ThreadingHTTPServer):
    def handle_error(self, request: object, client_address: object) -> None:
        """A browser that goes on to another page hangs up in the middle of an answer."""
        if not isinstance(sys.exception(), ConnectionError):
            super().handle_error(request, client_address)


@pytest.fixture(scope="session")
def demos_served(shared: Path) -> Iterator[str]:
    """The address under which this machine serves the demo in each theme, ending in '/'."""
    handler = functools.partial(_Quiet, directory=str(shared / "demos"))
    server = _Server(("127.0.0.1", 0), handler)
    thread = threading.Thread(target=server.serve_forever, daemon=True)
    thread.start()
    yield f"http://127.0.0.1:{server.server_address[1]}/"
    server.shutdown()
    server.server_close()
    thread.join()


@pytest.fixture(scope="session")
def served(demo: Demo, demos_served: str) -> str:
    """The address of the demo's output on this machine, ending in '/'."""
    return demo.address(demos_served)


@pytest.fixture
def themed_served(themed: Demo, demos_served: str) -> str:
    """The address of the output of the demo in each theme, ending in '/'."""
    return themed.address(demos_served)
