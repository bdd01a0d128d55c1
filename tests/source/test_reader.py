"""A YAML file as plain values with places: what is read, and every trap that is told."""

from pathlib import Path

import pytest
import yaml

from sitegen.source.reader import Document, parse_document, read_document
from sitegen.source.trips import explain


def read(text: str) -> Document:
    document, faults = parse_document(text, "recipe.yaml")
    assert faults == ()
    assert document is not None
    return document


def told(text: str) -> list[tuple[str, int, int]]:
    """Code, line and column of each fault."""
    _, faults = parse_document(text, "recipe.yaml")
    return [(fault.code, fault.place.line, fault.place.column) for fault in faults]


@pytest.mark.parametrize(
    "written",
    ["2026-07-03", "1:30", "yes", "no", "on", "off", "null", "~", "12", "1.50", "0x1F", "012", "true", "1e3"],
)
def test_every_scalar_stays_the_text_that_was_written(written: str) -> None:
    assert read(f"key: {written}\n").data == {"key": written}


def test_nothing_written_is_none_and_an_empty_quote_is_an_empty_text() -> None:
    assert read("a:\nb: ''\n").data == {"a": None, "b": ""}


def test_braces_inside_a_text_are_text() -> None:
    assert read("text: Whisk {eggs} and [sic] {butter}.\n").data == {
        "text": "Whisk {eggs} and [sic] {butter}."
    }


def test_a_value_and_its_key_have_places_of_their_own() -> None:
    document = read("components:\n  Sponge:\n    keeps: 2 days\n")
    path = ("components", "Sponge", "keeps")
    value, key = document.place(path), document.key_place(path)
    assert (value.line, value.column, value.length) == (3, 12, 6)
    assert (key.line, key.column, key.length) == (3, 5, 5)


def test_the_entries_of_a_list_have_places() -> None:
    document = read("tags: [cupcakes, soft fruit]\n")
    place = document.place(("tags", 1))
    assert (place.line, place.column, place.length) == (1, 18, 10)


def test_what_is_not_there_is_placed_at_what_it_would_lie_in() -> None:
    document = read("a:\n  b: c\n")
    assert document.place(("a", "x", "y")) == document.place(("a",))


@pytest.mark.parametrize(
    ("text", "word", "line", "column"),
    [
        ("key: plain words here\n", "here", 1, 18),
        ("key: plain words\n  run on here\n", "here", 2, 10),
        ("key: 'it''s here'\n", "here", 1, 13),
        ('key: "caf\\u00e9 here"\n', "here", 1, 17),
        ('key: "one\\n two\n   here"\n', "here", 2, 4),
        ("key: >-\n  one two\n  three\n\n  here\n", "here", 5, 3),
        ("key: |\n  one\n    two here\n", "here", 3, 9),
    ],
)
def test_a_word_inside_a_text_is_found_in_the_file(text: str, word: str, line: int, column: int) -> None:
    document = read(text)
    value = document.value(("key",))
    assert isinstance(value, str)
    start = value.index(word)
    place = document.place_in(("key",), start, start + len(word))
    assert (place.line, place.column, place.length) == (line, column, len(word))


TRAPS = [
    ("text: {eggs} beaten\n", "brace-begins-text", 1, 7),
    ("steps:\n  - text: {eggs} beaten\n    wait: 1 h\n", "brace-begins-text", 2, 11),
    ("text: {caster sugar}\n", "brace-begins-text", 1, 7),
    ("list:\n  - {caster sugar} and more\n", "brace-begins-text", 2, 5),
    ("text: Note: bake at once\n", "colon-in-text", 1, 11),
    ("photo: {file: a.jpg, alt: Note: a bun}\n", "colon-in-text", 1, 31),
    ("text: Fill tin # 2 with it\n", "comment-cuts-text", 1, 16),
    ("text: # Fill it\n", "comment-cuts-text", 1, 7),
    ("text: Fill # now\n  and bake\n", "comment-cuts-text", 1, 12),
    ("text: >- # Fill it\n  and bake\n", "comment-cuts-text", 1, 10),
    ("photo: {file: a.jpg, alt: Twelve cakes, each with a berry}\n", "comma-in-braces", 1, 41),
    ("a: 1\nb: 2\na: 3\n", "key-twice", 3, 1),
    ("a:\n\tb: c\n", "tab", 2, 1),
    ("a:\tb\n", "tab", 1, 3),
    ("text: *important*\n", "anchor", 1, 7),
    ("text: &now bake\n", "anchor", 1, 7),
    ("a: &x y\nb: *x\n", "anchor", 1, 4),
    ("text: !important bake\n", "tag", 1, 7),
    ("text: !!python/object:os.system x\n", "tag", 1, 7),
    ("text: @room temperature\n", "reserved-start", 1, 7),
    ("text: `whisk`\n", "reserved-start", 1, 7),
    ("text: 'don't stop'\n", "text-after-quote", 1, 12),
    ("text: 'open\nnext: b\n", "quote-open", 1, 7),
    ('text: "\\qick"\n', "escape", 1, 8),
    ("a: b\nhow so\nc: d\n", "line-without-key", 2, 1),
    ("a: b\n  c: d\n", "indentation", 2, 4),
    ("a:\n    b: c\n  d: e\n", "indentation", 3, 3),
    ("tags: [a, b\n", "braces-open", 1, 7),
    ("text: > Fold it\n", "block-mark", 1, 9),
    ("a: b\n---\nc: d\n", "second-document", 2, 1),
    ("{a: b}: c\n", "key-kind", 1, 1),
    ("%ORDER x\n---\na: b\n", "yaml-directive", 1, 7),
]


