"""What is the same as before is linked from the old output, and only if it is still whole."""

from hashlib import sha256
from pathlib import Path

import pytest

from sitegen.press.leaf import Tree
from sitegen.release.outputs import Output
from sitegen.release.report import BuiltFile, Changes, Report
from sitegen.release.staging import OldOutput, Stage

BODIES = {"public/a.html": b"a page", "texts/b.txt": b"a text"}


@pytest.fixture
def old(tmp_path: Path) -> OldOutput:
    """Two files as a build left them."""
    files = {}
    for place, body in BODIES.items():
        path = tmp_path / "output" / place
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_bytes(body)
        files[place] = BuiltFile(size=len(body), sha256=sha256(body).hexdigest())
    report = Report(on="2026-07-15", sitegen="0", changes=Changes(), files=files, inputs={})
    return OldOutput(tmp_path / "output", report)


def output(place: str, body: bytes) -> Output:
    tree, _, path = place.partition("/")
    return Output(Tree(tree), path, lambda: body, digest=sha256(body).hexdigest())


def staged(old: OldOutput, *outputs: Output) -> Stage:
    stage = Stage(old.folder.parent / "stage", old)
    stage.expect(outputs)
    for each in outputs:
        stage.take(each)
    return stage


def test_what_is_the_same_is_the_old_file(old: OldOutput) -> None:
    stage = staged(old, *(output(place, body) for place, body in BODIES.items()))
    assert stage.linked == 2
    assert stage.files == dict(old.files)
    for place in BODIES:
        assert (stage.folder / place).samefile(old.folder / place)


def test_what_differs_is_written_and_the_old_file_stays(old: OldOutput) -> None:
    stage = staged(old, output("public/a.html", b"another"), output("public/c.html", b"new"))
    assert stage.linked == 0
    assert (stage.folder / "public/a.html").read_bytes() == b"another"
    assert (old.folder / "public/a.html").read_bytes() == b"a page"


def test_an_old_file_that_another_hand_changed_is_written_anew(old: OldOutput) -> None:
    (old.folder / "public/a.html").write_bytes(b"a PAGE")
    stage = staged(old, output("public/a.html", b"a page"))
    assert stage.linked == 0
    assert (stage.folder / "public/a.html").read_bytes() == b"a page"


def test_a_link_in_the_old_output_is_none_of_its_files(old: OldOutput, tmp_path: Path) -> None:
    (tmp_path / "elsewhere").write_bytes(b"a page")
    (old.folder / "public/a.html").unlink()
    (old.folder / "public/a.html").symlink_to(tmp_path / "elsewhere")
    stage = staged(old, output("public/a.html", b"a page"))
    assert stage.linked == 0
    assert not (stage.folder / "public/a.html").is_symlink()


def test_the_old_output_is_whole_as_it_was_left(old: OldOutput) -> None:
    assert old.is_whole()


@pytest.mark.parametrize("hand", ["changed", "removed", "added"])
def test_after_another_hand_it_is_not(old: OldOutput, hand: str) -> None:
    path = old.folder / "public/a.html"
    match hand:
        case "changed":
            path.write_bytes(b"A page")
        case "removed":
            path.unlink()
        case _:
            path.with_name("stray.html").write_bytes(b"")
    assert not old.is_whole()
