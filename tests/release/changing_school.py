"""A school of three recipes, one a base of another, and every kind of change that can befall it."""

import shutil
from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace
from datetime import date, timedelta
from pathlib import Path

from PIL import Image

from tests.release.small_school import SITE

SCHOOL = SITE.replace("papers: [a4]", "papers: [a5]").replace("theme: oatcloth", "theme: shelf")
RECIPE = """\
title: {title}
summary: Pale and short.
makes: 12 squares
tags: [{tag}]
photo: {{file: finished.jpg, alt: Twelve pale squares}}
release: {{subscribers: 2026-07-03, public: {public}, public-shows: {shows}}}
batches: [24 squares]
components:
  Dough:
    ingredients:
      - {butter} g unsalted butter, soft
      - 60 g caster sugar
      - 180 g plain flour
{more_lines}    method:
      - text: Beat {{unsalted butter}} and {{caster sugar}}{more_words}.
        hands-on: 5 min
        tutorial: weighing
      - text: Mix in {{plain flour}}, and {words}.
        hands-on: 8 min
        photo: {{file: step.jpg, alt: Dough in a tin}}
      - text: Bake.
        oven: 150 C fan
        wait: 20-25 min
        until: the rim is sand-coloured
{more_parts}"""
BASE = """\
title: {title}
summary: Thick and sharp.
makes: 300 g
release: {{subscribers: {subscribers}}}
components:
  Curd:
    ingredients:
      - {sugar} g caster sugar
      - 150 g unsalted butter
    method:
      - text: Melt {{unsalted butter}} with {{caster sugar}}.
        hands-on: 5 min
"""
TECHNIQUE = """\
---
title: {title}
summary: Why.
---
To nought.
"""
THEME = """\
name: Shelf
inherits: oatcloth
light: {{accent: "{accent}"}}
"""
TAKES = """\
  Top:
    ingredients:
      - 100 g of {title}
    method:
      - text: Spread {{{title}}} over it.
        hands-on: 5 min
        after: [Dough]
"""


@dataclass(frozen=True)
class State:
    """All that a baker may change, as texts and figures. day: that it is published for."""

    day: date = date(2026, 7, 15)
    site_name: str = "Tansy Row"
    accent: str = "#1d4f3a"
    butter: int = 120
    sugar: int = 150
    words: str = "press it flat"
    base_title: str = "Sharp curd"
    base_day: str = "2026-07-20"
    shows: str = "ingredients"
    tag: str = "biscuits"
    technique: str = "Weighing"
    density: int = 200
    photo: int = 90
    empty_line: bool = False
    has_third: bool = True
    notes: str = ""

    def written(self, root: Path) -> Path:
        """The school in a folder, what was there before gone. Returns it."""
        for part in ("content", "themes"):
            shutil.rmtree(root / part, ignore_errors=True)
        for file, text in self._texts().items():
            path = root / file
            path.parent.mkdir(parents=True, exist_ok=True)
            path.write_text(text)
        for number, slug in enumerate(
            ("squares", "topped-squares", "thin-squares")[: 3 if self.has_third else 2]
        ):
            for photo in ("finished.jpg", "step.jpg"):
                colour = (self.photo if slug == "squares" else 150, 120, 30 * number)
                Image.new("RGB", (640, 480), colour).save(root / f"content/recipes/{slug}/{photo}", "JPEG")
        return root

    def _texts(self) -> Mapping[str, str]:
        recipes = "content/recipes"
        in_common = {"public": "2026-07-10", "shows": self.shows, "tag": self.tag, "butter": self.butter}
        plain = {"more_lines": "", "more_words": "", "more_parts": self.notes, "words": self.words}
        squares = RECIPE.format(title="Squares", **in_common, **plain)
        takes = TAKES.format(title=self.base_title)
        topped = RECIPE.format(title="Topped squares", **in_common, **{**plain, "more_parts": takes})
        texts = {
            "content/site.yaml": SCHOOL.replace("name: Tansy Row", f"name: {self.site_name}", 1),
            "content/larder.yaml": _larder(self.density),
            "content/tutorials/weighing.md": TECHNIQUE.format(title=self.technique),
            "themes/shelf/theme.yaml": THEME.format(accent=self.accent),
            f"{recipes}/squares/recipe.yaml": squares + ("\n" if self.empty_line else ""),
            f"{recipes}/topped-squares/recipe.yaml": topped,
            f"{recipes}/curd/recipe.yaml": BASE.format(
                title=self.base_title, subscribers=self.base_day, sugar=self.sugar
            ),
        }
        if self.has_third:
            third = RECIPE.format(title="Thin squares", **{**in_common, "butter": 100}, **plain)
            texts[f"{recipes}/thin-squares/recipe.yaml"] = third
        return texts


def _larder(grams: int) -> str:
    """The flour of the school, by how heavy a cup of it is."""
    return (
        "tansy flour:\n"
        f"  density: [{{method: level, weight: {grams} g, fills: 1 metric_cup, source: own-scales}}]\n"
        "  allergens: {eu: [wheat], us: [wheat]}\n"
    )


CHANGES: Mapping[str, Callable[[State], State]] = {
    "a figure of one recipe, and of others": lambda was: replace(was, butter=was.butter + 10),
    "a figure of a base recipe": lambda was: replace(was, sugar=was.sugar + 20),
    "the title of a base recipe": lambda was: replace(was, base_title=f"{was.base_title} indeed"),
    "the day of a base recipe": lambda was: replace(was, base_day="2026-07-04"),
    "words of a method": lambda was: replace(was, words=f"{was.words}, or nearly"),
    "the name of the school": lambda was: replace(was, site_name=f"{was.site_name} again"),
    "a colour of the theme": lambda was: replace(was, accent="#7a1d1d"),
    "what everyone sees": lambda was: replace(was, shows="everything"),
    "less of what everyone sees": lambda was: replace(was, shows="teaser"),
    "a tag": lambda was: replace(was, tag=f"{was.tag} too"),
    "the title of a technique": lambda was: replace(was, technique=f"{was.technique} well"),
    "a row of the larder": lambda was: replace(was, density=was.density + 5),
    "a photo": lambda was: replace(was, photo=(was.photo + 40) % 250),
    "an empty line": lambda was: replace(was, empty_line=not was.empty_line),
    "a recipe more or less": lambda was: replace(was, has_third=not was.has_third),
    "notes": lambda was: replace(was, notes="notes: Bake them dark.\n"),
    "another day": lambda was: replace(was, day=was.day + timedelta(days=7)),
    "a day before": lambda was: replace(was, day=date(2026, 7, 5)),
    "nothing": lambda was: was,
}
"""Name -> the state after it."""
