"""Pipes, devices, links and folders in place of files: told as faults, not followed and not waited for."""

import os
import shutil
import subprocess
import sys
from pathlib import Path

import pytest

from sitegen.source.library import read_content

SAMPLE = Path(__file__).parent / "sample_school"
RECIPE = "content/recipes/blackcurrant-and-bay-cupcakes"
TEXTS = (
    "content/site.yaml",
    "content/larder.yaml",
    "content/prices.yaml",
    "content/orders/saturday.yaml",
    "content/tutorials/whisking.md",
    f"{RECIPE}/recipe.yaml",
)
BESIDE = (f"{RECIPE}/whisk.jpg", f"{RECIPE}/captions.vtt", "content/tutorials/bowl.jpg")


@pytest.fixture
def school(tmp_path: Path) -> Path:
    return Path(shutil.copytree(SAMPLE, tmp_path / "school"))


def codes(school: Path) -> set[str]:
    return {fault.code for fault in read_content(school).faults}


@pytest.mark.parametrize("file", [*TEXTS, *BESIDE])
def test_a_link_out_of_the_school_is_told(file: str, school: Path) -> None:
    shutil.move(school / file, school.parent / "elsewhere")
    (school / file).symlink_to(school.parent / "elsewhere")
    assert "outside-folder" in codes(school)


@pytest.mark.parametrize("file", TEXTS)
def test_a_folder_in_place_of_a_file_is_told(file: str, school: Path) -> None:
    (school / file).unlink()
    (school / file).mkdir()
    assert "unreadable-file" in codes(school)


@pytest.mark.parametrize("file", TEXTS)
def test_a_link_to_itself_is_told(file: str, school: Path) -> None:
    (school / file).unlink()
    (school / file).symlink_to(school / file)
    assert codes(school) & {"no-file", "outside-folder"}


@pytest.mark.parametrize("folder", ["content/recipes", RECIPE, "content/tutorials", "content/orders"])
def test_a_folder_that_is_a_link_is_told(folder: str, school: Path) -> None:
    """Also where it leads to another place in the school: each file has one path."""
    (school / folder).rename(school / "content" / "moved")
    (school / folder).symlink_to(school / "content" / "moved")
    assert "outside-folder" in codes(school)


def test_a_file_may_be_a_link_within_the_school(school: Path) -> None:
    (school / "content" / "site.yaml").rename(school / "content" / "of-the-school.yaml")
    (school / "content" / "site.yaml").symlink_to("of-the-school.yaml")
    assert codes(school) == set()


def test_pipes_and_devices_everywhere_keep_nobody_waiting(school: Path) -> None:
    for file in TEXTS:
        (school / file).unlink()
        os.mkfifo(school / file)
    for file in BESIDE:
        (school / file).unlink()
        (school / file).symlink_to("/dev/zero")
    command = [sys.executable, "-m", "sitegen", "proof", "--root", str(school)]
    done = subprocess.run(command, capture_output=True, text=True, timeout=120, check=False)
    assert done.returncode == 1, done.stderr
    assert done.stdout.count("unreadable-file") == len(TEXTS), done.stdout
