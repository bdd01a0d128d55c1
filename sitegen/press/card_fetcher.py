"""What the printing engine may fetch: bytes that it was handed, under made-up addresses, and nothing else.

This file imports the printing engine: it is imported where a card is printed, never before.
"""

# mypy: disable-error-code="no-untyped-call"
# WeasyPrint carries no types of its own.

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from hashlib import sha256

from weasyprint.urls import FatalURLFetchingError, URLFetcher, URLFetcherResponse

ORIGIN = "https://card.invalid/"
"""RFC 2606 keeps `.invalid` free for ever: no host has this name."""


@dataclass(frozen=True)
class CardFile:
    """address: a full one below ORIGIN. kind: its media type."""

    address: str
    kind: str
    body: bytes


def card_file(folder: str, body: bytes, kind: str) -> CardFile:
    """A file under an address that its bytes decide.

    A PDF names its pictures by their addresses: so the same photo gives the same bytes in any folder.
    """
    ending = kind.rpartition("/")[2]
    return CardFile(f"{ORIGIN}{folder}/{sha256(body).hexdigest()}.{ending}", kind, body)


class CardFetcher(URLFetcher):
    """Serves the given files; any other address stops the card.

    WeasyPrint's own fetcher leaves out what it cannot get and goes on: a card without its photo.
    """

    def __init__(self, files: Iterable[CardFile]) -> None:
        super().__init__(allowed_protocols=(), allow_redirects=False, fail_on_errors=True)
        self._files = {file.address: file for file in files}

    def fetch(self, url: str, headers: Mapping[str, str] | None = None) -> URLFetcherResponse:  # noqa: ARG002
        """The file of that address. headers: asked of a host by the base class; there is no host here."""
        file = self._files.get(url)
        if file is None:
            raise FatalURLFetchingError(f"a card fetches nothing from outside: {url}")
        return URLFetcherResponse(url, file.body, {"Content-Type": file.kind})
