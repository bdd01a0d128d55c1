"""What the printing engine may fetch."""

import pytest
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
