"""Who may ask: this machine's own browser, by an address that was printed here, to read and no more.

A page of another site, open in the same browser, can send requests here as well. It does not know the token;
a name of its own that leads to this machine is told by the Host header; what it may not read is told by the
headers in which a browser says where a request comes from (Fetch Metadata, https://www.w3.org/TR/fetch-metadata/).
"""

from secrets import compare_digest

from starlette.datastructures import Headers, MutableHeaders
from starlette.responses import PlainTextResponse
from starlette.types import ASGIApp, Message, Receive, Scope, Send

_READING = frozenset({"GET", "HEAD"})
_OWN = frozenset({"same-origin", "none"})
"""Values of Sec-Fetch-Site: from a page of ours, or typed and clicked by a person outside any page."""
_NOTHING = "default-src 'none'; frame-ancestors 'none'"
_ALWAYS = {
    "X-Content-Type-Options": "nosniff",
    "Referrer-Policy": "no-referrer",
    "Cross-Origin-Resource-Policy": "same-origin",
    "Cross-Origin-Opener-Policy": "same-origin",
}
_UNLESS_SAID = {"Cache-Control": "no-store", "Content-Security-Policy": _NOTHING}


class Guard:
    """Stands before an application, and lets nobody in who does not belong here."""

    def __init__(self, app: ASGIApp, token: str, port: int) -> None:
        """token: with which every address begins. port: that is served on 127.0.0.1."""
        self._app = app
        self._token = token
        self._hosts = frozenset({f"127.0.0.1:{port}", f"localhost:{port}"})

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        if scope["type"] == "lifespan":
            await self._app(scope, receive, send)
        elif scope["type"] == "http":

            async def with_headers(message: Message) -> None:
                if message["type"] == "http.response.start":
                    _add_headers(MutableHeaders(scope=message))
                await send(message)

            status = self._refusal(scope)
            answer = PlainTextResponse("", status) if status else self._app
            await answer(scope, receive, with_headers)

    def _refusal(self, scope: Scope) -> int:
        """The status that tells nothing; 0 for a request that is let in."""
        headers = Headers(scope=scope)
        hosts = headers.getlist("host")
        if len(hosts) != 1 or hosts[0] not in self._hosts:
            return 403
        if scope["method"] not in _READING:
            return 405
        origin = headers.get("origin")
        if origin is not None and origin != f"http://{hosts[0]}":
            return 403
        if headers.get("sec-fetch-site", "none") not in _OWN and not _is_followed_link(headers):
            return 403
        token = scope["path"].split("/")[1] if "/" in scope["path"] else ""
        return 0 if compare_digest(token.encode(), self._token.encode()) else 404


def _is_followed_link(headers: Headers) -> bool:
    """Whether a person followed a link from elsewhere, to see the page itself and not inside another."""
    return headers.get("sec-fetch-mode") == "navigate" and headers.get("sec-fetch-dest") == "document"


def _add_headers(headers: MutableHeaders) -> None:
    for name, value in _ALWAYS.items():
        headers[name] = value
    for name, value in _UNLESS_SAID.items():
        headers.setdefault(name, value)
