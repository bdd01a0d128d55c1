"""What a film tells, as plain text and as JSON."""

import json
import re
from collections.abc import Iterator, Sequence
from dataclasses import asdict

from sitegen.kitchen.filmed import Finding, FindingKind, chapter_starts, moment_text
from sitegen.kitchen.method import Step
from sitegen.kitchen.recipe import Recipe
from sitegen.release.filming import Filmed

OPENING_LETTERS = 60
_PLAIN_YAML = re.compile(r"[A-Za-z0-9][^:#]*")
GUESSED = "The captions do not talk through this recipe; what follows is a guess."
NOTHING = "Nothing found: the captions do not talk through this recipe."


def film_text(filmed: Filmed) -> str:
    """Where the steps begin, chapters to paste, and what is said otherwise, the certain first."""
    blocks = [_steps(filmed), _chapters(filmed), _findings(filmed)]
    return "\n\n".join("\n".join(block) for block in map(list, blocks) if block)


def film_json(filmed: Filmed) -> str:
    """The same for programs: moments in seconds, findings with the file, line and column of the recipe."""
    found = {
        "recipe": filmed.recipe.slug,
        "steps": filmed.film.steps,
        "moments": [asdict(moment) for moment in filmed.film.moments],
        "chapters": [{"begins_s": second, "title": title} for second, title in chapter_starts(filmed.film)],
        "findings": [_row(finding) for finding in filmed.open],
    }
    return json.dumps(found, ensure_ascii=False, indent=2)


def _row(finding: Finding) -> dict[str, object]:
    row = asdict(finding)
    place = row.pop("at")
    return {**row, "file": place["file"], "line": place["line"], "column": place["column"]}


def _steps(filmed: Filmed) -> Iterator[str]:
    film = filmed.film
    yield f"{filmed.recipe.title}: {len(film.moments)} of {film.steps} steps found"
    if not film.moments:
        yield NOTHING
        return
    if not film.follows_recipe:
        yield GUESSED
    shown = [(moment.begins_s, moment.component, moment.step) for moment in film.moments]
    missing = [key for key in _all_steps(filmed.recipe) if film.begins_s(*key) is None]
    width = max(len(component) for _, component, _ in shown)
    for second, component, step in shown:
        opening = _opening(filmed.recipe, component, step)
        yield f"{moment_text(second):>7}  {component:<{width}}  {step:>2}  {opening}"
    for component, step in missing:
        yield f"{'not':>7}  {component:<{width}}  {step:>2}  {_opening(filmed.recipe, component, step)}"


def _all_steps(recipe: Recipe) -> Iterator[tuple[str, int]]:
    for component in recipe.components:
        yield from ((component.title, number) for number in range(1, len(component.steps) + 1))


def _opening(recipe: Recipe, title: str, number: int) -> str:
    component = recipe.component(title)
    return step_opening(component.steps[number - 1]) if component else ""


def step_opening(step: Step) -> str:
    """The first words of a step."""
    text = "".join(part.text for part in step.prose).replace("\n", " ")
    if len(text) <= OPENING_LETTERS:
        return text
    return f"{text[:OPENING_LETTERS].rsplit(' ', 1)[0]} …"


def _chapters(filmed: Filmed) -> Iterator[str]:
    starts = chapter_starts(filmed.film)
    if starts:
        yield "Chapters, to paste under `video:`"
        yield "  chapters:"
        yield from (f"    - {_yaml(f'{moment_text(second)} {title}')}" for second, title in starts)


def _yaml(text: str) -> str:
    """A chapter as an entry of YAML, in quotes where it needs them."""
    _, _, title = text.partition(" ")
    return text if _PLAIN_YAML.fullmatch(title) else json.dumps(text, ensure_ascii=False)


def _findings(filmed: Filmed) -> Iterator[str]:
    certain = [finding for finding in filmed.open if finding.certain]
    perhaps = [finding for finding in filmed.open if not finding.certain]
    if not filmed.open and filmed.film.moments:
        yield "Nothing is said otherwise than it is written."
    for title, findings in (("Said otherwise", certain), ("Perhaps said otherwise", perhaps)):
        if findings:
            yield title
            yield from _aligned([_cells(finding) for finding in findings])


def _cells(finding: Finding) -> tuple[str, ...]:
    moment = "never" if finding.moment_s is None else moment_text(finding.moment_s)
    written = f"written {finding.written}" if finding.written else "in no line"
    said = f"said {finding.said}" if finding.kind is not FindingKind.UNSAID else "never said"
    about = finding.about if finding.kind is not FindingKind.ADDED else ""
    return (f"{moment:>7}", about or finding.kind, said, written, f"{finding.at.file}:{finding.at.line}")


def _aligned(rows: Sequence[tuple[str, ...]]) -> Iterator[str]:
    widths = [max(len(row[column]) for row in rows) for column in range(len(rows[0]))]
    for row in rows:
        yield "  ".join(cell.ljust(width) for cell, width in zip(row, widths, strict=True)).rstrip()
