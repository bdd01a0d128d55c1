"""Texts that try to become code where they are printed, by kind; and a school that writes them everywhere.

The kinds are those of the OWASP Cross Site Scripting Prevention and Filter Evasion cheat sheets (by context:
HTML, attribute, URL, CSS, script data, SVG), beside those of our own files and outputs: Markdown, Jinja,
Atom, calendar lines, characters that are not seen. The texts themselves are ours. Each that runs calls
`alert(1)`, or asks a host that is not ours.
"""

import json
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

from PIL import Image

from sitegen.release.proof import proof

ELSEWHERE = "https://elsewhere.invalid"

PAYLOADS: dict[str, tuple[str, ...]] = {
    "HTML": (
        "<script>alert(1)</script>",
        "<img src=x onerror=alert(1)>",
        "</title></style><script>alert(1)</script>",
        f"<iframe src={ELSEWHERE}/frame></iframe>",
        f'<meta http-equiv="refresh" content="0;url={ELSEWHERE}">',
        "<details open ontoggle=alert(1)>",
        f"<base href={ELSEWHERE}/><form><input autofocus onfocus=alert(1)>",
        "<noscript><p title='</noscript><img src=x onerror=alert(1)>'>",
    ),
    "attribute": (
        '" onmouseover=alert(1) x="',
        '"><script>alert(1)</script>',
        "' autofocus onfocus='alert(1)",
        '" style="background:url(https://elsewhere.invalid/a)',
        "`onload=alert(1)`",
    ),
    "URL": (
        "javascript:alert(1)",
        "java\tscript:alert(1)",
        "[x](javascript:alert(1))",
        "<javascript:alert(1)>",
        "[x](data:text/html,<script>alert(1)</script>)",
        "[x](&#106;avascript:alert(1))",
        "[x](vbscript:alert(1))",
    ),
    "CSS": (
        "</style><style>@import 'https://elsewhere.invalid/a.css'</style>",
        "<p style='background:url(https://elsewhere.invalid/a)'>x</p>",
        "};body{background:url(https://elsewhere.invalid/b)}",
        "<link rel=stylesheet href=https://elsewhere.invalid/c.css>",
    ),
    "JSON-LD": (
        "</script><script>alert(1)</script>",
        '"}</script><img src=x onerror=alert(1)>',
        "<!--<script>alert(1)//-->",
        '\\"};alert(1)//',
    ),
    "SVG": (
        "<svg onload=alert(1)>",
        "<svg><script>alert(1)</script></svg>",
        "</text><a xlink:href='javascript:alert(1)'><text>x",
        "<svg><animate onbegin=alert(1) attributeName=x dur=1s>",
        "<math><mtext><style><img src=x onerror=alert(1)>",
    ),
    "Markdown": (
        "![x](https://elsewhere.invalid/x.png)",
        '[x](https://ok.example "onclick=alert(1)")',
        "<a href=https://ok.example onclick=alert(1)>x</a>",
        "[a]: javascript:alert(1)\n\n[x][a]",
        "> <script>alert(1)</script>",
    ),
    "Jinja": (
        "{{7*7}}",
        "{% for x in ().__class__.__mro__ %}{{x}}{% endfor %}",
        "{{ config }}{{ self._TemplateReference__context }}",
        "{# x #}${7*7}#{7*7}<%= 7*7 %>",
    ),
    "feed": (
        "]]><script xmlns='http://www.w3.org/1999/xhtml'>alert(1)</script>",
        "<?xml-stylesheet href='https://elsewhere.invalid/x.xsl'?>",
        "<!DOCTYPE x [<!ENTITY y SYSTEM 'file:///etc/passwd'>]>&y;",
        "&lt;script&gt;alert(1)&lt;/script&gt;",
    ),
    "lines": (
        "x\r\nEND:VEVENT\r\nBEGIN:VALARM\r\nATTACH:https://elsewhere.invalid",
        "x\nDisallow: /\n\nLocation: https://elsewhere.invalid",
        "=HYPERLINK(1);+1;@SUM(1)",
    ),
    "unseen": (
        "a\u202egnp.exe\u202c",
        "a\x00b",
        "a\x1bb\x08",
        "a\u2028alert(1)\u2029",
        "\ufeff<script\u200b>alert(1)</script>",
    ),
}
"""Kind -> its texts. Where one cannot be written into a file, or the proof refuses it, it is not printed."""

