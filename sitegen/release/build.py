"""The whole trip: a folder is read, proofed, printed, and its new output swapped in at once.

The steps bear the numbers of `steps.py`. Whatever goes wrong before the last one leaves the old
output as it is. No step holds more than one recipe's sheets at a time in any process.
"""

from collections.abc import Callable, Mapping, Sequence
from contextlib import suppress
from dataclasses import dataclass, replace
from datetime import date, datetime
from functools import partial
from pathlib import Path

from sitegen import __version__
from sitegen.faults import Fault, Severity
from sitegen.press.leaf import Tree
from sitegen.press.theme import Theme, load_theme
from sitegen.press.theme_folder import find_theme, lineage
from sitegen.press.tokens import ThemeUnusable
from sitegen.release import swap
from sitegen.release.cache import Cache, NotKept, makers_hash, program_hash
from sitegen.release.causes import release_input
from sitegen.release.cluster import joined
from sitegen.release.commission import Commission, CommissionFile, handed_out
from sitegen.release.days import Standing, school_day, standing
from sitegen.release.failures import FAILURES, faults_of
from sitegen.release.last_look import refuse_leaks
from sitegen.release.lock import only_build
from sitegen.release.outputs import Build, BuiltRecipe, all_outputs, offline_workers
from sitegen.release.parcel import Parcel
from sitegen.release.print_room import CutPhotos, PrintRoom
from sitegen.release.proof import all_faults, is_kitchens_own, proof, texts_of
from sitegen.release.report import Changes, Report, changes_since, file_hashes, last_report
from sitegen.release.sites import Site, imprints, site_of, technique_photos
from sitegen.release.staging import OldOutput, Stage
from sitegen.release.steps import Progress, Step
from sitegen.release.survey import Survey
from sitegen.release.temporary import temporary_files
from sitegen.release.unchanged import LastSchool, keep_school, kept_school, school_key
from sitegen.release.workers import Pool, Workers
from sitegen.source.library import faults_of_headings, read_school

WORKSHOP = ".sitegen"
OUTPUT = "output"
REPORT = "report.json"


@dataclass(frozen=True)
class Order:
    """What is asked of a build.

    now: the moment, aware of its zone; its date in the school's zone is the day. on: another day instead.
    jobs: processes to print with, at least 1. cluster: address of the scheduler of a Dask cluster whose
    workers print instead.
    """

    now: datetime
    on: date | None = None
    jobs: int = 1
    cluster: str | None = None

    def day(self, time_zone: str) -> date:
        """The day that is built for. time_zone: the school's."""
        return self.on or school_day(self.now, time_zone)


@dataclass(frozen=True)
class Published:
    """A build that was swapped in, or found to be there already.

    faults: advice of the proof; texts: file -> lines, to show it.
    """

    report: Report
    faults: tuple[Fault, ...]
    texts: Mapping[str, tuple[str, ...]]


class Refused(Exception):
    """Nothing was swapped in. faults: why; texts: file -> lines, to show them."""

    def __init__(self, faults: Sequence[Fault], texts: Mapping[str, tuple[str, ...]]) -> None:
        super().__init__(faults)
        self.faults = tuple(faults)
        self.texts = texts


def publish(root: Path, order: Order, progress: Progress) -> Published:
    """Build `root/output/` anew.

    Raises Refused, with the old output kept, MachineLacks, and ClusterPackageMissing.
    """
    root = root.resolve()
    workshop = root / WORKSHOP
    try:
        with (
            only_build(workshop),
            temporary_files(workshop) as temporary,
            Workers(order.jobs, temporary, _cluster(order, workshop)) as workers,
        ):
            swap.clear_leftovers(workshop)
            cache = Cache(workshop / "cache", makers_hash())
            cache.clear_parts()
            room = PrintRoom(root, cache, workers, progress)
            with suppress(NotKept):
                return _published(room, order)
            # An entry was damaged, and where one is others may be: what is gone is made anew.
            cache.forget_damaged()
            return _published(room, order)
    except FAILURES as problem:
        raise Refused(faults_of(problem, root), {}) from problem


def _cluster(order: Order, folder: Path) -> Callable[[], Pool] | None:
    """How the order's cluster is joined, once there is work for it. folder: that all its workers see."""
    return None if order.cluster is None else partial(joined, order.cluster, folder)


