"""Others that print the same cards: a bare call of WeasyPrint, and Chromium."""

# mypy: disable-error-code="no-untyped-call"

import shutil
from collections.abc import Mapping
from pathlib import Path
from types import TracebackType

import psutil
from playwright.sync_api import sync_playwright
from weasyprint import CSS, HTML
from weasyprint.text.fonts import FontConfiguration
from weasyprint.urls import URLFetcher, URLFetcherResponse

from sitegen.press.card_fetcher import ORIGIN, CardFile
from sitegen.press.paper_press import PAPERS, PaperPress
from tests.bench.bench_cards import PAPER, PrintedPage
from tests.outside.conftest import CHROMIUM, CHROMIUM_FLAGS


class BareCall:
    """WeasyPrint with the same style sheet, fonts and photos, and nothing of ours about it."""

    def __init__(self, press: PaperPress) -> None:
        self.fonts = FontConfiguration()
        self.style = CSS(string=press.style_text, url_fetcher=_Given(press.faces), font_config=self.fonts)
        self.papers = {
            paper: CSS(string=f"@page{{size:{size}}}", font_config=self.fonts)
            for paper, size in PAPERS.items()
        }

    def pdf(self, page: PrintedPage, paper: str = PAPER) -> bytes:
        html = HTML(string=page.html, base_url=page.address, url_fetcher=_Given(page.files))
        styles = [self.style, self.papers[paper]]
        pdf: bytes = html.write_pdf(stylesheets=styles, font_config=self.fonts, pdf_variant="pdf/ua-1")
        return pdf


class _Given(URLFetcher):
    """Serves what it was given."""

    def __init__(self, files: tuple[CardFile, ...]) -> None:
        super().__init__()
        self.files = {file.address: file for file in files}

    def fetch(self, url: str, headers: Mapping[str, str] | None = None) -> URLFetcherResponse:  # noqa: ARG002
        file = self.files[url]
        return URLFetcherResponse(url, file.body, {"Content-Type": file.kind})


class Chromium:
    """A warm browser without a window, which prints each page in a new tab."""

    def __init__(self, folder: Path, press: PaperPress) -> None:
        """folder: for the pages, with style sheet, fonts and photos beside them."""
        self.folder = folder
        self._place(press.faces)
        paper = f"@page{{size:{PAPERS[PAPER]}}}"
        (folder / "card.css").write_text(self._here(press.style_text) + paper, encoding="utf-8")
        self._playwright = sync_playwright().start()
        before = {process.pid for process in psutil.Process().children(recursive=True)}
        self._browser = self._playwright.chromium.launch(
            executable_path=shutil.which(CHROMIUM), args=list(CHROMIUM_FLAGS)
        )
        self._context = self._browser.new_context()
        started = (each for each in psutil.Process().children(recursive=True) if each.pid not in before)
        self._root = min(started, key=lambda process: process.create_time())

    def place(self, page: PrintedPage, name: str) -> str:
        """Lay the page and its photos in the folder, as a site would. Returns its address."""
        self._place(page.files)
        head = '<link rel="stylesheet" href="card.css"></head>'
        file = self.folder / f"{name}.html"
        file.write_text(self._here(page.html).replace("</head>", head, 1), encoding="utf-8")
        return file.as_uri()

    def pdf(self, address: str) -> bytes:
        tab = self._context.new_page()
        tab.goto(address)
        pdf = tab.pdf(prefer_css_page_size=True, print_background=True, tagged=True, outline=True)
        tab.close()
        return pdf

    def cpu(self) -> float:
        """Seconds of all processes of the browser, those that have ended by now as well."""
        return sum(_seconds(process) for process in (self._root, *self._root.children(recursive=True)))

    def _place(self, files: tuple[CardFile, ...]) -> None:
        for file in files:
            path = self.folder / file.address.removeprefix(ORIGIN)
            path.parent.mkdir(exist_ok=True)
            path.write_bytes(file.body)

    def _here(self, text: str) -> str:
        return text.replace(ORIGIN, "")

    def __enter__(self) -> "Chromium":
        return self

    def __exit__(
        self, kind: type[BaseException] | None, error: BaseException | None, trace: TracebackType | None
    ) -> None:
        self._browser.close()
        self._playwright.stop()


def _seconds(process: psutil.Process) -> float:
    try:
        times = process.cpu_times()
    except psutil.NoSuchProcess:  # its time is among the children's of the one that began it
        return 0.0
    return float(times.user + times.system + times.children_user + times.children_system)
