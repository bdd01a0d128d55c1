"""The finished demo, as the checks look at it."""

import json
from dataclasses import dataclass
from pathlib import Path

KINDS_TO_READ = (
    "index",
    "recipe for subscribers",
    "recipe with its ingredients",
    "recipe as a teaser",
    "another edition and batch",
    "tutorial",
    "tutorials",
    "tag",
)
"""Kinds of pages that a reader comes to on purpose."""


@dataclass(frozen=True)
class Demo:
    """What `publish` made of the demo. theme: its name. root: the folder that holds `content/`."""

    theme: str
    root: Path

    @property
    def output(self) -> Path:
        return self.root / "output"

    @property
    def public(self) -> Path:
        return self.output / "public"

    @property
    def subscribers(self) -> Path:
        return self.output / "subscribers"

    @property
    def texts(self) -> Path:
        return self.output / "texts"

    def address(self, host: str) -> str:
        """Where a host that serves every theme's demo has this one's output."""
        return f"{host}{self.root.name}/output/"

    def pages(self) -> list[Path]:
        """Every page of both trees."""
        return sorted([*self.public.rglob("*.html"), *self.subscribers.rglob("*.html")])

    def cards(self) -> list[Path]:
        return sorted((self.subscribers / "cards").glob("*.pdf"))

    def kinds(self) -> dict[str, Path]:
        """One page of each kind: by name."""
        recipe = "blackcurrant-and-bay-cupcakes"
        tag = next((self.public / "tags").glob("*.html"))
        return {
            "index": self.public / "index.html",
            "recipe for subscribers": self.subscribers / "recipes" / f"{recipe}.html",
            "recipe with its ingredients": self.public / "recipes" / f"{recipe}.html",
            "recipe as a teaser": self.teaser(),
            "another edition and batch": next((self.subscribers / "recipes" / recipe).glob("us-cups-*.html")),
            "tutorial": self.public / "tutorials" / "lining-tins.html",
            "tutorials": self.public / "tutorials" / "index.html",
            "tag": tag,
            "contents": self.public / "contents.html",
            "not found": self.public / "404.html",
            "not kept": self.public / "not-kept.html",
        }

    def teaser(self) -> Path:
        """A public recipe page without an ingredient list."""
        for page in sorted((self.public / "recipes").glob("*.html")):
            if '"recipeIngredient"' not in page.read_text(encoding="utf-8"):
                return page
        raise AssertionError("the demo shows no recipe as a teaser")


def read_json_ld(page: Path) -> list[dict[str, object]]:
    """The JSON-LD blocks of a page."""
    parts = page.read_text(encoding="utf-8").split('<script type="application/ld+json">')[1:]
    return [json.loads(part.split("</script>")[0]) for part in parts]
