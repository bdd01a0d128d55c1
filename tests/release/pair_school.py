"""A tiny school in two contents of which every file differs, so that a mix of two outputs cannot hide.

Alike in both are only files that no content makes: fonts, scripts, drawings of the theme, rules for crawlers.
"""

import shutil
from pathlib import Path

from PIL import Image

from tests.release.small_school import SITE, write_recipe

SLUGS = ("open-biscuits", "teaser-biscuits")
CONTENTS = ("damson", "quince")
"""Names of the two contents; the word stands in every page, card and text made of one."""


def write_pair(folder: Path) -> dict[str, Path]:
    """Both contents below a folder. Returns name -> a folder to stand as a school's `content/`."""
    return {name: _write_content(folder / name, number) for number, name in enumerate(CONTENTS)}


def take_content(root: Path, content: Path) -> None:
    """Let this be what the school publishes next."""
    shutil.rmtree(root / "content", ignore_errors=True)
    shutil.copytree(content, root / "content")


def _write_content(root: Path, number: int) -> Path:
    name = CONTENTS[number]
    content = root / "content"
    (content / "tutorials").mkdir(parents=True)
    site = SITE.replace("Tansy Row", f"Tansy Row {name}").replace(".example/", f".example/{name}/")
    (content / "site.yaml").write_text(site.replace("[british-metric, us-cups]", "[us-cups]"))
    for place, slug in enumerate(SLUGS):
        write_recipe(root, slug, summary=f"With {name}", step=f"until {name}", alt=f"A {name} dough")
        for photo, shade in (("finished.jpg", 90), ("step.jpg", 160)):
            picture = Image.new("RGB", (330, 250), (shade, 120 * number, 20 * place))
            picture.save(content / "recipes" / slug / photo, "JPEG")
    (content / "tutorials" / "weighing.md").write_text(
        f"---\ntitle: Weighing\nsummary: Why we weigh {name}.\n---\nSet the scale to nought for {name}.\n"
    )
    return content
