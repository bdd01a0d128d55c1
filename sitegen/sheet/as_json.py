"""A sheet or a drift as JSON: the same names and texts; exact amounts as fractions, shares as decimals."""

import json
from collections.abc import Sequence
from dataclasses import asdict
from datetime import datetime
from fractions import Fraction

from sitegen.sheet.drift import SheetDrift
from sitegen.sheet.order_values import OrderSheet
from sitegen.sheet.values import Sheet
from sitegen.sheet.work_values import DayPlan


def sheet_json(sheet: Sheet) -> str:
    """The whole sheet, indented, keys in the order of `values.py`; a Fraction becomes '3/2'."""
    return json.dumps(asdict(sheet), ensure_ascii=False, indent=2, default=_plain)


def plan_json(plan: DayPlan) -> str:
    """A plan of the day, as `sheet_json` sets a sheet; hours are ISO 8601 with their offset."""
    return json.dumps(asdict(plan), ensure_ascii=False, indent=2, default=_plain)


def order_json(order: OrderSheet) -> str:
    """A production day, as `plan_json` sets its plan."""
    return json.dumps(asdict(order), ensure_ascii=False, indent=2, default=_plain)


def _plain(value: object) -> str:
    if isinstance(value, Fraction):
        return str(value)
    if isinstance(value, datetime):
        return value.isoformat()
    raise TypeError(f"a sheet holds no {type(value).__name__}")


def drift_json(drifts: Sequence[SheetDrift]) -> str:
    """Every line's share in % before and after, and the points between, to three decimals."""
    rows = [asdict(each) for each in drifts]
    return json.dumps(rows, ensure_ascii=False, indent=2, default=_decimal)


def _decimal(value: object) -> float:
    if isinstance(value, Fraction):
        return round(float(value), 3)
    raise TypeError(f"a drift holds no {type(value).__name__}")
