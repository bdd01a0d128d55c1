"""The register of copies: numbers that are given once, and fields that no spreadsheet takes for formulas."""

import csv
from dataclasses import replace
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from sitegen.release.register import Entry, Register, RegisterDamaged, read_register, write_register

ADA = Entry(1, "Ada Marrow", "stamped/0001-ada-marrow/tart-copy-1.pdf", "aa", "2026-07-03", "ff")


def kept(register: Register, folder: Path) -> Register:
    write_register(register, folder / "register.csv")
    return read_register(folder / "register.csv")


def rows(folder: Path) -> list[list[str]]:
    with (folder / "register.csv").open(encoding="utf-8", newline="") as file:
        return list(csv.reader(file))


def test_a_name_keeps_its_number_over_runs(tmp_path: Path) -> None:
    first = Register()
    assert [first.number_of(name) for name in ("Ada Marrow", "Bo Quill", "ada MARROW")] == [1, 2, 1]
    second = kept(first, tmp_path)
    assert [second.number_of(name) for name in ("Cy Tart", "Bo Quill", "Ada Marrow")] == [3, 2, 1]


def test_a_name_that_was_taken_out_leaves_its_number_used(tmp_path: Path) -> None:
    register = Register([ADA, Entry(2, "Bo Quill")])
    write_register(register, tmp_path / "register.csv")
    text = (tmp_path / "register.csv").read_text()
    (tmp_path / "register.csv").write_text(text.replace("Bo Quill", ""))
    assert read_register(tmp_path / "register.csv").number_of("Bo Quill") == 3


def test_a_copy_that_is_registered_already_is_no_second_row(tmp_path: Path) -> None:
    register = Register([ADA])
    register.add(replace(ADA, day="2026-08-01"))
    register.add(replace(ADA, sha256="bb"))
    write_register(register, tmp_path / "register.csv")
    assert [(row[3], row[4]) for row in rows(tmp_path)[1:]] == [("aa", "2026-07-03"), ("bb", "2026-07-03")]
    last = read_register(tmp_path / "register.csv").last_copy(ADA.file)
    assert last is not None
    assert last.sha256 == "bb"


def test_a_number_stands_alone_until_its_first_copy(tmp_path: Path) -> None:
    register = Register()
    register.number_of("Ada Marrow")
    write_register(register, tmp_path / "register.csv")
    assert rows(tmp_path)[1:] == [["1", "Ada Marrow", "", "", "", ""]]
    register.add(ADA)
    write_register(register, tmp_path / "register.csv")
    assert [row[2] for row in rows(tmp_path)[1:]] == [ADA.file]


@settings(max_examples=100, deadline=None)
@given(st.text(st.sampled_from("'=+-@ab,;\"\n "), min_size=1, max_size=8))
def test_no_field_begins_as_a_formula_and_each_comes_back(name: str) -> None:
    """What begins a formula: OWASP, 'CSV Injection'."""
    register = Register([replace(ADA, name=name)])
    text = register.as_csv()
    (_, row) = csv.reader(text.splitlines(keepends=True))
    assert row[1][0] not in "=+-@"
    assert all(field.startswith('"') for field in text.splitlines()[0].split(","))


@pytest.mark.parametrize("name", ["=2+5", "'=2+5", "''@x", "@table", "-1", "'t Broodje", "Ada", "+44"])
def test_what_was_defused_is_the_same_name_when_it_is_read(name: str, tmp_path: Path) -> None:
    register = kept(Register([replace(ADA, name=name)]), tmp_path)
    assert register.number_of(name) == 1


def test_a_spreadsheet_may_save_it_with_other_delimiters(tmp_path: Path) -> None:
    write_register(Register([ADA]), tmp_path / "register.csv")
    text = (tmp_path / "register.csv").read_text().replace('","', '";"').replace('"', "")
    (tmp_path / "register.csv").write_text("\ufeff" + text)
    assert read_register(tmp_path / "register.csv").last_copy(ADA.file) == ADA


@pytest.mark.parametrize(
    ("change", "line"),
    [
        (("number,name", "nummer,name"), 1),
        (("1,Ada", "one,Ada"), 2),
        (("2,Bo Quill", "1,Bo Quill"), 3),
        (("2,Bo Quill", "2,Ada Marrow"), 3),
        (("2,Bo Quill,", "2,Bo Quill"), 3),
        (("2,Bo Quill", '2,"Bo Quill'), 0),
        (("Bo Quill", "Caf\udce9"), 0),
    ],
)
def test_a_damaged_register_is_told_by_its_line(change: tuple[str, str], line: int, tmp_path: Path) -> None:
    file = tmp_path / "register.csv"
    write_register(Register([ADA, Entry(2, "Bo Quill")]), file)
    text = file.read_text().replace('"', "")
    assert change[0] in text
    file.write_bytes(text.replace(*change).encode("utf-8", "surrogateescape"))
    with pytest.raises(RegisterDamaged) as found:
        read_register(file)
    assert found.value.line == line


def test_a_write_that_fails_leaves_the_old_register(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    file = tmp_path / "register.csv"
    write_register(Register([ADA]), file)
    before = file.read_bytes()

    def fail(*_: object) -> None:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr("os.replace", fail)
    with pytest.raises(OSError, match="No space"):
        write_register(Register([ADA, Entry(2, "Bo Quill")]), file)
    assert file.read_bytes() == before
