"""`content/site.yaml` -> School."""

from collections.abc import Collection, Iterator, Sequence
from difflib import get_close_matches
from zoneinfo import available_timezones

from sitegen.faults import Fault, FaultCode, Severity
from sitegen.kitchen.tables import Tables
from sitegen.source.models import SiteFile
from sitegen.source.nodes import Path
from sitegen.source.reader import Document
from sitegen.source.school import School
from sitegen.source.shapes import shaped

UNKNOWN_EDITION = FaultCode(
    "unknown-edition",
    Severity.ERROR,
    "The site names an edition that has no row in the table of editions.",
    "Use a known edition, or add a row.",
    good="written-in: british-metric",
    bad="written-in: british-metrik",
    file="site.yaml",
)
UNKNOWN_TIME_ZONE = FaultCode(
    "unknown-time-zone",
    Severity.ERROR,
    "The time zone has no entry in the IANA database, so that nobody knows when a release day begins.",
    "Write it as Europe/London.",
    good="time-zone: Europe/London",
    bad="time-zone: Europe/Londn",
    file="site.yaml",
)
UNKNOWN_EGG_SIZE = FaultCode(
    "unknown-egg-size",
    Severity.ERROR,
    "The region of the recipes' edition does not grade eggs by this size.",
    "Use one of the region's sizes.",
    good="egg-size: medium",
    bad="egg-size: middling",
    file="site.yaml",
)
LISTED_TWICE = FaultCode(
    "listed-twice",
    Severity.ERROR,
    "The same word stands twice in a list where each may stand once.",
    "Delete one of them.",
    good="papers: [a4, letter]",
    bad="papers: [a4, letter, a4]",
    file="site.yaml",
)

CODES = (UNKNOWN_EDITION, UNKNOWN_TIME_ZONE, UNKNOWN_EGG_SIZE, LISTED_TWICE)


def school_from(document: Document, tables: Tables) -> tuple[School | None, tuple[Fault, ...]]:
    """The school; None with every fault of the file where it cannot be told."""
    file, faults = shaped(document, SiteFile)
    if file is None:
        return None, faults
    found = (*faults, *_site_faults(document, file, tables))
    return (None if found else _school(file)), found


def _school(file: SiteFile) -> School:
    return School(
        name=file.name,
        tagline=file.tagline,
        address=_with_slash(file.address),
        subscribers_address=_with_slash(file.subscribers_address),
        language=file.language,
        written_in=file.written_in,
        egg_size=file.egg_size,
        editions=tuple(file.editions),
        papers=tuple(file.papers),
        theme=file.theme,
        time_zone=file.time_zone,
        about=file.about or "",
        copyright=file.copyright or "",
    )


def _with_slash(address: str) -> str:
    return address if address.endswith("/") else f"{address}/"


def _site_faults(document: Document, file: SiteFile, tables: Tables) -> Iterator[Fault]:
    editions = tables.editions
    yield from _unknown(UNKNOWN_EDITION, document, ("written-in",), file.written_in, editions)
    for index, key in enumerate(file.editions):
        yield from _unknown(UNKNOWN_EDITION, document, ("editions", index), key, editions)
    yield from _unknown(UNKNOWN_TIME_ZONE, document, ("time-zone",), file.time_zone, available_timezones())
    if file.written_in in editions:
        sizes = tables.eggs.sizes(editions[file.written_in].egg_region)
        yield from _unknown(UNKNOWN_EGG_SIZE, document, ("egg-size",), file.egg_size, sizes)
    yield from _twice(document, "editions", file.editions)
    yield from _twice(document, "papers", file.papers)


def _unknown(
    code: FaultCode, document: Document, path: Path, word: str, known: Collection[str]
) -> Iterator[Fault]:
    if word in known:
        return
    near = get_close_matches(word, known, n=1, cutoff=0.6)
    listed = f"known here: {', '.join(sorted(known))}" if len(known) <= 12 else code.cure
    way_out = f"did you mean '{near[0]}'?" if near else listed
    yield code.fault(document.place(path), f"'{word}' is not known", way_out)


def _twice(document: Document, key: str, words: Sequence[str]) -> Iterator[Fault]:
    for index, word in enumerate(words):
        if word in words[:index]:
            yield LISTED_TWICE.fault(document.place((key, index)), f"'{word}' stands here twice")
