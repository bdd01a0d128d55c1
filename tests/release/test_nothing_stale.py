"""However a school changes from build to build, its output is that of a build from nothing."""

import shutil
from collections.abc import Sequence
from pathlib import Path

import pytest
from hypothesis import HealthCheck, Phase, given, settings
from hypothesis import strategies as st

from sitegen.press.theme import load_theme
from sitegen.press.theme_folder import find_theme
from sitegen.release.build import WORKSHOP, Order, publish
from sitegen.release.cache import Cache, makers_hash
from sitegen.release.steps import Silent
from sitegen.release.theme_work import face_work
from tests.release.changing_school import CHANGES, State
from tests.release.small_school import NOON, tree_hashes


def built(root: Path, state: State) -> dict[str, str]:
    """Path -> hash of every file, but for the report, which tells of the build before."""
    publish(state.written(root), Order(NOON, state.day, jobs=1), Silent())
    return {path: digest for path, digest in tree_hashes(root / "output").items() if path != "report.json"}


def built_from_nothing(root: Path, state: State, faces: Path) -> dict[str, str]:
    """The same with no cache but the faces of the type, which depend on no recipe and take seconds to cut.

    faces: a school that was built, where they were cut.
    """
    state.written(root)
    kept, fresh = (Cache(folder / WORKSHOP / "cache", makers_hash()) for folder in (faces, root))
    for face in face_work(load_theme(find_theme(root, "shelf")), kept):
        for key in (face.card_key, face.page_key):
            fresh.put(key, kept.fetch(key))
    return built(root, state)


@pytest.fixture(scope="module")
def begun(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The school, published as it is at first."""
    root = tmp_path_factory.mktemp("begun")
    assert built(root, State())
    return root


@settings(
    max_examples=3,
    phases=(Phase.explicit, Phase.generate),
    suppress_health_check=[HealthCheck.function_scoped_fixture],
)
@given(changes=st.lists(st.sampled_from(sorted(CHANGES)), min_size=1, max_size=4))
def test_a_build_after_any_changes_is_that_from_nothing(
    begun: Path, tmp_path_factory: pytest.TempPathFactory, changes: Sequence[str]
) -> None:
    root = Path(shutil.copytree(begun, tmp_path_factory.mktemp("changed") / "school"))
    state = State()
    after = {}
    for change in changes:
        state = CHANGES[change](state)
        after = built(root, state)
    assert after == built_from_nothing(tmp_path_factory.mktemp("clean"), state, begun)


@pytest.mark.parametrize(
    "change",
    [
        "a figure of a base recipe",
        "the title of a base recipe",
        "the day of a base recipe",
        "the title of a technique",
        "a photo",
        "another day",
    ],
)
def test_each_change_shows(begun: Path, tmp_path: Path, change: str) -> None:
    """So that the law above could fail."""
    root = Path(shutil.copytree(begun, tmp_path / "school"))
    before = {path: digest for path, digest in tree_hashes(begun / "output").items() if path != "report.json"}
    assert built(root, CHANGES[change](State())) != before
