"""A school of five tiny recipes, one for each standing, with canary words where only subscribers may look."""

import json
from datetime import UTC, date, datetime
from hashlib import sha256
from pathlib import Path

from PIL import Image

from sitegen.release.build import Order, Published, publish
from sitegen.release.steps import Silent

SUMMER = date(2026, 7, 15)
NOON = datetime(2026, 7, 15, 12, tzinfo=UTC)

SITE = """\
name: Tansy Row
tagline: One long table
address: https://tansyrow.example/
subscribers-address: https://tansyrow.example/table/
language: en-GB
written-in: british-metric
egg-size: medium
editions: [british-metric, us-cups]
papers: [a4]
theme: oatcloth
time-zone: Europe/London
about: A small school.
copyright: Tansy Row
"""

SHORTBREAD = """\
title: {title}
summary: {summary}
makes: 12 squares
tags: [biscuits]
photo: {{file: finished.jpg, alt: Twelve pale squares}}
{release}batches: [24 squares]
components:
  Dough:
    ingredients:
      - 120 g unsalted butter, {preparation}
      - 60 g caster sugar
      - 180 g plain flour
    method:
      - text: Beat {{unsalted butter}} and {{caster sugar}}, {step}.
        hands-on: 5 min
        until: {cue}
        photo: {{file: step.jpg, alt: {alt}}}
      - text: Mix in {{plain flour}} and press flat.
        hands-on: 8 min
      - text: Bake.
        oven: 150 C fan
        wait: 20-25 min
        until: the rim is sand-coloured
    keeps: 4 days, {keeping}
notes: Bake them dark, {notes}.
revisions:
  - {{date: 2026-07-20, note: Butter corrected from 150 g to 120 g., notify: yes}}
"""

_PUBLIC = "release: {{subscribers: 2026-07-03, public: 2026-07-{day}, public-shows: {shows}}}\n"
RELEASES = {
    "ingredient-biscuits": _PUBLIC.format(day=10, shows="ingredients"),
    "teaser-biscuits": _PUBLIC.format(day=10, shows="teaser"),
    "open-biscuits": _PUBLIC.format(day=10, shows="everything"),
    "coming-biscuits": _PUBLIC.format(day=17, shows="ingredients"),
    "draft-biscuits": "",
}
"""Slug -> its release; on SUMMER the first three are public, the fourth is for subscribers only."""

SECRETS = {
    "ingredient-biscuits": ("step", "cue", "alt", "keeping", "notes"),
    "teaser-biscuits": ("step", "cue", "alt", "keeping", "notes", "preparation"),
    "open-biscuits": (),
    "coming-biscuits": ("summary", "step", "cue", "alt", "keeping", "notes", "preparation"),
    "draft-biscuits": ("summary", "step", "cue", "alt", "keeping", "notes", "preparation"),
}
"""Slug -> the fields that everyone must not see on SUMMER."""

FIELDS = ("summary", "step", "cue", "alt", "keeping", "notes", "preparation")


def canary(slug: str, field: str) -> str:
    """A word that stands in one field of one recipe and nowhere else."""
    return f"zq{slug.partition('-')[0]}{field}zq"


def write_school(root: Path) -> Path:
    """The whole school under `root/content/`. Returns root."""
    (root / "content").mkdir(parents=True)
    (root / "content" / "site.yaml").write_text(SITE)
    for number, slug in enumerate(RELEASES):
        write_recipe(root, slug)
        for photo, shade in (("finished.jpg", 90), ("step.jpg", 160)):
            colour = (shade, 120, 20 * number)
            Image.new("RGB", (660, 500), colour).save(root / f"content/recipes/{slug}/{photo}", "JPEG")
    (root / "content" / "tutorials").mkdir()
    (root / "content" / "tutorials" / "weighing.md").write_text(
        "---\ntitle: Weighing\nsummary: Why we weigh.\n---\nSet the scale to nought.\n"
    )
    return root


def write_recipe(root: Path, slug: str, **changes: str) -> None:
    """One recipe file; changes: field -> other text than its canary."""
    words = {field: canary(slug, field) for field in FIELDS} | changes
    text = SHORTBREAD.format(title=slug.replace("-", " ").capitalize(), release=RELEASES[slug], **words)
    path = root / "content" / "recipes" / slug / "recipe.yaml"
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_text(text)


def publish_school(root: Path, on: date = SUMMER) -> Published:
    """Publish in this process."""
    return publish(root, Order(NOON, on, jobs=1), Silent())


def tree_hashes(folder: Path) -> dict[str, str]:
    """Path -> hash of every file."""
    return {
        path.relative_to(folder).as_posix(): sha256(path.read_bytes()).hexdigest()
        for path in sorted(folder.rglob("*"))
        if path.is_file()
    }


def assert_whole(output: Path) -> str:
    """Every file is the one that the report tells, and no other is there. Returns the day built for."""
    report = json.loads((output / "report.json").read_text())
    found = tree_hashes(output)
    del found["report.json"]
    found.pop(".gitkeep", None)
    assert found == {path: row["sha256"] for path, row in report["files"].items()}
    return str(report["on"])
