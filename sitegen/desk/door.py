"""A file that leads a browser to the desk, so that its address is told to nobody else.

All users of a machine can read what a program was begun with, on most systems. A browser that is begun with
the address of the desk would tell them the token in it; so it is begun with the path of a file that none but
the baker can read, and the file has the address.
"""

import os
import tempfile
from collections.abc import Iterator
from contextlib import contextmanager
from html import escape
from pathlib import Path

from sitegen.release.build import WORKSHOP

_PAGE = """\
<!doctype html>
<html lang="en-GB">
<meta charset="utf-8">
<meta name="referrer" content="no-referrer">
<meta http-equiv="refresh" content="0; url={address}">
<title>The desk</title>
<p><a href="{address}">The desk</a></p>
</html>
"""


class NotPrivate(Exception):
    """The disk does not keep others from reading what is written on it."""


@contextmanager
def door(root: Path, address: str) -> Iterator[Path]:
    """The file, while it is needed; afterwards it is gone with its folder.

    root: the folder that holds `content/`. The file lies below it, and not among the machine's temporary
    files: a browser that is shut into a room of its own (as snaps are) sees none of those.
    Raises NotPrivate, and OSError where it cannot be written.
    """
    workshop = root / WORKSHOP
    workshop.mkdir(exist_ok=True)
    # Its folder is for this user alone (0700), and so is the file (0600).
    with tempfile.TemporaryDirectory(prefix="door-", dir=workshop, ignore_cleanup_errors=True) as folder:
        file = Path(folder, "desk.html").resolve()
        opened = os.open(file, os.O_WRONLY | os.O_CREAT | os.O_EXCL, 0o600)
        with open(opened, "w", encoding="utf-8") as page:
            if os.name == "posix" and os.fstat(opened).st_mode & 0o077:
                raise NotPrivate
            page.write(_PAGE.format(address=escape(address)))
        yield file
