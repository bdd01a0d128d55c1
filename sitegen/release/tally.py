"""How many of what, in words: at a terminal and on the desk."""

from collections.abc import Sequence

from sitegen.faults import Fault, Severity


def counted(count: int, one: str, many: str | None = None) -> str:
    """'1 page', '2,000 pages'. many: the plural, where it is not that with an 's'."""
    return f"{count:,} {one if count == 1 else many or one + 's'}"


def tally(faults: Sequence[Fault]) -> str:
    """How many of each: '2 errors, 1 piece of advice'; 'no faults' for none."""
    errors = sum(fault.severity is Severity.ERROR for fault in faults)
    advice = len(faults) - errors
    told = [counted(errors, "error")] if errors else []
    told += [counted(advice, "piece of advice", "pieces of advice")] if advice else []
    return ", ".join(told) or "no faults"
