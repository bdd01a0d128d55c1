"""Every page in every theme in a real browser, on a phone and on a desktop, in light and in dark.

Source: axe-core (npm), the rules of WCAG 2.2 AA and its best practice.

A page with a part that no page before it had (`structure.py`) is held against all rules on a phone and on a
desktop in light, and in dark, on both, against those rules that colours can change. In the demo's own theme
every tenth page of the others is held against all rules on a phone in light. What is left out is the rest of
them, and the other settings and theme, of pages that are built of nothing new: another batch, another tag.
"""

from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page, Route

from tests.outside.axe import PHONE, SETTINGS, Setting, faults, with_axe
from tests.outside.contrast import contrast
from tests.outside.demo import Demo
from tests.outside.publishing import FIRST_THEME
from tests.outside.structure import first_of_their_build, parts_of

SCHOOL, TABLE = "https://tansyrow.example/", "https://tansyrow.example/table/"
ANSWERS_OF_A_HOST = ("404.html", "not-kept.html")
"""Pages that are shown at any address, and so name theirs in full."""

PARTS = 10
"""Into so many tests the pages are dealt out, for several processes to share them."""


@pytest.fixture(scope="module")
def tab(browser: Browser, checkers: Path) -> Iterator[Page]:
    """One tab for all pages: opening another takes longer than the page."""
    context = browser.new_context(service_workers="block")
    yield with_axe(context.new_page(), checkers)
    context.close()


@pytest.fixture(scope="module")
def firsts(themed: Demo) -> frozenset[Path]:
    """The pages that are looked at in every setting."""
    return first_of_their_build(themed.pages())


def opened(tab: Page, demo: Demo, page: Path, served: str) -> str:
    """Open a page of the demo; returns its path. One that names addresses in full is opened at its own."""
    path = page.relative_to(demo.output).as_posix()
    tree, own = (demo.public, SCHOOL) if page.is_relative_to(demo.public) else (demo.subscribers, TABLE)
    if page.name not in ("404.html", "not-kept.html"):
        tab.goto(served + path)
        return path

    def answer(route: Route) -> None:
        route.fulfill(path=tree / route.request.url.removeprefix(own))

    tab.route(f"{own}**", answer)
    tab.goto(own + page.name)
    tab.unroute(f"{own}**")
    return path


@pytest.mark.parametrize("part", range(PARTS))
def test_no_violation(
    part: int, themed: Demo, themed_served: str, tab: Page, firsts: frozenset[Path]
) -> None:
    found = []
    others = [page for page in themed.pages() if page not in firsts]
    pages = [*sorted(firsts), *(others[::10] if themed.theme == FIRST_THEME else ())]
    for page in pages[part::PARTS]:
        path = opened(tab, themed, page, themed_served)
        settings: tuple[Setting, ...] = SETTINGS if page in firsts else (PHONE,)
        found += [f"{path}, {fault}" for setting in settings for fault in faults(tab, setting)]
    assert not found, "\n".join(found[:40])


def test_each_kind_of_page_is_looked_at_in_every_setting(themed: Demo, firsts: frozenset[Path]) -> None:
    built_of = frozenset().union(*(parts_of(page) for page in firsts))
    assert all(parts_of(page) <= built_of for page in themed.kinds().values())
    assert len(firsts) >= 10


def test_axe_sees_a_planted_fault(tab: Page, tmp_path: Path) -> None:
    page = tmp_path / "faulty.html"
    page.write_text(
        "<!doctype html><html><title>x</title><style>@media (prefers-color-scheme:dark){body{color:#777;"
        'background:#666}}</style><img src="x.jpg"><button></button><p>grey on grey</p>'
        '<div style="width:9999px"><svg viewBox="0 0 50 9"><text y="9" fill="#888">grey</text></svg></div>',
        "utf-8",
    )
    tab.goto(page.as_uri())
    found = {fault.split(": ")[1] for fault in faults(tab, PHONE)}
    assert found >= {"image-alt", "button-name", "html-has-lang", "color-contrast", "it scrolls sideways"}
    dark = faults(tab, SETTINGS[-1])
    assert any("grey on grey" in fault for fault in dark)
    assert not any("image-alt" in fault for fault in dark)


@pytest.mark.parametrize(
    ("one", "other", "ratio"),
    [
        ("rgb(0, 0, 0)", "rgb(255, 255, 255)", 21),
        ("rgb(255, 255, 255)", "rgb(255, 255, 255)", 1),
        ("rgb(118, 118, 118)", "rgb(255, 255, 255)", 4.54),
        ("rgb(255, 0, 0)", "rgb(255, 255, 255)", 4.0),
    ],
)
def test_contrasts_are_those_of_wcag(one: str, other: str, ratio: float) -> None:
    """Black on white is 21:1 by definition; #767676 is known as the lightest grey that passes on white."""
    assert contrast(one, other) == pytest.approx(ratio, abs=0.005)
    assert contrast(other, one) == contrast(one, other)
