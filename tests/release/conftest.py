"""The small school, published once for all tests that only look at it."""

from dataclasses import dataclass
from pathlib import Path

import pytest

from sitegen.release.build import Published
from tests.release.small_school import publish_school, write_school


@dataclass(frozen=True)
class Done:
    """A published school. Tests must not write into it."""

    root: Path
    published: Published

    @property
    def output(self) -> Path:
        return self.root / "output"


@pytest.fixture(scope="session")
def done(tmp_path_factory: pytest.TempPathFactory) -> Done:
    """The small school on a day in summer."""
    root = write_school(tmp_path_factory.mktemp("school"))
    return Done(root, publish_school(root))


@pytest.fixture
def again(done: Done, tmp_path: Path) -> Path:
    """A copy of the published school with its cache, to write into."""
    import shutil

    return Path(shutil.copytree(done.root, tmp_path / "school"))
