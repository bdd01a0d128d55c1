"""A recipe, as Lighthouse scores what does not depend on the speed of this machine.

Source: Lighthouse 12.2.3, https://developer.chrome.com/docs/lighthouse. What it makes of the speed of a page
is printed by `tests/bench/page_speed.py`: a machine that is busy with other tests does badly there.
"""

import json
import os
import shutil
import subprocess
from collections.abc import Iterable
from pathlib import Path
from typing import Any

from tests.outside.conftest import CHROMIUM, CHROMIUM_FLAGS
from tests.outside.demo import Demo
from tests.outside.host import hosted
from tests.outside.readers import CUPCAKES

WANTED = {"accessibility": 100, "best-practices": 100, "seo": 100}


def report_on(address: str, checkers: Path, categories: Iterable[str] = tuple(WANTED)) -> dict[str, Any]:
    """Lighthouse's report on one page."""
    chromium = shutil.which(CHROMIUM)
    assert chromium, "run bin/test, which installs Chromium"
    command = [
        str(checkers / ".bin" / "lighthouse"),
        address,
        "--quiet",
        "--output=json",
        "--throttling-method=simulate",  # of speed: what a slow phone would do
        f"--only-categories={','.join(categories)}",
        f"--chrome-flags={' '.join(['--headless', *CHROMIUM_FLAGS])}",
    ]
    done = subprocess.run(
        command, capture_output=True, text=True, check=False, env={**os.environ, "CHROME_PATH": chromium}
    )
    assert done.returncode == 0, done.stderr
    found: dict[str, Any] = json.loads(done.stdout)
    return found


def scores_in(report: dict[str, Any]) -> dict[str, int]:
    """Category -> its score of 100."""
    return {name: round(100 * category["score"]) for name, category in report["categories"].items()}


def lost_in(report: dict[str, Any]) -> list[str]:
    """What cost points, for the message."""
    scored = [each for each in report["audits"].values() if each["score"] is not None]
    return [f"{each['id']}: {each.get('displayValue', '')}" for each in scored if each["score"] < 0.9]


def test_a_recipe_is_accessible_and_found(demo: Demo, checkers: Path) -> None:
    """One page in one theme, since each run is fifteen seconds; axe looks at all of them."""
    with hosted({"/": demo.public}) as host:
        report = report_on(f"{host.address}/{CUPCAKES}", checkers)
    assert scores_in(report) == WANTED, "\n".join(lost_in(report))
