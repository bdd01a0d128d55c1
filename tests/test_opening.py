"""Files are opened inside their tree, plain ones only, and never more of them than asked."""

import os
from collections.abc import Callable
from pathlib import Path

import pytest

from sitegen import opening
from sitegen.opening import LeadsOutside, NoPlainFile, TooManyBytes, open_within, plain_files, read_within


@pytest.fixture
def tree(tmp_path: Path) -> Path:
    """A tree with a file in it, beside a file and a folder that are none of its business."""
    (tmp_path / "tree" / "inner").mkdir(parents=True)
    (tmp_path / "tree" / "inner" / "plain").write_bytes(b"flour")
    (tmp_path / "outside").mkdir()
    (tmp_path / "outside" / "secret").write_bytes(b"secret")
    return tmp_path / "tree"


def test_a_plain_file_is_read(tree: Path) -> None:
    assert read_within(tree, tree / "inner" / "plain", 5) == b"flour"


def test_a_link_to_a_file_of_the_tree_is_followed(tree: Path) -> None:
    (tree / "link").symlink_to("inner/plain")
    assert read_within(tree, tree / "link", 5) == b"flour"


def test_the_tree_itself_may_be_reached_by_a_link(tree: Path) -> None:
    (tree.parent / "door").symlink_to(tree)
    assert read_within(tree.parent / "door", tree.parent / "door" / "inner" / "plain", 5) == b"flour"


OUT: dict[str, Callable[[Path], Path]] = {
    "a link": lambda tree: _linked(tree / "link", tree.parent / "outside" / "secret"),
    "a link to a link": lambda tree: _linked(
        tree / "two", _linked(tree / "one", tree.parent / "outside" / "secret")
    ),
    "a folder that is a link": lambda tree: _linked(tree / "door", tree.parent / "outside") / "secret",
    "two dots": lambda tree: tree / ".." / "outside" / "secret",
    "a full path": lambda tree: tree / "/etc/hostname",
    "a device behind a link": lambda tree: _linked(tree / "zero", Path("/dev/zero")),
    "a link to itself": lambda tree: _linked(tree / "loop", tree / "loop"),
    "the tree": lambda tree: tree,
}


def _linked(path: Path, to: Path) -> Path:
    path.symlink_to(to)
    return path


@pytest.mark.parametrize("way", OUT)
def test_no_way_leads_out(way: str, tree: Path) -> None:
    with pytest.raises(LeadsOutside):
        open_within(tree, OUT[way](tree))


def test_a_pipe_is_refused_and_not_waited_for(tree: Path) -> None:
    os.mkfifo(tree / "pipe")
    with pytest.raises(NoPlainFile):
        open_within(tree, tree / "pipe")


def test_a_folder_is_no_plain_file(tree: Path) -> None:
    with pytest.raises(NoPlainFile):
        open_within(tree, tree / "inner")


def test_one_byte_too_many_is_refused(tree: Path) -> None:
    with pytest.raises(TooManyBytes) as caught:
        read_within(tree, tree / "inner" / "plain", 4)
    assert caught.value.filename == str(tree / "inner" / "plain")


@pytest.mark.parametrize("swapped", ["inner", "inner/plain"])
def test_a_link_that_is_swapped_in_after_the_look_is_not_followed(
    swapped: str, tree: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """The path is looked at, and only then does the link take the place of the file, or of its folder."""
    look = os.path.realpath

    def look_and_swap(path: str | Path) -> str:
        seen = look(path)
        if str(path).endswith("plain") and not (tree / swapped).is_symlink():
            (tree / swapped).rename(tree.parent / "away")
            (tree / swapped).symlink_to(
                tree.parent / "outside" / "secret" if "/" in swapped else tree.parent / "away"
            )
        return seen

    monkeypatch.setattr(opening.os.path, "realpath", look_and_swap)
    with pytest.raises((LeadsOutside, NotADirectoryError)):
        open_within(tree, tree / "inner" / "plain")


def test_all_plain_files_of_a_tree_and_no_others(tree: Path) -> None:
    (tree / "inner" / "link").symlink_to("plain")
    (tree / "out").symlink_to(tree.parent / "outside" / "secret")
    (tree / "door").symlink_to(tree.parent / "outside")
    (tree / "nowhere").symlink_to("gone")
    os.mkfifo(tree / "pipe")
    found = {name: file.read() for name, file in plain_files(tree)}
    assert found == {"inner/plain": b"flour", "inner/link": b"flour"}
