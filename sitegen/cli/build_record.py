"""A build in figures, for programs: what the closing table says, with times, as one JSON object."""

import json
from collections.abc import Sequence

from sitegen.cli.step_log import StepRow
from sitegen.release.report import Report


def build_record(report: Report, steps: Sequence[StepRow]) -> str:
    """Seconds by the wall clock, bytes, counts of files; which file changed and why tells `report.json`."""
    changes = report.changes
    record = {
        "on": report.on,
        "sitegen": report.sitegen,
        "files": {
            "all": len(report.files),
            "new": len(changes.added),
            "changed": len(changes.changed),
            "gone": len(changes.removed),
            "as-before": report.same,
        },
        "bytes": sum(file.size for file in report.files.values()),
        "seconds": round(sum(row.seconds for row in steps), 3),
        "steps": [
            {
                "step": row.step.title,
                "seconds": round(row.seconds, 3),
                "made": row.made,
                "reused": row.reused,
            }
            for row in steps
        ],
    }
    return json.dumps(record, indent=2) + "\n"
