"""The cache: found by everything that made it, never half there."""

from pathlib import Path

import pytest

from sitegen.release.cache import Cache, key_of


def test_kept_bytes_come_back(tmp_path: Path) -> None:
    cache = Cache(tmp_path)
    cache.put(key_of("card", b"photo"), b"a card")
    assert cache.get(key_of("card", b"photo")) == b"a card"


@pytest.mark.parametrize("other", [("card", b"Photo"), ("car", b"dphoto"), ("card", b"photo", ""), ("card",)])
def test_other_inputs_have_another_key(other: tuple[str | bytes, ...]) -> None:
    assert key_of(*other) != key_of("card", b"photo")


def test_an_entry_that_was_cut_short_counts_as_none(tmp_path: Path) -> None:
    cache, key = Cache(tmp_path), key_of("card")
    cache.put(key, b"a whole card")
    path = next(tmp_path.glob("*/*"))
    path.write_bytes(path.read_bytes()[:-3])
    assert cache.get(key) is None


def test_what_nobody_asked_for_in_a_month_is_forgotten(tmp_path: Path) -> None:
    import os

    cache = Cache(tmp_path)
    cache.put(key_of("old"), b"old")
    os.utime(next(tmp_path.glob("*/*")), (0, 0))
    cache.put(key_of("new"), b"new")
    cache.forget_unused()
    assert cache.get(key_of("old")) is None
    assert cache.get(key_of("new")) == b"new"
