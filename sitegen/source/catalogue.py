"""The catalogue of faults: every code that reading and checking can give, with its meaning and cure."""

from collections.abc import Iterable, Mapping
from importlib import import_module
from pkgutil import walk_packages

from sitegen import source
from sitegen.faults import FaultCode


class CodeTwice(Exception):
    """Two rows of the catalogue bear the same code."""

    def __init__(self, code: str) -> None:
        super().__init__(code)
        self.code = code


def catalogue(more: Iterable[FaultCode] = ()) -> Mapping[str, FaultCode]:
    """Code -> its row, sorted by code: the `CODES` of every module of this room, and `more`.

    more: rows of other rooms (the sheet's checks). Raises CodeTwice.
    """
    rows: dict[str, FaultCode] = {}
    for row in (*_own_rows(), *more):
        if rows.setdefault(row.code, row) is not row:
            raise CodeTwice(row.code)
    return dict(sorted(rows.items()))


def _own_rows() -> Iterable[FaultCode]:
    for found in walk_packages(source.__path__, f"{source.__name__}."):
        yield from getattr(import_module(found.name), "CODES", ())
