"""Every page, style sheet and drawing in every theme, held against their standards.

Source: the Nu HTML checker (npm package `vnu-jar`), which the W3C's own service runs; for style sheets it
asks the W3C's CSS validator.

The validator does not know containers (CSS Containment Level 3) yet, `@container` and the lengths that go by
one: what it says of a line with them counts unless Chromium, which knows them, takes the line. So it is given
the styles as they are written, line by line; `test_short_styles.py` holds what is published against them.
"""

import json
import re
import subprocess
from collections.abc import Iterable, Iterator
from pathlib import Path
from typing import Any
from urllib.parse import urlsplit
from urllib.request import url2pathname

import pytest
from playwright.sync_api import Browser, Page

from sitegen.press.theme import CARD_STYLES
from tests.outside.demo import Demo

THEMES = Path(__file__).parents[2] / "themes"
SHORT_RUN = ("-Xss4m", "-XX:TieredStopAtLevel=1", "-XX:+UseSerialGC")
"""To compile what runs for ten seconds only takes longer than to run it; the schemas need a deep stack."""
CHECKED = {".html", ".svg"}
CONTAINED = re.compile(r"(?P<property>container-type|[\w-]+): (?P<value>.*\dcqi.*|inline-size);")
CONTAINER_RULE = re.compile(r"@container \([^)]*\) \{")


def errors(checkers: Path, files: Iterable[Path], tab: Page) -> list[str]:
    """What the checker calls an error, each with its file, line and sentence."""
    jar = checkers / "vnu-jar" / "build" / "dist" / "vnu.jar"
    options = ["--errors-only", "--format", "json", "--also-check-css", "--also-check-svg"]
    done = subprocess.run(
        ["java", *SHORT_RUN, "-jar", str(jar), *options, *map(str, files)],
        capture_output=True,
        text=True,
        check=False,
    )
    messages = json.loads(done.stderr or '{"messages": []}')["messages"]
    assert done.returncode == (1 if messages else 0)
    return [
        f"{message['url'].split('/output/')[-1]}:{message.get('lastLine')}: {message['message']}"
        for message in messages
        if not (message["url"].endswith(".css") and is_of_containers(message, tab))
    ]


def is_of_containers(message: dict[str, Any], tab: Page) -> bool:
    """Whether the line has what the validator does not know, and Chromium takes it."""
    file = Path(url2pathname(urlsplit(message["url"]).path))
    line = file.read_text(encoding="utf-8").splitlines()[message["lastLine"] - 1].strip()
    if CONTAINER_RULE.fullmatch(line):
        rules = "line => new CSSStyleSheet().insertRule(line + '}') === 0"
        return bool(tab.evaluate(rules, line))
    contained = CONTAINED.fullmatch(line)
    taken = "({property, value}) => CSS.supports(property, value)"
    return contained is not None and bool(tab.evaluate(taken, contained.groupdict()))


@pytest.fixture
def tab(browser: Browser) -> Iterator[Page]:
    opened = browser.new_page()
    yield opened
    opened.close()


def test_nothing_breaks_the_standard(themed: Demo, checkers: Path, tab: Page) -> None:
    trees = (themed.public, themed.subscribers)
    files = [path for tree in trees for path in sorted(tree.rglob("*")) if path.suffix in CHECKED]
    assert {path.suffix for path in files} == CHECKED
    assert set(themed.pages()) <= set(files)
    styles = [
        path for path in (THEMES / themed.theme / "styles").glob("*.css") if path.name not in CARD_STYLES
    ]
    assert styles
    found = sorted(set(errors(checkers, [*files, *styles], tab)))
    assert not found, "\n".join(found[:20])


FAULTY = {
    "faulty.html": ("<!doctype html><html lang=en><title>x</title><p id=a><p id=a>", "Duplicate ID"),
    "faulty.css": ("p { colour: red }", "colour"),
    "unknown.css": ("p {\n  width: 3cqi 4cqi;\n}", "width"),
    "faulty.svg": ('<svg xmlns="http://www.w3.org/2000/svg"><blob/></svg>', "blob"),
}


def test_the_checker_sees_a_planted_fault(tmp_path: Path, checkers: Path, tab: Page) -> None:
    for name, (text, _) in FAULTY.items():
        (tmp_path / name).write_text(text, encoding="utf-8")
    found = errors(checkers, [tmp_path / name for name in FAULTY], tab)
    for name, (_, said) in FAULTY.items():
        assert any(name in error and said in error for error in found), f"{name}: {found}"
