"""Notes -> a draft of a recipe file: every line of them in it, as a line or as a comment in its place."""

import re
import unicodedata
from collections.abc import Iterator, Sequence
from dataclasses import replace

from sitegen.notes.block_yaml import yaml_text
from sitegen.notes.book import Book, Said, book_of
from sitegen.notes.components import ComponentLinks, StepSaid, component_row, titles_of
from sitegen.notes.note_headings import says_only_a_section
from sitegen.notes.note_lines import note_lines
from sitegen.notes.placing import Placed, placed
from sitegen.notes.rows import Moments, Register, Row, keys_of, with_lost_words
from sitegen.notes.steps import Ovens, steps_in
from sitegen.notes.tins_in_notes import tin_in
from sitegen.notes.top_rows import add_facts_in_passing, notes_rows, quiet, title_of, top_rows
from sitegen.notes.values import Draft, Lore

_AMERICAN_CUP = "us_cup"
_BEFORE_TIN = re.compile(
    r"(?:\b(?:an?|the|your) )?(?:\b(?:lined|greased|buttered|prepared|deep|shallow|large),? )*$",
    re.IGNORECASE,
)
_NO_SLUG = "draft"
_LONGEST_SLUG = 80


def draft_of_text(text: str, name: str, lore: Lore) -> Draft:
    """Untidy notes. name: of their file, without its ending: it stands in for a title. Never raises."""
    return draft_of_book(book_of(note_lines(text), lore), name, lore)


def draft_of_book(book: Book, name: str, lore: Lore, moments: Moments | None = None) -> Draft:
    """Sorted notes, written out. moments: where steps begin on film, None for notes without one."""
    register = Register(book.lines, moments or Moments())
    missing: list[str] = []
    title = title_of(book, name)
    short = quiet(title, lore)
    parts = [part for part in placed(book) if part.said or (part.group and part.group.said)]
    for part, own in zip(parts, titles_of(parts, short), strict=True):
        part.title = own
    add_facts_in_passing(book, lore)
    top = top_rows(book, title, parts, lore, register, missing)
    tin = next((row.value for row in top if row.key == "tin" and isinstance(row.value, str)), "")
    components = Row(list(_component_rows(book, parts, tin, lore, register, missing)), "components")
    components.above += (*_unused_facts(book, top, register), *_cup_remark(book, lore))
    rows = [*top, *([components] if components.value else []), *notes_rows(book, top, register)]
    bare = [line for line in book.lines if says_only_a_section(line)]
    below = with_lost_words(rows, book.lines, bare, lore)
    below += [] if components.value else components.above
    return Draft(yaml_text(keys_of(rows, below)), slug_of(short), register.fates(), tuple(missing))


def slug_of(title: str) -> str:
    """The name of the recipe's folder: small letters, figures and dashes."""
    plain = (
        unicodedata.normalize("NFKD", re.sub(r"(?<=\w)['’](?=\w)", "", title))
        .encode("ascii", "ignore")
        .decode()
        .casefold()
    )
    return re.sub(r"[^a-z0-9]+", "-", plain).strip("-")[:_LONGEST_SLUG].strip("-") or _NO_SLUG


def _unused_facts(book: Book, top: Sequence[Row], register: Register) -> list[str]:
    """A comment for each fact that no key holds, none twice."""
    comments = [
        register.set_aside(one.line, one.fact.reason or "said twice")
        for one in book.facts
        if one.fact is not None and one.fact.key != "oven" and not _is_used(one, top)
    ]
    return list(dict.fromkeys(comments))


def _is_used(one: Said, top: Sequence[Row]) -> bool:
    return any(one.fact and row.key == one.fact.key and one.line in row.lines for row in top)


def _cup_remark(book: Book, lore: Lore) -> list[str]:
    """How much the cups of the file hold, where any stand in it: those of the notes may be others."""
    said = (one.ingredient.line for group in book.groups for one in group.said if one.ingredient)
    if not any(re.search(r"\bcups?\b", line) for line in said):
        return []
    measures, edition = lore.context.tables.measures, lore.edition
    own, american = (round(measures.unit_ml(cup)) for cup in (edition.cup, _AMERICAN_CUP))
    if own == american:
        return []
    where = f"as in the edition '{edition.title}'"
    return [f"cups in this file hold {own} ml, {where}; an American one holds {american} ml"]


def _component_rows(
    book: Book, parts: Sequence[Placed], tin: str, lore: Lore, register: Register, missing: list[str]
) -> Iterator[Row]:
    context = replace(lore.context, components=tuple(part.title for part in parts))
    links = ComponentLinks()
    for part, steps in zip(parts, _steps(book, parts, tin, lore), strict=True):
        row = component_row(part, steps, lore, context, register, links)
        if not row.value and not row.above:
            continue
        if not steps:
            missing.append(f"the method of '{part.title}': no step of the notes makes it")
        yield row


def _steps(book: Book, parts: Sequence[Placed], tin: str, lore: Lore) -> list[list[StepSaid]]:
    """The steps of each component. The oven is followed through all of them in the order of the notes."""
    first = next((one.fact.heats for one in book.facts if one.fact and one.fact.heats), None)
    ovens = Ovens(lore.context.tables.ovens, first)
    found: list[list[StepSaid]] = [[] for _ in parts]
    said = [(index, one) for index, part in enumerate(parts) for one in part.said]
    for index, one in sorted(said, key=lambda placed: placed[1].line.number):
        text = _with_the_tin(one.text, tin, lore)
        found[index] += [StepSaid(step, one) for step in steps_in(text, one.line.number, ovens)]
    return found


def _with_the_tin(text: str, tin: str, lore: Lore) -> str:
    """The recipe's own tin by that word: its size would not follow the reader's."""
    said = tin_in(text, lore) if tin else None
    if said is None or said.value != tin:
        return text
    before = _BEFORE_TIN.sub("", text[: said.start])
    return f"{before}the tin{text[said.end :]}"
