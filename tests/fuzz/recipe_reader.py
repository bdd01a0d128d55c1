"""`python -m tests.fuzz.recipe_reader --seconds 600`: the readers of a school's files, led by coverage.

Needs `pip install -e .[fuzz]`. Every input goes through the reader, the checks and, where it has no error,
the sheets in each edition; what may not happen stands in `oracle.py`. An input that breaks a rule is kept
under `tests/fuzz/found/<kind>/`, where an ordinary test tries it again, and the run goes on. Inputs that
lead to new code are kept in `--corpus`, so that the next run begins where this one ended. Exit code 1 where
anything was found.
"""

import argparse
import subprocess
import sys
import tempfile
from hashlib import sha256
from pathlib import Path
from random import Random
from traceback import extract_tb

FOUND = Path(__file__).parent / "found"
SLOWEST_S = 60
"""An input that takes longer stops the run; it is written beside the corpus."""
LARGEST_INPUT = 60_000
MOST_MEMORY_MB = 3_000
SUFFIXES = {"tutorial": ".md"}
KINDS = ("recipe", "tutorial", "site", "larder", "prices", "order")


def main() -> int:
    """Begin a process that fuzzes, and tell what it left."""
    options = _options()
    before = _found(options.kind)
    argv = [sys.executable, "-m", "tests.fuzz.recipe_reader", *sys.argv[1:], "--within"]
    code = subprocess.run(argv, check=False).returncode if not options.within else _fuzz(options)
    new = sorted(_found(options.kind) - before)
    print(f"{len(new)} found" + "".join(f"\n  {path}" for path in new))
    return 1 if new or code else 0


def _options() -> argparse.Namespace:
    parser = argparse.ArgumentParser(prog="python -m tests.fuzz.recipe_reader")
    parser.add_argument("--kind", choices=KINDS, default="recipe", help="which file is tried")
    parser.add_argument("--seconds", type=int, default=600)
    parser.add_argument("--corpus", type=Path, default=Path(".sitegen/fuzz"), help="kept between runs")
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--within", action="store_true", help=argparse.SUPPRESS)
    return parser.parse_args()


def _found(kind: str) -> set[Path]:
    return set((FOUND / kind).glob("*"))


def _fuzz(options: argparse.Namespace) -> int:
    """Never returns: libFuzzer ends the process when its time is over."""
    import atheris

    with atheris.instrument_imports(include=["sitegen", "yaml"]):
        from tests.fuzz.mutations import Pen, keys, seeds
        from tests.fuzz.oracle import assert_files_hold, assert_recipe_holds
        from tests.fuzz.proving_school import ProvingSchool

    kind: str = options.kind
    school = ProvingSchool(Path(tempfile.mkdtemp(prefix="fuzz-")))
    is_recipe = kind == "recipe"
    seen: set[str] = set()

    def one_input(body: bytes) -> None:
        school.write(kind, body)
        try:
            assert_recipe_holds(school, again=len(body) % 8 == 0) if is_recipe else assert_files_hold(school)
        except Exception as problem:
            _keep(kind, body, problem, seen)

    def slip(body: bytes, largest: int, seed: int) -> bytes:
        chance = Random(seed)
        if chance.random() < 0.3:
            return atheris.Mutate(body, largest)
        text = body.decode("utf-8", errors="replace")
        return Pen(chance, kind).slipped(text, chance.choice((1, 1, 2, 3, 6))).encode()[:largest]

    corpus = options.corpus / kind
    corpus.mkdir(parents=True, exist_ok=True)
    for text in seeds(kind):
        body = text.encode()
        (corpus / sha256(body).hexdigest()[:16]).write_bytes(body)
    words = options.corpus / "words"
    words.write_text("".join(f'"{key}: "\n' for key in dict.fromkeys(keys())))
    argv = [
        sys.argv[0], str(corpus), f"-max_total_time={options.seconds}", f"-timeout={SLOWEST_S}",
        f"-dict={words}", f"-max_len={LARGEST_INPUT}", f"-rss_limit_mb={MOST_MEMORY_MB}",
        f"-seed={options.seed}", "-print_final_stats=1", "-len_control=0",
        f"-artifact_prefix={options.corpus}/{kind}-",
    ]  # fmt: skip
    atheris.Setup(argv, one_input, custom_mutator=slip)
    atheris.Fuzz()
    return 0


def _keep(kind: str, body: bytes, problem: Exception, seen: set[str]) -> None:
    """Keep an input by what went wrong and where, once a run."""
    where = extract_tb(problem.__traceback__)[-1]
    name = f"{type(problem).__name__.lower()}-{Path(where.filename).stem}-{where.name}"
    if name in seen:
        return
    seen.add(name)
    (FOUND / kind).mkdir(parents=True, exist_ok=True)
    (FOUND / kind / f"{name}{SUFFIXES.get(kind, '.yaml')}").write_bytes(body)
    print(f"found {name}: {str(problem)[:300]}", flush=True)


if __name__ == "__main__":
    raise SystemExit(main())
