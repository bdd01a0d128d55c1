"""What must hold of a school whatever stands in its files."""

from collections.abc import Mapping, Sequence

from sitegen.cli.fault_json import faults_json
from sitegen.cli.fault_sarif import faults_sarif
from sitegen.cli.fault_text import faults_text
from sitegen.faults import Fault, Severity
from sitegen.release.proof import catalogue, proof, recipe_proof
from sitegen.release.sheets import SheetSetter, sheet_setter
from sitegen.source.library import read_content
from sitegen.source.school import Content
from tests.fuzz.proving_school import SLUG, ProvingSchool

WITHOUT_LINES = ("not-text", "not-utf-8")
"""Told of files that have bytes and no lines."""


def assert_school_holds(school: ProvingSchool) -> None:
    """The whole proof: each fault is told in its place, twice the same; without an error all is set."""
    proofed = proof(school.root)
    assert_told(proofed.faults, proofed.content.texts)
    assert read_content(school.root).faults == read_content(school.root).faults, "read twice, told otherwise"
    if not proofed.errors and proofed.setter:
        _assert_set(proofed.content, proofed.setter)


def assert_files_hold(school: ProvingSchool) -> None:
    """Each fault of any file is told in its place; nothing is set, which is faster."""
    content = read_content(school.root)
    assert_told(content.faults, content.texts)


def assert_recipe_holds(school: ProvingSchool, again: bool = True) -> None:
    """The tried recipe alone, read and set. again: read it twice, and the second time the same is told."""
    content = school.recipe_alone()
    assert not again or school.recipe_alone().faults == content.faults, "read twice, told otherwise"
    assert content.school is not None
    setter = sheet_setter(content, content.school)
    faults = tuple(dict.fromkeys([*content.faults, *recipe_proof(content, SLUG, setter).faults]))
    assert_told(faults, content.texts)
    tried = [recipe for recipe in content.recipes if recipe.slug == SLUG]
    if not any(fault.severity is Severity.ERROR for fault in faults):
        assert all(setter.all_sheets(recipe).rows for recipe in tried)


def assert_told(faults: Sequence[Fault], texts: Mapping[str, Sequence[str]]) -> None:
    """Each fault has a code of the catalogue and a place within its file, and can be shown in every form."""
    rows = catalogue()
    for fault in faults:
        assert fault.code in rows, fault
        assert fault.severity is rows[fault.code].severity, fault
        assert fault.sentence.strip(), fault
        place = fault.place
        if not place.line:
            assert (place.column, place.length) == (0, 0), fault
            continue
        if fault.code in WITHOUT_LINES:
            continue
        lines = texts[place.file]
        assert place.line <= len(lines), fault
        assert place.column >= 1, fault
        assert place.length >= 1, fault
        # A mark may stand one behind the end of the line, where something is missing.
        assert place.column + place.length - 1 <= max(len(lines[place.line - 1]), place.column), fault
        assert place.column <= len(lines[place.line - 1]) + 1, fault
    _assert_shown(faults, texts)


def _assert_shown(faults: Sequence[Fault], texts: Mapping[str, Sequence[str]]) -> None:
    shown = faults_text(faults, texts)
    assert all(mark == "\n" or mark.isprintable() for mark in shown)
    faults_json(faults).encode("utf-8")
    faults_sarif(faults, catalogue()).encode("utf-8")


def _assert_set(content: Content, setter: SheetSetter) -> None:
    """Every recipe can be set in each edition of the school and each batch that its page offers."""
    assert all(setter.all_sheets(recipe).rows for recipe in content.recipes)
