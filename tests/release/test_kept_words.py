"""What was read once is held against every phrase again, without being read again."""

from hashlib import sha256
from pathlib import Path

import pytest

from sitegen.release import leaks
from sitegen.release.cache import Cache
from sitegen.release.kept_words import KeptWords
from sitegen.release.leaks import leaks_in
from sitegen.release.secrets import RecipeSecrets, Secrets

WORDS = "until the goldfinch sings behind the cream"
NOTHING = Secrets(recipes=())
TOLD_LATER = Secrets(recipes=(RecipeSecrets("finch-buns", (f" {WORDS} ",), ()),))
PIXELS = b"RIFF\x04\x00\x00\x00WEBP"
"""As much of a WebP picture as tells what it is."""


def tree(folder: Path, **files: bytes) -> dict[str, str]:
    """Files, and their hashes as a build knows them."""
    folder.mkdir(exist_ok=True)
    for name, body in files.items():
        (folder / name).write_bytes(body)
    return {name: sha256(body).hexdigest() for name, body in files.items()}


def kept(tmp_path: Path, digests: dict[str, str]) -> KeptWords:
    return KeptWords(digests, Cache(tmp_path / "cache", "makers"))


def never_read(_: bytes) -> None:
    raise AssertionError("a file was read again")


def test_a_phrase_that_is_new_is_found_in_a_page_that_was_read_before(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    digests = tree(tmp_path / "public", page=f"<p>{WORDS.replace('the', '<i>the</i>')}</p>".encode())
    assert leaks_in(tmp_path / "public", NOTHING, kept(tmp_path, digests)) == ()
    monkeypatch.setattr(leaks, "parts_of", never_read)
    (found,) = leaks_in(tmp_path / "public", TOLD_LATER, kept(tmp_path, digests))
    assert (found.file, found.slug) == ("page", "finch-buns")


def test_a_picture_that_is_no_longer_for_everyone_is_known_by_its_hash(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    digests = tree(tmp_path / "public", photo=PIXELS)
    assert leaks_in(tmp_path / "public", NOTHING, kept(tmp_path, digests)) == ()
    monkeypatch.setattr(leaks, "parts_of", never_read)
    secret = Secrets(recipes=(), bodies=frozenset(digests.values()))
    assert [leak.file for leak in leaks_in(tmp_path / "public", secret, kept(tmp_path, digests))] == ["photo"]


def test_a_page_that_changed_is_read(tmp_path: Path) -> None:
    before = tree(tmp_path / "public", page=b"<p>Nothing yet.</p>")
    assert leaks_in(tmp_path / "public", TOLD_LATER, kept(tmp_path, before)) == ()
    after = tree(tmp_path / "public", page=WORDS.encode())
    assert len(leaks_in(tmp_path / "public", TOLD_LATER, kept(tmp_path, after))) == 1


@pytest.mark.parametrize("packed", [b"data:;base64,R29sZGZpbmNoZXMgc2luZw==", b"\x1f\x8b"])
def test_a_file_in_which_something_is_packed_is_read_each_time(tmp_path: Path, packed: bytes) -> None:
    digests = tree(tmp_path / "public", page=packed)
    leaks_in(tmp_path / "public", NOTHING, kept(tmp_path, digests))
    assert kept(tmp_path, digests).words_of("page") is None


def test_no_phrase_runs_over_from_one_reading_into_the_next(tmp_path: Path) -> None:
    digests = tree(tmp_path / "public", page=b"behind the cream &amp; until the goldfinch sings")
    assert leaks_in(tmp_path / "public", TOLD_LATER, kept(tmp_path, digests)) == ()
    assert leaks_in(tmp_path / "public", TOLD_LATER, kept(tmp_path, digests)) == ()
