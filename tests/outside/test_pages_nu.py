"""Every page of the demo, held against the HTML standard.

Source: the Nu HTML checker (npm package `vnu-jar`), which the W3C's own service runs.
"""

import json
import subprocess
from pathlib import Path

from tests.outside.demo import Demo


def checker(checkers: Path) -> list[str]:
    jar = checkers / "vnu-jar" / "build" / "dist" / "vnu.jar"
    return ["java", "-jar", str(jar), "--errors-only", "--format", "json"]


def test_every_page_is_valid_html(demo: Demo, checkers: Path) -> None:
    done = subprocess.run(
        [*checker(checkers), "--skip-non-html", str(demo.public), str(demo.subscribers)],
        capture_output=True,
        text=True,
        check=False,
    )
    messages = json.loads(done.stderr or '{"messages": []}')["messages"]
    faults = {f"{m['url'].split('/output/')[-1]}:{m.get('lastLine')}: {m['message']}" for m in messages}
    assert not faults, "\n".join(sorted(faults)[:20])
    assert len(demo.pages()) > 50


def test_the_checker_sees_a_planted_fault(tmp_path: Path, checkers: Path) -> None:
    page = tmp_path / "faulty.html"
    page.write_text("<!doctype html><html lang=en><title>x</title><p id=a><p id=a><img src=x.jpg>", "utf-8")
    done = subprocess.run(
        [*checker(checkers), str(page)],
        capture_output=True,
        text=True,
        check=False,
    )
    assert done.returncode == 1
    assert len(json.loads(done.stderr)["messages"]) >= 2
