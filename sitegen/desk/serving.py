"""A free port of this machine's own loopback, and the server on it until somebody ends it."""

import errno
import secrets
import socket
from collections.abc import Callable
from dataclasses import dataclass
from datetime import datetime

import uvicorn

from sitegen.desk.reading import Reading
from sitegen.desk.server import application

HOST = "127.0.0.1"
USUAL_PORT = 8120
_TOKEN_BYTES = 24
_PATIENCE_S = 2
"""So long an answer that is being made may take once the server is to end."""
_TAKEN = frozenset({errno.EADDRINUSE, errno.EACCES})


@dataclass(frozen=True)
class Place:
    """Where the desk is served.

    socket: that listens already. token: with which every address begins, another one each time. is_other: on
    another port than the one asked for, which was taken.
    """

    socket: socket.socket
    token: str
    is_other: bool

    @property
    def port(self) -> int:
        port: int = self.socket.getsockname()[1]
        return port

    @property
    def address(self) -> str:
        """What a browser opens."""
        return f"http://{HOST}:{self.port}/{self.token}/"


def place_at(port: int) -> Place:
    """A place on a port, or on any that is free where it is taken. Raises OSError where none can be had."""
    token = secrets.token_urlsafe(_TOKEN_BYTES)
    try:
        return Place(socket.create_server((HOST, port)), token, is_other=False)
    except OSError as problem:
        if problem.errno not in _TAKEN:
            raise
        return Place(socket.create_server((HOST, 0)), token, is_other=True)


def serve(place: Place, reading: Reading, clock: Callable[[], datetime]) -> None:
    """Serve until a signal asks to end, which is raised again once all is closed."""
    server(place, reading, clock).run(sockets=[place.socket])


def server(place: Place, reading: Reading, clock: Callable[[], datetime]) -> uvicorn.Server:
    """What serves at a place once it is run. clock: aware."""
    config = uvicorn.Config(
        application(reading, clock, place.token, place.port),
        log_config=None,
        log_level="critical",
        access_log=False,
        server_header=False,
        ws="none",
        loop="asyncio",
        http="h11",
        timeout_graceful_shutdown=_PATIENCE_S,
    )
    return uvicorn.Server(config)
