"""The words of notes: `data/note_words.yaml` as values."""

import re
from collections.abc import Iterable, Mapping
from functools import cache
from importlib.resources import files

import yaml

from sitegen.source.file_texts import FileModel

_LOADER = yaml.CBaseLoader if yaml.__with_libyaml__ else yaml.BaseLoader
Rows = Mapping[str, list[str]]


class NoteWords(FileModel):
    """See the table for what each list is for."""

    source: str
    units: Rows
    short: Mapping[str, str]
    columns: list[str]
    word_columns: list[str]
    note_columns: list[str]
    weak_words: list[str]
    counted: list[str]
    said_for: Mapping[str, str]
    kin: Mapping[str, str]
    vague: list[str]
    vessels: list[str]
    filling: list[str]
    near: list[str]
    adjectives: list[str]
    optional: list[str]
    to_taste: list[str]
    sections: Rows
    component_lead: list[str]
    component_tail: list[str]
    list_links: list[str]
    remark_leads: list[str]
    advice: list[str]
    facts: Rows
    unkept_labels: list[str]
    page_lines: list[str]
    cell_times: list[str]
    portion_nouns: list[str]
    open_ends: list[str]
    loose_ends: list[str]
    verb_leads: list[str]
    step_openers: list[str]
    verbs: Rows
    groups: Rows
    excepted: list[str]
    numbers: Mapping[str, str]
    common_words: list[str]
    tins: list[str]
    ware: list[str]
    alike: Mapping[str, str]
    empty_words: list[str]
    abbreviations: list[str]


@cache
def note_words() -> NoteWords:
    """The table, read once a process."""
    text = (files("sitegen") / "data" / "note_words.yaml").read_text(encoding="utf-8")
    return NoteWords.model_validate(yaml.load(text, Loader=_LOADER))


def any_of(words: Iterable[str]) -> str:
    """A pattern of any of the words, longest first, so that none is cut short by its beginning."""
    return "|".join(map(re.escape, sorted(words, key=len, reverse=True)))
