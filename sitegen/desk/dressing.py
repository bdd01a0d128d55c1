"""What a page of the live site is given beside its own: a band that says what it is, its script for news."""

import re
from dataclasses import dataclass
from hashlib import sha256
from urllib.parse import quote

from markupsafe import escape

_HEAD, _END = b"</head>", b"</body>"
_BODY = re.compile(rb"<body\b[^>]*>")
"""As any theme may begin it."""


@dataclass(frozen=True)
class Band:
    """seen: 'As everyone sees it on 28 November 2026'. standing: 'Draft: no day publishes it', or ''.

    links: (title, path below the token) of what else is made of the same recipe.
    """

    seen: str
    standing: str = ""
    links: tuple[tuple[str, str], ...] = ()


def mark_of(body: bytes) -> str:
    """What tells whether a page is still the one that is open."""
    return sha256(body).hexdigest()[:16]


def dressed(body: bytes, page: str, band: Band) -> bytes:
    """A page with its band and script. page: its path below the token, 'public/recipes/x.html'."""
    home = home_of(page)
    style = f'<link rel="stylesheet" href="{home}looks/live.css">'
    standing = f" <strong>{escape(band.standing)}</strong>" if band.standing else ""
    links = "".join(f' <a href="{home}{path}">{escape(title)}</a>' for title, path in band.links)
    shown = (
        f'<aside class="preview-band" aria-label="Preview"><a href="{home or "./"}">Desk</a> '
        f"<span>{escape(band.seen)}</span>{standing}{links}</aside>"
    )
    with_style = body.replace(_HEAD, style.encode() + _HEAD, 1)
    with_band = _BODY.sub(lambda begun: begun[0] + shown.encode(), with_style, count=1)
    return with_script(with_band, page, mark_of(body))


def with_script(body: bytes, page: str, mark: str) -> bytes:
    """A page that renews itself once it is no more what `mark` tells."""
    home = home_of(page)
    news = escape(f"{home}news?page={quote(page)}&mark={mark}")
    script = f'<script src="{home}looks/live.js" data-news="{news}"></script>'
    before, end, after = body.rpartition(_END)
    return before + script.encode() + end + after if end else body


def home_of(page: str) -> str:
    """The relative address of the desk, seen from a page below it; '' beside it."""
    return "../" * page.count("/")
