"""What can stop a build, each turned into a fault in a baker's words."""

import errno
from pathlib import Path

from jinja2 import TemplateError, TemplateNotFound, TemplateSyntaxError

from sitegen.faults import Fault, Place
from sitegen.press.picture import PictureUnreadable
from sitegen.press.theme_templates import TemplateTooMuch
from sitegen.press.tokens import ThemeUnusable
from sitegen.release import codes
from sitegen.release.cache import NotKept
from sitegen.release.card_work import CardFailed
from sitegen.release.cluster import ClusterUnusable
from sitegen.release.leaks import Leak, Leaked
from sitegen.release.lock import AnotherBuildRuns
from sitegen.release.photo_work import ChangedMeanwhile
from sitegen.release.workers import WorkerDied

Failure = (
    AnotherBuildRuns
    | CardFailed
    | ChangedMeanwhile
    | ClusterUnusable
    | Leaked
    | NotKept
    | OSError
    | PictureUnreadable
    | TemplateError
    | ThemeUnusable
    | WorkerDied
)
FAILURES = (
    AnotherBuildRuns,
    CardFailed,
    ChangedMeanwhile,
    ClusterUnusable,
    Leaked,
    NotKept,
    OSError,
    PictureUnreadable,
    TemplateError,
    ThemeUnusable,
    WorkerDied,
)

OUTPUT_KEPT = "the old output was kept"
PUBLISH_AGAIN = "publish again"
_REASONS = {
    errno.ENOSPC: "the disk is full",
    errno.EDQUOT: "your share of the disk is used up",
    errno.EACCES: "its rights do not allow it",
    errno.EPERM: "its rights do not allow it",
    errno.EROFS: "its disk is read-only",
    errno.ENOENT: "it is not there",
    errno.ENOTDIR: "a file stands where a folder should be",
    errno.EEXIST: "a file stands where a folder should be",
}


def faults_of(problem: Failure, root: Path) -> tuple[Fault, ...]:
    """The faults of one failure. root: the folder that holds `content/`, below which paths are told."""
    output = Place("output")
    match problem:
        case TemplateError():  # before OSError: a template that is not there is both
            return (codes.THEME_UNUSABLE.fault(Place("themes"), _of_template(problem), OUTPUT_KEPT),)
        case OSError():
            return (_system_fault(problem, root),)
        case AnotherBuildRuns():
            sentence = "another build of this folder is running"
            return (codes.ANOTHER_BUILD.fault(output, sentence, "wait until it has ended"),)
        case ClusterUnusable(address=address, reason=reason, way_out=way_out):
            sentence = f"the cluster {address} cannot do the work: {reason}"
            return (codes.CLUSTER_UNUSABLE.fault(output, sentence, way_out),)
        case WorkerDied():
            sentence = "a process that prints was ended from outside, perhaps for want of memory"
            return (codes.WORKER_DIED.fault(output, sentence, "try '--jobs 1'"),)
        case NotKept():
            sentence = "an entry of the cache was removed while the build ran"
            return (codes.CHANGED_MEANWHILE.fault(Place(".sitegen"), sentence, PUBLISH_AGAIN),)
        case ChangedMeanwhile(file=file):
            sentence = "the file was saved while the build ran"
            return (codes.CHANGED_MEANWHILE.fault(Place(file), sentence, PUBLISH_AGAIN),)
        case PictureUnreadable(file=file, reason=reason):
            return (codes.PICTURE_UNPRINTABLE.fault(Place(file), reason, "copy the picture again"),)
        case CardFailed():
            return (_card_fault(problem),)
        case Leaked(leaks=leaks):
            return tuple(map(_leak_fault, leaks))
        case ThemeUnusable(folder=folder, reasons=reasons):
            place = Place(_shown(root, folder))
            return tuple(codes.THEME_UNUSABLE.fault(place, reason) for reason in reasons)


def _of_template(problem: TemplateError) -> str:
    match problem:
        case TemplateNotFound():
            return f"the theme has no template '{problem.name}'"
        case TemplateSyntaxError():
            return f"the template '{problem.name}', line {problem.lineno}, cannot be read: {problem.message}"
        case TemplateTooMuch():
            return f"a template cannot be printed: {problem.message}"
        case _:
            return f"a template asks for what it is not given: {problem.message}"


def _card_fault(problem: CardFailed) -> Fault:
    place = Place(f"content/recipes/{problem.slug}/recipe.yaml")
    sentence = f"the card ({problem.edition}, {problem.paper}) cannot be printed: {problem.reason}"
    return codes.CARD_FAILED.fault(place, sentence, OUTPUT_KEPT)


def _leak_fault(leak: Leak) -> Fault:
    whose = f" of '{leak.slug}', only for subscribers" if leak.slug else ""
    return codes.LEAK.fault(Place(f"output/public/{leak.file}"), f"{leak.what}{whose}")


def _system_fault(problem: OSError, root: Path) -> Fault:
    """The system's refusal: of a file to read below `content/`, of a file to write anywhere else."""
    reason = _REASONS.get(problem.errno or 0, problem.strerror or "the system gives no reason")
    path = Path(str(problem.filename or root / "output"))
    place = Place(_shown(root, path))
    if path.is_relative_to(root / "content"):
        return codes.CANNOT_READ.fault(place, f"it cannot be read: {reason}", OUTPUT_KEPT)
    return codes.CANNOT_WRITE.fault(place, f"it cannot be written: {reason}", OUTPUT_KEPT)


def _shown(root: Path, path: Path) -> str:
    return path.relative_to(root).as_posix() if path.is_relative_to(root) else path.as_posix()
