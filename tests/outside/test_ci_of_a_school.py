"""The CI files of a new school: run in a fresh clone, and held against the formats of those who read them.

Sources: the schema of SARIF 2.1.0 (OASIS), as the npm package `@microsoft/jest-sarif` carries it; the schemas
of workflow and Dependabot files of schemastore.org, as the Python package `check-jsonschema` carries them.
"""

import json
import os
import re
import shutil
import subprocess
import sys
from collections.abc import Iterator, Mapping
from importlib.resources import files
from pathlib import Path
from typing import Any

import pytest
import yaml
from jsonschema import Draft4Validator, Draft7Validator

from sitegen.release.start import start
from tests.release.small_school import assert_whole, tree_hashes

PROJECT = Path(__file__).parents[2]
SCHEMAS = PROJECT / "tests" / "checkers" / "node_modules" / "@microsoft" / "jest-sarif" / "lib" / "schemas"
RECIPE = "content/recipes/lemon-shortbread/recipe.yaml"
AUTHOR = {
    f"GIT_{who}_{what}": told
    for who in ("AUTHOR", "COMMITTER")
    for what, told in (("NAME", "A baker"), ("EMAIL", "baker@school.example"))
}

Ran = subprocess.CompletedProcess[str]


def git(folder: Path, *arguments: str) -> None:
    quiet = {"GIT_CONFIG_GLOBAL": os.devnull, "GIT_CONFIG_SYSTEM": os.devnull}
    subprocess.run(["git", *arguments], cwd=folder, check=True, env={**os.environ, **quiet, **AUTHOR})


def commit(folder: Path) -> None:
    git(folder, "add", "--all")
    git(folder, "commit", "--quiet", "--message", "As it stands")


def clone(repository: Path, into: Path) -> Path:
    git(repository.parent, "clone", "--quiet", str(repository), str(into))
    return into


def ci(folder: Path, *arguments: str, program: str = f"{sys.executable} -m sitegen") -> Ran:
    """Run the school's script as a CI does, with the program of this checkout."""
    return subprocess.run(
        ["sh", "ci/publish.sh", *arguments],
        cwd=folder,
        capture_output=True,
        text=True,
        check=False,
        env={**os.environ, "CI": "true", "SITEGEN": program, "PYTHONPATH": str(PROJECT)},
    )


def results(folder: Path, name: str) -> Any:
    return json.loads((folder / "ci" / "results" / name).read_text(encoding="utf-8"))


def misspelt(folder: Path) -> None:
    file = folder / RECIPE
    file.write_text(file.read_text().replace("g plain flour", "g plain flor", 1))


