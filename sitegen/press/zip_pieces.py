"""A ZIP file piece by piece, so that no more than one of its files is in memory; its bytes tell no time."""

from collections.abc import Callable, Iterable, Iterator
from io import SEEK_CUR, SEEK_SET, BytesIO
from zipfile import ZIP_STORED, ZipFile, ZipInfo

FIXED_TIME = (1980, 1, 1, 0, 0, 0)
"""The earliest that a ZIP file can tell (APPNOTE.TXT, 4.4.6)."""
_READABLE = 0o100644 << 16
_UNIX = 3

ZipEntry = tuple[str, Callable[[], bytes]]
"""Name inside the ZIP, and what makes the bytes when they are wanted."""


def zip_pieces(entries: Iterable[ZipEntry]) -> Iterator[bytes]:
    """The file's bytes in order, a piece an entry. Entries are sorted by name and stored as they are: a PDF
    holds nothing more to squeeze out.
    """
    buffer = _Drained()
    with ZipFile(buffer, "w") as file:
        for name, body in sorted(entries, key=lambda entry: entry[0]):
            info = ZipInfo(name, FIXED_TIME)
            info.compress_type, info.create_system, info.external_attr = ZIP_STORED, _UNIX, _READABLE
            file.writestr(info, body())
            yield buffer.drain()
    yield buffer.drain()


class _Drained(BytesIO):
    """What was drained is no longer held, and still counted in every position."""

    _before = 0

    def drain(self) -> bytes:
        body = self.getvalue()
        self._before += len(body)
        super().seek(0)
        self.truncate()
        return body

    def tell(self) -> int:
        return self._before + super().tell()

    def seek(self, offset: int, whence: int = SEEK_SET, /) -> int:
        if whence == SEEK_SET:
            return self._before + super().seek(offset - self._before)
        assert whence == SEEK_CUR
        return self._before + super().seek(super().tell() + offset)