@pytest.mark.parametrize(("text", "code", "line", "column"), TRAPS)
def test_a_trap_is_told_by_its_name_at_its_place(text: str, code: str, line: int, column: int) -> None:
    assert told(text)[0] == (code, line, column)


@pytest.mark.parametrize(("text", "code"), [(text, code) for text, code, _, _ in TRAPS])
def test_a_trap_tells_a_way_out(text: str, code: str) -> None:
    _, faults = parse_document(text, "recipe.yaml")
    assert all(fault.way_out for fault in faults if fault.code == code)


@pytest.mark.parametrize(
    ("text", "code"), [(text, code) for text, code, _, _ in TRAPS if code not in ("yaml-directive", "tab")]
)
def test_the_parser_without_libyaml_trips_over_the_same_traps(
    text: str, code: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("sitegen.source.reader._LOADER", yaml.SafeLoader)
    assert told(text)[0][0] == code


def test_words_cut_off_by_a_comma_leave_the_rest_in_place() -> None:
    document, faults = parse_document("p: {alt: Twelve cakes, each with a berry, file: a.jpg}\n", "f")
    assert document is not None
    assert document.data == {"p": {"alt": "Twelve cakes", "file": "a.jpg"}}
    assert [fault.code for fault in faults] == ["comma-in-braces"]


def test_a_text_in_braces_is_kept_as_the_text_that_was_meant() -> None:
    document, _ = parse_document("text: {caster sugar}\n", "f")
    assert document is not None
    assert document.data == {"text": "{caster sugar}"}


@pytest.mark.parametrize("text", ["# a line of its own\na: b\n", "a: 'quoted' # said\n", "a: [b] # said\n"])
def test_a_comment_that_drops_no_words_is_no_fault(text: str) -> None:
    assert told(text) == []


def test_several_faults_of_one_file_are_told_at_once() -> None:
    text = "a: b # c\nd: {e}\na: f\n"
    assert [code for code, _, _ in told(text)] == ["comment-cuts-text", "brace-begins-text", "key-twice"]


@pytest.mark.parametrize("escape", ["\\0", "\\x1b", "\\u202e", "\\u2028", "\\r", "\\e", "\\N"])
def test_a_hidden_character_is_a_fault_when_it_is_written_as_an_escape(escape: str) -> None:
    _, faults = parse_document(f'title: "bun{escape}s"\n', "recipe.yaml")
    assert [fault.code for fault in faults] == ["odd-character"]
    _, faults = parse_document(f'"bun{escape}s": a\n', "recipe.yaml")
    assert [fault.code for fault in faults] == ["odd-character"]


def test_windows_line_ends_are_line_ends(tmp_path: Path) -> None:
    (tmp_path / "a.yaml").write_bytes(b"a: b\r\nc: d\r\n")
    document, faults = read_document(tmp_path / "a.yaml", "a.yaml")
    assert document is not None
    assert (document.data, faults) == ({"a": "b", "c": "d"}, ())


def test_an_empty_file_says_nothing() -> None:
    assert read("# only a comment\n").data is None


def test_a_wording_of_the_parser_that_nobody_knows_still_has_its_place() -> None:
    mark = yaml.Mark("", 0, 1, 2, None, 0)
    fault = explain(yaml.scanner.ScannerError(None, None, "a new kind", mark), ["a", "b c"], "f")
    assert (fault.code, fault.place.line, fault.place.column) == ("yaml", 2, 3)
