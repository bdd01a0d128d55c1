"""Whatever stops a build is told in a baker's words, at a place that he knows."""

import errno
import os
from pathlib import Path

import pytest
from jinja2 import TemplateNotFound, TemplateSyntaxError, UndefinedError

from sitegen.press.picture import PictureUnreadable
from sitegen.press.tokens import ThemeUnusable
from sitegen.release.cache import NotKept
from sitegen.release.card_work import CardFailed
from sitegen.release.cluster import ClusterUnusable
from sitegen.release.failures import FAILURES, Failure, faults_of
from sitegen.release.leaks import Leak, Leaked
from sitegen.release.lock import AnotherBuildRuns
from sitegen.release.photo_work import ChangedMeanwhile
from sitegen.release.workers import WorkerDied

ROOT = Path("/bakery")
PHOTO = "content/recipes/bay/whisk.jpg"


def system(number: int, path: str) -> OSError:
    return OSError(number, os.strerror(number), path)


ROWS: list[tuple[Failure, str, str, str]] = [
    (
        system(errno.ENOSPC, "/bakery/.sitegen/next/a.html"),
        "cannot-write",
        ".sitegen/next/a.html",
        "disk is full",
    ),
    (system(errno.EACCES, "/bakery/output"), "cannot-write", "output", "rights do not allow"),
    (system(errno.EROFS, "/elsewhere/output"), "cannot-write", "/elsewhere/output", "read-only"),
    (OSError(errno.EIO, "Input/output error"), "cannot-write", "output", "Input/output error"),
    (system(errno.ENOENT, f"/bakery/{PHOTO}"), "cannot-read", PHOTO, "not there"),
    (AnotherBuildRuns(), "another-build", "output", "another build"),
    (
        ClusterUnusable("tcp://10.0.0.7:8786", "it has no workers", "start some"),
        "cluster-unusable",
        "output",
        "tcp://10.0.0.7:8786 cannot do the work: it has no workers",
    ),
    (WorkerDied(), "worker-died", "output", "ended from outside"),
    (NotKept("key"), "changed-meanwhile", ".sitegen", "cache"),
    (ChangedMeanwhile(PHOTO), "changed-meanwhile", PHOTO, "saved while"),
    (PictureUnreadable(PHOTO, "the file is cut short"), "picture-unprintable", PHOTO, "cut short"),
    (
        CardFailed("bay", "us-cups", "a4", "AssertionError: box"),
        "card-failed",
        "content/recipes/bay/recipe.yaml",
        "us-cups, a4",
    ),
    (
        Leaked((Leak("feed.xml", "bay", "'whisk until smooth'"),)),
        "leak",
        "output/public/feed.xml",
        "'whisk until smooth' of 'bay', only for subscribers",
    ),
    (TemplateNotFound("step.html"), "theme-unusable", "themes", "no template 'step.html'"),
    (TemplateSyntaxError("unexpected '}'", 7, "step.html"), "theme-unusable", "themes", "line 7"),
    (UndefinedError("'flour' is undefined"), "theme-unusable", "themes", "'flour' is undefined"),
    (ThemeUnusable(ROOT / "themes/hemp", ("a.css is missing",)), "theme-unusable", "themes/hemp", "a.css"),
]


@pytest.mark.parametrize(("problem", "code", "file", "words"), ROWS)
def test_a_failure_is_a_fault_with_a_place(problem: Failure, code: str, file: str, words: str) -> None:
    (fault,) = faults_of(problem, ROOT)
    assert (fault.code, fault.place.file) == (code, file)
    assert words in fault.sentence


def test_every_failure_that_is_caught_has_a_row_here() -> None:
    assert {kind for kind in FAILURES if any(isinstance(row[0], kind) for row in ROWS)} == set(FAILURES)
