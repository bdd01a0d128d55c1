"""How many processes to work with where nobody says."""

import os


def cores() -> int:
    """The cores that this process may use, which a container may have fewer of than the machine."""
    if hasattr(os, "sched_getaffinity"):
        return len(os.sched_getaffinity(0))
    return os.cpu_count() or 1
