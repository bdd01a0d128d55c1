"""Text is data: nothing that a baker writes becomes code in any output.

The kinds of payload are those of the OWASP cheat sheets (see `payloads.py`). Pages are opened in Chromium
with their Content-Security-Policy put out of force, so that what gets through the escaping would truly run;
the policy itself is looked for in each page (https://www.w3.org/TR/CSP3/).
"""

import json
import re
import subprocess
from collections.abc import Iterator
from datetime import UTC, datetime
from html import unescape
from pathlib import Path
from urllib.parse import urlsplit
from xml.etree import ElementTree

import pikepdf
import pytest
from icalendar import Calendar
from lxml import etree, html
from playwright.sync_api import Browser, BrowserContext, Dialog, Request

from sitegen.press.calendar_file import calendar_file
from sitegen.press.page import CONTENT_POLICY
from sitegen.press.timeline import SHAPES, timeline_svg
from sitegen.release.asking import BatchWords
from sitegen.release.plans import AskedPlan, PlanWords, asked_plan
from tests.outside.host import hosted
from tests.outside.payloads import ELSEWHERE, HostileSchool, hostile_school
from tests.release.small_school import publish_school

SCHOOL = "https://tansyrow.example/"
AUGUST = datetime(2026, 8, 1, 12, tzinfo=UTC)
WRITTEN_WORDS = {
    "site.yaml": {"name", "tagline", "about", "copyright"},
    "recipe.yaml": {
        "title", "summary", "tags", "alt", "text", "until", "note", "notes", "tools", "waits-in", "also",
        "ingredients",
    },
    "saturday.yaml": {"title"},
    "weighing.md": {"title", "summary"},
}  # fmt: skip
"""File -> keys whose value is free text: they must have taken a payload, or these tests try nothing."""
WATCH = """
window.ran = [];
for (const name of ["alert", "confirm", "prompt", "open", "print"]) window[name] = () => ran.push(name);
addEventListener("securitypolicyviolation", event => ran.push("policy: " + event.violatedDirective), true);
"""
LOOK = """() => {
  const found = [...window.ran];
  if (document.contentType.includes("xml") && !document.contentType.includes("svg")) return found;
  const data = ["application/ld+json", "application/json"];
  for (const one of document.querySelectorAll("*")) {
    const name = one.localName;
    if (["iframe", "object", "embed", "base", "style", "applet", "frame"].includes(name)) found.push(name);
    if (name === "script" && !one.hasAttribute("src") && !data.includes(one.type)) found.push("script");
    if (name === "meta" && /refresh/i.test(one.httpEquiv)) found.push("refresh");
    for (const { name: key, value } of one.attributes) {
      const isOurs = key === "style" && one === document.documentElement;
      if (!isOurs && (/^on/i.test(key) || ["style", "srcdoc"].includes(key))) found.push(name + " " + key);
      const address = value.replace(/[\\u0000-\\u0020]/g, "").toLowerCase();
      if (["href", "src", "xlink:href", "action", "formaction", "data", "poster"].includes(key)
        && /^(javascript|data|vbscript|file):/.test(address)) found.push(name + " " + address);
    }
  }
  return found;
}"""


class Watch:
    """One tab, in which page after page is opened. host: which they may ask, beside the school's own."""

    def __init__(self, context: BrowserContext, host: str) -> None:
        self._hosts = (f"{host}/", SCHOOL)
        self._seen: list[str] = []
        self._page = context.new_page()
        self._page.on("dialog", self._dialog)
        self._page.on("popup", lambda _: self._seen.append("window"))
        self._page.on("request", self._request)

    def seen(self, address: str) -> list[str]:
        """What a page does or holds that no page of ours may."""
        self._seen.clear()
        self._page.goto(address)
        self._seen += self._page.evaluate(LOOK)
        if self._page.url != address:
            self._seen.append(f"went to {self._page.url}")
        return list(self._seen)

    def _dialog(self, dialog: Dialog) -> None:
        self._seen.append("dialog")
        dialog.dismiss()

    def _request(self, request: Request) -> None:
        if not request.url.startswith(self._hosts):
            self._seen.append(request.url)


@pytest.fixture(scope="module")
def school(tmp_path_factory: pytest.TempPathFactory) -> HostileSchool:
    """The school of payloads, published."""
    made = hostile_school(tmp_path_factory.mktemp("hostile"))
    publish_school(made.root, on=AUGUST.date())
    return made


@pytest.fixture(scope="module")
def output(school: HostileSchool) -> Path:
    return school.root / "output"


@pytest.fixture(scope="module")
def plans(school: HostileSchool) -> dict[str, AskedPlan]:
    """Plans of recipes with payloads of three kinds."""
    words = PlanWords(ready_by="2026-08-02 16:00")
    return {
        kind: asked_plan(school.root, [kind.lower()], "british-metric", BatchWords(), words, AUGUST)
        for kind in ("HTML", "SVG", "lines")
    }


