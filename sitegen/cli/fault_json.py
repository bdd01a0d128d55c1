"""Faults for other programs, as one JSON object."""

import json
from collections.abc import Sequence

from sitegen.faults import Fault


def faults_json(faults: Sequence[Fault]) -> str:
    """All faults in the order they are told in; every figure counts from 1, 0 for a whole file."""
    return json.dumps({"faults": [_fault(fault) for fault in faults]}, ensure_ascii=False, indent=2) + "\n"


def _fault(fault: Fault) -> dict[str, object]:
    return {
        "file": fault.place.file,
        "line": fault.place.line,
        "column": fault.place.column,
        "length": fault.place.length,
        "severity": fault.severity.value,
        "code": fault.code,
        "sentence": fault.sentence,
        "way-out": fault.way_out,
    }