SITE: dict[str, Any] = {
    "name": "Tansy Row",
    "tagline": "One long table",
    "address": "https://tansyrow.example/",
    "subscribers-address": "https://tansyrow.example/table/",
    "language": "en-GB",
    "written-in": "british-metric",
    "egg-size": "medium",
    "editions": ["british-metric"],
    "papers": ["a4"],
    "theme": "oatcloth",
    "time-zone": "Europe/London",
    "about": "A small school.",
    "copyright": "Tansy Row",
}
RECIPE: dict[str, Any] = {
    "title": "Buns of {kind}",
    "summary": "Small and round.",
    "makes": "12 buns",
    "serves": "12",
    "tin": "muffin 12",
    "tags": ["buns"],
    "photo": {"file": "finished.jpg", "alt": "Twelve pale buns"},
    "release": {"subscribers": "2026-07-03", "public": "2026-07-10", "public-shows": "ingredients"},
    "video": {"address": "https://video.example/buns", "published": "2026-07-11"},
    "batches": [],
    "larder": {"orange crystals": {"also": ["orange sugar"], "roles": ["sugar"], "label-advice": "yes"}},
    "swaps": ["plain flour"],
    "notes": "Best on the day.",
    "components": {
        "Dough": {
            "kind": "creamed cake",
            "bake-loss": "10 %",
            "ingredients": [
                "120 g unsalted butter, soft",
                "180 g plain flour (sifted)",
                "20 g orange crystals",
            ],
            "method": [
                {
                    "text": "Beat {unsalted butter}, {plain flour} and {orange crystals}.",
                    "hands-on": "5 min",
                    "tools": ["mixer"],
                    "until": "it is pale",
                    "photo": {"file": "finished.jpg", "alt": "A pale batter"},
                    "tutorial": "weighing",
                },
                {"text": "Bake.", "oven": "150 C fan", "wait": "20 min", "fill": "1/2", "until": "done"},
            ],
            "keeps": {"room": "2 days", "note": "in a tin"},
        },
        "Rest": {
            "method": [{"text": "Let it stand.", "wait": "5 min", "waits-in": "proofing box", "holds": "2 h"}]
        },
    },
    "revisions": [{"date": "2026-07-20", "note": "Butter corrected.", "notify": "yes"}],
    "settled": {"balance-unusual": "It is meant so."},
}
LARDER: dict[str, Any] = {
    "sweet cicely sugar": {
        "also": ["cicely sugar"],
        "roles": ["sugar"],
        "allergens": {"eu": [], "us": []},
        "density": [{"method": "level", "weight": "196 g", "fills": "1 metric_cup", "source": "own-scales"}],
    }
}
PRICES: dict[str, Any] = {
    "currency": "GBP",
    "portion-costs": {"box": "0.27"},
    "prices": {"plain flour": "1 per 1 kg"},
}
ORDER: dict[str, Any] = {"title": "Saturday", "ready-by": "Saturday 09:00", "make": {"html": "12 buns"}}

LONG = ("summary", "alt", "until", "note", "notes", "tagline", "about", "copyright")
"""Keys of texts that may hold at least 400 letters."""
Leaf = tuple[str | int, ...]


@dataclass
class WrittenFile:
    """A file whose texts are payloads. plain: as it is without; tried: leaf -> payload, still in it.

    refused: leaf -> code of the fault that it was. A key that is to be tried is a leaf that ends in '!'.
    """

    path: Path
    plain: dict[str, Any]
    tried: dict[Leaf, str]
    body: str = ""
    refused: dict[Leaf, str] = field(default_factory=dict)
    lines: dict[int, Leaf] = field(default_factory=dict)

    def write(self) -> None:
        self.lines.clear()
        text: list[str] = []
        self._set(self.plain, (), "", text)
        written = "".join(f"{line}\n" for line in text)
        if self.path.suffix == ".md":
            written = f"---\n{written}---\n{self.body}\n"
            self.lines = {number + 1: leaf for number, leaf in self.lines.items()}
        self.path.parent.mkdir(parents=True, exist_ok=True)
        self.path.write_text(written, encoding="utf-8")

    def refuse(self, line: int, code: str) -> None:
        """Take back what stands on a line, or nearest above it."""
        above = [number for number in self.lines if number <= line and self.lines[number] in self.tried]
        if above:
            leaf = self.lines[max(above)]
            del self.tried[leaf]
            self.refused[leaf] = code

    def _set(self, value: Any, at: Leaf, indent: str, text: list[str]) -> None:
        rows = value.items() if isinstance(value, dict) else enumerate(value)
        for key, inner in rows:
            here = (*at, key)
            name = self.tried.get((*here, "!"), key) if isinstance(value, dict) else None
            head = f"{indent}{json.dumps(name)}:" if name is not None else f"{indent}-"
            self.lines[len(text) + 1] = (*here, "!")
            if isinstance(inner, dict | list):
                text.append(head if inner else f"{head} []")
                self._set(inner, here, indent + "  ", text)
            else:
                text.append(head)
                self.lines[len(text) + 1] = here
                text.append(f"{indent}  {json.dumps(self.tried.get(here, inner))}")


