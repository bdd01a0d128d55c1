"""A new school's folder."""

from pathlib import Path

import pytest

from sitegen.release.proof import proof
from sitegen.release.start import NotEmpty, start
from tests.release.small_school import assert_whole, publish_school


def test_a_started_school_proofs_clean_and_publishes(tmp_path: Path) -> None:
    written = start(tmp_path / "school")
    assert Path("content/site.yaml") in written
    assert Path(".gitignore") in written
    assert proof(tmp_path / "school").faults == ()
    publish_school(tmp_path / "school")
    assert_whole(tmp_path / "school" / "output")
    assert (tmp_path / "school" / "output" / ".gitkeep").exists()


def test_an_empty_folder_may_be_started_in(tmp_path: Path) -> None:
    assert start(tmp_path)


def test_a_folder_with_anything_in_it_is_refused(tmp_path: Path) -> None:
    (tmp_path / "notes.txt").write_text("kept")
    with pytest.raises(NotEmpty):
        start(tmp_path)
    assert [path.name for path in tmp_path.iterdir()] == ["notes.txt"]


def test_a_file_of_that_name_is_refused(tmp_path: Path) -> None:
    (tmp_path / "school").write_text("a file")
    with pytest.raises(NotEmpty):
        start(tmp_path / "school")
