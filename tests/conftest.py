"""What holds for every test."""

import shutil
from collections.abc import Iterator
from pathlib import Path
from typing import TYPE_CHECKING

import pytest
from hypothesis import settings

if TYPE_CHECKING:
    from playwright.sync_api import Browser

# A law that is slow on a busy machine is no less true. Each run draws anew: forty a run are many in a week,
# and keep the whole run within fifteen minutes on two processors.
settings.register_profile("untimed", deadline=None, max_examples=40)
settings.load_profile("untimed")


@pytest.fixture(scope="session")
def checkers() -> Path:
    """The folder of the npm packages that `bin/test` installs."""
    from tests.outside.conftest import CHECKERS

    assert CHECKERS.is_dir(), "run bin/test, which installs the checkers"
    return CHECKERS


@pytest.fixture(scope="session")
def browser() -> Iterator["Browser"]:
    """Debian's Chromium as a shell without windows. One a process: two would want the same loop of events."""
    from playwright.sync_api import sync_playwright

    from tests.outside.conftest import CHROMIUM, CHROMIUM_FLAGS

    path = shutil.which(CHROMIUM)
    assert path, "run bin/test, which installs Chromium"
    with sync_playwright() as playwright:
        started = playwright.chromium.launch(executable_path=path, args=CHROMIUM_FLAGS)
        yield started
        started.close()
