"""Files that are no recipes: bounded, told by name, never a traceback."""

import shutil
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from sitegen.source.library import read_content
from sitegen.source.reader import parse_document, read_document

BOMB = "a: &a [x, x, x]\n" + "".join(
    f"{name}: &{name} [*{before}, *{before}, *{before}]\n"
    for before, name in zip("abcdefgh", "bcdefghi", strict=True)
)


def codes(body: bytes, folder: Path) -> set[str]:
    path = folder / "recipe.yaml"
    path.write_bytes(body)
    _, faults = read_document(path, "recipe.yaml")
    return {fault.code for fault in faults}


@pytest.mark.parametrize(
    ("body", "code"),
    [
        (b"[" * 1_000 + b"]" * 1_000, "too-deep"),
        (b"{a: " * 1_000 + b"b" + b"}" * 1_000, "too-deep"),
        (b"- " * 1_000 + b"a\n", "too-deep"),
        (b"".join(b" " * depth + b"a:\n" for depth in range(1_000)), "too-deep"),
        (b"[" * 50_000, "too-deep"),
        (BOMB.encode(), "anchor"),
        (b"- a\n" * 200_000, "too-many-values"),
        (b"a: " + b"x" * 50_000_000, "file-too-large"),
        (b"\x89PNG\r\n\x1a\n\0\0\0\rIHDR", "not-text"),
        (b"title: a\0b\n", "not-text"),
        ("title: crème\n".encode("latin-1"), "not-utf-8"),
        ("title: crème\n".encode("utf-16"), "not-text"),
        (b"title: a\x07b\n", "odd-character"),
        ("title: a\u202eb\n".encode(), "odd-character"),
        (b"title: a\n\xc2\x85b: c\n", "odd-character"),
    ],
    ids=lambda value: value if isinstance(value, str) else f"{len(value)} bytes",
)
def test_each_bad_file_is_told_by_its_own_name(body: bytes, code: str, tmp_path: Path) -> None:
    assert code in codes(body, tmp_path)


def test_a_bad_letter_is_told_with_its_line(tmp_path: Path) -> None:
    (tmp_path / "a.yaml").write_bytes(b"title: a\nsummary: cr\xe8me\n")
    _, faults = read_document(tmp_path / "a.yaml", "a.yaml")
    assert [(fault.code, fault.place.line) for fault in faults] == [("not-utf-8", 2)]


def test_a_file_that_is_not_there_is_a_fault(tmp_path: Path) -> None:
    document, faults = read_document(tmp_path / "none.yaml", "none.yaml")
    assert document is None
    assert [fault.code for fault in faults] == ["no-file"]


def test_a_folder_in_place_of_a_file_is_a_fault(tmp_path: Path) -> None:
    _, faults = read_document(tmp_path, "folder")
    assert [fault.code for fault in faults] == ["unreadable-file"]


def test_a_mark_of_byte_order_is_no_fault(tmp_path: Path) -> None:
    assert codes(b"\xef\xbb\xbftitle: a\n", tmp_path) == set()


def test_half_a_surrogate_pair_is_a_fault() -> None:
    _, faults = parse_document("title: a\ud800b\n", "a.yaml")
    assert [fault.code for fault in faults] == ["odd-character"]


SAMPLE = Path(__file__).parent / "sample_school"
SLIPS = st.sampled_from(
    [*"{}[]:#'\"\n\t*!|>%0/-,\\é€\u2028\U0001f36a", ": ", " # ", "\n  ", "- ", "1/0", ", ", "half of "]
)


@settings(max_examples=60, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(data=st.data())
def test_no_slip_of_the_pen_in_any_file_stops_the_reading(data: st.DataObject, tmp_path: Path) -> None:
    school = tmp_path / "school"
    shutil.copytree(SAMPLE, school, dirs_exist_ok=True)
    path = data.draw(st.sampled_from(sorted(p for p in school.rglob("*") if p.suffix in (".yaml", ".md"))))
    text = path.read_text(encoding="utf-8")
    for _ in range(data.draw(st.integers(1, 3))):
        start = data.draw(st.integers(0, len(text)))
        end = start + data.draw(st.integers(0, 12))
        text = text[:start] + data.draw(SLIPS) + text[end:]
    path.write_text(text, encoding="utf-8")
    for fault in read_content(school).faults:
        assert fault.code
        assert fault.place.column <= len(text) + 1
