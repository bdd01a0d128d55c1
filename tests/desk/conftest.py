"""Schools for the desk: one that was published, and one with a faulty recipe that is served."""

import shutil
from collections.abc import Iterator
from pathlib import Path

import pytest

from sitegen.desk.reading import Reading
from sitegen.release.card_work import _warm_press
from tests.desk.running_desk import Running, put_faces, running
from tests.outside.publishing import once
from tests.release.small_school import NOON, SUMMER, publish_school, write_recipe, write_school


def with_tin_and_fault(root: Path) -> Path:
    """The small school; one recipe has a tin, one an ingredient that no larder has. Returns root."""
    write_school(root)
    recipe = root / "content" / "recipes" / "open-biscuits" / "recipe.yaml"
    recipe.write_text(recipe.read_text().replace("makes: 12 squares", "makes: 12 squares\ntin: 20 cm square"))
    write_recipe(root, "coming-biscuits", preparation="soft\n      - 10 g moonflower dust")
    return root


@pytest.fixture(scope="session", autouse=True)
def _fonts_go_before_the_interpreter() -> Iterator[None]:
    yield
    _warm_press.cache_clear()


def _publish(root: Path) -> None:
    write_school(root)
    # Its cards and pages say nothing that those of the others do not say as well.
    shutil.rmtree(root / "content" / "recipes" / "ingredient-biscuits")
    put_faces(Reading(root, lambda: NOON, SUMMER).bench)
    publish_school(root)


@pytest.fixture(scope="session")
def _published(tmp_path_factory: pytest.TempPathFactory, worker_id: str) -> Path:
    own = tmp_path_factory.getbasetemp()
    return once((own if worker_id == "master" else own.parent) / "published-for-the-desk", _publish)


@pytest.fixture
def published_school(_published: Path, tmp_path: Path) -> Path:
    """The small school, published on a day in summer, to write into."""
    return Path(shutil.copytree(_published, tmp_path / "school"))


@pytest.fixture(scope="session")
def served_desk(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Running]:
    """The real desk of the school with a fault. Who saves a file of it puts the old one back."""
    with running(with_tin_and_fault(tmp_path_factory.mktemp("desk"))) as desk:
        yield desk