def leaves(value: Any, at: Leaf = ()) -> Iterator[Leaf]:
    """Every text in a file's values, and every key that its author names."""
    for key, inner in value.items() if isinstance(value, dict) else enumerate(value):
        if at and at[-1] in {"components", "settled", "portion-costs", "prices", "make"} and key != "Dough":
            yield (*at, key, "!")
        if isinstance(inner, dict | list):
            yield from leaves(inner, (*at, key))
        else:
            yield (*at, key)


@dataclass
class HostileSchool:
    """root: of its folder. files: all that its baker wrote."""

    root: Path
    files: tuple[WrittenFile, ...]

    def refused(self) -> set[tuple[Leaf, str]]:
        """(leaf, code of the fault)."""
        return {(leaf, code) for file in self.files for leaf, code in file.refused.items()}

    def accepted(self) -> dict[str, set[Leaf]]:
        """Name of a file -> leaves that took a payload."""
        found: dict[str, set[Leaf]] = {}
        for file in self.files:
            found.setdefault(file.path.name, set()).update(file.tried)
        return found

    def texts(self) -> set[str]:
        return {text for file in self.files for text in file.tried.values()}


def hostile_school(root: Path) -> HostileSchool:
    """A school in which each text of each file is a payload, of every kind in turn; without faults.

    What the proof refuses is taken back, one fault after another, until it has nothing to say.
    """
    school = HostileSchool(root, tuple(_files(root)))
    Image.new("RGB", (660, 500), (200, 160, 90)).save(_made(root / "content/photo.jpg"), "JPEG")
    for file in school.files:
        file.write()
        if file.path.suffix == ".yaml" and file.path.name == "recipe.yaml":
            (file.path.parent / "finished.jpg").write_bytes((root / "content/photo.jpg").read_bytes())
    by_name = {file.path.relative_to(root).as_posix(): file for file in school.files}
    for _ in range(12):
        errors = proof(root).errors
        if not errors:
            return school
        for fault in sorted(errors, key=lambda fault: -fault.place.line):
            by_name[fault.place.file].refuse(fault.place.line, fault.code)
        for file in school.files:
            file.write()
    raise AssertionError([f"{fault.place} {fault.code}: {fault.sentence}" for fault in errors[:5]])


def _made(path: Path) -> Path:
    path.parent.mkdir(parents=True, exist_ok=True)
    return path


def _files(root: Path) -> Iterator[WrittenFile]:
    """Of each kind of payload a recipe, in which its texts take turns from field to field."""
    content = root / "content"
    kept = {("theme",), ("release", "public-shows"), ("photo", "file")}
    everything = [text for texts in PAYLOADS.values() for text in texts]
    yield WrittenFile(content / "site.yaml", SITE, _turns(SITE, everything))
    yield WrittenFile(content / "larder.yaml", LARDER, _turns(LARDER, everything))
    yield WrittenFile(content / "prices.yaml", PRICES, _turns(PRICES, everything))
    yield WrittenFile(content / "orders/saturday.yaml", ORDER, _turns(ORDER, everything))
    front = {"title": "Weighing", "summary": "Why we weigh."}
    yield WrittenFile(
        content / "tutorials/weighing.md", front, _turns(front, everything), "Set it to nought."
    )
    for kind, texts in PAYLOADS.items():
        slug = kind.lower()
        prose = (text for text in texts if not text.startswith("![") and text.isprintable())
        body = "\n\n".join(("It is so.", *prose))
        front = {"title": f"On {kind}", "summary": "Short."}
        yield WrittenFile(content / f"tutorials/on-{slug}.md", front, _turns(front, texts), body)
        plain = json.loads(json.dumps(RECIPE).replace("{kind}", kind))
        tried = {leaf: text for leaf, text in _turns(plain, texts).items() if leaf not in kept}
        yield WrittenFile(content / f"recipes/{slug}/recipe.yaml", plain, tried)


def _turns(plain: dict[str, Any], texts: Sequence[str]) -> dict[Leaf, str]:
    """Leaf -> its text: in a long one all that fit, else each in its turn.

    Prose keeps its references, and an ingredient line what it is of.
    """
    together = " ".join(text for text in texts if text.isprintable())[:360]
    found = {}
    for place, leaf in enumerate(leaves(plain)):
        text = texts[place % len(texts)]
        if "ingredients" in leaf:
            head, _, noted = _at(plain, leaf).partition(" (")
            found[leaf] = f"{head} ({text})" if noted else f"{head.partition(', ')[0]}, {text}"
        elif leaf[-1] == "text":
            found[leaf] = f"{_at(plain, leaf)} {text}"
        else:
            found[leaf] = (together or text) if leaf[-1] in LONG else text
    return found


def _at(value: Any, leaf: Leaf) -> str:
    for key in leaf:
        value = value[key]
    return str(value)
