"""Who is let in: by Host, by token, by method, and by where a browser says that a request comes from."""

import asyncio
from collections.abc import Sequence
from concurrent.futures import ThreadPoolExecutor

import httpx
import pytest
from starlette.responses import PlainTextResponse

from sitegen.desk.guard import Guard

PORT = 8120
TOKEN = "right-token"
OWN = f"127.0.0.1:{PORT}"


def answered(path: str, method: str, headers: Sequence[tuple[str, str]]) -> httpx.Response:
    """The guard's answer, from a loop of its own: a browser of another test may hold this thread's."""

    async def ask() -> httpx.Response:
        guarded = httpx.ASGITransport(Guard(PlainTextResponse("inside"), TOKEN, PORT))
        async with httpx.AsyncClient(transport=guarded) as client:
            request = client.build_request(method, f"http://{OWN}{path}", headers=headers)
            return await client.send(request)

    with ThreadPoolExecutor(1) as thread:
        return thread.submit(asyncio.run, ask()).result()


def asked(path: str = f"/{TOKEN}/", method: str = "GET", host: str = OWN, **headers: str) -> tuple[int, str]:
    """Status and text of an answer. headers: with '_' for '-'."""
    told = [("host", host), *((name.replace("_", "-"), value) for name, value in headers.items())]
    answer = answered(path, method, told)
    return answer.status_code, answer.text


@pytest.mark.parametrize("host", [OWN, f"localhost:{PORT}"])
def test_this_machine_is_let_in(host: str) -> None:
    assert asked(host=host) == (200, "inside")
    assert asked(method="HEAD", host=host)[0] == 200


@pytest.mark.parametrize(
    "host",
    [
        "127.0.0.1",
        "localhost",
        "127.0.0.1:8121",
        f"evil.example:{PORT}",
        f"127.0.0.1.evil.example:{PORT}",
        f"{OWN}.evil.example",
        f"evil.example@{OWN}",
        f"[::1]:{PORT}",
        f"LOCALHOST:{PORT}",
        "",
    ],
)
def test_a_name_that_leads_here_is_not_let_in(host: str) -> None:
    assert asked(host=host) == (403, "")


@pytest.mark.parametrize(
    "path", ["/", "/wrong-token/", f"/{TOKEN}x/", f"//{TOKEN}/", "/looks/desk.css", f"/x/../{TOKEN}x"]
)
def test_without_the_token_there_is_nothing(path: str) -> None:
    assert asked(path) == (404, "")


@pytest.mark.parametrize("method", ["POST", "PUT", "DELETE", "PATCH", "OPTIONS", "TRACE", "PROPFIND"])
def test_nothing_is_done_but_reading(method: str) -> None:
    assert asked(method=method) == (405, "")


@pytest.mark.parametrize(
    ("headers", "status"),
    [
        ({"origin": f"http://{OWN}"}, 200),
        ({"origin": "https://evil.example"}, 403),
        ({"origin": "http://127.0.0.1:9999"}, 403),
        ({"origin": "null"}, 403),
        ({"sec_fetch_site": "same-origin", "sec_fetch_mode": "cors"}, 200),
        ({"sec_fetch_site": "none", "sec_fetch_mode": "navigate", "sec_fetch_dest": "document"}, 200),
        ({"sec_fetch_site": "cross-site", "sec_fetch_mode": "navigate", "sec_fetch_dest": "document"}, 200),
        ({"sec_fetch_site": "cross-site", "sec_fetch_mode": "navigate", "sec_fetch_dest": "iframe"}, 403),
        ({"sec_fetch_site": "cross-site", "sec_fetch_mode": "no-cors", "sec_fetch_dest": "image"}, 403),
        ({"sec_fetch_site": "same-site", "sec_fetch_mode": "cors"}, 403),
    ],
)
def test_pages_of_other_sites_read_nothing(headers: dict[str, str], status: int) -> None:
    """https://www.w3.org/TR/fetch-metadata/, section 2."""
    assert asked(**headers)[0] == status


def test_every_answer_is_bound_to_this_page_and_kept_nowhere() -> None:
    for path in (f"/{TOKEN}/", "/wrong/"):
        headers = answered(path, "GET", [("host", OWN)]).headers
        assert headers["referrer-policy"] == "no-referrer"
        assert headers["x-content-type-options"] == "nosniff"
        assert headers["cache-control"] == "no-store"
        assert headers["content-security-policy"] == "default-src 'none'; frame-ancestors 'none'"
        assert headers["cross-origin-resource-policy"] == "same-origin"


def test_two_hosts_are_none() -> None:
    assert answered(f"/{TOKEN}/", "GET", [("host", OWN), ("host", "evil.example")]).status_code == 403
