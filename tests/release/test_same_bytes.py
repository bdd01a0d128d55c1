"""The same content gives the same bytes in every file, whatever else is different where it is built.

Each row differs in all that it names from where the fixture `done` was built; together they try everything.
Rules for `SOURCE_DATE_EPOCH`: reproducible-builds.org, 'SOURCE_DATE_EPOCH'.
"""

import os
import random
import shutil
import subprocess
import sys
from collections.abc import Sequence
from dataclasses import dataclass
from datetime import UTC, datetime
from pathlib import Path

import pytest

from tests.release.conftest import Done
from tests.release.kills import PROJECT, forget_some
from tests.release.small_school import SUMMER, tree_hashes

OTHERWISE = """
import os, time

def turned(listed):
    def in_turned_order(*where):
        return sorted(listed(*where), reverse=True)
    return in_turned_order

class Scanned:
    def __init__(self, entries):
        self.entries = iter(sorted(entries, key=lambda entry: entry.name, reverse=True))
    def __iter__(self):
        return self
    def __next__(self):
        return next(self.entries)
    def __enter__(self):
        return self
    def __exit__(self, *_):
        pass
    def close(self):
        pass

scan, clock = os.scandir, time.time
os.listdir = turned(os.listdir)
os.scandir = lambda *where: Scanned(scan(*where))
time.time = lambda: clock() + 400 * 24 * 60 * 60
"""
"""What every process of a build runs first: folders are listed backwards, and the clock is a year ahead."""


@dataclass(frozen=True)
class Elsewhere:
    """One place in which the school is built. day: what tells it.

    otherwise: what each process runs first. inside: one stands in the school's folder. kept: most of the
    cache is there before.
    """

    name: str
    environment: dict[str, str]
    day: tuple[str, ...]
    arguments: tuple[str, ...]
    python: tuple[str, ...] = ()
    locale: str = "C"
    umask: int = 0o022
    otherwise: str = ""
    inside: bool = True
    kept: bool = False


def moment(text: str) -> str:
    """Seconds since 1970, as SOURCE_DATE_EPOCH tells them."""
    return str(int(datetime.fromisoformat(text).replace(tzinfo=UTC).timestamp()))


BY_NAME = ("--on", SUMMER.isoformat())
PLACES = [
    Elsewhere(
        "a year later, east of all",
        {
            "TZ": "Pacific/Kiritimati",
            "PYTHONHASHSEED": "1",
            "SOURCE_DATE_EPOCH": moment("2031-01-31T23:59:59"),
        },
        BY_NAME,
        ("--jobs", "2"),
        locale="tr_TR",
        umask=0o077,
        otherwise=OTHERWISE,
    ),
    Elsewhere(
        "the day by the moment, west of most, without asserts",
        # 23:30 UTC is half past midnight at the school's in London
        {"TZ": "America/St_Johns", "PYTHONHASHSEED": "2", "SOURCE_DATE_EPOCH": moment("2026-07-14T23:30:00")},
        (),
        ("--jobs", "3"),
        python=("-O",),
        inside=False,
        kept=True,
    ),
    Elsewhere(
        "one process, some of it kept",
        {"TZ": "UTC", "PYTHONHASHSEED": "random"},
        BY_NAME,
        ("--jobs", "1"),
        locale="de_DE",
        umask=0o002,
        kept=True,
    ),
]


@pytest.mark.parametrize("place", PLACES, ids=[place.name for place in PLACES])
def test_the_same_content_gives_the_same_bytes(done: Done, tmp_path: Path, place: Elsewhere) -> None:
    root = tmp_path / "another folder"
    copy_otherwise(done.root / "content", root / "content")
    if place.kept:
        shutil.copytree(done.root / ".sitegen", root / ".sitegen")
        forget_some(root / ".sitegen" / "cache", random.Random(place.name))
    ran = published(root, place, tmp_path)
    assert ran.returncode == 0, ran.stderr
    assert differing(root / "output", done.output) == []


def differing(one: Path, other: Path) -> list[str]:
    """Paths of which the two folders do not hold the same bytes."""
    ours, theirs = tree_hashes(one), tree_hashes(other)
    return sorted(path for path in ours.keys() | theirs.keys() if ours.get(path) != theirs.get(path))


def copy_otherwise(content: Path, copy: Path) -> None:
    """The same files, made in another order and long ago."""
    for file in sorted((path for path in content.rglob("*") if path.is_file()), reverse=True):
        place = copy / file.relative_to(content)
        place.parent.mkdir(parents=True, exist_ok=True)
        place.write_bytes(file.read_bytes())
        os.utime(place, (10**9, 10**9))


def published(root: Path, place: Elsewhere, scratch: Path) -> "subprocess.CompletedProcess[str]":
    first = scratch / "first"
    first.mkdir()
    (first / "sitecustomize.py").write_text(place.otherwise)
    where: Sequence[str] = () if place.inside else ("--root", os.path.relpath(root, scratch))
    return subprocess.run(
        [sys.executable, *place.python, "-m", "sitegen", "publish", *place.day, *place.arguments, *where],
        cwd=root if place.inside else scratch,
        umask=place.umask,
        capture_output=True,
        text=True,
        check=False,
        env={
            **os.environ,
            "PYTHONPATH": f"{first}:{PROJECT}",
            **place.environment,
            **locale_of(place.locale, scratch),
        },
    )


def locale_of(name: str, scratch: Path) -> dict[str, str]:
    """The variables that choose a locale, which is made here of the machine's sources of locales."""
    if name == "C":
        return {"LC_ALL": "C", "LANG": "C"}
    made = f"{name}.UTF-8"
    ran = subprocess.run(
        ["localedef", "-i", name, "-f", "UTF-8", str(scratch / made)], capture_output=True, check=False
    )
    if not (scratch / made / "LC_CTYPE").exists():
        pytest.skip(f"this machine has no sources of locales: {ran.stderr.decode()}")
    return {"LC_ALL": made, "LANG": made, "LOCPATH": str(scratch)}
