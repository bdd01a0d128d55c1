"""One-off sheets: a recipe in any edition, at any batch that a reader asks for in words."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from difflib import get_close_matches
from pathlib import Path

from sitegen.faults import Fault, Place, Severity
from sitegen.kitchen.declared import tables_of
from sitegen.kitchen.ovens import OvenOutOfRange
from sitegen.kitchen.part_errors import RECIPE_AT_FAULT
from sitegen.kitchen.recipe import BatchAsk, BatchKind, PartLine, Recipe
from sitegen.kitchen.scaling import CannotScale
from sitegen.release.proof import proof
from sitegen.release.sheets import sheet_setter
from sitegen.sheet.checks import WHY_NOT
from sitegen.sheet.conflict_words import CANNOT_BE_PLANNED
from sitegen.sheet.values import Sheet
from sitegen.source.context import Context
from sitegen.source.library import read_content
from sitegen.source.misread import Misread
from sitegen.source.phrases import read_batch
from sitegen.source.school import Content, School
from sitegen.source.vessels import read_tin

_TYPED = Place("the command line")


@dataclass(frozen=True)
class BatchWords:
    """How much is wanted, in a reader's words; at most one of the four, none for the tested batch."""

    makes: str = ""
    tin: str = ""
    times: str = ""
    using: str = ""

    @property
    def given(self) -> int:
        return sum(bool(words) for words in (self.makes, self.tin, self.times, self.using))


@dataclass(frozen=True)
class Asked:
    """The sheet that was asked for, and the tested batch in the same edition to compare with."""

    sheet: Sheet
    tested: Sheet


class NotAsked(Exception):
    """Something in the question itself is wrong. sentence: what; way_out: what was perhaps meant, or ''."""

    def __init__(self, sentence: str, way_out: str = "") -> None:
        super().__init__(sentence, way_out)
        self.sentence = sentence
        self.way_out = way_out


class AtFault(Exception):
    """What was read has errors, so that no sheet of it can be trusted. texts: file -> lines, to show them."""

    def __init__(self, faults: Sequence[Fault], texts: Mapping[str, tuple[str, ...]]) -> None:
        super().__init__(faults)
        self.faults = tuple(faults)
        self.texts = texts


def asked_sheet(root: Path, name: str, edition: str, words: BatchWords) -> Asked:
    """One sheet. name: a recipe's slug or title. edition: a key, '' for the school's own.

    Faults of other recipes do not stand in the way. Raises NotAsked and AtFault.
    """
    content = read_content(root)
    recipe = recipe_named(content, name)
    school = school_without_errors(content, recipe)
    chosen = edition_named(content, school, edition)
    ask = batch_asked(words, recipe, content)
    setter = sheet_setter(content, school)
    try:
        return Asked(setter.sheet(recipe, chosen, ask), setter.sheet(recipe, chosen, None))
    except CannotScale as problem:
        raise NotAsked(f"'{recipe.title}' cannot be made so: {WHY_NOT[problem.reason]}") from problem
    except (*RECIPE_AT_FAULT, OvenOutOfRange, *CANNOT_BE_PLANNED) as problem:
        raise AtFault(proof(root).errors, content.texts) from problem


def recipe_named(content: Content, name: str) -> Recipe:
    folded = name.casefold().strip().rstrip("/")
    by_name = {
        known.casefold(): recipe for recipe in content.recipes for known in (recipe.slug, recipe.title)
    }
    if folded in by_name:
        return by_name[folded]
    _refuse_unread(content, folded)
    parts = [known for known in by_name if folded in known]
    near = parts[:3] or get_close_matches(folded, by_name, n=3, cutoff=0.5)
    slugs = dict.fromkeys(by_name[each].slug for each in near)
    known = dict.fromkeys(recipe.slug for recipe in content.recipes)
    way_out = f"did you mean {_either(slugs)}?" if slugs else f"there are {', '.join(known)}"
    raise NotAsked(f"there is no recipe '{name}'", way_out if known else "")


def _refuse_unread(content: Content, name: str) -> None:
    """A recipe that could not be read at all is no unknown one."""
    folder = f"content/recipes/{name}/"
    errors = [fault for fault in _errors(content) if fault.place.file.startswith(folder)]
    if errors:
        raise AtFault(errors, content.texts)


def _either(words: Mapping[str, None]) -> str:
    return " or ".join(f"'{word}'" for word in words)


def school_without_errors(content: Content, recipe: Recipe) -> School:
    """The school; raises AtFault where it, the larder, the recipe or a base recipe of it has errors."""
    concerned = {"", *_slugs_of(recipe, content)}
    errors = [fault for fault in _errors(content) if _recipe_folder(fault) in concerned]
    if errors or content.school is None:
        raise AtFault(errors, content.texts)
    return content.school


def _slugs_of(recipe: Recipe, content: Content) -> Iterator[str]:
    """The recipe and the base recipes that it draws on, through any number of others."""
    by_title = {each.title: each for each in content.recipes}
    waiting, seen = [recipe], set()
    while waiting:
        each = waiting.pop()
        if each.slug not in seen:
            seen.add(each.slug)
            yield each.slug
            lines = (line for part in each.components for line in part.lines if isinstance(line, PartLine))
            waiting += [by_title[line.source] for line in lines if line.source in by_title]


def _recipe_folder(fault: Fault) -> str:
    """The slug of the recipe that a fault stands in; an order's own file; '' for the school's others."""
    parts = fault.place.file.split("/")
    if parts[:2] == ["content", "orders"]:
        return fault.place.file
    return parts[2] if parts[:2] == ["content", "recipes"] and len(parts) > 2 else ""


def _errors(content: Content) -> Iterator[Fault]:
    return (fault for fault in content.faults if fault.severity is Severity.ERROR)


def edition_named(content: Content, school: School, key: str) -> str:
    editions = content.tables.editions
    if not key:
        return school.editions[0]
    if key in editions:
        return key
    near = get_close_matches(key, editions, n=1, cutoff=0.4)
    way_out = f"did you mean '{near[0]}'?" if near else f"there are {', '.join(editions)}"
    raise NotAsked(f"there is no edition '{key}'", way_out)


def batch_asked(words: BatchWords, recipe: Recipe, content: Content) -> BatchAsk | None:
    if words.given > 1:
        raise NotAsked("a batch is asked for in one way", "give one of --makes, --tin, --times, --using")
    context = Context(
        tables_of(recipe, {each.title: each for each in content.recipes}, content.tables),
        tuple(part.title for part in recipe.components),
        tuple(each.title for each in content.recipes),
    )
    try:
        return _read_words(words, recipe, context)
    except Misread as problem:
        raise NotAsked(problem.sentence, problem.way_out) from problem


def _read_words(words: BatchWords, recipe: Recipe, context: Context) -> BatchAsk | None:
    """The words as a baker would write them in `batches`. Raises Misread."""
    if words.tin:
        return BatchAsk(BatchKind.TIN, tin=read_tin(words.tin.strip(), _TYPED, context))
    if words.makes:
        bare = words.makes.strip()
        counted = f"{bare} {recipe.makes.noun}" if _is_bare_number(bare) and recipe.makes.noun else bare
        return read_batch(counted, _TYPED, context, recipe.makes)
    if words.times:
        return read_batch(f"times {words.times.strip()}", _TYPED, context)
    if words.using:
        return read_batch(f"using {words.using.strip()}", _TYPED, context)
    return None


def _is_bare_number(text: str) -> bool:
    return not any(mark.isalpha() for mark in text)
