"""The worker as it is published; what it does is tried in a browser (tests/outside/test_no_signal.py)."""

import json
import shutil
import subprocess

from sitegen.press.offline import worker
from tests.press.sample_parts import IMPRINT

FILES = ["theme/page-0123456789abcdef.css", "theme/mark-0123456789abcdef.svg"]


def test_it_knows_its_version_its_address_and_what_every_device_keeps() -> None:
    first, code = worker(IMPRINT, "abc", FILES).decode().split("\n", 1)
    assert json.loads(first.removeprefix("const PUBLISHED = ").removesuffix(";")) == {
        "version": "abc",
        "address": "https://tansyrow.example/",
        "everywhere": ["not-kept.html", *FILES, ""],
    }
    assert "PUBLISHED.version" in code


def test_another_version_is_another_file() -> None:
    """W3C Service Workers, 3.2.7: a worker is updated when its bytes differ."""
    assert worker(IMPRINT, "abc", FILES) != worker(IMPRINT, "abd", FILES)


def test_it_is_a_script() -> None:
    node = shutil.which("node")
    assert node, "run bin/test, which installs node"
    code = worker(IMPRINT, "abc", FILES)
    done = subprocess.run([node, "--check", "-"], input=code, capture_output=True, check=False)
    assert done.returncode == 0, done.stderr.decode()
