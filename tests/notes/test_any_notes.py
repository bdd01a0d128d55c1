"""What holds of any notes at all: a draft that can be read, in which every word of every line stands."""

import re
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from sitegen.notes.draft import draft_of_text
from sitegen.notes.note_headings import says_only_a_section
from sitegen.notes.note_lines import note_lines
from sitegen.notes.proofing import proofed
from sitegen.notes.reading import draft_of
from sitegen.notes.unwrapping import unwrapped
from sitegen.notes.values import Draft, Fate
from sitegen.notes.word_table import note_words
from sitegen.source.reader import parse_document
from sitegen.source.textfile import text_of
from tests.notes.drafts import FOLDER, LORE, TABLES

WRITTEN = sorted((Path(__file__).parent / "written").iterdir())
TEXTS = [path.read_text(encoding="utf-8") for path in WRITTEN]
LINES = sorted({line for text in TEXTS for line in text.splitlines() if line.strip()})
MARKS = [
    "{",
    "}",
    "#",
    "- ",
    ": ",
    "|",
    "***",
    "½",
    "\t",
    "°",
    "(",
    ")",
    '"',
    "'",
    "%",
    "&",
    "!",
    "\\",
    "[x]",
    "---",
]
SMALL = frozenset(re.findall(r"\w+", "a an the of for to at in on and or until till til about then with"))
ALIKE = frozenset(
    re.findall(
        r"\w+",
        "mins min minute minutes hrs hour hours tbsp tsp cup cups inch inches makes make yield yields gives "
        "serves servings serving portions large lge step degrees method ingredients instructions mark ounce "
        "approx ounces gram grams pound pounds",
    )
)
UNITS = {
    token for words in TABLES.measures.names.values() for word in words for token in word.casefold().split()
}
TOKEN = re.compile(r"\d+|[^\W\d_½⅓⅔¼¾⅛]{3,}")

any_line = st.one_of(
    st.sampled_from(LINES),
    st.text(st.characters(codec="utf-8"), max_size=40),
    st.lists(st.sampled_from([*MARKS, *(word for line in LINES for word in line.split())]), max_size=12).map(
        " ".join
    ),
)
any_notes = st.one_of(st.lists(any_line, max_size=25).map("\n".join), st.text(max_size=300))


def assert_kept(text: str, draft: Draft) -> None:
    """Every line stands in the draft: all its words of three letters, and its figures, in some place of it.

    Only headings such as 'Ingredients' are not repeated: the keys of the file say the same.
    """
    there = set(TOKEN.findall(draft.text.casefold()))
    for line in note_lines(text):
        if says_only_a_section(line):
            continue
        whole = " ".join(line.text.split()) in " ".join(
            draft.text.replace("\n", " ").replace("# ", "").split()
        )
        missing = [
            one for one in TOKEN.findall(line.text.casefold()) if one not in there and one not in SMALL
        ]
        assert whole or not [one for one in missing if not is_alike(one)], (line, missing)


def is_alike(token: str) -> bool:
    """A unit, a short form or a heading that the file says in its own word."""
    return token in ALIKE or token in UNITS or token in note_words().short


@settings(max_examples=120, deadline=None)
@given(any_notes)
def test_any_text_becomes_a_draft_that_keeps_it(text: str) -> None:
    draft = draft_of_text(text, "any", LORE)
    assert_kept(text, draft)
    assert [one.number for one in draft.fates] == [line.number for line in note_lines(text)]


@settings(max_examples=40, deadline=None)
@given(any_notes)
def test_lines_that_are_put_together_lose_no_letter(text: str) -> None:
    whole = "".join(words for _, words, _ in unwrapped(text))
    assert "".join(whole.split()) == "".join(text.split())


@settings(max_examples=80, deadline=None)
@given(any_notes)
def test_any_draft_can_be_read(text: str) -> None:
    """What is wrong with it is a fault of a recipe, and never one of YAML or of its letters."""
    draft = draft_of_text(text, "any", LORE)
    as_file, faults = text_of(draft.text.encode(), "recipe.yaml")
    assert faults == ()
    assert as_file == draft.text
    document, faults = parse_document(draft.text, "recipe.yaml")
    assert document is not None
    assert faults == ()
    proofed(draft.text, "recipe.yaml", FOLDER, LORE)


@settings(max_examples=60, deadline=None)
@given(
    st.one_of(
        any_notes,
        st.recursive(
            st.sampled_from(['"a"', "1", "null", '{"@type": "Recipe"}']),
            lambda inner: st.lists(inner, max_size=3).map(lambda one: f"[{','.join(one)}]"),
        ),
    )
)
def test_any_text_is_read_under_any_name(text: str) -> None:
    for name in ("a.txt", "a.json", "a.html"):
        draft, faults = draft_of(text, name, name, LORE)
        assert (draft is None) == bool(faults)


@pytest.mark.parametrize("path", WRITTEN, ids=lambda path: path.name)
def test_the_written_notes_are_kept(path: Path) -> None:
    text = path.read_text(encoding="utf-8")
    draft = draft_of_text(text, path.stem, LORE)
    assert_kept(text, draft)
    assert not [one for one in draft.fates if one.fate is Fate.LOST]


def test_the_same_notes_give_the_same_draft() -> None:
    for text in TEXTS[::5]:
        assert draft_of_text(text, "any", LORE) == draft_of_text(text, "any", LORE)
