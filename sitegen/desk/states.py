"""The bench as the desk's page shows it: every sentence and every count of it is made here."""

from collections.abc import Iterator, Sequence
from datetime import date
from itertools import chain

from sitegen.desk.bench import Bench, RecipeState
from sitegen.desk.dressing import Band
from sitegen.desk.shown_faults import shown_faults
from sitegen.desk.values import Desk, DeskRow, PageLink, ReleaseRow, Stands
from sitegen.faults import Fault, Severity
from sitegen.kitchen.recipe import PublicShows
from sitegen.press.addresses import INDEX, recipe_page
from sitegen.press.leaf import Tree
from sitegen.release.calendar import Pictures, pictures_of
from sitegen.release.causes import recipe_of
from sitegen.release.days import is_draft
from sitegen.release.marked_lines import printable
from sitegen.release.proof import all_faults
from sitegen.release.tally import counted, tally
from sitegen.sheet.days import day_text
from sitegen.source.checks.film import CODES as FILM_CODES
from sitegen.source.headings import Heading

_SEES = {
    PublicShows.TEASER: "a teaser",
    PublicShows.INGREDIENTS: "the ingredients",
    PublicShows.EVERYTHING: "everything",
}
_NEVER = "Never published."
_FILM = frozenset(code.code for code in FILM_CODES)
_TEXTS = {"video-description": "Video description", "subscriber-post": "Subscribers’ post"}
_NAMED = 4
"""Changed files that are named one by one."""


def desk_of(bench: Bench) -> Desk:
    """All that the desk shows of what was read so far."""
    headings = {heading.slug: heading for heading in bench.headings}
    states = bench.states.values()
    of_recipes = list(chain.from_iterable(state.parcel.faults for state in states))
    idle = list(chain.from_iterable(state.parcel.idle for state in states))
    faults = all_faults([*bench.own, *bench.kitchen, *of_recipes], idle)
    by_slug: dict[str, list[Fault]] = {slug: [] for slug in bench.slugs}
    common: list[Fault] = []
    for fault in faults:
        by_slug.get(recipe_of(fault.place.file) or "", common).append(fault)
    rows = [_row(bench, slug, headings.get(slug), by_slug[slug]) for slug in bench.slugs]
    return Desk(
        school=bench.school.name if bench.school else "",
        day=_day(bench, bench.day),
        told=f"{counted(len(rows), 'recipe')}: {_tally(faults)}",
        rows=tuple(sorted(rows, key=lambda row: (row.title.casefold(), row.slug))),
        faults=shown_faults(common, bench.content.texts),
        fronts=_fronts(bench),
        published=_last_published(bench),
        still=_still(bench),
    )


def band_of(bench: Bench, tree: Tree, slug: str) -> Band:
    """What the band of a live page says. slug: of the recipe whose page it is, '' for any other."""
    whose = {Tree.PUBLIC: "As everyone sees it", Tree.SUBSCRIBERS: "As subscribers see it"}.get(tree, "Text")
    seen = f"{whose} on {_day(bench, bench.day)}"
    heading = next((heading for heading in bench.headings if heading.slug == slug), None)
    if heading is None:
        return Band(seen)
    if is_draft(heading.release):
        return Band(seen, "Draft: no day publishes it")
    links = tuple((title, f"{Tree.TEXTS}/{slug}/{name}.txt") for name, title in _TEXTS.items())
    return Band(seen, _not_out(bench, tree, heading), links)


def _not_out(bench: Bench, tree: Tree, heading: Heading) -> str:
    """That an audience has nothing of a recipe on the day; '' where it has."""
    release = heading.release
    if bench.is_out(heading.slug, tree):
        return ""
    day = release.public if tree is Tree.PUBLIC else release.subscribers or release.public
    return f"Not out yet: from {_day(bench, day)}" if day else "Not out: no day is set for everyone"


def _row(bench: Bench, slug: str, heading: Heading | None, faults: Sequence[Fault]) -> DeskRow:
    state = bench.states.get(slug)
    title = heading.title if heading else _title_written(slug, state)
    if state is None or (heading is None and state.has_pages):
        told = "Waits for content/site.yaml to be mended." if bench.survey is None else "Is being read."
        return DeskRow(slug, title, Stands.READING, told, releases=_releases(bench, heading))
    advice = [fault for fault in faults if fault.severity is Severity.ADVICE]
    texts = bench.content.texts
    changed = bench.since.of_recipes.get(slug, ()) if bench.since else ()
    stands = _stands(bench, slug, state, heading)
    return DeskRow(
        slug=slug,
        title=title,
        stands=stands,
        told=_told(bench, state, stands, heading),
        errors=shown_faults((fault for fault in faults if fault.severity is Severity.ERROR), texts),
        advice=shown_faults((fault for fault in advice if not is_of_film(fault)), texts),
        film=shown_faults(filter(is_of_film, faults), texts),
        lacks=tuple(_lacks(pictures_of(state.recipe))) if state.recipe else (),
        releases=_releases(bench, heading),
        published=_published(bench, slug, stands, changed),
        is_changed=bool(changed) or bench.since is None,
        pages=tuple(_pages(bench, slug)) if state.has_pages else (),
        what_if=f"what-if/{slug}" if state.has_pages else "",
    )


