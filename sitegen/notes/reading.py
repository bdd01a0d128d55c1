"""A file of notes, of whatever kind -> a draft, or the faults that stand in its way."""

from collections.abc import Sequence
from dataclasses import replace
from pathlib import Path

from sitegen import limits
from sitegen.faults import Fault, Place
from sitegen.film.values import Cue
from sitegen.notes.book import Book, book_of
from sitegen.notes.decoding import decoded
from sitegen.notes.draft import draft_of_book
from sitegen.notes.json_ld import book_of_recipe
from sitegen.notes.json_values import TooDeep, json_in, recipe_in, scripts_in
from sitegen.notes.note_lines import note_lines
from sitegen.notes.proofing import proofed
from sitegen.notes.rows import Moments
from sitegen.notes.spoken_notes import spoken_notes
from sitegen.notes.values import Draft, Lore
from sitegen.opening import LeadsOutside, TooManyBytes, read_within
from sitegen.source.captions import read_captions
from sitegen.source.films import FilmReader
from sitegen.source.note_codes import NO_RECIPE, NOT_JSON
from sitegen.source.photos import Folder
from sitegen.source.textfile import LONG_LINE, NO_FILE, OUTSIDE, TOO_LARGE, UNREADABLE

CAPTIONS = (".vtt", ".srt")
_PAGE_MARKS = ("<!doctype html", "<html", "<script")


def read_notes(
    path: Path, shown: str, lore: Lore, cues: Sequence[Cue] = ()
) -> tuple[Draft | None, tuple[Fault, ...], str]:
    """The draft, None with one fault where there is none; and the text of the notes, '' where it has none.

    shown: the path as the baker is told it. cues: of the film, whose moments stand beside the steps.
    """
    if path.suffix.casefold() in CAPTIONS:
        return (*_of_film(path, shown, lore), "")
    text, faults = text_of_notes(path, shown)
    if text is None:
        return None, faults, ""
    draft, faults = draft_of(text, path.name, shown, lore, cues)
    return draft, faults, text


def _of_film(path: Path, shown: str, lore: Lore) -> tuple[Draft | None, tuple[Fault, ...]]:
    """A skeleton from captions alone."""
    cues, faults = read_captions(path, shown, path.parent, Place(shown))
    if faults:
        return None, faults
    spoken = spoken_notes(cues, lore)
    if not spoken.book.lines:
        return None, (NO_RECIPE.fault(Place(shown), "nothing found: no amount and no work is spoken of"),)
    draft = draft_of_book(spoken.book, path.stem, lore, Moments(of_lines=spoken.moments))
    note = f"a skeleton from a film: {spoken.left_out} sentences that ask for no work are left out\n"
    return replace(draft, text=f"# {note}{draft.text}", fates=()), ()


def text_of_notes(path: Path, shown: str) -> tuple[str | None, tuple[Fault, ...]]:
    """The text of a file of notes; None with one fault where it has none."""
    try:
        body = read_within(path.parent, path, limits.TEXT_BYTES)
    except TooManyBytes:
        return None, (TOO_LARGE.fault(Place(shown), "the file is larger than 1 MB"),)
    except LeadsOutside:
        return None, (OUTSIDE.fault(Place(shown), f"'{shown}' is a link out of its folder"),)
    except (FileNotFoundError, NotADirectoryError):
        return None, (NO_FILE.fault(Place(shown), f"there is no file '{shown}'"),)
    except OSError as problem:
        reason = problem.strerror or "it cannot be opened"
        return None, (UNREADABLE.fault(Place(shown), f"the file cannot be read: {reason}"),)
    return decoded(body, shown)


def draft_of(
    text: str, file_name: str, shown: str, lore: Lore, cues: Sequence[Cue] = ()
) -> tuple[Draft | None, tuple[Fault, ...]]:
    """The draft of a text: of JSON-LD where it is JSON or a page, else of untidy notes."""
    book, faults = _book(text, file_name, shown, lore)
    if book is None:
        return None, faults
    long = next((line for line in book.lines if len(line.text) > limits.LINE_CHARACTERS), None)
    if long is not None:
        place = Place(shown, long.place or long.number, 1, 1)
        return None, (LONG_LINE.fault(place, f"this line has {len(long.text):,} characters"),)
    draft = draft_of_book(book, Path(file_name).stem, lore)
    if not any(group.said for group in book.groups) and not any(block.said for block in book.blocks):
        return None, (NO_RECIPE.fault(Place(shown), "nothing found: no ingredient line and no step"),)
    if cues:
        draft = draft_of_book(book, Path(file_name).stem, lore, moments_of(draft, cues, lore))
    return draft, ()


def moments_of(draft: Draft, cues: Sequence[Cue], lore: Lore) -> Moments:
    """Where the steps of a draft begin on film; of a draft that cannot be read, nowhere."""
    recipe = proofed(draft.text, "recipe.yaml", Folder(Path(draft.slug), draft.slug), lore).recipe
    if recipe is None:
        return Moments()
    reader = FilmReader((recipe,), lore.context.recipes, lore.context.tables, lore.edition.key)
    moments = reader.reading(recipe, cues).moments
    return Moments(of_steps={(one.component, one.step): one.begins_s for one in moments})


def _book(text: str, file_name: str, shown: str, lore: Lore) -> tuple[Book | None, tuple[Fault, ...]]:
    ending = Path(file_name).suffix.casefold()
    head = text.lstrip()[:2_000].casefold()
    if ending in (".html", ".htm") or any(mark in head for mark in _PAGE_MARKS):
        return _of_page(text, shown, lore)
    if ending in (".json", ".jsonld") or head.startswith(("{", "[{")):
        return _of_json(text, shown, lore, is_told=ending.startswith(".json"))
    return book_of(note_lines(text), lore), ()


def _of_page(text: str, shown: str, lore: Lore) -> tuple[Book | None, tuple[Fault, ...]]:
    for script in scripts_in(text):
        try:
            recipe = recipe_in(json_in(script))
        except (TooDeep, ValueError, RecursionError):
            continue
        if recipe is not None:
            return book_of_recipe(recipe, text, lore), ()
    sentence = "the page holds no recipe in the vocabulary of schema.org"
    return None, (NO_RECIPE.fault(Place(shown), sentence, "copy its words into a text file instead"),)


def _of_json(text: str, shown: str, lore: Lore, is_told: bool) -> tuple[Book | None, tuple[Fault, ...]]:
    try:
        recipe = recipe_in(json_in(text))
    except (TooDeep, RecursionError):
        sentence = f"more than {limits.DEPTH} levels lie in each other"
        return None, (NOT_JSON.fault(Place(shown), sentence, NOT_JSON.cure),)
    except ValueError as problem:
        if not is_told:
            return book_of(note_lines(text), lore), ()
        return None, (NOT_JSON.fault(_place(problem, shown), "this is no JSON"),)
    if recipe is None:
        sentence = "there is no Recipe of schema.org's vocabulary in it"
        return None, (NO_RECIPE.fault(Place(shown), sentence),)
    return book_of_recipe(recipe, text, lore), ()


def _place(problem: ValueError, shown: str) -> Place:
    line, column = getattr(problem, "lineno", 0), getattr(problem, "colno", 0)
    return Place(shown, line, column, 1) if line else Place(shown)
