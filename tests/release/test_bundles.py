"""Which cards go into which bundle."""

from datetime import date

import pytest

from sitegen.release.bundles import (
    MONTHS_BACK,
    Bundle,
    BundledCard,
    BundledRecipe,
    Change,
    Why,
    bundles_of,
    changes_by_recipe,
    first_days,
)

TODAY = date(2026, 8, 20)


def recipe(title: str, released: date, *changed: date) -> BundledRecipe:
    changes = tuple(Change(day, f"Changed on {day}.", title) for day in changed)
    return BundledRecipe(title.lower(), title, released, changes, (BundledCard(f"{title}.pdf", "k", "A4"),))


BAY = recipe("Bay", date(2026, 5, 1), date(2026, 7, 20), date(2026, 8, 2))
FIG = recipe("Fig", date(2026, 7, 31))
OAT = recipe("Oat", date(2025, 1, 9))


def told(bundles: tuple[Bundle, ...]) -> dict[str, list[tuple[str, Why, int]]]:
    return {
        bundle.name: [(item.recipe.title, item.why, len(item.changes)) for item in bundle.items]
        for bundle in bundles
    }


def test_each_month_of_releases_has_its_bundle() -> None:
    months = {
        name: items for name, items in told(bundles_of([FIG, OAT, BAY], TODAY)).items() if name[0] == "2"
    }
    assert months == {
        "2026-07": [("Fig", Why.NEW, 0)],
        "2026-05": [("Bay", Why.NEW, 0)],
        "2025-01": [("Oat", Why.NEW, 0)],
    }


def test_who_printed_all_on_a_day_finds_what_to_print_again() -> None:
    found = told(bundles_of([BAY, FIG, OAT], TODAY))
    assert found["changed-since-2026-08-01"] == [("Bay", Why.CHANGED, 1)]
    assert found["changed-since-2026-07-01"] == [("Bay", Why.CHANGED, 2), ("Fig", Why.NEW, 0)]
    assert found["changed-since-2026-05-01"] == [("Bay", Why.NEW, 2), ("Fig", Why.NEW, 0)]


@pytest.mark.parametrize(
    "printed", [date(2026, 8, 1), date(2026, 7, 20), date(2026, 7, 3), date(2026, 5, 31)]
)
def test_no_change_after_a_day_is_missing_in_the_bundle_of_its_month(printed: date) -> None:
    bundle = next(
        one
        for one in bundles_of([BAY, FIG, OAT], TODAY)
        if one.is_of_changes and one.begins == printed.replace(day=1)
    )
    due = {
        one.title for one in (BAY, FIG, OAT) if max([one.released, *(c.day for c in one.changes)]) > printed
    }
    assert due <= {item.recipe.title for item in bundle.items}


def test_nothing_new_makes_no_bundle() -> None:
    assert list(told(bundles_of([OAT], TODAY))) == ["2025-01"]
    assert bundles_of([], TODAY) == ()


def test_months_are_counted_back_over_the_turn_of_the_year() -> None:
    days = first_days(date(2027, 2, 28))
    assert days[:4] == (date(2027, 2, 1), date(2027, 1, 1), date(2026, 12, 1), date(2026, 11, 1))
    assert len(days) == MONTHS_BACK


def test_a_change_of_a_base_recipe_changes_all_that_is_made_of_it() -> None:
    base, own = Change(date(2026, 7, 1), "Less salt.", "Cream"), Change(date(2026, 6, 1), "More bay.", "Bay")
    found = changes_by_recipe({"cream": [base], "bay": [own]}, {"bay": ["bay", "cream"], "cream": ["cream"]})
    assert found == {"bay": (own, base), "cream": (base,)}


def test_the_order_in_which_recipes_come_changes_nothing() -> None:
    assert bundles_of([OAT, FIG, BAY], TODAY) == bundles_of([BAY, FIG, OAT], TODAY)
