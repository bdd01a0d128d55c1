"""What changed since the last build, and why, in as few lines as it takes."""

from collections import Counter
from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import dataclass
from textwrap import wrap

from sitegen.release.causes import recipe_of
from sitegen.release.kinds import KINDS, kind_of
from sitegen.release.report import Change, Changes
from sitegen.release.tally import counted

_GROUPS = 6
"""As many causes are told one by one; more are told by their sorts."""

_NAMED = 3
"""As many recipes are named in a row."""

_CHANGED, _NEW, _GONE = "changed", "new", "gone"

_NOUNS = {
    "pages": ("page", "pages"),
    "cards": ("card", "cards"),
    "bundles": ("bundle", "bundles"),
    "pictures": ("picture", "pictures"),
    "theme": ("theme file", "theme files"),
    "texts": ("text", "texts"),
    "for programs": ("file for programs", "files for programs"),
}
"""Kind -> one of it, several of it."""


@dataclass(frozen=True)
class _Told:
    what: str
    change: Change


def change_lines(changes: Changes, same: int, width: int) -> list[str]:
    """Lines of at most `width` columns, but for a path that is longer. same: files that are as they were."""
    told = [
        _Told(what, change)
        for what, listed in ((_CHANGED, changes.changed), (_NEW, changes.added), (_GONE, changes.removed))
        for change in listed
    ]
    of_recipes = [each for each in told if each.change.recipe]
    in_common = [each for each in told if not each.change.recipe]
    lines = []
    for causes, group in _grouped(of_recipes):
        lines += _wrapped(causes, 2, width)
        lines += _wrapped(f"{_recipes(group)}: {_counts(group)}", 6, width)
    if in_common:
        if not of_recipes:
            lines += _wrapped(_joined(in_common[0].change.why), 2, width)
        lines += _wrapped(f"The site's own pages, lists and files: {_counts(in_common)}", 2, width)
    return [*lines, *_wrapped(f"As before: {counted(same, 'file')}", 2, width)]


def _grouped(told: Sequence[_Told]) -> Iterator[tuple[str, Sequence[_Told]]]:
    """(causes in words, what they changed), the greatest first; of too many, the sorts of causes."""
    groups = _by(told, lambda each: each.change.why)
    if len(groups) <= _GROUPS:
        for why, group in groups:
            yield _joined(why), group
        return
    sorts = _by(told, lambda each: tuple(sorted({_sort(name) for name in each.change.why})))
    for sort, group in sorts[:_GROUPS]:
        names = Counter(_sort(name) for name in {name for each in group for name in each.change.why})
        yield ", ".join(f"{names[each]:,} {each}" if each in _SORTS else each for each in sort), group
    rest = [each for _, group in sorts[_GROUPS:] for each in group]
    if rest:
        yield counted(len(sorts) - _GROUPS, "more set of causes", "more sets of causes"), rest


def _by(
    told: Iterable[_Told], key: Callable[[_Told], tuple[str, ...]]
) -> list[tuple[tuple[str, ...], list[_Told]]]:
    found: dict[tuple[str, ...], list[_Told]] = {}
    for each in told:
        found.setdefault(key(each), []).append(each)
    return sorted(found.items(), key=lambda row: (-len(row[1]), row[0]))


_SORTS = ("recipe files", "files beside recipes", "release days")


def _sort(name: str) -> str:
    """The sort of input that a cause is; one that concerns all recipes is its own."""
    if recipe_of(name) is None:
        return _in_words(name)
    if not name.startswith("content/"):
        return "release days"
    return "recipe files" if name.endswith("/recipe.yaml") else "files beside recipes"


def _joined(why: Sequence[str]) -> str:
    return ", ".join(map(_in_words, why)) or "no file of their own: what they show of others"


def _in_words(name: str) -> str:
    return "the program or its libraries" if name == "sitegen" else name


def _recipes(group: Iterable[_Told]) -> str:
    """'bay', 'bay, rose and thyme', '12 recipes, such as bay and rose'."""
    slugs = sorted({each.change.recipe for each in group})
    if len(slugs) > _NAMED:
        return f"{len(slugs):,} recipes, such as {slugs[0]} and {slugs[1]}"
    return ", ".join(slugs[:-1]) + f" and {slugs[-1]}" if len(slugs) > 1 else slugs[0]


def _counts(group: Sequence[_Told]) -> str:
    """'8 pages, 2 cards changed; 1 picture new'."""
    found = Counter((each.what, kind_of(each.change.path)) for each in group)
    parts = []
    for what in (_CHANGED, _NEW, _GONE):
        kinds = [counted(found[what, kind], *_NOUNS[kind]) for kind in KINDS if found[what, kind]]
        if kinds:
            parts.append(f"{', '.join(kinds)} {what}")
    return "; ".join(parts)


def _wrapped(text: str, indent: int, width: int) -> list[str]:
    left = " " * indent
    return wrap(
        text,
        width,
        initial_indent=left,
        subsequent_indent=left + "  ",
        break_long_words=False,
        break_on_hyphens=False,
    )