def _title_written(slug: str, state: RecipeState | None) -> str:
    """The title of a file that is no recipe yet, if a line of it has one; else its folder's name."""
    lines = state.texts.get(f"content/recipes/{slug}/recipe.yaml", ()) if state else ()
    written = (line.removeprefix("title:").strip(" '\"") for line in lines if line.startswith("title:"))
    return printable(next(written, "")) or slug


def is_of_film(fault: Fault) -> bool:
    """Whether a fault is what a film says otherwise than the recipe."""
    return fault.code in _FILM


def _stands(bench: Bench, slug: str, state: RecipeState, heading: Heading | None) -> Stands:
    if heading is None or not state.has_pages:
        return Stands.FAULTY
    if is_draft(heading.release):
        return Stands.DRAFT
    return Stands.OUT if bench.standing(slug).is_out else Stands.COMING


def _told(bench: Bench, state: RecipeState, stands: Stands, heading: Heading | None) -> str:
    if stands is Stands.FAULTY:
        own = len(state.errors)
        if own:
            return f"{counted(own, 'error')} to mend before it has a page."
        return "What it draws on, or the school's own files, must be mended before it has a page."
    if stands is Stands.DRAFT:
        return "A draft: no day publishes it."
    rows = _releases(bench, heading)
    out = [f"{row.to} since {row.day}" for row in rows if row.is_past]
    coming = [f"{row.to} from {row.day}" for row in rows if not row.is_past]
    sentence = "; ".join([*out, *coming])
    return f"{sentence[:1].upper()}{sentence[1:]}."


def _releases(bench: Bench, heading: Heading | None) -> tuple[ReleaseRow, ...]:
    if heading is None:
        return ()
    release = heading.release

    def row(to: str, day: date, sees: str) -> ReleaseRow:
        return ReleaseRow(to, _day(bench, day), day.isoformat(), sees, day <= bench.day)

    rows = []
    if release.subscribers is not None:
        rows.append(row("subscribers", release.subscribers, ""))
    if release.public is not None:
        rows.append(row("everyone", release.public, _SEES[release.public_shows]))
    return tuple(rows)


def _lacks(pictures: Pictures) -> Iterator[str]:
    if not pictures.finished:
        yield "no photo of the finished bake"
    if pictures.bare_steps:
        yield f"no photo of {pictures.bare_steps} of {counted(pictures.steps, 'step')}"
    if pictures.film and not pictures.captions:
        yield "no captions of its film"


def _published(bench: Bench, slug: str, stands: Stands, changed: Sequence[str]) -> str:
    if bench.since is None:
        return _NEVER
    if slug not in bench.since.known:
        return "New since the last publish."
    if changed:
        return f"Changed since the last publish: {_listed(changed)}."
    return "A draft is not published." if stands is Stands.DRAFT else "As it was published last."


def _pages(bench: Bench, slug: str) -> Iterator[PageLink]:
    for tree, title in ((Tree.PUBLIC, "for everyone"), (Tree.SUBSCRIBERS, "for subscribers")):
        if bench.states[slug].parcel.listed(tree) is not None:
            note = "" if bench.is_out(slug, tree) else "not out yet"
            yield PageLink(title, f"{tree}/{recipe_page(slug)}", note)


def _fronts(bench: Bench) -> tuple[PageLink, ...]:
    if bench.school is None or bench.theme is None:
        return ()
    return (
        PageLink("The site as everyone sees it", f"{Tree.PUBLIC}/{INDEX}"),
        PageLink("The site as subscribers see it", f"{Tree.SUBSCRIBERS}/{INDEX}"),
    )


def _last_published(bench: Bench) -> str:
    if bench.since is None:
        return _NEVER
    on = _day(bench, date.fromisoformat(bench.since.on))
    told = f"Last published for {on}."
    common = bench.since.in_common
    return f"{told} Changed since for every recipe: {_listed(common)}." if common else told


def _listed(files: Sequence[str]) -> str:
    if len(files) <= _NAMED:
        return ", ".join(files)
    return f"{', '.join(files[:_NAMED])} and {len(files) - _NAMED} more"


def _still(bench: Bench) -> str:
    count = len(bench.pending)
    return f"{counted(count, 'recipe')} still to be read." if count else ""


def _tally(faults: Sequence[Fault]) -> str:
    """How many of each; what films say otherwise is no advice here."""
    others = [fault for fault in faults if not is_of_film(fault)]
    films = len(faults) - len(others)
    on_film = counted(films, "thing said otherwise on film", "things said otherwise on film")
    told = [tally(others)] if others or not films else []
    return ", ".join([*told, on_film] if films else told)


def _day(bench: Bench, day: date) -> str:
    """As the school's own edition writes it."""
    school = bench.school
    return day_text(day, bench.common.tables.editions[school.editions[0]]) if school else day.isoformat()
