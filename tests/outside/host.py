"""A host on this machine as a school would rent one: compression, caching headers, trees at any path."""

import gzip
import threading
from collections.abc import Iterator, Mapping
from contextlib import contextmanager
from dataclasses import dataclass, field
from hashlib import sha256
from http.server import BaseHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path

TYPES = {
    ".css": "text/css; charset=utf-8",
    ".html": "text/html; charset=utf-8",
    ".jpg": "image/jpeg",
    ".js": "text/javascript; charset=utf-8",
    ".pdf": "application/pdf",
    ".svg": "image/svg+xml",
    ".txt": "text/plain; charset=utf-8",
    ".webmanifest": "application/manifest+json",
    ".webp": "image/webp",
    ".woff2": "font/woff2",
    ".xml": "application/xml; charset=utf-8",
}
COMPRESSED = (".css", ".html", ".js", ".svg", ".txt", ".webmanifest", ".xml")
NAMED_BY_HASH = ("theme/", "pictures/")


@dataclass
class Host:
    """What is served and what was asked.

    trees: path, '/' or '/school/', -> folder. status: another answer than 200 to everything, as while
    nobody is logged in. asked: path of each request, in order. address: without the closing '/'.
    """

    trees: dict[str, Path]
    status: int = 200
    asked: list[str] = field(default_factory=list)
    address: str = ""

    def file(self, path: str) -> tuple[str, Path] | None:
        """The longest tree that a path lies in: the path within it, and the file, if it is there."""
        for start in sorted(self.trees, key=len, reverse=True):
            if path.startswith(start):
                inner = path.removeprefix(start)
                file = self.trees[start] / (inner + "index.html" if inner in ("", "tutorials/") else inner)
                return (inner, file) if file.is_file() else None
        return None


@contextmanager
def hosted(trees: Mapping[str, Path]) -> Iterator[Host]:
    """A host that serves until the block ends."""
    host = Host(dict(trees))

    class Answers(_Answers):
        serves = host

    server = ThreadingHTTPServer(("127.0.0.1", 0), Answers)
    server.daemon_threads = True
    host.address = f"http://127.0.0.1:{server.server_address[1]}"
    thread = threading.Thread(target=server.serve_forever, daemon=True)
    thread.start()
    try:
        yield host
    finally:
        server.shutdown()
        server.server_close()
        thread.join()


class _Answers(BaseHTTPRequestHandler):
    protocol_version = "HTTP/1.1"
    serves: Host

    def do_GET(self) -> None:
        path = self.path.split("?")[0]
        self.serves.asked.append(path)
        found = self.serves.file(path)
        if self.serves.status != 200 or found is None:
            status = self.serves.status if found else 404
            self._say(status, b"<!doctype html><title>No</title>", {"Content-Type": TYPES[".html"]})
            return
        inner, file = found
        body = file.read_bytes()
        etag = f'"{sha256(body).hexdigest()[:16]}"'
        lasting = inner.startswith(NAMED_BY_HASH)
        headers = {
            "Content-Type": TYPES[file.suffix],
            "Cache-Control": "public, max-age=31536000, immutable" if lasting else "no-cache",
            "ETag": etag,
        }
        if self.headers.get("If-None-Match") == etag:
            self._say(304, b"", headers)
            return
        if file.suffix in COMPRESSED and "gzip" in self.headers.get("Accept-Encoding", ""):
            body = gzip.compress(body, mtime=0)
            headers |= {"Content-Encoding": "gzip", "Vary": "Accept-Encoding"}
        self._say(200, body, headers)

    def _say(self, status: int, body: bytes, headers: Mapping[str, str]) -> None:
        self.send_response(status)
        for name, value in headers.items():
            self.send_header(name, value)
        if status != 304:
            self.send_header("Content-Length", str(len(body)))
        self.end_headers()
        self.wfile.write(body)

    def log_message(self, format: str, *args: object) -> None:
        """Say nothing."""
