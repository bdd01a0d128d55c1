"""The rows of a formula under the names of their parts, for whatever prints it."""

from itertools import groupby

from sitegen.sheet.panel_values import Formula, FormulaRow

FINAL_DOUGH = "Final dough"
"""What bakers call that which is mixed on the day, beside the preferment."""

FormulaParts = tuple[tuple[str, tuple[FormulaRow, ...]], ...]


def formula_parts(formula: Formula) -> FormulaParts:
    """(title, rows) in the order of the rows; a dough that is mixed at once is one part without a title."""
    groups = [(part, tuple(rows)) for part, rows in groupby(formula.rows, key=lambda row: row.part)]
    if len(groups) < 2:
        return tuple(groups)
    return tuple((part or FINAL_DOUGH, rows) for part, rows in groups)
