"""Notes -> a draft of a recipe file: every line of them in it, as a line or as a comment in its place."""

import re
import unicodedata
from collections.abc import Iterator, Sequence
from dataclasses import replace

from sitegen import limits
from sitegen.notes.block_yaml import yaml_text
from sitegen.notes.book import Book, Said, book_of
from sitegen.notes.components import Names, StepSaid, component_row, titles_of
from sitegen.notes.facts import PIECES, Fact, facts_within, made_in
from sitegen.notes.note_headings import says_only_a_section
from sitegen.notes.note_lines import NoteLine, note_lines
from sitegen.notes.placing import Placed, placed
from sitegen.notes.rows import Moments, Register, Row, keys_of, with_lost_words
from sitegen.notes.sentences import sentences
from sitegen.notes.steps import Ovens, steps_in
from sitegen.notes.tins_in_notes import tin_in
from sitegen.notes.values import Desk, Draft
from sitegen.source.markdown_bounds import too_tangled

_LONGEST_SUMMARY = 390
_AMERICAN_CUP = "us_cup"
_FACTS = ("makes", "serves", "tin")
_NO_SLUG = "draft"


def draft_of_text(text: str, name: str, desk: Desk) -> Draft:
    """Untidy notes. name: of their file, without its ending: it stands in for a title. Never raises."""
    return draft_of_book(book_of(note_lines(text), desk), name, desk)


def draft_of_book(book: Book, name: str, desk: Desk, moments: Moments | None = None) -> Draft:
    """Sorted notes, written out. moments: where steps begin on film, None for notes without one."""
    register = Register(book.lines, moments or Moments())
    missing: list[str] = []
    title = book.title or _title_of(name)
    parts = placed(book)
    for part, own in zip(parts, titles_of(parts, title), strict=True):
        part.title = own
    for one in _facts_inside(book, desk):
        book.facts += [one] if _is_new(one, book) else []
    top = list(_top_rows(book, title, register, missing))
    tin = next((row.value for row in top if row.key == "tin"), "")
    tin_row = None if tin else _tin_in_method(parts, desk)
    top += [tin_row] if tin_row else []
    said_tin = tin if isinstance(tin, str) else ""
    tin_value = tin_row.value if tin_row is not None and isinstance(tin_row.value, str) else said_tin
    components = Row(list(_component_rows(book, parts, tin_value, desk, register, missing)), "components")
    aside = (one for one in book.facts if one.fact and not _is_used(one, top))
    components.above += dict.fromkeys(
        register.set_aside(one.line, one.fact.reason or "said twice") for one in aside if one.fact
    )
    components.above += _cup_remark(book, desk)
    rows = [*top, *([components] if components.value else [])]
    notes = _notes_row(book, top, register)
    rows += [notes] if notes else []
    bare = [line for line in book.lines if says_only_a_section(line)]
    below = with_lost_words(rows, book.lines, bare)
    below += [] if components.value else components.above
    return Draft(yaml_text(keys_of(rows, below)), slug_of(_quiet(title)), register.fates(), tuple(missing))


def _title_of(name: str) -> str:
    words = re.sub(r"[-_.\s]+", " ", name).strip()
    return words[:1].upper() + words[1:]


def slug_of(title: str) -> str:
    """The name of the recipe's folder: small letters, figures and dashes."""
    plain = unicodedata.normalize("NFKD", title).encode("ascii", "ignore").decode().casefold()
    return re.sub(r"[^a-z0-9]+", "-", plain).strip("-")[:80].strip("-") or _NO_SLUG


def _top_rows(book: Book, title: str, register: Register, missing: list[str]) -> Iterator[Row]:
    if book.title_line is not None:
        register.take(book.title_line)
        yield Row(_quiet(title), "title", (book.title_line,))
    elif title:
        yield Row(title, "title", above=["the notes have no title: this is the name of their file"])
    else:
        missing.append("`title`: as readers see it")
    summary, lines = _summary(book)
    if summary:
        yield Row(summary, "summary", lines)
    else:
        missing.append("`summary`: one or two sentences that everyone may read")
    for one in book.top:
        register.take(one.line)
    for key in _FACTS:
        fact = next((one for one in book.facts if one.fact and one.fact.key == key), None)
        if fact is not None and fact.fact is not None:
            register.take(fact.line)
            yield Row(_noun_of(book.title, fact.fact.value), key, (fact.line,))
        elif key == "makes":
            missing.append("`makes`: how many of what, such as `12 buns`")


def _cup_remark(book: Book, desk: Desk) -> list[str]:
    """How much the cups of the file hold, where any stand in it: those of the notes may be others."""
    said = (one.ingredient.line for group in book.groups for one in group.said if one.ingredient)
    if not any(re.search(r"\bcups?\b", line) for line in said):
        return []
    measures, edition = desk.context.tables.measures, desk.edition
    own, american = (round(measures.unit_ml(cup)) for cup in (edition.cup, _AMERICAN_CUP))
    if own == american:
        return []
    where = f"as in the edition '{edition.title}'"
    return [f"cups in this file hold {own} ml, {where}; an American one holds {american} ml"]


