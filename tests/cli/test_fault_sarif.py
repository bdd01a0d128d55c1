"""Faults as SARIF, held against what OASIS SARIF 2.1.0 requires (clauses in the tests)."""

import json
from typing import Any
from urllib.parse import urlsplit

import pytest

from sitegen.cli.fault_json import faults_json
from sitegen.cli.fault_sarif import faults_sarif
from sitegen.faults import Fault, FaultCode, Place, Severity

ROW = FaultCode("unknown-ingredient", Severity.ERROR, "The larder lacks it.", "Add a row.")
AT_LINE = Fault(
    Place("content/recipes/bay and rose/recipe.yaml", 14, 9, 12),
    "unknown-ingredient",
    "'castor sugar' is not in the larder",
    "did you mean 'caster sugar'?",
)
WHOLE_FILE = Fault(Place("content/site.yaml"), "no-file", "there is no file", severity=Severity.ADVICE)


@pytest.fixture
def run() -> Any:
    log = json.loads(faults_sarif([AT_LINE, WHOLE_FILE], {ROW.code: ROW}))
    assert log["version"] == "2.1.0"  # 3.13.2, required
    assert len(log["runs"]) == 1  # 3.13.4, required
    return log["runs"][0]


def test_a_run_has_a_tool_with_a_driver_with_a_name(run: Any) -> None:
    """3.14.6, 3.18.2, 3.19.8: all three are required."""
    assert run["tool"]["driver"]["name"] == "sitegen"


def test_each_result_has_a_message_and_a_rule_that_is_listed(run: Any) -> None:
    """3.27.11: a message is required. 3.27.6: ruleIndex leads to the rule. 3.49.3: its id is required."""
    rules = run["tool"]["driver"]["rules"]
    assert len(run["results"]) == 2
    for result in run["results"]:
        assert result["message"]["text"].endswith((".", "?"))
        assert rules[result["ruleIndex"]]["id"] == result["ruleId"]


def test_levels_are_those_of_the_standard(run: Any) -> None:
    """3.27.10: none, note, warning or error."""
    assert [result["level"] for result in run["results"]] == ["error", "note"]


def test_a_region_counts_from_one_and_ends_after_its_last_character(run: Any) -> None:
    """3.30.5 to 3.30.8, columns in code points (3.14.27)."""
    region = run["results"][0]["locations"][0]["physicalLocation"]["region"]
    assert region == {"startLine": 14, "startColumn": 9, "endColumn": 21}
    assert run["columnKind"] == "unicodeCodePoints"


def test_a_whole_file_has_no_region(run: Any) -> None:
    assert "region" not in run["results"][1]["locations"][0]["physicalLocation"]


def test_a_uri_is_relative_to_a_base_that_is_declared(run: Any) -> None:
    """3.4.3, 3.4.4: a valid URI reference, relative to a key of originalUriBaseIds."""
    location = run["results"][0]["locations"][0]["physicalLocation"]["artifactLocation"]
    parts = urlsplit(location["uri"])
    assert (parts.scheme, parts.netloc, parts.path) == (
        "",
        "",
        "content/recipes/bay%20and%20rose/recipe.yaml",
    )
    assert location["uriBaseId"] in run["originalUriBaseIds"]


def test_a_code_that_no_catalogue_has_is_a_rule_all_the_same(run: Any) -> None:
    rules = {rule["id"]: rule for rule in run["tool"]["driver"]["rules"]}
    assert rules["no-file"] == {"id": "no-file"}
    assert rules["unknown-ingredient"]["fullDescription"]["text"] == ROW.meaning


def test_a_log_without_faults_still_has_its_results() -> None:
    """3.14.23: an empty array says that nothing was found; none at all, that nothing was looked for."""
    assert json.loads(faults_sarif([], {}))["runs"][0]["results"] == []


def test_the_same_in_plain_json() -> None:
    row = json.loads(faults_json([AT_LINE]))["faults"][0]
    assert (row["line"], row["column"], row["length"]) == (14, 9, 12)
    assert (row["severity"], row["code"]) == ("error", "unknown-ingredient")
    assert row["way-out"] == "did you mean 'caster sugar'?"
