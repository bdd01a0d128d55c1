"""A killed publish leaves the old output or the new one. `tests/bench/kills.py` kills by the hundred."""

import random
import signal

import pytest

from sitegen.release import swap
from sitegen.release.steps import Step
from tests.release.conftest import Done
from tests.release.kills import WITHOUT_EXCHANGE, Oven
from tests.release.pair_school import CONTENTS


@pytest.fixture(scope="module")
def oven(done: Done, tmp_path_factory: pytest.TempPathFactory) -> Oven:
    oven = Oven(tmp_path_factory.mktemp("kills"))
    oven.build_clean(done.root / ".sitegen" / "cache")
    return oven


def other(name: str) -> str:
    return CONTENTS[1 - CONTENTS.index(name)]


def test_the_two_contents_have_hardly_a_file_in_common(oven: Oven) -> None:
    one, two = oven.clean.values()
    alike = {path for path in one if one[path] == two.get(path)}
    assert {path for path in alike if "/theme/" not in path} == {"subscribers/robots.txt", ".told"}


@pytest.mark.parametrize("step", [Step.CARDS, Step.FILES, Step.SWAP])
def test_the_old_or_the_new_output_is_left_whole(oven: Oven, step: Step) -> None:
    was = oven.standing()
    assert was is not None
    killed = oven.killed(other(was), random.uniform(0, 0.03), step)
    assert killed is None or killed.left in {was, other(was)}
    oven.publish(jobs=1)
    assert oven.standing() == other(was)


KILLED_AT_THE_FOURTH_RENAME = """
import os, signal
from pathlib import Path
rename, renamed = Path.rename, []
def rename_or_die(self, target):
    renamed.append(target)
    if len(renamed) == 4:
        os.kill(os.getpid(), signal.SIGKILL)
    return rename(self, target)
Path.rename = rename_or_die
"""


def test_without_exchange_the_next_run_finishes_the_swap_even_if_it_is_refused(oven: Oven) -> None:
    """Each tree that stands there in between is whole by itself; once it is decided, the new one wins."""
    was = oven.standing()
    assert was is not None
    oven.take(other(was))
    with oven.begin(jobs=1, before=WITHOUT_EXCHANGE + KILLED_AT_THE_FOURTH_RENAME) as child:
        child.communicate()
    assert child.returncode == -signal.SIGKILL
    assert set(oven.trees_standing().values()) == {was, other(was)}
    (oven.root / "content" / "site.yaml").write_text("name: [")
    with oven.begin(jobs=1) as child:
        child.communicate()
    assert child.returncode == 1
    assert oven.standing() == other(was)


def test_a_swap_of_one_file_that_was_cut_short_leaves_nothing(oven: Oven) -> None:
    """A publish of what has not changed writes the report anew and nothing else."""
    was = oven.standing()
    assert was is not None
    oven.take(was)
    (oven.output / swap.ONE_FILE).write_text("half a report")
    oven.publish(jobs=1)
    assert oven.standing() == was
