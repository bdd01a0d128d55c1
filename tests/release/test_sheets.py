"""The sheets of a build: set once, for the proof, and printed as they were proofed."""

from collections import Counter
from pathlib import Path

import pytest

from sitegen.release import sheets
from sitegen.release.proof import proof
from sitegen.sheet.build import build_sheet
from sitegen.sheet.values import Sheet
from tests.release.small_school import publish_school, write_school


def test_a_publish_sets_each_sheet_once(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    counted: Counter[tuple[str, str, str]] = Counter()

    def set_and_counted(*arguments: object) -> Sheet:
        head = (sheet := build_sheet(*arguments)).head  # type: ignore[arg-type]
        counted[head.slug, head.edition.key, head.batch.key] += 1
        return sheet

    monkeypatch.setattr(sheets, "build_sheet", set_and_counted)
    publish_school(write_school(tmp_path))
    assert len(counted) > 10
    assert set(counted.values()) == {1}


def test_what_was_proofed_is_what_is_printed(tmp_path: Path) -> None:
    proofed = proof(write_school(tmp_path))
    assert proofed.setter is not None
    recipe = proofed.content.recipes[0]
    assert proofed.setter.sheet(recipe, "us-cups", None) is proofed.setter.sheet(recipe, "us-cups", None)


def test_another_edition_is_another_sheet(tmp_path: Path) -> None:
    proofed = proof(write_school(tmp_path))
    assert proofed.setter is not None
    recipe = proofed.content.recipes[0]
    british, american = (proofed.setter.sheet(recipe, key, None) for key in ("british-metric", "us-cups"))
    assert (british.head.edition.key, american.head.edition.key) == ("british-metric", "us-cups")
