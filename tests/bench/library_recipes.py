"""The recipes of a synthetic school: each another one, put together from `library_parts.yaml`."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import date, timedelta
from functools import cache
from pathlib import Path
from random import Random
from string import Template
from typing import Any

import yaml

FIRST_DAY = date(2021, 1, 1)
LAST_DAY = date(2026, 12, 31)
DRAFTS_IN_100 = 3
REVISED_IN_100 = 15
FILMED_IN_100 = 30
_APART = 7919
"""A prime, so that neighbours in number are unlike each other."""

_AS_WRITTEN = ("oven", "fill", "until", "heat", "tools", "tutorial")
"""Keys of a step that are taken over."""

Row = Mapping[str, Any]


@dataclass(frozen=True)
class Draft:
    """A recipe as files. photos: those that it names, the finished one first. captions: of its film."""

    slug: str
    yaml: str
    photos: tuple[str, ...]
    captions: str | None


@cache
def parts() -> Row:
    """The table of which recipes are put together."""
    loaded = yaml.safe_load((Path(__file__).parent / "library_parts.yaml").read_text("utf-8"))
    assert isinstance(loaded, dict)
    return loaded


def recipe(seed: int, number: int) -> Draft:
    """The recipe of a number, from 0; the base recipes have the first. No two have the same title."""
    random = Random(f"{seed}/{number}")
    bases = list(parts()["bases"])
    if number < len(bases):
        return _Recipe(random, bases[number]).base()
    return _Recipe(random, "").bake(seed + (number - len(bases)) * _APART)


def most_recipes() -> int:
    """How many different ones there can be."""
    table = parts()
    counts = [len(table[kind]) for kind in ("flavours", "additions", "bakes", "finishes")]
    return len(table["bases"]) + counts[0] * counts[1] * counts[2] * counts[3]


class _Writer(yaml.SafeDumper):
    """YAML as the program reads it: yes and no, and nothing by reference."""

    def ignore_aliases(self, _data: object) -> bool:
        return True


_Writer.add_representer(
    bool, lambda writer, value: writer.represent_scalar("tag:yaml.org,2002:bool", "yes" if value else "no")
)


class _Recipe:
    """One recipe while it is being written."""

    def __init__(self, random: Random, title: str) -> None:
        self.random = random
        self.title = title
        self.photos: list[str] = []

    def base(self) -> Draft:
        row = parts()["bases"][self.title]
        components = {row["component"]: self._component(row, [])}
        release = {"subscribers": FIRST_DAY, "public": FIRST_DAY, "public-shows": "everything"}
        return self._draft(row, components, ["base recipes"], {"release": release})

    def bake(self, place: int) -> Draft:
        """place: which of all combinations."""
        names = []
        for kind in ("finishes", "bakes", "additions", "flavours"):
            place, at = divmod(place, len(parts()[kind]))
            names.append(list(parts()[kind])[at])
        finish, bake, addition, flavour = names
        self.title = f"{flavour} and {addition} {bake} {finish}"
        row, finishing = parts()["bakes"][bake], parts()["finishes"][finish]
        added = [{"as": "flavour", **parts()["flavours"][flavour]}]
        added.append({"as": "addition", **parts()["additions"][addition]})
        components = {
            row["component"]: self._component(row, added),
            finishing["component"]: self._component(finishing, []),
            "To finish": self._last(row["component"], finishing),
        }
        tags = [row["tag"], flavour.lower(), addition]
        return self._draft(row, components, tags, self._further(flavour))

    def _draft(self, row: Row, components: Row, tags: Sequence[str], further: Row) -> Draft:
        slug = self.title.lower().replace(" ", "-")
        captions = self._captions() if "video" in further else None
        told = {
            "title": self.title,
            "summary": " ".join(self.random.choice(some) for some in parts()["summaries"]),
            **self.random.choice(row["makes"]),
            "tags": list(tags),
            "photo": {"file": "finished.jpg", "alt": f"{self.title}, on a plate by a window"},
            **further,
            "components": components,
        }
        text = yaml.dump(told, Dumper=_Writer, sort_keys=False, allow_unicode=True, width=10_000)
        return Draft(slug, text, ("finished.jpg", *self.photos), captions)

    def _component(self, row: Row, added: Sequence[Row]) -> Row:
        lines, names = [], {}
        for line in (*row["lines"], *added):
            written, names[line["as"]] = self._line(line)
            lines.append(written)
        told = {"kind": row["kind"]} if "kind" in row else {}
        return {**told, "ingredients": lines, "method": list(self._steps(row["steps"], names))}

    def _line(self, line: Row) -> tuple[str, str]:
        """An ingredient line, and how steps refer to it."""
        if "line" in line:
            return line["line"], f"{{{line['named']}}}"
        name = self.random.choice(line["of"])
        low, high = map(int, line["g"].split("-"))
        scale = 10 if low >= 100 else 5  # as bakers write them; what a half batch prints is then near enough
        how = f", {line['how']}" if "how" in line else ""
        return (
            f"{self.random.randrange(low, high + 1, scale)} g {name}{how}",
            f"{{{line.get('named', name)}}}",
        )

    def _steps(self, steps: Sequence[Row], names: Mapping[str, str]) -> Iterator[Row]:
        for step in steps:
            if self.random.randrange(100) < step.get("often", 100):
                yield self._step(step, names)

    def _step(self, step: Row, names: Mapping[str, str]) -> Row:
        told: dict[str, Any] = {"text": Template(self.random.choice(step["text"])).substitute(names)}
        if "hands-on" in step:
            told["hands-on"] = f"{step['hands-on'] + self.random.randrange(3)} min"
        if "wait" in step:
            told["wait"] = self._wait(str(step["wait"]))
        told |= {
            key: step[key] for key in ("oven", "fill", "until", "heat", "tools", "tutorial") if key in step
        }
        if "grows" in step:
            told["grows"] = True
        if "photo" in step and len(self.photos) < 3 and (not self.photos or self.random.randrange(2)):
            self.photos.append(f"step-{len(self.photos) + 1}.jpg")
            told["photo"] = {"file": self.photos[-1], "alt": step["photo"]}
        return told

    def _wait(self, minutes: str) -> str:
        """minutes: one figure, or two with a dash."""
        longer = self.random.randrange(3)
        return "-".join(str(int(figure) + longer) for figure in minutes.split("-")) + " min"

    def _last(self, main: str, finishing: Row) -> Row:
        second = finishing["component"]
        names = {"1": f"{{{main}}}", "2": f"{{{second}}}"}
        text = self.random.choice(finishing["last"])
        for sign, name in names.items():
            text = text.replace(f"${sign}", name)
        step = {"text": text, "hands-on": f"{self.random.randrange(5, 15)} min"}
        return {"ingredients": [f"all of {main}", f"all of {second}"], "method": [step]}

    def _further(self, flavour: str) -> dict[str, Any]:
        """Days, film, notes and revisions."""
        random = self.random
        days = (LAST_DAY - FIRST_DAY).days
        out = FIRST_DAY + timedelta(random.randrange(days))
        told: dict[str, Any] = {}
        if random.randrange(100) >= DRAFTS_IN_100:
            shows = random.choice(["ingredients", "ingredients", "everything", "teaser"])
            public = out + timedelta(7)
            told["release"] = {"subscribers": out, "public": public, "public-shows": shows}
            if random.randrange(100) < REVISED_IN_100:
                changed = out + timedelta(random.randrange(10, 200))
                note = f"Less {flavour.lower()} than we first wrote."
                told["revisions"] = [{"date": changed, "note": note, "notify": random.random() < 0.5}]
        if random.randrange(100) < FILMED_IN_100:
            address = f"https://video.example/{random.randrange(10**9)}"
            told["video"] = {"address": address, "published": out, "captions": "captions.vtt"}
        told["notes"] = "\n\n".join(random.sample(parts()["notes"], random.randrange(1, 4)))
        return told

    def _captions(self) -> str:
        spoken = self.random.sample(parts()["captions"], 4)
        cues = [f"00:{at * 5:02}.000 --> 00:{at * 5 + 4:02}.500\n{text}" for at, text in enumerate(spoken)]
        return "\n\n".join(["WEBVTT", *cues]) + "\n"
