"""What the printing engine may fetch."""

from contextlib import suppress
from pathlib import Path

import pytest
from weasyprint import HTML
from weasyprint.urls import FatalURLFetchingError

from sitegen.press.card_fetcher import CardFetcher, card_file

PHOTO = card_file("photos", b"bytes of a photo", "image/jpeg")


def test_given_file_is_served_under_an_address_that_its_bytes_decide() -> None:
    served = CardFetcher([PHOTO]).fetch(PHOTO.address)
    assert served.read() == b"bytes of a photo"
    assert served.content_type == "image/jpeg"
    assert card_file("photos", b"bytes of a photo", "image/jpeg") == PHOTO
    assert card_file("photos", b"other bytes", "image/jpeg").address != PHOTO.address


@pytest.mark.parametrize(
    "address",
    [
        "https://card.invalid/photos/unknown.jpeg",
        "https://elsewhere.example/spy.png",
        "file:///etc/hostname",
        "data:image/png;base64,AAAA",
        "ftp://elsewhere.example/a",
    ],
)
def test_anything_else_stops_the_card(address: str) -> None:
    with pytest.raises(FatalURLFetchingError):
        CardFetcher([PHOTO])(address)


WAYS = {
    "a picture": "<img src='{at}' alt=x>",
    "a picture of many sizes": "<img srcset='{at} 1x' src='{at}' alt=x>",
    "an object": "<object data='{at}' type='image/png'></object>",
    "an embedded file": "<embed src='{at}' type='image/png'>",
    "a style sheet": "<link rel=stylesheet href='{at}'>",
    "a style that imports": "<style>@import url('{at}');</style>",
    "a background": "<p style=\"background: url('{at}')\">x",
    "the mark of a list": "<ul style=\"list-style-image: url('{at}')\"><li>x</ul>",
    "a face of type": "<style>@font-face{{font-family:A;src:url('{at}')}}p{{font-family:A}}</style><p>x",
    "an attachment": "<link rel=attachment href='{at}'>",
    "an attachment of a link": "<a rel=attachment href='{at}'>x</a>",
    "a picture in a drawing": "<svg width=9 height=9><image href='{at}' width=9 height=9 /></svg>",
    "a drawing used again": "<svg width=9 height=9><use href='{at}#a' /></svg>",
    "a border": "<p style=\"border: 3px solid; border-image: url('{at}') 3\">x",
    "generated content": "<style>p::before{{content: url('{at}')}}</style><p>x",
}


@pytest.mark.parametrize("way", WAYS)
@pytest.mark.parametrize("kind", ["file", "relative", "host", "data"])
def test_no_way_of_asking_reaches_a_file_or_a_host(
    way: str, kind: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """The page is printed without it, or not at all; no file is opened for it, and no connection made."""
    secret = tmp_path / "secret.png"
    secret.write_bytes(b"secret")
    opened: list[str] = []
    monkeypatch.setattr("urllib.request.OpenerDirector.open", lambda *asked, **_: opened.append(str(asked)))
    at = {
        "file": secret.as_uri(),
        "relative": "secret.png",
        "host": "http://127.0.0.1:9/secret.png",
        "data": "data:image/png;base64,c2VjcmV0",
    }[kind]
    page = f"<html lang=en><title>x</title><body>{WAYS[way].format(at=at)}"
    with suppress(FatalURLFetchingError):
        asked = HTML(string=page, base_url=f"{tmp_path.as_uri()}/", url_fetcher=CardFetcher([]))
        assert b"secret" not in asked.write_pdf(uncompressed_pdf=True).replace(b"secret.png", b"")
    assert opened == []
