"""Markdown that would take its reader a long time, or too deep, is refused; what is let through ends."""

import subprocess
import sys
from collections.abc import Callable
from pathlib import Path

import pytest

from sitegen import limits
from sitegen.source.markdown_bounds import too_tangled
from sitegen.source.models import RecipeFile
from sitegen.source.photos import Folder
from sitegen.source.reader import parse_document
from sitegen.source.shapes import shaped
from sitegen.source.tutorials import tutorial_from

WORST: dict[str, Callable[[int], str]] = {
    "open brackets": lambda n: "[" * n,
    "brackets round nothing": lambda n: "[" * (n // 2) + "]" * (n // 2),
    "links in links": lambda n: "[a](" * (n // 4),
    "links that go on": lambda n: "[a" * (n // 2) + "](" * 9,
    "pictures": lambda n: "![" * (n // 2),
    "stars": lambda n: "a**b*" * (n // 5),
    "triple stars": lambda n: "***a" * (n // 4),
    "underlines": lambda n: "__a" * (n // 3),
    "backticks": lambda n: "`a" * (n // 2),
    "tags": lambda n: "<a " * (n // 3),
    "sections that are not": lambda n: "<![CDATA[" * (n // 9),
    "comments": lambda n: "<!--" * (n // 4),
    "quotes": lambda n: ">" * n + " a",
    "lists on one line": lambda n: "1. " * (n // 3) + "a",
    "dashes on one line": lambda n: "- " * (n // 2) + "a",
    "quotes in lists": lambda n: "- > " * (n // 4) + "a",
    "lists in lists": lambda n: "\n\n".join("    " * level + "- a" for level in range(int(n**0.5) // 2)),
    "a wide table": lambda n: f"{'|a' * (n // 6)}|\n{'|-' * (n // 6)}|\n{'|b' * (n // 6)}|",
    "a long table": lambda n: "a|b\n-|-\n" + "a|b\n" * (n // 4),
    "many rows of a wide table": lambda n: f"{'|' * 300}\n{'|-' * 300}\n" + "a|\n" * (n // 3),
}
REFUSED = (
    "open brackets",
    "pictures",
    "quotes",
    "lists on one line",
    "dashes on one line",
    "lists in lists",
    "tags",
)


@pytest.mark.parametrize("what", REFUSED)
def test_what_takes_too_long_is_refused(what: str) -> None:
    assert too_tangled(WORST[what](30_000))


@pytest.mark.parametrize(
    "text",
    [
        "Bake them *dark*, as in [the film](https://video.example/a).",
        "- one\n    - two\n        - three\n\n> said\n> > and said\n\n1. a\n2. b",
        "a | b\n- | -\n" + "**flour** | `120 g`\n" * 100,
        "\n\n".join(["A paragraph with *one* word."] * 400),
    ],
)
def test_what_bakers_write_passes(text: str) -> None:
    assert too_tangled(text) == ""


@pytest.mark.parametrize(
    ("body", "code"),
    [("![" * 30_000, "too-long"), ("![" * 20_000, "too-tangled"), ("> " * 30 + "a", "too-tangled")],
)
def test_a_technique_page_is_held_to_it_before_it_is_looked_through(
    body: str, code: str, tmp_path: Path
) -> None:
    (tmp_path / "page.md").write_text(f"---\ntitle: A page\nsummary: Of marks.\n---\n{body}\n")
    tutorial, faults, _ = tutorial_from(Folder(tmp_path, "content/tutorials"), "page")
    assert tutorial is None
    assert [(fault.code, fault.place.line) for fault in faults] == [(code, 5)]


@pytest.mark.parametrize("key", ["summary", "notes"])
def test_any_text_of_a_recipe_is_held_to_it(key: str) -> None:
    document, _ = parse_document(f'{key}: "{"1. " * 40}a"\n', "recipe.yaml")
    assert document is not None
    _, faults = shaped(document, RecipeFile)
    assert [fault.code for fault in faults if fault.place.column > 1] == ["too-tangled"]


def largest_that_passes(what: str) -> str:
    """The longest text of that kind, by doubling and halving, that is let through."""
    low, high = 1, limits.MARKDOWN_CHARACTERS
    while low < high:
        middle = (low + high + 1) // 2
        text = WORST[what](middle)
        if len(text) > limits.MARKDOWN_CHARACTERS or too_tangled(text):
            high = middle - 1
        else:
            low = middle
    return WORST[what](low)


def paragraphs(text: str) -> str:
    """As many of it, one below the other, as a text of a third of the greatest length may have."""
    times = limits.MARKDOWN_CHARACTERS // 3 // (len(text) + 2) or 1
    while too_tangled("\n\n".join([text] * times)):
        times -= 1
    return "\n\n".join([text] * times)[: limits.MARKDOWN_CHARACTERS // 3]


def test_the_worst_that_is_let_through_ends() -> None:
    """All kinds in a process of their own, with more time than any machine needs: a hang would take days."""
    texts = [paragraphs(largest_that_passes(what)) for what in WORST]
    code = (
        "import sys; from sitegen.press.prose import to_html, to_inline_html\n"
        "for text in sys.stdin.read().split('\\x1e'): to_html(text), to_inline_html(text[:3000])\n"
        "print('ended')"
    )
    done = subprocess.run(
        [sys.executable, "-c", code], input="\x1e".join(texts), capture_output=True, text=True, timeout=300
    )
    assert done.stdout == "ended\n", done.stderr[-1_000:]
