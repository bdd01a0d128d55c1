"""The whole trip: a folder is read, proofed, printed, and its new output swapped in at once.

The steps bear the numbers of `steps.py`. Whatever goes wrong before the last one leaves the old
output as it is.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import date, datetime
from hashlib import sha256
from pathlib import Path

from sitegen import __version__
from sitegen.faults import Fault
from sitegen.press.leaf import Tree
from sitegen.press.theme import load_theme
from sitegen.press.theme_folder import find_theme, lineage
from sitegen.release import swap
from sitegen.release.cache import Cache, makers_hash, program_hash
from sitegen.release.days import school_day, standing
from sitegen.release.failures import FAILURES, faults_of
from sitegen.release.lock import only_build
from sitegen.release.outputs import Build, Output, all_outputs, offline_workers
from sitegen.release.print_room import CutPhotos, PrintRoom
from sitegen.release.proof import Proof, proof
from sitegen.release.report import (
    BuiltFile,
    Report,
    changes_since,
    file_hashes,
    last_report,
    release_input,
)
from sitegen.release.sheets import RecipeSheets, SheetSetter
from sitegen.release.sites import (
    Site,
    public_site,
    site_imprint,
    subscribers_site,
    technique_photos,
    text_briefs,
    tutorial_entries,
    word_rules,
)
from sitegen.release.steps import Progress, Step
from sitegen.release.workers import Workers
from sitegen.source.prices import PRICE_LIST
from sitegen.source.school import Content, School

WORKSHOP = ".sitegen"
OUTPUT = "output"
REPORT = "report.json"


@dataclass(frozen=True)
class Order:
    """What is asked of a build.

    now: the moment, aware of its zone; its date in the school's zone is the day. on: another day instead.
    jobs: processes to print with, at least 1.
    """

    now: datetime
    on: date | None = None
    jobs: int = 1


@dataclass(frozen=True)
class Published:
    """A build that was swapped in: its report, and the proof with what advice it gave."""

    report: Report
    proof: Proof


class Refused(Exception):
    """Nothing was swapped in. faults: why; texts: file -> lines, to show them."""

    def __init__(self, faults: Sequence[Fault], texts: Mapping[str, tuple[str, ...]]) -> None:
        super().__init__(faults)
        self.faults = tuple(faults)
        self.texts = texts


def publish(root: Path, order: Order, progress: Progress) -> Published:
    """Build `root/output/` anew. Raises Refused, with the old output kept, and MachineLacks."""
    root = root.resolve()
    try:
        with only_build(root / WORKSHOP), Workers(order.jobs) as workers:
            cache = Cache(root / WORKSHOP / "cache", makers_hash())
            return _published(PrintRoom(root, cache, workers, progress), order)
    except FAILURES as problem:
        raise Refused(faults_of(problem, root), {}) from problem


def _published(room: PrintRoom, order: Order) -> Published:
    root, progress = room.root, room.progress
    progress.begin(Step.READ, 0)
    room.make_ready()
    swap.finish_arrival(root / OUTPUT)
    proofed = proof(root)
    school, setter = proofed.content.school, proofed.setter
    if proofed.errors or school is None or setter is None:
        raise Refused(proofed.faults, proofed.content.texts)
    day = order.on or school_day(order.now, school.time_zone)
    sheets = _all_sheets(proofed.content, setter, progress)
    build = _printed(room, _sites(root, proofed.content, school, sheets, day), sheets)
    inputs = _inputs(root, school, sheets, day) | {"sitegen": program_hash()}
    report = _swapped_in(root, build, inputs, day, progress)
    build.cache.forget_unused()
    return Published(report, proofed)


def _all_sheets(content: Content, setter: SheetSetter, progress: Progress) -> tuple[RecipeSheets, ...]:
    progress.begin(Step.SHEETS, len(content.recipes))
    sheets = []
    for recipe in content.recipes:
        sheets.append(setter.all_sheets(recipe))
        progress.advance()
    return tuple(sheets)


@dataclass(frozen=True)
class _Sites:
    public: Site
    subscribers: Site
    school: School


def _sites(root: Path, content: Content, school: School, sheets: Sequence[RecipeSheets], day: date) -> _Sites:
    in_common = Site(
        tree=Tree.PUBLIC,
        imprint=site_imprint(school),
        theme=load_theme(find_theme(root, school.theme)),
        recipes=(),
        tutorials=tutorial_entries(content.tutorials),
        word_rules=word_rules(content.tables),
        technique_photos=technique_photos(content.tutorials),
    )
    public = public_site(school, sheets, day, in_common)
    return _Sites(public, subscribers_site(school, sheets, day, in_common), school)


def _printed(room: PrintRoom, sites: _Sites, sheets: Sequence[RecipeSheets]) -> Build:
    """Cut fonts and photos and print every card, so that what is left is text."""
    shown = dict.fromkeys([*sites.public.photos(), *sites.subscribers.photos()])
    photos = room.cut(list(shown), sites.subscribers)
    return Build(
        public=_with_pictures(sites.public, photos),
        subscribers=_with_pictures(sites.subscribers, photos),
        texts=text_briefs(sites.school, sheets),
        theme_files=photos.theme_files,
        pictures=photos.files,
        cards=room.cards(sites.subscribers, photos),
        cache=room.cache,
    )


def _with_pictures(site: Site, photos: CutPhotos) -> Site:
    """The site with those pictures that it may show, and no others."""
    return replace(site, pictures={file: photos.pictures[file] for file in site.photos()})


def _swapped_in(root: Path, build: Build, inputs: Mapping[str, str], day: date, progress: Progress) -> Report:
    """Write the new output beside the old one, then let it take its place."""
    stage = swap.fresh_stage(root / WORKSHOP)
    files = _written(stage, build, progress)
    changes = changes_since(last_report(root / OUTPUT), files, inputs)
    report = Report(on=day.isoformat(), sitegen=__version__, changes=changes, files=files, inputs=inputs)
    (stage / REPORT).write_text(report.as_json(), encoding="utf-8")
    progress.begin(Step.SWAP, 0)
    swap.appear(stage, root / OUTPUT)
    return report


def _written(stage: Path, build: Build, progress: Progress) -> dict[str, BuiltFile]:
    """Each output as a file. Returns path below `output/` -> what it is, sorted by path."""
    outputs = all_outputs(build)
    progress.begin(Step.PAGES, len(outputs))
    for tree in Tree:
        (stage / tree).mkdir()
    files = {}
    for output in outputs:
        files[_place(output)] = _file_written(stage, output)
        progress.advance()
    for output in offline_workers(build, {place: file.sha256 for place, file in files.items()}):
        files[_place(output)] = _file_written(stage, output)
    return dict(sorted(files.items()))


def _file_written(stage: Path, output: Output) -> BuiltFile:
    body = output.body()
    path = stage / _place(output)
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_bytes(body)
    return BuiltFile(size=len(body), sha256=sha256(body).hexdigest(), about=output.about)


def _place(output: Output) -> str:
    """Its path below `output/`."""
    return f"{output.tree}/{output.path}"


def _inputs(root: Path, school: School, sheets: Sequence[RecipeSheets], day: date) -> dict[str, str]:
    """Everything that the output depends on: files, and each recipe's standing on the day."""
    themes = lineage(find_theme(root, school.theme))
    standings = {release_input(each.recipe.slug): standing(each.recipe.release, day) for each in sheets}
    told = {name: _standing_text(each.subscribers, each.public) for name, each in standings.items()}
    files = file_hashes(root, [root / "content", *themes])
    return {name: digest for name, digest in files.items() if not _is_kitchens_own(name)} | told


def _is_kitchens_own(file: str) -> bool:
    """Whether nothing that is built depends on a file: what the school pays, and its orders."""
    return file == f"content/{PRICE_LIST}" or file.startswith("content/orders/")


def _standing_text(subscribers: bool, public: str | None) -> str:
    """'subscribers', 'subscribers, everyone: teaser', or 'nobody'."""
    if not subscribers:
        return "nobody"
    return f"subscribers, everyone: {public}" if public else "subscribers"
