"""Ctrl-C, and the request to end that a system sends (SIGTERM): heeded wherever they arrive.

What the handler of a signal raises comes up in whatever code runs at that moment. In a finaliser or in the
callback of a weak reference, of which imports have many, Python prints it and goes on. So a request is kept
as well, and every step of a build asks for it.
"""

import signal
from types import FrameType

_REQUESTS = (signal.SIGINT, signal.SIGTERM)
_asked: list[int] = []


class Stopped(BaseException):
    """A command was asked to end. Not an Exception, which somebody might take for a failure of his own.

    Nor KeyboardInterrupt, which libraries catch. number: of the signal.
    """

    def __init__(self, number: int) -> None:
        super().__init__(number)
        self.number = number


def heed_requests() -> None:
    """Have both signals raise Stopped from now on.

    One that is ignored from the beginning stays so: shells start their jobs in the background like that.
    """
    for request in _REQUESTS:
        if signal.getsignal(request) is not signal.SIG_IGN:
            signal.signal(request, _stop)


def ignore_requests() -> None:
    """The work is done or given up: what is left is soon over, and no signal may cut it."""
    for request in _REQUESTS:
        signal.signal(request, signal.SIG_IGN)


def go_on() -> None:
    """Raises Stopped where a request has come before, even if what it raised then was lost."""
    if _asked:
        raise Stopped(_asked[0])


def _stop(number: int, _frame: FrameType | None) -> None:
    _asked.append(number)
    raise Stopped(number)
