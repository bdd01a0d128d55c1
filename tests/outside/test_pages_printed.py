"""Recipe pages as a reader prints them: Chromium's own PDF, read back by poppler's `pdftotext`."""

import subprocess
import unicodedata
from dataclasses import dataclass
from itertools import pairwise
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Browser

from tests.outside.demo import Demo

RECIPES = [
    "blackcurrant-and-bay-cupcakes",
    "blackcurrant-and-bay-cupcakes/us-cups-24-cupcakes",
    "caramel-choux-buns",
    "overnight-honey-and-sesame-loaf",
    "plum-and-cardamom-layer-cake",
    "rye-crust-custard-tart",
]
PAPERS = ["A4", "Letter"]
MOST_PAGES = 5
CONTROLS = "button, input, select, summary, nav, .skip, .bar, .timers, .choices"
SEEN_ON_PAPER = """(controls) => {
  const told = (place) => place.innerText;
  const all = (name, of = document) => [...of.querySelectorAll(name)];
  return {
    steps: all(".step").map((step) => all(".told, .margin", step).map(told).join(" ")),
    lines: all("main .ingredients li").map(told),
    parts: all(".component:has(.step)").map((part) => [told(part.querySelector("header")),
      told(part.querySelector(".told"))]),
    cautions: all(".caution").map(told),
    head: [told(document.querySelector("h1")), told(document.querySelector(".printed"))],
    controls: all(controls).filter((one) => one.getClientRects().length).map((one) => one.outerHTML),
  };
}"""


@dataclass(frozen=True)
class Printed:
    """pages: the words of each sheet of paper. seen: what the page shows in print, by kind."""

    pages: tuple[str, ...]
    seen: dict[str, Any]

    def sheets_with(self, text: str) -> list[int]:
        return [place for place, page in enumerate(self.pages) if flat(text) in page]


def flat(text: str) -> str:
    """Without spaces, ligatures and capitals: small capitals are lower-case letters in another dress."""
    return "".join(unicodedata.normalize("NFKC", text).split()).lower()


@pytest.fixture(
    scope="module", params=[(recipe, paper) for recipe in RECIPES for paper in PAPERS], ids=" ".join
)
def printed(
    request: pytest.FixtureRequest, demo: Demo, browser: Browser, tmp_path_factory: pytest.TempPathFactory
) -> Printed:
    recipe, paper = request.param
    file = tmp_path_factory.mktemp("printed") / "page.pdf"
    context = browser.new_context(viewport={"width": 1280, "height": 900})
    page = context.new_page()
    page.goto((demo.subscribers / "recipes" / f"{recipe}.html").as_uri())
    page.locator("[data-tick] input[type=checkbox]").first.check()
    page.emulate_media(media="print")
    seen = page.evaluate(SEEN_ON_PAPER, CONTROLS)
    page.pdf(path=file, format=paper)
    context.close()
    return Printed(words_of(file), seen)


def words_of(file: Path) -> tuple[str, ...]:
    read = subprocess.run(["pdftotext", "-raw", file, "-"], capture_output=True, text=True, check=True).stdout
    return tuple(flat(page) for page in read.split("\f")[:-1])


def test_every_step_stands_on_one_sheet(printed: Printed) -> None:
    assert printed.seen["steps"]
    assert [step for step in printed.seen["steps"] if not printed.sheets_with(step)] == []


def test_every_ingredient_is_there(printed: Printed) -> None:
    assert printed.seen["lines"]
    assert [line for line in printed.seen["lines"] if not printed.sheets_with(line)] == []


def test_steps_follow_each_other_from_sheet_to_sheet(printed: Printed) -> None:
    places = [printed.sheets_with(step)[0] for step in printed.seen["steps"]]
    assert all(earlier <= later for earlier, later in pairwise(places))


def test_a_heading_stands_on_the_sheet_of_its_first_step(printed: Printed) -> None:
    lonely = [
        title
        for title, step in printed.seen["parts"]
        if not set(printed.sheets_with(title)) & set(printed.sheets_with(step))
    ]
    assert lonely == []


def test_cautions_are_kept_whole(printed: Printed) -> None:
    assert [caution for caution in printed.seen["cautions"] if not printed.sheets_with(caution)] == []


def test_nothing_is_printed_that_only_a_screen_can_do(printed: Printed) -> None:
    assert printed.seen["controls"] == []


def test_the_first_sheet_says_what_it_is_and_where_it_was_found(printed: Printed) -> None:
    title, chosen = printed.seen["head"]
    assert "https://tansyrow.example/table/recipes/" in chosen
    assert "," in chosen.split("·")[0]
    assert printed.sheets_with(title)[0] == printed.sheets_with(chosen)[0] == 0


def test_a_recipe_takes_few_sheets(printed: Printed) -> None:
    assert len(printed.pages) <= MOST_PAGES
