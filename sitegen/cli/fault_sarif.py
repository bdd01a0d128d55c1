"""Faults as OASIS SARIF 2.1.0, which CI services show beside the line.

Clauses in the comments are those of the standard (sarif-v2.1.0-os).
"""

import json
from collections.abc import Mapping, Sequence
from urllib.parse import quote

from sitegen import __version__
from sitegen.faults import Fault, FaultCode, Severity

_SCHEMA = "https://docs.oasis-open.org/sarif/sarif/v2.1.0/os/schemas/sarif-schema-2.1.0.json"
_LEVELS = {Severity.ERROR: "error", Severity.ADVICE: "note"}  # 3.27.10
_ROOT = "CONTENT_ROOT"


def faults_sarif(faults: Sequence[Fault], catalogue: Mapping[str, FaultCode]) -> str:
    """A log of one run: the rules that fired, in the order of their codes, and a result for each fault."""
    codes = sorted({fault.code for fault in faults})
    run = {
        "tool": {
            "driver": {
                "name": "sitegen",
                "version": __version__,
                "rules": [_rule(code, catalogue.get(code)) for code in codes],
            }
        },
        "columnKind": "unicodeCodePoints",  # 3.14.27
        "originalUriBaseIds": {  # 3.14.14
            _ROOT: {"description": {"text": "The folder that holds content/"}}
        },
        "results": [_result(fault, codes.index(fault.code)) for fault in faults],
    }
    log = {"$schema": _SCHEMA, "version": "2.1.0", "runs": [run]}
    return json.dumps(log, ensure_ascii=False, indent=2) + "\n"


def _rule(code: str, row: FaultCode | None) -> dict[str, object]:
    """A reportingDescriptor, 3.49."""
    if row is None:
        return {"id": code}
    return {
        "id": code,
        "fullDescription": {"text": row.meaning},
        "help": {"text": row.cure},
        "defaultConfiguration": {"level": _LEVELS[row.severity]},
    }


def _result(fault: Fault, rule: int) -> dict[str, object]:
    """A result, 3.27: the message is one sentence with its full stop."""
    way_out = f" {_sentence(fault.way_out)}" if fault.way_out else ""
    return {
        "ruleId": fault.code,
        "ruleIndex": rule,
        "level": _LEVELS[fault.severity],
        "message": {"text": _sentence(fault.sentence) + way_out},
        "locations": [{"physicalLocation": _location(fault)}],
    }


def _location(fault: Fault) -> dict[str, object]:
    """A physicalLocation, 3.29; a fault of a whole file has no region (3.30.5 asks for lines from 1)."""
    artifact = {"uri": quote(fault.place.file), "uriBaseId": _ROOT}
    if not fault.place.line:
        return {"artifactLocation": artifact}
    column = max(fault.place.column, 1)
    region = {
        "startLine": fault.place.line,
        "startColumn": column,
        "endColumn": column + max(fault.place.length, 1),  # 3.30.8: one past the last character
    }
    return {"artifactLocation": artifact, "region": region}


def _sentence(text: str) -> str:
    capital = text[:1].upper() + text[1:] if not text.startswith(("'", '"')) else text
    return capital if capital.endswith(("?", ".", "!")) else capital + "."
