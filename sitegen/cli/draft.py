"""`sitegen draft NOTES`."""

from dataclasses import replace
from pathlib import Path
from typing import TYPE_CHECKING

import click

from sitegen.cli.exits import Exit, stop
from sitegen.cli.folder import root_option, school_folder

if TYPE_CHECKING:
    from sitegen.faults import Fault
    from sitegen.film.values import Cue
    from sitegen.notes.values import Draft, Fate, Lore
    from sitegen.source.school import Content


@click.command()
@click.argument("notes", type=click.Path(path_type=Path))
@click.option(
    "--captions",
    type=click.Path(path_type=Path),
    metavar="FILE",
    help="The film's captions (WebVTT or SRT): the moment of each step stands beside it.",
)
@click.option(
    "--to",
    "target",
    type=click.Path(path_type=Path),
    metavar="PATH",
    help="Write a new file: PATH itself, or in the folder PATH a folder of the recipe's own.",
)
@root_option
@click.pass_context
def draft(
    context: click.Context, notes: Path, captions: Path | None, target: Path | None, root: Path | None
) -> None:
    """Make a recipe file of NOTES: untidy text, a page or JSON with a Recipe of schema.org, or captions.

    Every line of the notes stands in the file, as a line or as a comment in its place. What was not
    understood, what is missing, and the faults that a proof would find are listed on the standard error.

    \b
    Examples:
      sitegen draft old-notes.txt
      sitegen draft old-notes.txt --to content/recipes
      sitegen draft captions.vtt

    Exit codes: 0 the file is whole, 1 something is missing or was not understood, 2 wrong use.
    """
    from sitegen.cli.faulty import show_faults, stop_with_faults
    from sitegen.notes.reading import read_notes
    from sitegen.notes.values import Fate
    from sitegen.source.library import read_content

    content = read_content(school_folder(root))
    lore = _lore(content)
    cues = _cues(captions) if captions is not None else ()
    made, faults, text = read_notes(notes, str(notes), lore, cues)
    texts = {str(notes): tuple(text.split("\n"))}
    if made is None:
        raise stop_with_faults(faults, texts, "no draft was made")
    path = _path(made.slug, target)
    if target is None:
        click.echo(made.text, nl=False)
    else:
        _write(path, made.text)
    errors, advice = _proofed(made, path, content, lore)
    told = (*_told(made, str(notes)), *errors)
    show_faults(told, {**texts, path.as_posix(): tuple(made.text.split("\n"))})
    _close(made, len(errors), len(advice), path if target else None)
    is_whole = not errors and not made.missing and not _counted(made, Fate.LOST)
    context.exit(Exit.CLEAN if is_whole else Exit.FAULTS)


def _lore(content: "Content") -> "Lore":
    """The school's larder and words. A school whose own files are at fault is read as far as it goes."""
    from sitegen.notes.values import Lore
    from sitegen.source.context import Context

    tables = content.tables
    written = content.school.written_in if content.school else next(iter(tables.editions))
    titles = tuple(heading.title for heading in content.headings)
    return Lore(Context(tables, recipes=titles), tables.editions[written])


def _proofed(
    made: "Draft", path: Path, content: "Content", lore: "Lore"
) -> "tuple[tuple[Fault, ...], tuple[Fault, ...]]":
    """The errors and the advice of a proof: of the file, and of its sheets where it can be set."""
    from sitegen.faults import Severity
    from sitegen.notes.proofing import proofed
    from sitegen.release.sheets import sheet_setter
    from sitegen.sheet.checks import sheet_faults
    from sitegen.source.photos import Folder

    found = proofed(made.text, path.as_posix(), Folder(path.parent, path.parent.as_posix()), lore)
    told = list(found.faults)
    if found.recipe is not None and not found.errors and content.school is not None:
        with_draft = replace(content, recipes=(*content.recipes, found.recipe))
        setter = sheet_setter(with_draft, content.school)
        told += sheet_faults(found.recipe, setter.shelf, setter.sheet)
    errors = tuple(fault for fault in told if fault.severity is Severity.ERROR)
    return errors, tuple(fault for fault in told if fault.severity is not Severity.ERROR)


def _cues(file: Path) -> "tuple[Cue, ...]":
    """The cues of a film; stops where the captions cannot be read."""
    from sitegen.cli.faulty import stop_with_faults
    from sitegen.faults import Place
    from sitegen.source.captions import read_captions

    cues, faults = read_captions(file, str(file), file.parent, Place(str(file)))
    if faults:
        raise stop_with_faults(faults, {}, "no draft was made")
    return cues


def _path(slug: str, target: Path | None) -> Path:
    if target is None:
        return Path("content/recipes") / slug / "recipe.yaml"
    return target / slug / "recipe.yaml" if target.is_dir() else target


def _write(path: Path, text: str) -> None:
    """Never over a file that is there."""
    try:
        path.parent.mkdir(parents=True, exist_ok=True)
        with path.open("x", encoding="utf-8") as file:
            file.write(text)
    except FileExistsError:
        raise stop(f"'{path}' is there already: name another file, or take it away", Exit.WRONG_USE) from None
    except OSError as problem:
        raise stop(f"'{path}' cannot be written: {problem.strerror}", Exit.FAULTS) from None


def _told(made: "Draft", shown: str) -> "tuple[Fault, ...]":
    """The lines that were not understood or have no key, as advice at their places in the notes."""
    from sitegen.faults import Place
    from sitegen.notes.values import Fate
    from sitegen.source.note_codes import NOT_UNDERSTOOD, SET_ASIDE

    told = []
    for one in made.fates:
        place = Place(shown, one.number, 1, max(len(one.written), 1))
        if one.fate is Fate.LOST:
            told.append(NOT_UNDERSTOOD.fault(place, "this line was not understood", one.reason))
        elif one.fate is Fate.ASIDE:
            told.append(SET_ASIDE.fault(place, one.reason))
    return tuple(told)


def _counted(made: "Draft", fate: "Fate") -> int:
    return sum(one.fate is fate for one in made.fates)


def _close(made: "Draft", errors: int, advice: int, written: Path | None) -> None:
    """What is missing, and how it went, on the standard error."""
    from sitegen.notes.values import Fate

    for words in made.missing:
        click.echo(f"missing: {words}", err=True)
    total = len(made.fates)
    others = [f"{count} {fate}" for fate in (Fate.ASIDE, Fate.LOST) if (count := _counted(made, fate))]
    if total:
        taken = f"{_counted(made, Fate.TAKEN)} of {total} lines of the notes understood"
        click.echo("; ".join((taken, *others)), err=True)
    proofs = "the file proofs" if not errors else f"{errors} {'error' if errors == 1 else 'errors'} to mend"
    click.echo(f"{proofs}, {advice} {'piece' if advice == 1 else 'pieces'} of advice", err=True)
    if written is not None:
        click.echo(f"written: {written}", err=True)
