"""What a command takes for now: the clock, or the moment that SOURCE_DATE_EPOCH names in its place.

The rules are those of reproducible-builds.org, 'SOURCE_DATE_EPOCH': seconds since 1970 in UTC, digits
alone, as `date +%s` and `git log -1 --format=%ct` print them; it stands for the current time wherever a build
would use that; a malformed value ends the build. No other part of the program asks the clock for the day.
"""

import os
from datetime import UTC, datetime

from sitegen.cli.exits import Exit, stop

_NAME = "SOURCE_DATE_EPOCH"
_YEAR_9999 = 253_370_764_800
"""The last year that a date can have: in other zones its last day would be over already."""


def moment() -> datetime:
    """Now, in UTC. Stops with code 2 where SOURCE_DATE_EPOCH is set to what is no moment."""
    told = os.environ.get(_NAME)
    if told is None:
        return datetime.now(UTC)
    if not (told.isascii() and told.isdigit() and len(told) < 20 and int(told) < _YEAR_9999):
        sentence = f"{_NAME} is '{told}': it must be seconds since 1970-01-01, in digits alone"
        raise stop(f"{sentence}\nunset it, or take for example 'git log -1 --format=%ct'", Exit.WRONG_USE)
    return datetime.fromtimestamp(int(told), UTC)
