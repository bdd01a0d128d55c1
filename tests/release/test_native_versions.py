"""Kept work is made by libraries in C too: another version of one, another key."""

import pytest
from PIL import features

from sitegen.release import cache
from sitegen.release.native_versions import MISSING, native_versions


def test_they_are_those_that_weasyprint_and_pillow_work_with() -> None:
    from weasyprint.text.ffi import pango

    told = native_versions()
    number = pango.pango_version()
    assert told["pango"] == f"{number // 10_000}.{number // 100 % 100}.{number % 100}"
    assert told["pillow's webp"] == features.version("webp")
    assert told["pillow's jpg"] == features.version("jpg")


def test_each_tells_its_version_here() -> None:
    told = native_versions()
    for name in ("fontconfig", "freetype", "harfbuzz", "pango", "pillow's webp", "zlib", "python"):
        assert told[name] != MISSING
        assert told[name][0].isdigit()


@pytest.mark.parametrize("of", [cache.makers_hash, cache.program_hash])
def test_another_version_gives_other_keys(monkeypatch: pytest.MonkeyPatch, of: object) -> None:
    hash_now = of.__wrapped__  # type: ignore[attr-defined]  # each is asked once a process
    before = hash_now()
    monkeypatch.setattr(cache, "_libraries", cache._libraries.__wrapped__)
    monkeypatch.setattr(cache, "native_versions", lambda: {**native_versions(), "pango": "1.99.0"})
    assert hash_now() != before
