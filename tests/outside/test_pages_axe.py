"""Every kind of page in a real browser, on a phone and on a desktop, light and dark.

Source: axe-core (npm), the rules of WCAG 2.2 AA.
"""

from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Browser

from tests.outside.demo import Demo

SCHOOL = "https://tansyrow.example/"
KINDS = [
    "index",
    "recipe for subscribers",
    "recipe with its ingredients",
    "recipe as a teaser",
    "another edition and batch",
    "tutorial",
    "tutorials",
    "tag",
    "not found",
]
RULES = {"runOnly": ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"]}


def violations(
    browser: Browser, address: str, width: int, scheme: Any, axe: str, tree: Path | None = None
) -> list[str]:
    """What axe finds on a page. tree: what the school's own address serves, for links that are absolute."""
    page = browser.new_page(viewport={"width": width, "height": 900}, color_scheme=scheme, bypass_csp=True)
    if tree is not None:
        page.route(
            f"{SCHOOL}**", lambda route: route.fulfill(path=tree / route.request.url.removeprefix(SCHOOL))
        )
    page.goto(address)
    page.evaluate(axe)
    found = page.evaluate("rules => axe.run(document, rules)", RULES)["violations"]
    wide = page.evaluate("document.documentElement.scrollWidth > document.documentElement.clientWidth")
    page.close()
    faults = [f"{rule['id']}: {node['html'][:160]}" for rule in found for node in rule["nodes"]]
    return [*faults, "the page scrolls sideways"] if wide else faults


@pytest.mark.parametrize("scheme", ["light", "dark"])
@pytest.mark.parametrize("width", [390, 1280])
@pytest.mark.parametrize("kind", KINDS)
def test_no_violation(
    kind: str, width: int, scheme: str, demo: Demo, served: str, browser: Browser, checkers: Path
) -> None:
    path = demo.kinds()[kind].relative_to(demo.public.parent)
    axe = (checkers / "axe-core" / "axe.min.js").read_text(encoding="utf-8")
    found = violations(browser, f"{served}{path}", width, scheme, axe, demo.public)
    assert not found, "\n".join(found)


def test_axe_sees_a_planted_fault(browser: Browser, checkers: Path, tmp_path: Path) -> None:
    page = tmp_path / "faulty.html"
    page.write_text('<!doctype html><html><title>x</title><img src="x.jpg"><button></button>', "utf-8")
    axe = (checkers / "axe-core" / "axe.min.js").read_text(encoding="utf-8")
    found = violations(browser, page.as_uri(), 390, "light", axe)
    assert {"image-alt", "button-name", "html-has-lang"} <= {one.split(":")[0] for one in found}