def _published(room: PrintRoom, order: Order) -> Published:
    root = room.root
    room.progress.begin(Step.READ, 0)
    swap.finish_arrival(root / OUTPUT)
    digests = file_hashes(root, [root / "content"])
    old = OldOutput(root / OUTPUT, last_report(root / OUTPUT))
    return _unchanged(room, order, digests, old) or _built(room, order, digests, old)


def _unchanged(room: PrintRoom, order: Order, digests: Mapping[str, str], old: OldOutput) -> Published | None:
    """The last build once more, if it would come out the same and still lies there whole."""
    root = room.root
    school = kept_school(room.cache, school_key(room.cache, digests))
    if school is None or old.report is None:
        return None
    day = order.day(school.time_zone)
    standings = {slug: standing(release, day) for slug, release in school.releases.items()}
    inputs = _inputs(root, digests, lineage(find_theme(root, school.theme)), standings, day)
    if inputs != old.report.inputs or not old.is_whole():
        return None
    report = old.report.model_copy(update={"on": day.isoformat(), "changes": Changes()})
    swap.replace_file(old.folder / REPORT, report.as_json().encode())
    return Published(report, school.faults, texts_of(root, school.faults))


def _built(room: PrintRoom, order: Order, digests: Mapping[str, str], old: OldOutput) -> Published:
    root, cache = room.root, room.cache
    room.make_ready()
    survey = _surveyed(room, order, digests)
    theme = _theme(root, survey.school.theme)
    with swap.scratch_folder(root / WORKSHOP) as scratch:
        commission = handed_out(_commission(survey, theme, cache), scratch)
        parcels = room.parcels(commission, survey)
        faults = _proofed(room, commission, survey, parcels)
        photos = _cut(room, survey, theme, parcels)
        build = _printed(room, commission, survey, theme, parcels, photos)
    themes = lineage(find_theme(root, survey.school.theme))
    inputs = _inputs(root, digests, themes, survey.standings, survey.day)
    report = _swapped_in(room, build, inputs, survey.day, old)
    keep_school(cache, school_key(cache, digests), _last_school(survey, faults))
    cache.forget_unused()
    return Published(report, faults, texts_of(root, faults))


def _surveyed(room: PrintRoom, order: Order, digests: Mapping[str, str]) -> Survey:
    content, slugs = read_school(room.root)
    school = content.school
    if school is None:
        raise _refused(room.root, proof(room.root).faults)
    headings = room.headings(slugs, digests)
    return Survey(room.root, content, school, slugs, headings, digests, order.day(school.time_zone))


def _theme(root: Path, name: str) -> Theme:
    try:
        return load_theme(find_theme(root, name))
    except ThemeUnusable as problem:
        raise _refused(root, (*proof(root).faults, *faults_of(problem, root))) from problem


def _commission(survey: Survey, theme: Theme, cache: Cache) -> Commission:
    return Commission(
        root=survey.root,
        headings=survey.headings,
        standings=survey.standings,
        digests=survey.digests,
        imprints=imprints(survey.school),
        theme=theme,
        cache=cache,
    )


def _proofed(
    room: PrintRoom, commission: CommissionFile, survey: Survey, parcels: Sequence[Parcel]
) -> tuple[Fault, ...]:
    """The advice of the whole school. Raises Refused where there is an error in it."""
    faults = all_faults(
        [
            *survey.content.faults,
            *faults_of_headings(survey.headings),
            *(fault for parcel in parcels for fault in parcel.faults),
            *room.kitchen_faults(commission, survey),
        ],
        [fault for parcel in parcels for fault in parcel.idle],
    )
    if any(fault.severity is Severity.ERROR for fault in faults):
        raise _refused(room.root, faults)
    return faults


def _refused(root: Path, faults: Sequence[Fault]) -> Refused:
    return Refused(faults, texts_of(root, faults))


