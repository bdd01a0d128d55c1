"""The cache: found by everything that made it, never half there."""

import os
from pathlib import Path

import pytest

from sitegen.release.cache import Cache, makers_hash


def test_kept_bytes_come_back(tmp_path: Path) -> None:
    cache = Cache(tmp_path, "makers")
    cache.put(cache.key("card", b"photo"), b"a card")
    assert cache.get(cache.key("card", b"photo")) == b"a card"


@pytest.mark.parametrize("other", [("card", b"Photo"), ("car", b"dphoto"), ("card", b"photo", ""), ("card",)])
def test_other_inputs_have_another_key(other: tuple[str | bytes, ...]) -> None:
    cache = Cache(Path("unused"), "makers")
    assert cache.key(*other) != cache.key("card", b"photo")


def test_other_makers_have_another_key() -> None:
    folder = Path("unused")
    assert Cache(folder, makers_hash()).key("card") != Cache(folder, "others").key("card")
    assert makers_hash() == makers_hash()


def test_an_entry_that_was_cut_short_counts_as_none(tmp_path: Path) -> None:
    cache = Cache(tmp_path, "makers")
    key = cache.key("card")
    cache.put(key, b"a whole card")
    path = next(tmp_path.glob("*/*"))
    path.write_bytes(path.read_bytes()[:-3])
    assert cache.get(key) is None


def test_what_nobody_asked_for_in_a_month_is_forgotten(tmp_path: Path) -> None:
    cache = Cache(tmp_path, "makers")
    cache.put(cache.key("old"), b"old")
    os.utime(next(tmp_path.glob("*/*")), (0, 0))
    cache.put(cache.key("new"), b"new")
    cache.forget_unused()
    assert cache.get(cache.key("old")) is None
    assert cache.get(cache.key("new")) == b"new"
