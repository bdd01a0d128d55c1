"""What a draft says of the whole recipe: title, summary, yield, tin, and the notes at its end."""

import re
from collections.abc import Iterator, Sequence

from sitegen import limits
from sitegen.notes.book import Book, Said
from sitegen.notes.facts import Fact, facts_within
from sitegen.notes.note_lines import NoteLine, without_symbols
from sitegen.notes.placing import Placed
from sitegen.notes.rows import Register, Row
from sitegen.notes.sentences import sentences
from sitegen.notes.tins_in_notes import tin_in
from sitegen.notes.values import Lore
from sitegen.notes.yields_in_notes import PIECES, counted_in, made_in
from sitegen.source.markdown_bounds import too_tangled

_LONGEST_SUMMARY = 390
"""Letters: the format allows a few more."""
_JOINTS = re.compile(r"(\s+[-–—|/·•]\s+)")
_FACTS = ("makes", "serves", "tin")


def title_of(book: Book, file_name: str) -> str:
    """The title of the notes, else the name of their file (without its ending) as words."""
    words = re.sub(r"[-_.\s]+", " ", file_name).strip()
    return book.title or words[:1].upper() + words[1:]


def quiet(title: str, lore: Lore) -> str:
    """A title without brackets, marks and facts at its end; one in capitals throughout in small letters."""
    parts = _JOINTS.split(re.sub(r"\s*\([^()]*\)\s*$", "", title))
    while len(parts) > 1 and facts_within(parts[-1], lore):
        parts = parts[:-2]
    bare = without_symbols("".join(parts)).rstrip(" !.~*")
    return bare.capitalize() if bare.isupper() else bare


def add_facts_in_passing(book: Book, lore: Lore) -> None:
    """What the title, the introduction and the steps say of the whole, where no line of its own does."""
    for one in _facts_in_passing(book, lore):
        if not any(old.fact.key == one.fact.key for old in book.facts if old.fact and one.fact):
            book.facts.append(one)


def _facts_in_passing(book: Book, lore: Lore) -> Iterator[Said]:
    line = book.title_line
    titled = [Said(line.text, line)] if line is not None else []
    for one in (*titled, *book.top):
        for fact in facts_within(one.text, lore):
            yield Said(one.text, one.line, fact=fact)
    for one in (said for block in reversed(book.blocks) for said in reversed(block.said)):
        made = made_in(one.text, lore)
        if made:
            yield Said(one.text, one.line, fact=Fact("makes", made))
            return


def top_rows(
    book: Book, title: str, parts: Sequence[Placed], lore: Lore, register: Register, missing: list[str]
) -> list[Row]:
    """The keys before the components, in the format's order. missing: grows by what the notes do not say."""
    rows = list(_title_rows(book, quiet(title, lore), register, missing))
    rows += _summary_rows(book, register, missing)
    for key in _FACTS:
        said = next((one for one in book.facts if one.fact and one.fact.key == key), None)
        if said is not None and said.fact is not None:
            register.take(said.line)
            rows.append(Row(_noun_of(quiet(title, lore), said.fact.value), key, (said.line,)))
        elif key == "makes":
            missing.append("`makes`: how many of what, such as `12 buns`")
        elif key == "tin":
            rows += _tin_in_method(parts, lore)
    return rows


def _title_rows(book: Book, title: str, register: Register, missing: list[str]) -> Iterator[Row]:
    if book.title_line is not None:
        register.take(book.title_line)
        yield Row(title, "title", (book.title_line,))
    elif title:
        yield Row(title, "title", above=["the notes have no title: this is the name of their file"])
    else:
        missing.append("`title`: as readers see it")


def _summary_rows(book: Book, register: Register, missing: list[str]) -> Iterator[Row]:
    summary, lines = _summary(book)
    if summary:
        yield Row(summary, "summary", lines)
    else:
        missing.append("`summary`: one or two sentences that everyone may read")
    for one in book.top:
        register.take(one.line)


def _summary(book: Book) -> tuple[str, tuple[NoteLine, ...]]:
    """The first sentences of the introduction, as many as a summary holds; and the lines it holds whole."""
    taken = ""
    lines: list[NoteLine] = []
    for one in book.top:
        for sentence in sentences(one.text):
            longer = f"{taken} {sentence}".strip()
            if len(longer) > _LONGEST_SUMMARY or too_tangled(longer):
                return taken, tuple(lines)
            taken = longer
        lines.append(one.line)
    return taken, tuple(lines)


def _noun_of(title: str, value: str) -> str:
    """'9 pieces' of almond friands are '9 friands': the title says of what, where it ends in many."""
    count, _, noun = value.partition(" ")
    counted = counted_in(title)
    return f"{count} {counted}" if noun == PIECES and counted and count != "1" else value


def _tin_in_method(parts: Sequence[Placed], lore: Lore) -> list[Row]:
    """The first tin of which a step speaks."""
    for one in (said for part in parts for said in part.said):
        found = tin_in(one.text, lore)
        if found:
            return [Row(found.value, "tin", (one.line,))]
    return []


def notes_rows(book: Book, top: Sequence[Row], register: Register) -> list[Row]:
    """What follows the method, and what the summary had no room for, as Markdown; no row for nothing."""
    summary = next((row for row in top if row.key == "summary"), None)
    left = [one for one in book.top if summary is None or one.line not in summary.lines]
    kept = [*left, *book.remarks]
    for one in kept:
        register.take(one.line)
    paragraphs = "\n\n".join(one.text for one in kept)
    if not paragraphs:
        return []
    if too_tangled(paragraphs) or len(paragraphs) > limits.MARKDOWN_CHARACTERS:
        comments = [register.set_aside(one.line, "too long for `notes`") for one in kept]
        return [Row("See the comments above.", "notes", above=comments)]
    text = f"{paragraphs}\n" if "\n" in paragraphs else paragraphs
    return [Row(text, "notes", tuple(one.line for one in kept))]
