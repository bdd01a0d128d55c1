"""Write a synthetic school, to see what becomes of a large one.

    python -m tests.bench.library FOLDER --recipes 1000 [--seed N]

Each recipe is another one and has no error in it. Of a hundred, 28 use a base recipe, 3 are drafts, 15
were revised and 30 have a film with captions; their days are spread over six years. Each has a finished
photo and one to three of its steps, 1600 x 1200, all different. There is a technique page for fifty recipes,
and six at least. The same seed gives the same files.
"""

import argparse
import multiprocessing
import os
import shutil
from collections.abc import Iterator, Sequence
from concurrent.futures import ProcessPoolExecutor
from dataclasses import dataclass
from itertools import repeat
from pathlib import Path

import yaml

from tests.bench.library_photos import draw_photo
from tests.bench.library_recipes import most_recipes, parts, recipe

SEED = 7
ON = "2026-07-01"
"""The day to build it for: most recipes are out, some are not yet."""
_TUTORIAL_FOR = 50
_AT_ONCE = 25


@dataclass(frozen=True)
class Wanted:
    """root: the folder that gets `content/`. recipes: how many."""

    root: Path
    recipes: int
    seed: int = SEED


def main(arguments: Sequence[str] | None = None) -> None:
    parser = argparse.ArgumentParser(prog="python -m tests.bench.library", description=__doc__)
    parser.add_argument("folder", type=Path)
    parser.add_argument("--recipes", type=int, required=True)
    parser.add_argument("--seed", type=int, default=SEED)
    asked = parser.parse_args(arguments)
    write_school(Wanted(asked.folder, asked.recipes, asked.seed))
    print(f"{asked.recipes} recipes in {asked.folder}; build them with: sitegen publish --on {ON}")


def write_school(wanted: Wanted) -> Path:
    """The whole school below `root/content/`, in the place of an earlier one. Returns root."""
    if wanted.recipes > most_recipes():
        raise SystemExit(f"there are no more than {most_recipes()} different recipes")
    content = wanted.root / "content"
    shutil.rmtree(content, ignore_errors=True)
    (content / "tutorials").mkdir(parents=True)
    (content / "site.yaml").write_text(yaml.safe_dump(parts()["site"], sort_keys=False), encoding="utf-8")
    _write_tutorials(wanted)
    numbers = range(wanted.recipes)
    # Spawned: photos and tables of this process are no use to the others.
    with ProcessPoolExecutor(os.cpu_count(), multiprocessing.get_context("spawn")) as pool:
        for _ in pool.map(write_recipe, repeat(wanted), numbers, chunksize=_AT_ONCE):
            pass
    return wanted.root


def write_recipe(wanted: Wanted, number: int) -> None:
    """The folder of one recipe."""
    draft = recipe(wanted.seed, number)
    folder = wanted.root / "content" / "recipes" / draft.slug
    folder.mkdir(parents=True)
    (folder / "recipe.yaml").write_text(draft.yaml, encoding="utf-8")
    if draft.captions is not None:
        (folder / "captions.vtt").write_text(draft.captions, encoding="utf-8")
    for photo in draft.photos:
        draw_photo(folder / photo, f"{wanted.seed}/{draft.slug}/{photo}")


def _write_tutorials(wanted: Wanted) -> None:
    folder = wanted.root / "content" / "tutorials"
    for title in _tutorial_titles(wanted.recipes):
        slug = title.replace(" ", "-")
        draw_photo(folder / f"{slug}.jpg", f"{wanted.seed}/{slug}")
        head = {
            "title": title.capitalize(),
            "summary": f"What there is to know of {title}.",
            "photo": {"file": f"{slug}.jpg", "alt": f"A table set out for {title}"},
        }
        body = "\n\n".join(parts()["notes"])
        text = f"---\n{yaml.safe_dump(head, sort_keys=False)}---\n{body}\n"
        (folder / f"{slug}.md").write_text(text, encoding="utf-8")


def _tutorial_titles(recipes: int) -> Iterator[str]:
    yield from parts()["tutorials"]
    for number in range(len(parts()["tutorials"]), recipes // _TUTORIAL_FOR):
        yield f"a further technique {number}"


if __name__ == "__main__":
    main()
