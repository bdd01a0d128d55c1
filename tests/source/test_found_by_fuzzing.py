"""What the fuzzing of `tests/fuzz/` found, tried again: each file is told or set, and nothing else."""

from pathlib import Path

import pytest

from tests.fuzz.oracle import assert_school_holds
from tests.fuzz.proving_school import FILES, ProvingSchool

FOUND = Path(__file__).parent.parent / "fuzz" / "found"
CASES = sorted(path for path in FOUND.rglob("*") if path.is_file())


@pytest.fixture(scope="module")
def school(tmp_path_factory: pytest.TempPathFactory) -> ProvingSchool:
    return ProvingSchool(tmp_path_factory.mktemp("school"))


@pytest.mark.parametrize("case", CASES, ids=lambda case: f"{case.parent.name}/{case.name}")
def test_what_was_found_once_holds(case: Path, school: ProvingSchool) -> None:
    kind = case.parent.name
    school.write(kind, case.read_bytes())
    try:
        assert_school_holds(school)
    finally:
        school.mend(kind)


def test_every_case_is_of_a_kind_that_is_tried() -> None:
    assert {case.parent.name for case in CASES} <= FILES.keys()
