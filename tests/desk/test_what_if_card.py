"""The one-off card: of the batch that was asked for and no other, tagged as every card is."""

import re
from collections.abc import Iterator
from pathlib import Path

import httpx
import page
import pytest

from tests.desk.running_desk import Running


@pytest.fixture(scope="module")
def client(served_desk: Running) -> Iterator[httpx.Client]:
    with httpx.Client(base_url=served_desk.address) as client:
        yield client


def test_a_one_off_card_keeps_every_rule_of_pdf_ua_1(client: httpx.Client, tmp_path: Path) -> None:
    """Source: ISO 14289-1 as the package `page-validation` checks it, 104 rules."""
    answer = client.get("what-if/open-biscuits/card.pdf?tin=23+cm+square&edition=us-cups&paper=letter")
    assert answer.status_code == 200
    named = 'filename="open-biscuits-23cm-square-us-cups-letter.pdf"'
    assert named in answer.headers["content-disposition"]
    card = tmp_path / "card.pdf"
    card.write_bytes(answer.content)
    found = page.validate_pdf(str(card), profile="ua1")
    assert [failure.rule_id for failure in found.failures] == []


@pytest.mark.parametrize(
    ("asked", "status", "part"),
    [
        ("batch=24+buns", 400, "is no batch of this recipe"),
        ("edition=australian", 400, "no edition of this school"),
        ("paper=a5", 400, "no paper 'a5'"),
    ],
)
def test_no_card_is_handed_out_that_was_not_asked_for(
    client: httpx.Client, asked: str, status: int, part: str
) -> None:
    answer = client.get(f"what-if/open-biscuits/card.pdf?{asked}")
    assert answer.status_code == status
    assert part in answer.text


@pytest.mark.parametrize(
    "path",
    [
        "what-if/no-biscuits/card.pdf",
        "what-if/coming-biscuits/card.html",
        "what-if/open-biscuits/photos/99.jpg",
        "what-if/open-biscuits/faces/other.ttf",
        "looks/values.py",
        "looks/..%2Fvalues.py",
    ],
)
def test_what_is_not_there_is_not_found(client: httpx.Client, path: str) -> None:
    assert client.get(path).status_code == 404


def test_the_page_of_a_faulty_recipe_says_so(client: httpx.Client) -> None:
    answer = client.get("what-if/coming-biscuits")
    assert answer.status_code == 200
    assert "once they are mended" in answer.text


def test_the_card_on_the_screen_is_of_the_batch_and_loads_only_what_is_its_own(client: httpx.Client) -> None:
    answer = client.get("what-if/open-biscuits/card.html?batch=24")
    assert "24\N{NO-BREAK SPACE}squares" in answer.text
    assert "script-src" not in answer.headers["content-security-policy"]
    assert "default-src 'none'" in answer.headers["content-security-policy"]
    photos = sorted(set(re.findall(r'src="(photos/[^"]*)"', answer.text)))
    assert photos == ["photos/0.jpg", "photos/1.jpg"]
    faces = re.findall(r'url\("([^"]*)"\)', client.get("what-if/open-biscuits/card.css").text)
    assert len(faces) == 5
    for path in photos + faces:
        assert client.get(f"what-if/open-biscuits/{path}").status_code == 200
