"""axe-core in an open tab: what it finds, and what it leaves for us to work out."""

from dataclasses import dataclass
from pathlib import Path
from typing import Any, Literal

from playwright.sync_api import Page

from tests.outside.contrast import contrast

EVERY_RULE = {
    "type": "tag",
    "values": ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"],
}
RULES_OF_COLOUR = {"type": "rule", "values": ["color-contrast", "link-in-text-block"]}
"""The rules whose outcome another scheme of colours can change. All others look at names, roles and sizes."""

NO_CONTRAST_GIVEN = {
    "imgNode",
    "shortTextContent",
    "bgGradient",
    "bgOverlap",
    "elmPartiallyObscured",
    "elmPartiallyObscuring",
    "emptyValue",
}
"""Why axe gives no contrast: the text stands in a drawing (SVG), is a single letter, has a line or a wash
drawn under it, is still to be typed, or reaches below another part, as the bar of a phone. That no text lies
under another is for `test_pages_measured.py` to see."""

LEAST_CONTRAST = 4.5
"""WCAG 2.2, 1.4.3, for text that is not large."""

RUN = """async rules => {
  const wanted = {runOnly: rules, resultTypes: ["violations", "incomplete"], preload: false};
  const found = await axe.run(document, wanted);
  const grounds = element => {
    const washes = [];
    for (let at = element; at; at = at.parentElement) {
      const {backgroundColor, backgroundImage, backgroundSize} = getComputedStyle(at);
      const isLine = / [0-4]px$/.test(backgroundSize);
      if (!isLine) washes.push(...backgroundImage.match(/rgba?\\([^)]*\\)/g) ?? []);
      if (!/^rgba\\(.*, 0\\)$/.test(backgroundColor)) return [backgroundColor, ...washes];
    }
    return ["rgb(255, 255, 255)", ...washes];
  };
  const within = (page, frame) => page.querySelector(frame).contentDocument;
  const colours = target => {
    const element = target.slice(0, -1).reduce(within, document).querySelector(target.at(-1));
    const style = getComputedStyle(element);
    return {text: "ownerSVGElement" in element ? style.fill : style.color, grounds: grounds(element)};
  };
  const headsGroup = ({target: [selector]}) => {
    const head = document.querySelector(selector);
    return head.scope === "rowgroup" && head.closest("tbody").querySelector("td") !== null;
  };
  const told = (rule, node) => ({
    rule: rule.id,
    html: node.html,
    why: node.any.map(check => check.data?.messageKey ?? check.id),
    colours: rule.id === "color-contrast" ? colours(node.target) : null,
    headGroups: node.all.length > 0 && node.all.flatMap(check => check.relatedNodes).every(headsGroup),
  });
  const all = rules => rules.flatMap(rule => rule.nodes.map(node => told(rule, node)));
  const root = document.documentElement;
  return {
    violations: all(found.violations),
    incomplete: all(found.incomplete),
    wide: root.scrollWidth > root.clientWidth,
  };
}"""


@dataclass(frozen=True)
class Setting:
    """How a page is looked at. width: in CSS pixels. rules: as axe's `runOnly` takes them."""

    width: int
    scheme: Literal["light", "dark"]
    rules: dict[str, object]

    def __str__(self) -> str:
        return f"{self.width} px, {self.scheme}"


PHONE = Setting(390, "light", EVERY_RULE)
SETTINGS = (
    PHONE,
    Setting(1280, "light", EVERY_RULE),
    Setting(1280, "dark", RULES_OF_COLOUR),
    Setting(390, "dark", RULES_OF_COLOUR),
)


def with_axe(tab: Page, checkers: Path) -> Page:
    """The tab, with axe-core at hand on each page that it opens."""
    tab.add_init_script(path=checkers / "axe-core" / "axe.min.js")
    return tab


def faults(tab: Page, setting: Setting) -> list[str]:
    """What is wrong with the page that is open, in one setting."""
    tab.set_viewport_size({"width": setting.width, "height": 900})
    tab.emulate_media(color_scheme=setting.scheme)
    found = tab.evaluate(RUN, setting.rules)
    broken = _without_covered(tab, [_named(one) for one in found["violations"]])
    open_questions = [f"{_named(one)} ({one['why']})" for one in found["incomplete"] if not _is_clear(one)]
    told = [*broken, *open_questions, *(["it scrolls sideways"] if found["wide"] else [])]
    return [f"{setting}: {fault}" for fault in told]


def _without_covered(tab: Page, broken: list[str]) -> list[str]:
    """A target that is small only because the bar at the foot of the window covers it is none.

    What is still small when the page has been moved on is too small.
    """
    small = [one for one in broken if one.startswith("target-size")]
    if not small:
        return broken
    tab.evaluate("scrollBy({top: 200, behavior: 'instant'})")
    again = tab.evaluate(RUN, {"type": "rule", "values": ["target-size"]})
    tab.evaluate("scrollTo({top: 0, behavior: 'instant'})")
    still = {_named(one) for one in again["violations"]}
    return [one for one in broken if one not in small or one in still]


def _named(one: dict[str, Any]) -> str:
    return f"{one['rule']}: {one['html'][:160]}"


def _is_clear(one: dict[str, Any]) -> bool:
    """Whether a question that axe leaves open is answered here.

    Of a head over a group of rows it looks for cells in its own row and column; by the HTML standard
    (4.9.10, `scope`) it heads the rest of its group.
    """
    if one["rule"] == "th-has-data-cells":
        return bool(one["headGroups"])
    if one["rule"] != "color-contrast" or not set(one["why"]) <= NO_CONTRAST_GIVEN:
        return False
    text, grounds = one["colours"]["text"], one["colours"]["grounds"]
    return min(contrast(text, ground) for ground in grounds) >= LEAST_CONTRAST
