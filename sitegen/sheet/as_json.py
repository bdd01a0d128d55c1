"""A sheet as JSON: the same names and texts, exact numbers as fractions."""

import json
from dataclasses import asdict
from fractions import Fraction

from sitegen.sheet.values import Sheet


def sheet_json(sheet: Sheet) -> str:
    """The whole sheet, indented, keys in the order of `values.py`; a Fraction becomes '3/2'."""
    return json.dumps(asdict(sheet), ensure_ascii=False, indent=2, default=_plain)


def _plain(value: object) -> str:
    if isinstance(value, Fraction):
        return str(value)
    raise TypeError(f"a sheet holds no {type(value).__name__}")
