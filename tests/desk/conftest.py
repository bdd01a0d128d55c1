"""A small school with a faulty recipe, served by the real desk on this machine."""

import shutil
import threading
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

import pytest
import uvicorn

from sitegen.desk.reading import Reading
from sitegen.desk.server import application
from sitegen.desk.serving import place_at
from sitegen.release.card_work import _warm_press
from tests.desk.running_desk import put_faces
from tests.release.small_school import NOON, SUMMER, publish_school, write_recipe, write_school


@dataclass(frozen=True)
class ServedDesk:
    """root: the school's folder. address: of the desk, ending in '/'."""

    root: Path
    address: str

    def recipe(self, slug: str) -> Path:
        return self.root / "content" / "recipes" / slug / "recipe.yaml"


def with_tin_and_fault(root: Path) -> Path:
    """The small school; one recipe has a tin, one an ingredient that no larder has. Returns root."""
    write_school(root)
    recipe = root / "content" / "recipes" / "open-biscuits" / "recipe.yaml"
    recipe.write_text(recipe.read_text().replace("makes: 12 squares", "makes: 12 squares\ntin: 20 cm square"))
    write_recipe(root, "coming-biscuits", preparation="soft\n      - 10 g moonflower dust")
    return root


@pytest.fixture(scope="session")
def _published(tmp_path_factory: pytest.TempPathFactory) -> Path:
    root = write_school(tmp_path_factory.mktemp("published") / "school")
    put_faces(Reading(root, lambda: NOON, SUMMER).bench)
    publish_school(root)
    return root


@pytest.fixture
def published_school(_published: Path, tmp_path: Path) -> Path:
    """The small school, published on a day in summer, to write into."""
    return Path(shutil.copytree(_published, tmp_path / "school"))


@pytest.fixture(scope="session")
def served_desk(tmp_path_factory: pytest.TempPathFactory) -> Iterator[ServedDesk]:
    root = with_tin_and_fault(tmp_path_factory.mktemp("desk"))
    place = place_at(0)
    reading = Reading(root, lambda: NOON, SUMMER)
    put_faces(reading.bench)
    for slug in sorted(reading.bench.pending):
        reading.read(slug)
    app = application(reading, lambda: NOON, place.token, place.port)
    server = uvicorn.Server(uvicorn.Config(app, log_config=None, access_log=False, loop="asyncio"))
    thread = threading.Thread(target=server.run, kwargs={"sockets": [place.socket]}, daemon=True)
    thread.start()
    yield ServedDesk(root, place.address)
    server.should_exit = True
    server.force_exit = True
    thread.join(timeout=10)
    _warm_press.cache_clear()  # its fonts go before the interpreter does