@pytest.fixture(scope="module")
def context(browser: Browser) -> Iterator[BrowserContext]:
    context = browser.new_context(bypass_csp=True, service_workers="block")
    context.route(re.compile(r"/pictures/|/fonts/|tansyrow\.example"), lambda route: route.abort())
    context.add_init_script(WATCH)
    yield context
    context.close()


def files(tree: Path, *endings: str) -> list[Path]:
    found = sorted(path for path in tree.rglob("*") if path.suffix in endings)
    assert found
    return found


def test_what_can_be_written_freely_was_a_payload(school: HostileSchool) -> None:
    accepted = school.accepted()
    for name, keys in WRITTEN_WORDS.items():
        taken = {next(part for part in reversed(leaf) if isinstance(part, str)) for leaf in accepted[name]}
        assert keys <= taken, name


def test_what_has_a_form_refuses_each_payload_with_a_fault(school: HostileSchool) -> None:
    refused = school.refused()
    keys = {leaf[-1] for leaf, _ in refused}
    assert {"address", "language", "theme", "makes", "tin", "oven", "wait", "file", "published"} <= keys
    codes = {code for _, code in refused}
    assert codes >= {"odd-character", "wrong-form", "yield", "oven", "not-a-day"}


def test_no_page_and_no_feed_runs_anything(output: Path, context: BrowserContext) -> None:
    """Whole sheets in the subscribers' tree, the ingredients' side, lists and techniques in everyone's."""
    public, subscribers = output / "public", output / "subscribers"
    pages = [path for path in files(public, ".html", ".xml", ".svg") if path.parent.name != "tags"]
    pages += [*files(public / "tags", ".html")[:2], *sorted((subscribers / "recipes").glob("*.html"))]
    with hosted({"/public/": public, "/subscribers/": subscribers}) as host:
        watch = Watch(context, host.address)
        addresses = [f"{host.address}/{path.relative_to(output).as_posix()}" for path in pages]
        found = {address: seen for address in addresses if (seen := watch.seen(address))}
    assert len(pages) > 40
    assert found == {}


def test_no_picture_of_a_plan_runs_anything(
    plans: dict[str, AskedPlan], tmp_path: Path, context: BrowserContext
) -> None:
    for kind, asked in plans.items():
        assert asked.plan.timeline is not None
        picture = timeline_svg(asked.plan.timeline, SHAPES["wide"], "timeline")
        (tmp_path / f"{kind}.svg").write_text(picture)
    with hosted({"/": tmp_path}) as host:
        watch = Watch(context, host.address)
        for kind in plans:
            assert watch.seen(f"{host.address}/{kind}.svg") == [], kind


@pytest.mark.parametrize(
    ("name", "body", "told"),
    [
        ("a.html", "<script>alert(1)</script>", "alert"),
        ("a.html", "<img src=x onerror=alert(1)>", "alert"),
        ("a.html", "<p onclick=alert(1)>", "p onclick"),
        ("a.html", f"<img src={ELSEWHERE}/x.png>", f"{ELSEWHERE}/x.png"),
        ("a.html", "<a href=' java\nscript:alert(1)'>", "a javascript:alert(1)"),
        ("a.html", "<script>location.hash = 'x'</script>", "went to"),
        ("a.xml", "<a><script xmlns='http://www.w3.org/1999/xhtml'>alert(1)</script></a>", "alert"),
        ("a.svg", "<svg xmlns='http://www.w3.org/2000/svg' onload='alert(1)'/>", "alert"),
    ],
)
def test_what_does_run_is_seen(
    name: str, body: str, told: str, tmp_path: Path, context: BrowserContext
) -> None:
    (tmp_path / name).write_text(body)
    with hosted({"/": tmp_path}) as host:
        seen = Watch(context, host.address).seen(f"{host.address}/{name}")
    assert [one for one in seen if one.startswith(told)], seen


def test_the_policy_itself_stops_what_would_run(browser: Browser, tmp_path: Path) -> None:
    policy = f'<meta http-equiv="Content-Security-Policy" content="{CONTENT_POLICY}">'
    (tmp_path / "a.html").write_text(f"{policy}<body onload=alert(1)><script>alert(1)</script>")
    context = browser.new_context()
    context.add_init_script(WATCH)
    with hosted({"/": tmp_path}) as host:
        seen = Watch(context, host.address).seen(f"{host.address}/a.html")
    context.close()
    assert "alert" not in seen
    assert "policy: script-src-elem" in seen


def test_every_page_has_the_policy_before_anything_that_loads(output: Path) -> None:
    for path in [*files(output / "public", ".html"), *files(output / "subscribers", ".html")]:
        head = html.document_fromstring(path.read_bytes()).head
        first, second = head[:2]
        assert first.get("charset") == "utf-8", path
        assert (second.get("http-equiv"), second.get("content")) == (
            "Content-Security-Policy",
            CONTENT_POLICY,
        )
    for word in ("unsafe", "http", "*", "data:"):
        assert word not in CONTENT_POLICY


