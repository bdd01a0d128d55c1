"""A proof: all faults of all files in one run, and nothing heavy loaded for it."""

import subprocess
import sys
from pathlib import Path

from sitegen.faults import Severity
from sitegen.release import codes
from sitegen.release.proof import catalogue, proof
from tests.release.small_school import write_recipe, write_school


def test_a_clean_school_has_no_errors(tmp_path: Path) -> None:
    proofed = proof(write_school(tmp_path))
    assert proofed.errors == ()
    assert len(proofed.content.recipes) == 5


def test_faults_of_files_and_of_sheets_come_together_sorted_by_place(tmp_path: Path) -> None:
    write_school(tmp_path)
    write_recipe(tmp_path, "open-biscuits", step="for 10 g")
    teaser = tmp_path / "content" / "recipes" / "teaser-biscuits" / "recipe.yaml"
    teaser.write_text(teaser.read_text().replace("[24 squares]", "[90000 squares]"))
    faults = proof(tmp_path).faults
    told = {(fault.place.file.split("/")[2], fault.code) for fault in faults}
    assert {("open-biscuits", "bare-amount"), ("teaser-biscuits", "cannot-scale")} <= told
    assert [fault.place for fault in faults] == sorted(fault.place for fault in faults)


def test_a_folder_without_content_is_a_fault_and_no_traceback(tmp_path: Path) -> None:
    assert [fault.code for fault in proof(tmp_path).faults] == ["no-content"]


def test_a_school_without_settings_is_still_proofed(tmp_path: Path) -> None:
    write_school(tmp_path)
    (tmp_path / "content" / "site.yaml").unlink()
    faults = proof(tmp_path).faults
    assert {fault.place.file for fault in faults if fault.severity is Severity.ERROR} == {"content/site.yaml"}


def test_a_proof_loads_nothing_that_prints(tmp_path: Path) -> None:
    code = (
        "import sys; from pathlib import Path; from sitegen.release.proof import proof; "
        "proof(Path(sys.argv[1])); "
        "sys.exit(', '.join(sorted({'weasyprint', 'PIL', 'fontTools'} & set(sys.modules))) or 0)"
    )
    done = subprocess.run(
        [sys.executable, "-c", code, str(write_school(tmp_path))],
        cwd=Path(__file__).parents[2],
        capture_output=True,
        text=True,
        check=False,
    )
    assert done.returncode == 0, done.stderr


def test_the_codes_of_a_build_are_in_the_catalogue() -> None:
    assert {code.code for code in codes.CODES} <= catalogue().keys()
