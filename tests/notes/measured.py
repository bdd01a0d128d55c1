"""How much of the written notes became what a baker would have written: against `written_truth.yaml`."""

from collections import Counter
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import yaml

from sitegen.kitchen.amounts import NOWHERE
from sitegen.kitchen.recipe import IngredientLine, Line
from sitegen.notes.proofing import proofed
from sitegen.notes.reading import draft_of
from sitegen.notes.values import Fate
from sitegen.source.lines import read_line
from sitegen.source.misread import Misread
from sitegen.source.nodes import Data
from sitegen.source.reader import parse_document
from tests.notes.drafts import FOLDER, LORE

HERE = Path(__file__).parent
WRITTEN = HERE / "written"
TRUTH: dict[str, Any] = yaml.load(
    (HERE / "written_truth.yaml").read_text(encoding="utf-8"), Loader=yaml.BaseLoader
)
FACTS = ("title", "makes", "tin")


@dataclass(frozen=True)
class Measured:
    """Pairs are (right, wanted). lines: of the notes understood. errors: of a proof, missing keys among them.

    ingredients: with their amounts. placed: in the right component too. times: ovens and waits in order.
    """

    name: str
    since: str
    lines: tuple[int, int]
    ingredients: tuple[int, int]
    placed: tuple[int, int]
    facts: tuple[int, int]
    times: tuple[int, int]
    errors: int
    invented: int


def measured(name: str) -> Measured:
    """One of the written notes."""
    truth = TRUTH[name]
    text = (WRITTEN / name).read_text(encoding="utf-8")
    draft, _ = draft_of(text, name, name, LORE)
    assert draft is not None
    document, _ = parse_document(draft.text, name)
    assert document is not None
    data = document.data
    assert isinstance(data, dict)
    parts = _mapping(data.get("components"))
    found = [(title, _key(line)) for title, part in parts.items() for line in _texts(part, "ingredients")]
    wanted = [(title, _key(line)) for title, lines in truth["components"].items() for line in lines]
    is_one = len(truth["components"]) == 1
    steps = [step for part in parts.values() for step in _items(_mapping(part).get("method"))]
    times = [*_values(steps, "oven"), *_values(steps, "wait")]
    right_lines = _common((line for _, line in found), (line for _, line in wanted))
    right_places = right_lines if is_one else _common(found, wanted)
    right_facts = sum(_same_fact(key, str(data.get(key, "")), truth[key]) for key in FACTS if key in truth)
    return Measured(
        name=name,
        since=truth["since"],
        lines=(sum(one.fate is Fate.TAKEN for one in draft.fates), len(draft.fates)),
        ingredients=(right_lines, len(wanted)),
        placed=(right_places, len(wanted)),
        facts=(right_facts, sum(key in truth for key in FACTS)),
        times=(_common(times, [*truth["ovens"], *truth["waits"]]), len(truth["ovens"]) + len(truth["waits"])),
        errors=len(proofed(draft.text, "recipe.yaml", FOLDER, LORE).errors),
        invented=len(found) - right_lines,
    )


def _key(text: str) -> tuple[object, ...]:
    """What a line says: its amount, and what of; not how it is prepared."""
    line: Line
    try:
        line = read_line(text, NOWHERE, LORE.context)
    except Misread:
        return (text,)
    if not isinstance(line, IngredientLine):
        return (line.amount, line.source)
    return (line.amount, line.chosen.ingredient, line.chosen.size, line.chosen.part)


def _common(found: Iterable[object], wanted: Iterable[object]) -> int:
    return sum((Counter(found) & Counter(wanted)).values())


def _same_fact(key: str, found: str, wanted: str) -> bool:
    if key == "makes":
        return found.split()[:1] == wanted.split()[:1] and bool(found)
    return found.casefold().startswith(wanted.casefold())


def _mapping(value: Data) -> dict[str, Data]:
    return value if isinstance(value, dict) else {}


def _items(value: Data) -> list[dict[str, Data]]:
    return [_mapping(one) for one in value] if isinstance(value, list) else []


def _texts(part: Data, key: str) -> Iterator[str]:
    value = _mapping(part).get(key)
    yield from (one for one in value if isinstance(one, str)) if isinstance(value, list) else ()


def _values(steps: Iterable[dict[str, Data]], key: str) -> list[str]:
    return [str(step[key]) for step in steps if key in step]