def test_a_page_loads_nothing_from_elsewhere(output: Path) -> None:
    loads = 0
    for path in [*files(output / "public", ".html"), *files(output / "subscribers", ".html")]:
        page = html.document_fromstring(path.read_bytes())
        linked = page.xpath("//link[not(@rel='canonical' or @rel='alternate')]/@href")
        sources = [part.split()[0] for each in page.xpath("//@srcset") for part in each.split(",")]
        for address in (*page.xpath("//@src"), *linked, *sources):
            loads += 1
            loaded = urlsplit(address.removeprefix(SCHOOL))  # which a page that lies anywhere must name
            assert not loaded.scheme, (path, address)
            assert not loaded.netloc, (path, address)
    assert loads > 300


def test_blocks_of_data_are_json_and_hold_the_text_as_it_was_written(
    output: Path, school: HostileSchool
) -> None:
    titles = {text for file in school.files for leaf, text in file.tried.items() if leaf == ("title",)}
    named = set()
    for path in files(output / "subscribers" / "recipes", ".html"):
        for block in html.document_fromstring(path.read_bytes()).xpath("//script[@type]/text()"):
            named.add(json.loads(block).get("name"))
    assert len(named & titles) >= 8


def test_the_feed_is_valid_atom_and_its_html_is_clean(output: Path) -> None:
    """RFC 4287, 3.1.1.2: HTML in a feed is text that readers set as a page."""
    feed = etree.parse(output / "public" / "feed.xml")
    grammar = etree.RelaxNG(etree.parse(Path(__file__).with_name("atom.rng")))
    assert grammar.validate(feed), grammar.error_log
    contents = feed.xpath("//a:content/text()", namespaces={"a": "http://www.w3.org/2005/Atom"})
    assert len(contents) >= 10
    for content in contents:
        tags = {element.tag for element in html.fragment_fromstring(content).iter()}
        assert tags <= {"div", "p", "img"}


def test_the_map_the_manifest_and_the_rules_keep_their_form(output: Path) -> None:
    for tree in ("public", "subscribers"):
        manifest = json.loads((output / tree / "site.webmanifest").read_text())
        assert manifest["start_url"] == "index.html"
        rules = (output / tree / "robots.txt").read_text().splitlines()
        assert all(
            line == "" or line.startswith(("User-agent", "Allow", "Disallow: /", "Sitemap")) for line in rules
        )
    addresses = [each.text or "" for each in ElementTree.parse(output / "public" / "sitemap.xml").iter()]
    told = [address.strip() for address in addresses if address.strip()]
    assert all(re.fullmatch(r"https://tansyrow\.example/[a-z0-9./-]*|[0-9-]+", each) for each in told)


def test_plain_texts_hold_no_angle_bracket_and_no_unseen_letter(output: Path) -> None:
    for path in files(output / "texts", ".txt"):
        text = path.read_text()
        assert not re.search(r"[<>\x00-\x08\x0b-\x1f\x7f-\x9f\u2028-\u202e\u2066-\u2069]", text), path


def test_a_calendar_has_no_lines_of_its_authors(plans: dict[str, AskedPlan]) -> None:
    """RFC 5545, 3.3.11: a line end in a text is written as an escape."""
    for kind, asked in plans.items():
        body = calendar_file(asked.plan, asked.host, AUGUST)
        names = {
            line.split(":")[0].split(";")[0] for line in body.decode().replace("\r\n ", "").split("\r\n")
        }
        assert "ATTACH" not in names, kind
        steps = len(asked.plan.rows) + len(asked.plan.oven)
        assert len(Calendar.from_ical(body).walk("VEVENT")) == steps, kind


def test_a_card_does_nothing_and_prints_the_text_as_it_is(output: Path) -> None:
    """ISO 32000-1, 12.6.4: of all actions a card has only links, and these to web pages."""
    cards = files(output / "subscribers" / "cards", ".pdf")
    for path in cards:
        with pikepdf.open(path) as card:
            for thing in card.objects:
                if isinstance(thing, pikepdf.Dictionary):
                    kind = str(thing.get("/S", ""))
                    assert kind not in {
                        "/JavaScript",
                        "/Launch",
                        "/SubmitForm",
                        "/ImportData",
                        "/GoToR",
                        "/Rendition",
                    }
                    assert not {"/JS", "/EmbeddedFile", "/EmbeddedFiles", "/AA", "/XFA"} & set(
                        thing.keys()
                    ), path
                    if kind == "/URI":
                        assert str(thing.URI).startswith(("https://", "http://", "mailto:")), path
    printed = subprocess.run(
        ["pdftotext", output / "subscribers/cards/html-british-metric-a4.pdf", "-"],
        capture_output=True, text=True, check=True,
    ).stdout  # fmt: skip
    assert "<script>alert(1)</script>" in printed
    assert "onerror=alert(1)" in printed


def test_a_page_prints_the_text_as_it_is(output: Path) -> None:
    page = (output / "public" / "recipes" / "html.html").read_text()
    assert "&lt;script&gt;alert(1)&lt;/script&gt;" in page
    assert "{{7*7}}" in unescape((output / "public" / "recipes" / "jinja.html").read_text())
