"""One build of a folder at a time."""

import subprocess
import sys
from pathlib import Path

import pytest

from sitegen.release.lock import AnotherBuildRuns, only_build

HOLDER = """
import sys
from pathlib import Path
from sitegen.release.lock import only_build
with only_build(Path(sys.argv[1])):
    print("held", flush=True)
    sys.stdin.read()
"""


def test_a_second_build_is_refused_while_another_process_builds(tmp_path: Path) -> None:
    holder = subprocess.Popen(
        [sys.executable, "-c", HOLDER, str(tmp_path)],
        stdin=subprocess.PIPE,
        stdout=subprocess.PIPE,
        text=True,
    )
    with holder:
        assert holder.stdout is not None
        assert holder.stdout.readline() == "held\n"
        with pytest.raises(AnotherBuildRuns), only_build(tmp_path):
            pass
        holder.kill()
    with only_build(tmp_path):
        pass
