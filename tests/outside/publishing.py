"""The demo, published in each theme: once a run of the tests, however many processes share it."""

import os
import re
import shutil
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path

from filelock import FileLock

from sitegen.press.card import CARD_PAPERS
from tests.outside.demo import Demo

PROJECT = Path(__file__).parents[2]
DAY = "2026-11-25"
FIRST_THEME = "oatcloth"
THEMES = tuple(sorted(path.parent.name for path in (PROJECT / "themes").glob("*/theme.yaml")))
"""Every theme that comes with the program, by its folder."""

PAPERS_OF_THE_OTHERS = tuple(paper for paper in ("a4", "a5") if paper in CARD_PAPERS)
"""Letter is left out where the theme is not the demo's own: it is A4 with other margins."""


def once(place: Path, make: Callable[[Path], None]) -> Path:
    """A folder that all processes of a run share: the first that asks makes it, the others wait for it.

    What could not be made is not tried again: each that asks is told the same.
    """
    place.parent.mkdir(parents=True, exist_ok=True)
    part, failed = place.with_suffix(".part"), place.with_suffix(".failed")
    with FileLock(place.with_suffix(".lock")):
        if not place.exists():
            assert not failed.exists(), failed.read_text(encoding="utf-8")
            part.mkdir()
            try:
                make(part)
            except AssertionError as problem:
                failed.write_text(str(problem), encoding="utf-8")
                raise
            part.rename(place)
    return place


def published(run: Path, theme: str) -> Demo:
    """The demo in a theme. run: the folder of the run.

    The first theme is the demo as it stands; the others take over its cut photos.
    """
    if theme == FIRST_THEME:
        return Demo(theme, once(run / "demos" / theme, _publish))
    kept = published(run, FIRST_THEME).root / ".sitegen" / "cache"

    def publish_in_theme(root: Path) -> None:
        shutil.copytree(kept, root / ".sitegen" / "cache", copy_function=os.link)
        _publish(root, _with_theme(theme))

    return Demo(theme, once(run / "demos" / theme, publish_in_theme))


def _with_theme(theme: str) -> Callable[[str], str]:
    def changed(site: str) -> str:
        themed = re.sub(r"(?m)^theme: .*$", f"theme: {theme}", site)
        return re.sub(r"(?m)^papers: .*$", f"papers: [{', '.join(PAPERS_OF_THE_OTHERS)}]", themed)

    return changed


def _publish(root: Path, change: Callable[[str], str] = str) -> None:
    shutil.copytree(PROJECT / "content", root / "content")
    site = root / "content" / "site.yaml"
    site.write_text(change(site.read_text(encoding="utf-8")), encoding="utf-8")
    done = subprocess.run(
        [sys.executable, "-m", "sitegen", "publish", "--on", DAY],
        cwd=root,
        capture_output=True,
        text=True,
        check=False,
        env={**os.environ, "PYTHONPATH": str(PROJECT)},
    )
    assert done.returncode == 0, done.stdout + done.stderr
