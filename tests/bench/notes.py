"""What old notes become: `python -m tests.bench.notes` prints a row for each of `tests/notes/written/`."""

from time import process_time

from tests.notes.measured import TRUTH, Measured, measured

GROUPS = {
    "before the code": "before",
    "after it": "after",
    "held back": "held back",
    "held back again": "held back again",
    "later": "later",
}
"""What a sum is called -> when its notes were written: those held back after the code, tried once unseen."""
HEAD = ("notes", "written", "lines", "ingredients", "placed", "facts", "ovens, waits", "else", "errors")


def row(one: Measured) -> tuple[str, ...]:
    pairs = (one.lines, one.ingredients, one.placed, one.facts, one.times)
    return (
        one.name,
        one.since,
        *(f"{right}/{wanted}" for right, wanted in pairs),
        str(one.invented),
        str(one.errors),
    )


def main() -> None:
    began = process_time()
    found = [measured(name) for name in TRUTH]
    rows = [HEAD, *map(row, found)]
    for label, which in GROUPS.items():
        chosen = [one for one in found if one.since == which]
        pairs = [
            tuple(sum(getattr(one, key)[index] for one in chosen) for index in (0, 1))
            for key in ("lines", "ingredients", "placed", "facts", "times")
        ]
        sums = [f"{right}/{wanted}" for right, wanted in pairs]
        rows.append(
            (
                label,
                "",
                *sums,
                str(sum(one.invented for one in chosen)),
                str(sum(one.errors for one in chosen)),
            )
        )
    widths = [max(len(row[index]) for row in rows) for index in range(len(HEAD))]
    for cells in rows:
        print("  ".join(cell.ljust(width) for cell, width in zip(cells, widths, strict=True)).rstrip())
    print(f"{process_time() - began:.2f} s of CPU")


if __name__ == "__main__":
    main()