def _cut(room: PrintRoom, survey: Survey, theme: Theme, parcels: Sequence[Parcel]) -> CutPhotos:
    """Cut fonts and photos."""
    techniques = technique_photos(survey.content.tutorials)
    listed = (each for parcel in parcels for each in (parcel.public, parcel.subscribers) if each)
    photos = dict.fromkeys(file for each in listed for file in each.photos)
    photos |= dict.fromkeys(file for files in techniques.values() for file in files)
    boxes = dict.fromkeys(box for parcel in parcels for card in parcel.cards for box in card.photos)
    return room.cut(list(photos), list(boxes), survey.digests, theme)


def _printed(
    room: PrintRoom,
    commission: CommissionFile,
    survey: Survey,
    theme: Theme,
    parcels: Sequence[Parcel],
    photos: CutPhotos,
) -> Build:
    """Print every card and make every recipe's pages, so that what is left is what shows the whole school."""
    cards = room.cards(commission, survey, theme, parcels, photos)
    pages = room.pages(commission, survey, theme, parcels)
    recipes = tuple(
        BuiltRecipe(parcel, pages[parcel.slug], tuple((card, cards[card.path]) for card in parcel.cards))
        for parcel in parcels
    )
    return Build(
        public=_site(survey, theme, parcels, photos, Tree.PUBLIC),
        subscribers=_site(survey, theme, parcels, photos, Tree.SUBSCRIBERS),
        recipes=recipes,
        theme_files=photos.theme_files,
        pictures=photos.files,
        bundles=room.bundles(commission, survey, theme, parcels, cards),
        cache=room.cache,
    )


def _site(survey: Survey, theme: Theme, parcels: Sequence[Parcel], photos: CutPhotos, tree: Tree) -> Site:
    """One tree for readers, with those pictures that it may show and no others."""
    listed = (each for parcel in parcels if (each := parcel.listed(tree)))
    site = site_of(survey.content, survey.school, tree, theme, listed)
    return replace(site, pictures={file: photos.pictures[file] for file in site.photos()})


def _swapped_in(
    room: PrintRoom, build: Build, inputs: Mapping[str, str], day: date, old: OldOutput
) -> Report:
    """Write the new output beside the old one, then let it take its place."""
    root = room.root
    room.workers.rest()
    stage = Stage(swap.fresh_stage(root / WORKSHOP), old)
    _fill(stage, build, room.progress)
    refuse_leaks(stage, build)
    files = dict(sorted(stage.files.items()))
    changes = changes_since(old.report, files, inputs)
    report = Report(on=day.isoformat(), sitegen=__version__, changes=changes, files=files, inputs=inputs)
    (stage.folder / REPORT).write_text(report.as_json(), encoding="utf-8")
    room.progress.begin(Step.SWAP, 0)
    swap.appear(stage.folder, root / OUTPUT)
    return report


def _fill(stage: Stage, build: Build, progress: Progress) -> None:
    """Each output as a file below the stage."""
    outputs = all_outputs(build)
    progress.begin(Step.FILES, len(outputs))
    for tree in Tree:
        (stage.folder / tree).mkdir()
    stage.expect(outputs)
    for output in outputs:
        if stage.take(output):
            progress.reuse(1)
        else:
            progress.advance()
    digests = {place: file.sha256 for place, file in stage.files.items()}
    for output in offline_workers(build, digests):
        stage.take(output)


def _inputs(
    root: Path,
    digests: Mapping[str, str],
    themes: Sequence[Path],
    standings: Mapping[str, Standing],
    day: date,
) -> dict[str, str]:
    """Everything that the output depends on: files, how recipes stand on the day, its month, the program."""
    told = {release_input(slug): _standing_text(each) for slug, each in standings.items()}
    files = {**digests, **file_hashes(root, themes)}
    published = {file: digest for file, digest in files.items() if not is_kitchens_own(file)}
    return published | told | {"month": f"{day:%Y-%m}", "sitegen": program_hash()}


def _standing_text(each: Standing) -> str:
    """'subscribers', 'subscribers, everyone: teaser', or 'nobody'."""
    if not each.subscribers:
        return "nobody"
    return f"subscribers, everyone: {each.public}" if each.public else "subscribers"


def _last_school(survey: Survey, faults: tuple[Fault, ...]) -> LastSchool:
    releases = {heading.slug: heading.release for heading in survey.headings}
    return LastSchool(survey.school.theme, survey.school.time_zone, releases, faults)
