"""The addresses of the desk and of the live site, all below the token. Every one of them only reads."""

import asyncio
from collections.abc import AsyncIterator, Callable
from contextlib import AbstractAsyncContextManager, asynccontextmanager
from datetime import datetime
from pathlib import Path
from posixpath import splitext

from sse_starlette import EventSourceResponse
from starlette.applications import Starlette
from starlette.requests import Request
from starlette.responses import HTMLResponse, RedirectResponse, Response
from starlette.routing import Mount, Route

from sitegen.desk.dressing import dressed, home_of, with_script
from sitegen.desk.guard import Guard
from sitegen.desk.live_desk import LiveDesk
from sitegen.desk.live_files import card_asked, printed_card, theme_file
from sitegen.desk.live_site import NotMade, Page
from sitegen.desk.looks import DESK_POLICY, asset, desk_page, not_made_page
from sitegen.desk.reading import Reading
from sitegen.desk.shown_faults import shown_faults
from sitegen.desk.states import band_of, desk_of
from sitegen.desk.watching import Watch
from sitegen.desk.what_if_routes import what_if_routes
from sitegen.press.addresses import INDEX, NOT_FOUND, WORKER
from sitegen.press.leaf import Tree
from sitegen.press.page import CONTENT_POLICY
from sitegen.press.picture import PictureUnreadable
from sitegen.release.photo_work import ChangedMeanwhile
from sitegen.release.proof import texts_of

_MEDIA = {
    ".html": "text/html; charset=utf-8",
    ".css": "text/css; charset=utf-8",
    ".js": "text/javascript; charset=utf-8",
    ".svg": "image/svg+xml",
    ".webp": "image/webp",
    ".jpg": "image/jpeg",
    ".woff2": "font/woff2",
    ".pdf": "application/pdf",
    ".zip": "application/zip",
    ".txt": "text/plain; charset=utf-8",
    ".xml": "application/xml; charset=utf-8",
    ".webmanifest": "application/manifest+json",
}
_LIVE_POLICY = f"{CONTENT_POLICY}; frame-ancestors 'self'"


def application(reading: Reading, clock: Callable[[], datetime], token: str, port: int) -> Guard:
    """The whole server, to be run on 127.0.0.1. clock: aware. token: with which every address begins."""
    desk = LiveDesk(reading)
    addresses = _Addresses(desk)
    routes = [
        Route("/", addresses.desk),
        Route("/news", addresses.news),
        Route("/looks/{name}", addresses.looks),
        *(Route(f"/{tree}/{{path:path}}", addresses.live, name=tree) for tree in Tree),
        *what_if_routes(lambda: desk.bench, clock),
    ]
    app = Starlette(routes=[Mount(f"/{token}", routes=routes)], lifespan=_at_work(desk))
    return Guard(app, token, port)


def _at_work(desk: LiveDesk) -> Callable[[Starlette], AbstractAsyncContextManager[None]]:
    """What goes on beside the answers: saves are waited for, and what they touch is read."""

    def folders() -> list[Path]:
        return [desk.bench.root / "content", *desk.reading.theme_folders]

    @asynccontextmanager
    async def lifespan(_: Starlette) -> AsyncIterator[None]:
        watch = Watch(desk.bench.root, folders, desk.saved.set)
        tasks = [asyncio.create_task(watch.run()), asyncio.create_task(desk.keep_up(watch.look_again))]
        try:
            yield
        finally:
            watch.end()
            for task in tasks:
                task.cancel()
            await asyncio.gather(*tasks, return_exceptions=True)
            desk.end()

    return lifespan


class _Addresses:
    """What is answered at each address."""

    def __init__(self, desk: LiveDesk) -> None:
        self._desk = desk

    async def desk(self, request: Request) -> Response:
        shown = await self._desk.on_reader(lambda: desk_of(self._desk.bench))
        return _own_page(desk_page(shown, request.query_params.get("find", "")).encode())

    def looks(self, request: Request) -> Response:
        """A style, script or face of the desk's own pages."""
        found = asset(request.path_params["name"])
        if found is None:
            return Response("", 404)
        headers = {"Cache-Control": "max-age=86400"} if found.media == "font/ttf" else {}
        return Response(found.body, media_type=found.media, headers=headers)

    async def news(self, request: Request) -> Response:
        query = request.query_params
        last = request.headers.get("last-event-id", "")
        return EventSourceResponse(self._desk.news.stream(query.get("page", ""), query.get("mark", ""), last))

    async def live(self, request: Request) -> Response:
        """A file of one of the trees: what is quickly told first, then what is made."""
        tree, path = Tree(request.scope["route"].name), request.path_params["path"]
        if not path or path.endswith("/"):
            return RedirectResponse(f"{request.url.path}{INDEX}")
        try:
            body = await self._file(tree, path)
        except NotMade as problem:
            return self._not_made(tree, path, problem)
        except (PictureUnreadable, ChangedMeanwhile, OSError):
            return Response("", 404)
        return _nothing_there(tree, path) if body is None else _answer(body, path)

    async def _file(self, tree: Tree, path: str) -> bytes | None:
        """Raises NotMade, PictureUnreadable, ChangedMeanwhile and OSError."""
        desk = self._desk
        if path in (WORKER, NOT_FOUND):
            # A worker would keep pages that were saved anew meanwhile.
            return None
        match path.partition("/")[0]:
            case "theme":
                return await desk.on_press(theme_file, desk.bench, path)
            case "pictures":
                return await desk.on_press(desk.pictures.cut, path)
            case "cards" if tree is Tree.SUBSCRIBERS:
                asked = await desk.on_reader(card_asked, desk.reading, desk.pictures, path)
                return await desk.on_press(printed_card, asked) if asked else None
        page = await desk.page(tree, path)
        return self._dressed(tree, path, page) if page else None

    def _dressed(self, tree: Tree, path: str, page: Page) -> bytes:
        if not path.endswith(".html"):
            return page.body
        return dressed(page.body, f"{tree}/{path}", band_of(self._desk.bench, tree, page.slug))

    def _not_made(self, tree: Tree, path: str, problem: NotMade) -> Response:
        """The page that stands in the place of one that cannot be made, until it can."""
        here = f"{tree}/{path}"
        faults = shown_faults(problem.faults, texts_of(self._desk.bench.root, problem.faults))
        text = not_made_page(problem.title, problem.told, faults, home_of(here))
        return _own_page(with_script(text.encode(), here, problem.mark))


def _nothing_there(tree: Tree, path: str) -> Response:
    """Of a page that is not there one that waits for it, since it may be written yet; of a file nothing."""
    if not path.endswith(".html"):
        return Response("", 404)
    here = f"{tree}/{path}"
    text = not_made_page("There is no such page", "No page of the site has this address.", (), home_of(here))
    return _own_page(with_script(text.encode(), here, mark=""), 404)


def _own_page(body: bytes, status: int = 200) -> Response:
    return HTMLResponse(body, status, {"Content-Security-Policy": DESK_POLICY})


def _answer(body: bytes, path: str) -> Response:
    ending = splitext(path)[1]
    headers = {"Content-Security-Policy": _LIVE_POLICY} if ending == ".html" else {}
    return Response(body, headers=headers, media_type=_MEDIA.get(ending, "application/octet-stream"))
