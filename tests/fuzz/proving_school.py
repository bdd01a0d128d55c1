"""A small school in a folder of its own, one of whose files is written anew for each try."""

import shutil
from dataclasses import dataclass, field
from pathlib import Path

from sitegen.source.headings import Heading
from sitegen.source.library import read_headings, read_recipes, read_school
from sitegen.source.school import Content

SAMPLE = Path(__file__).parent.parent / "source" / "sample_school"
DEMO = Path(__file__).parent.parent.parent / "content"
SLUG = "blackcurrant-and-bay-cupcakes"
BASES = ("base-buttercream", "base-pastry-cream")
FILES = {
    "recipe": f"content/recipes/{SLUG}/recipe.yaml",
    "tutorial": "content/tutorials/whisking.md",
    "site": "content/site.yaml",
    "larder": "content/larder.yaml",
    "prices": "content/prices.yaml",
    "order": "content/orders/saturday.yaml",
}
"""Kind of file -> the one that is tried."""


@dataclass
class ProvingSchool:
    """root: holds `content/`."""

    root: Path
    _first: dict[str, bytes] = field(init=False, repr=False)
    _common: Content = field(init=False, repr=False)
    _bases: tuple[Heading, ...] = field(init=False, repr=False)

    def __post_init__(self) -> None:
        shutil.copytree(SAMPLE, self.root, dirs_exist_ok=True)
        _take_from_the_demo(self.root / "content")
        self._first = {kind: (self.root / file).read_bytes() for kind, file in FILES.items()}
        self._common, _ = read_school(self.root)
        self._bases = read_headings(self.root, BASES)

    def write(self, kind: str, body: bytes) -> None:
        """Put a body in the place of the file of that kind."""
        (self.root / FILES[kind]).write_bytes(body)

    def mend(self, kind: str) -> None:
        """Put the file back that stood there first."""
        self.write(kind, self._first[kind])

    def recipe_alone(self) -> Content:
        """The tried recipe and its base recipe, read as a build's worker reads them."""
        headings = (*self._bases, *read_headings(self.root, [SLUG]))
        return read_recipes(self._common, [*BASES, SLUG], headings)


def _take_from_the_demo(content: Path) -> None:
    """All that a recipe of the demo draws on, so that each can stand in the place of the tried one.

    A picture of the sample stands for each of the demo's: only its name and its head are looked at.
    """
    shutil.copytree(DEMO / "recipes" / BASES[1], content / "recipes" / BASES[1])
    shutil.copytree(DEMO / "tutorials", content / "tutorials", dirs_exist_ok=True)
    with (content / "larder.yaml").open("a", encoding="utf-8") as larder:
        larder.write((DEMO / "larder.yaml").read_text(encoding="utf-8"))
    folder = content / "recipes" / SLUG
    for picture in sorted(DEMO.glob("recipes/*/*.jpg")):
        if not (folder / picture.name).exists():
            shutil.copyfile(folder / "whisk.jpg", folder / picture.name)
