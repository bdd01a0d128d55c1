"""A build of what has not changed since the last: known by the hashes of all that goes in."""

import json
from collections.abc import Mapping
from dataclasses import dataclass

from pydantic import TypeAdapter

from sitegen.faults import Fault
from sitegen.kitchen.recipe import Release
from sitegen.release.cache import Cache, program_hash


@dataclass(frozen=True)
class LastSchool:
    """What must be known of a school to tell how it stands on a day, and what its proof said.

    releases: slug -> its days.
    """

    theme: str
    time_zone: str
    releases: Mapping[str, Release]
    faults: tuple[Fault, ...]


_LAST = TypeAdapter(LastSchool)


def school_key(cache: Cache, digests: Mapping[str, str]) -> str:
    """digests: file -> hash, of all of `content/`."""
    return cache.key("school", program_hash(), json.dumps(digests))


def keep_school(cache: Cache, key: str, school: LastSchool) -> None:
    cache.put(key, _LAST.dump_json(school))


def kept_school(cache: Cache, key: str) -> LastSchool | None:
    """The school that these files made, if it was published from them before."""
    body = cache.get(key)
    return None if body is None else _LAST.validate_json(body)