@pytest.fixture(scope="module")
def repository(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A new school under version control, with one small card so that it is soon printed."""
    folder = tmp_path_factory.mktemp("origin") / "school"
    start(folder)
    site = folder / "content" / "site.yaml"
    one_card = site.read_text().replace("[british-metric, us-cups]", "[british-metric]")
    site.write_text(one_card.replace("[a4, letter, a5]", "[a5]"))
    git(folder, "init", "--quiet", "--initial-branch", "main")
    commit(folder)
    return folder


@pytest.fixture(scope="module")
def pushed(repository: Path) -> tuple[Path, Ran]:
    """A clone in which a push was published. Tests must not write into it."""
    folder = clone(repository, repository.parent / "pushed")
    return folder, ci(folder)


@pytest.fixture(scope="module")
def sarif() -> Draft4Validator:
    return Draft4Validator(json.loads((SCHEMAS / "sarif-2.1.0-rtm.5.json").read_text(encoding="utf-8")))


def test_a_clean_pull_request_passes_and_builds_nothing(
    repository: Path, sarif: Draft4Validator, tmp_path: Path
) -> None:
    folder = clone(repository, tmp_path / "clone")
    ran = ci(folder, "proof")
    assert ran.returncode == 0, ran.stderr
    assert "1 recipe, 1 technique page: no faults" in ran.stdout
    log = results(folder, "proof.sarif")
    sarif.validate(log)
    assert log["runs"][0]["results"] == []
    assert [path.name for path in (folder / "output").iterdir()] == [".gitkeep"]


def test_a_push_is_published_whole(pushed: tuple[Path, Ran]) -> None:
    folder, ran = pushed
    assert ran.returncode == 0, ran.stderr
    assert_whole(folder / "output")
    for tree in ("public", "subscribers", "texts"):
        assert any((folder / "output" / tree).iterdir())
    assert ran.stdout == (folder / "ci" / "results" / "closing.txt").read_text()
    assert "first build" in ran.stdout


def test_nothing_that_a_run_leaves_is_committed(pushed: tuple[Path, Ran]) -> None:
    shown = subprocess.run(
        ["git", "status", "--porcelain"], cwd=pushed[0], capture_output=True, text=True, check=True
    )
    assert shown.stdout == ""


def test_the_next_run_on_a_fresh_machine_uses_what_was_kept(pushed: tuple[Path, Ran], tmp_path: Path) -> None:
    """What the workflow keeps is laid into a fresh clone, as the host does it."""
    before = pushed[0]
    folder = clone(before.parent / "school", tmp_path / "clone")
    for kept in kept_paths():
        target = folder / kept
        target.parent.mkdir(parents=True, exist_ok=True)
        (shutil.copytree if (before / kept).is_dir() else shutil.copy)(before / kept, target)
    ran = ci(folder)
    assert ran.returncode == 0, ran.stderr
    assert "Nothing has changed" in ran.stdout
    steps = {row["step"]: row for row in results(folder, "build.json")["steps"]}
    assert (steps["print the cards"]["made"], steps["print the cards"]["reused"]) == (0, 1)
    trees = [
        {path: digest for path, digest in tree_hashes(each / "output").items() if path != "report.json"}
        for each in (before, folder)
    ]
    assert trees[0] == trees[1]


def test_a_faulty_pull_request_fails_with_its_line_and_the_old_trees_stay(
    pushed: tuple[Path, Ran], sarif: Draft4Validator, tmp_path: Path
) -> None:
    folder = Path(shutil.copytree(pushed[0], tmp_path / "school"))
    before = tree_hashes(folder / "output")
    misspelt(folder)
    proofed = ci(folder, "proof")
    log = results(folder, "proof.sarif")
    published = ci(folder)
    assert (proofed.returncode, published.returncode) == (1, 1)
    assert "nothing was published" in published.stderr
    assert tree_hashes(folder / "output") == before
    assert not (folder / "ci" / "results" / "closing.txt").exists()

    sarif.validate(log)
    (result,) = log["runs"][0]["results"]
    location = result["locations"][0]["physicalLocation"]
    assert (result["level"], location["artifactLocation"]["uri"]) == ("error", RECIPE)
    line = location["region"]["startLine"]
    assert "plain flor" in (folder / RECIPE).read_text().split("\n")[line - 1]
    assert marked(proofed.stdout) == [("error", RECIPE, str(line), "unknown-ingredient")]


def marked(log: str) -> list[tuple[str, str, str, str]]:
    """(severity, file, line, code) of what the host marks in a log by the school's problem matcher."""
    matchers = json.loads((STARTER / ".github" / "proof-matcher.json").read_text())["problemMatcher"]
    return [
        (matcher["severity"], found[pattern["file"]], found[pattern["line"]], found[pattern["code"]])
        for line in log.split("\n")
        for matcher in matchers
        for pattern in matcher["pattern"]
        if (found := re.search(pattern["regexp"], line))
    ]


def test_advice_is_marked_as_a_notice_and_a_whole_file_without_a_line() -> None:
    log = "content/recipes/bay/notes.txt: advice stray-file: nothing reads it\nall else is well: error or not"
    assert marked(log) == [("notice", "content/recipes/bay/notes.txt", None, "stray-file")]  # type: ignore[comparison-overlap]


@pytest.mark.parametrize("found", [(), ("sitegen-1-py3-none-any.whl", "sitegen-2-py3-none-any.whl")])
def test_a_school_without_its_program_or_with_two_is_told_so(found: tuple[str, ...], tmp_path: Path) -> None:
    start(tmp_path / "school")
    (tmp_path / "school" / "ci" / "wheels").mkdir()
    for name in found:
        (tmp_path / "school" / "ci" / "wheels" / name).touch()
    ran = ci(tmp_path / "school", "proof", program="")
    assert ran.returncode == (2 if found else 3)
    assert "ci/wheels" in ran.stderr


def test_what_is_misspelt_for_the_script_is_wrong_use(tmp_path: Path) -> None:
    start(tmp_path / "school")
    assert ci(tmp_path / "school", "prove").returncode == 2


def test_a_school_is_given_the_libraries_that_the_program_was_tested_with(tmp_path: Path) -> None:
    start(tmp_path / "school")
    lock = (PROJECT / "bin" / "lock" / "site.txt").read_text()
    assert (tmp_path / "school" / "ci" / "libraries.txt").read_text() == lock


STARTER = PROJECT / "sitegen" / "data" / "starter"
WORKFLOW = yaml.load((STARTER / ".github/workflows/publish.yaml").read_text(), Loader=yaml.BaseLoader)
JOBS: Mapping[str, Any] = WORKFLOW["jobs"]


def steps_using(job: str, action: str) -> Iterator[Mapping[str, Any]]:
    return (step for step in JOBS[job]["steps"] if step.get("uses", "").startswith(f"actions/{action}@"))


def kept_paths() -> list[str]:
    (step,) = steps_using("publish", "cache")
    return str(step["with"]["path"]).split()


@pytest.mark.parametrize(
    ("file", "schema"),
    [
        ("workflows/publish.yaml", "vendor/github-workflows.json"),
        ("workflows/publish.yaml", "custom/github-workflows-require-timeout.json"),
        ("dependabot.yaml", "vendor/dependabot.json"),
    ],
)
def test_files_for_the_host_are_valid(file: str, schema: str) -> None:
    rules = json.loads((files("check_jsonschema") / "builtin_schemas" / schema).read_text(encoding="utf-8"))
    written = yaml.safe_load((STARTER / ".github" / file).read_text())
    if True in written:  # YAML 1.1, which PyYAML reads, takes the key `on` for a yes
        written["on"] = written.pop(True)
    Draft7Validator(rules).validate(written)


def test_what_a_pull_request_brings_runs_without_rights_or_kept_work() -> None:
    assert "pull_request_target" not in WORKFLOW["on"]
    assert WORKFLOW["permissions"] == {}
    assert JOBS["proof"]["permissions"] == {"contents": "read"}
    assert not list(steps_using("proof", "cache"))
    assert "pull_request'" in JOBS["publish"]["if"]
    assert "secrets." not in json.dumps(JOBS["proof"])


def test_the_one_job_that_may_write_runs_nothing_of_the_repository() -> None:
    rights = {name: set(job["permissions"].values()) for name, job in JOBS.items()}
    assert [name for name, granted in rights.items() if "write" in granted] == ["show-faults"]
    assert not any("run" in step for step in JOBS["show-faults"]["steps"])
    assert not list(steps_using("show-faults", "checkout"))
    assert "head.repo.full_name == github.repository" in JOBS["show-faults"]["if"]


def test_two_publishes_wait_for_each_other() -> None:
    assert JOBS["publish"]["concurrency"] == {"group": "publish", "cancel-in-progress": "false"}


def test_every_machine_and_action_is_of_a_named_version() -> None:
    for job in JOBS.values():
        assert re.fullmatch(r"ubuntu-\d+\.\d+", job["runs-on"])
        for step in job["steps"]:
            if "uses" in step:
                assert re.fullmatch(r"(actions|github)/[\w/-]+@v\d+(\.\d+\.\d+)?", step["uses"])


def test_each_tree_is_an_artifact_of_its_own(pushed: tuple[Path, Ran]) -> None:
    handed = {
        step["with"]["name"]: step["with"]["path"] for step in steps_using("publish", "upload-artifact")
    }
    assert {name: handed[name] for name in ("public-site", "subscribers-site", "texts")} == {
        "public-site": "output/public",
        "subscribers-site": "output/subscribers",
        "texts": "output/texts",
    }
    for paths in handed.values():
        assert all((pushed[0] / path).exists() for path in paths.split())