def _facts_inside(book: Book, desk: Desk) -> Iterator[Said]:
    """What the title and the introduction say of the whole in passing."""
    line = book.title_line
    titled = [Said(line.text, line)] if line is not None else []
    for one in (*titled, *book.top):
        for fact in facts_within(one.text, desk):
            yield Said(one.text, one.line, fact=fact)
    for one in (said for block in reversed(book.blocks) for said in reversed(block.said)):
        made = made_in(one.text, desk)
        if made:
            yield Said(one.text, one.line, fact=Fact("makes", made))
            return


def _is_new(one: Said, book: Book) -> bool:
    return one.fact is not None and not any(old.fact and old.fact.key == one.fact.key for old in book.facts)


def _noun_of(title: str, value: str) -> str:
    """'9 pieces' of almond friands are '9 friands': the title says of what, where it ends in many."""
    count, _, noun = value.partition(" ")
    last = title.split()[-1].casefold().strip(".,!") if title.split() else ""
    return (
        f"{count} {last}"
        if noun == PIECES and last.isalpha() and last.endswith("s") and count != "1"
        else value
    )


def _quiet(title: str) -> str:
    """A title in capitals throughout, in small letters."""
    bare = re.sub(r"\s*\([^()]*\)\s*$", "", title).rstrip(" !.~")
    return bare.capitalize() if bare.isupper() else bare


def _summary(book: Book) -> tuple[str, tuple[NoteLine, ...]]:
    """The first sentences of the introduction, as many as a summary holds."""
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


def _is_used(one: Said, top: Sequence[Row]) -> bool:
    fact = one.fact
    if fact is None or fact.key == "oven":
        return fact is not None
    return any(row.key == fact.key and one.line in row.lines for row in top)


def _tin_in_method(parts: Sequence[Placed], desk: Desk) -> Row | None:
    for part in parts:
        for one in part.said:
            found = tin_in(one.text, desk)
            if found:
                return Row(found.value, "tin", (one.line,))
    return None


def _component_rows(
    book: Book, parts: Sequence[Placed], tin: str, desk: Desk, register: Register, missing: list[str]
) -> Iterator[Row]:
    steps = _steps(book, parts, tin, desk)
    context = replace(desk.context, components=tuple(part.title for part in parts))
    names = Names()
    for index, part in enumerate(parts):
        row = component_row(part, steps[index], desk, context, register, names)
        if not row.value and not row.above:
            continue
        if not steps[index]:
            missing.append(f"the method of '{part.title}': no step of the notes makes it")
        yield row


def _steps(book: Book, parts: Sequence[Placed], tin: str, desk: Desk) -> list[list[StepSaid]]:
    """The steps of each component. The oven is followed through all of them in the order of the notes."""
    first = next((one.fact.heats for one in book.facts if one.fact and one.fact.heats), None)
    ovens = Ovens(desk.context.tables.ovens, first)
    order = {id(one): index for index, one in enumerate(_in_order(parts))}
    found: list[list[StepSaid]] = [[] for _ in parts]
    owners = {id(one): index for index, part in enumerate(parts) for one in part.said}
    for one in sorted(_in_order(parts), key=lambda said: (said.line.number, order[id(said)])):
        text = _with_the_tin(one.text, tin, desk)
        found[owners[id(one)]] += [StepSaid(step, one) for step in steps_in(text, one.line.number, ovens)]
    return found


def _in_order(parts: Sequence[Placed]) -> list[Said]:
    return [one for part in parts for one in part.said]


def _with_the_tin(text: str, tin: str, desk: Desk) -> str:
    """The recipe's own tin by that word: its size would not follow the reader's."""
    said = tin_in(text, desk) if tin else None
    if said is None or said.value != tin:
        return text
    return f"{text[: said.start]}the tin{text[said.end :]}"


def _notes_row(book: Book, top: Sequence[Row], register: Register) -> Row | None:
    """What follows the method, and what the summary had no room for, as Markdown."""
    summary = next((row for row in top if row.key == "summary"), None)
    left = [one for one in book.top if summary is None or one.line not in summary.lines]
    kept = [*left, *book.remarks]
    for one in kept:
        register.take(one.line)
    paragraphs = "\n\n".join(one.text for one in kept)
    if not paragraphs:
        return None
    lines = tuple(one.line for one in kept)
    if too_tangled(paragraphs) or len(paragraphs) > limits.MARKDOWN_CHARACTERS:
        comments = [register.set_aside(one.line, "too long for `notes`") for one in kept]
        return Row("See the comments above.", "notes", above=comments)
    return Row(f"{paragraphs}\n" if "\n" in paragraphs else paragraphs, "notes", lines)
