"""How soon a save is seen: from the save to the event, and to the new page. Run it; it checks nothing.

    python -m tests.bench.preview_speed [FOLDER...] [--saves 15]

FOLDER: schools, which are copied; the demo without. `tests.bench.library` writes large ones. A page of one
recipe is open, and the desk. Times are seconds of the wall, median and worst, by this process's clock: of
the event that tells the open page, of the new page in hand, and of the desk in hand.
"""

import argparse
import http.client
import queue
import re
import shutil
import signal
import subprocess
import sys
import tempfile
import threading
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path
from statistics import median
from time import perf_counter, sleep
from urllib.parse import urlsplit

from PIL import Image

ROOT = Path(__file__).parents[2]
PATIENCE_S = 60.0
READ_S = 2.0
"""After the desk says that all is read it is left alone for so long."""


@dataclass(frozen=True)
class Desk:
    """root: the school's folder. address: of the desk."""

    root: Path
    address: str

    def get(self, path: str = "") -> str:
        told = urlsplit(self.address)
        wire = http.client.HTTPConnection(told.netloc, timeout=PATIENCE_S)
        wire.request("GET", f"{told.path}{path}")
        body = wire.getresponse().read().decode()
        wire.close()
        return body


def main() -> None:
    asked = argparse.ArgumentParser(description=__doc__)
    asked.add_argument("folders", nargs="*", type=Path, default=[ROOT])
    asked.add_argument("--saves", type=int, default=15)
    words = asked.parse_args()
    print(f"{'school':12}{'what is saved':34}{'event':>16}{'page':>16}{'desk':>16}")
    for folder in words.folders:
        with tempfile.TemporaryDirectory() as scratch:
            root = Path(scratch) / "school"
            for part in ("content", "themes"):
                if (folder / part).is_dir():
                    shutil.copytree(folder / part, root / part)
            shutil.copytree(ROOT / "themes", root / "themes", dirs_exist_ok=True)
            with begun(root) as desk:
                measure(desk, words.saves)


def measure(desk: Desk, saves: int) -> None:
    slug, base = open_recipe(desk.root)
    own = desk.root / "content" / "recipes" / slug
    photo = next(own.glob("*.jpg"))
    kinds: dict[str, Callable[[int], None]] = {
        "a word of the recipe": lambda number: reword(own / "recipe.yaml", number),
        "a photo of it": lambda number: Image.new("RGB", (1600, 1200), (number * 7, 90, 60)).save(photo),
        "a line of a style": lambda number: restyle(desk.root, number),
        "the name of the school": lambda number: rename(desk.root / "content" / "site.yaml", number),
    }
    if base:
        bases = desk.root / "content" / "recipes" / base / "recipe.yaml"
        kinds["a word of its base recipe"] = lambda number: reword(bases, number)
    count = len(list((desk.root / "content" / "recipes").iterdir()))
    for kind, save in kinds.items():
        rows = [one_save(desk, f"subscribers/recipes/{slug}.html", save, number) for number in range(saves)]
        columns = "".join(f"{median(column):>9.3f}{max(column):>7.3f}" for column in zip(*rows, strict=True))
        print(f"{count:<12}{kind:34}{columns}")


def one_save(desk: Desk, page: str, save: Callable[[int], None], number: int) -> tuple[float, float, float]:
    """Seconds to the event, to the new page, to the desk."""
    before = desk.get(page)
    news = listened(desk, page, before)
    sleep(0.2)
    begins = perf_counter()
    save(number)
    news.get(timeout=PATIENCE_S)
    told = perf_counter()
    while desk.get(page) == before:
        sleep(0.001)
    has_page = perf_counter()
    desk.get()
    has_desk = perf_counter()
    until_read(desk)
    return told - begins, has_page - begins, has_desk - begins


def listened(desk: Desk, page: str, body: str) -> "queue.Queue[bytes]":
    """Events of one page, from now on."""
    mark = body.partition("&amp;mark=")[2].partition('"')[0]
    told = urlsplit(desk.address)
    wire = http.client.HTTPConnection(told.netloc, timeout=PATIENCE_S)
    wire.request("GET", f"{told.path}news?page={page}&mark={mark}")
    answer = wire.getresponse()
    heard: queue.Queue[bytes] = queue.Queue()

    def hear() -> None:
        for line in answer:
            if line.startswith(b"data:"):
                heard.put(line)
                wire.close()
                return

    threading.Thread(target=hear, daemon=True).start()
    return heard


def open_recipe(root: Path) -> tuple[str, str]:
    """A recipe that uses a base recipe, and that one; any where none does."""
    texts = {
        path.parent.name: path.read_text() for path in sorted(root.glob("content/recipes/*/recipe.yaml"))
    }
    titles = {slug: re.search(r"^title: (.*)$", text, re.MULTILINE) for slug, text in texts.items()}
    for slug, text in texts.items():
        for base, found in titles.items():
            if found and base != slug and f" of {found[1]}" in text and "release:" in text:
                return slug, base
    return min(texts), ""


def reword(path: Path, number: int) -> None:
    """Another word in the first step."""
    bare = re.sub(r" \(save \d+\)", "", path.read_text())
    path.write_text(re.sub(r"( - text: \S+)", rf"\1 (save {number})", bare, count=1))


def restyle(root: Path, number: int) -> None:
    style = sorted(root.glob("themes/oatcloth/styles/*.css"))[0]
    bare = style.read_text().partition("\n.save-")[0]
    style.write_text(f"{bare}\n.save-{number} {{ color: red }}\n")


def rename(path: Path, number: int) -> None:
    text = path.read_text()
    path.write_text(re.sub(r"^name: (.*?)( \d+)?$", rf"name: \1 {number}", text, count=1, flags=re.MULTILINE))


def until_read(desk: Desk) -> None:
    while "still to be read" in desk.get():
        sleep(0.1)
    sleep(0.2)


@contextmanager
def begun(root: Path) -> Iterator[Desk]:
    command = [
        sys.executable,
        "-m",
        "sitegen",
        "preview",
        "--no-open",
        "--root",
        str(root),
        "--on",
        "2026-12-24",
    ]
    with subprocess.Popen(command, cwd=ROOT, stdout=subprocess.PIPE, text=True) as child:
        assert child.stdout is not None
        begins = perf_counter()
        desk = Desk(root, child.stdout.readline().split()[-1])
        until_read(desk)
        print(f"read for the first time in {perf_counter() - begins:.1f} s")
        sleep(READ_S)
        try:
            yield desk
        finally:
            child.send_signal(signal.SIGTERM)


if __name__ == "__main__":
    main()
