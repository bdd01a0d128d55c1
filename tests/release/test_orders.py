"""Production days that are asked for: what comes of an order file, and what is refused."""

import shutil
from dataclasses import replace
from datetime import UTC, datetime
from pathlib import Path

import pytest

from sitegen.release.asking import AtFault, BatchWords, NotAsked, asked_sheet
from sitegen.release.order_print import order_pdf
from sitegen.release.orders import OrderWords, asked_order
from sitegen.release.proof import proof
from tests.release.counter_school import ORDER, WEDNESDAY, asked, write_counter


@pytest.fixture
def counter(tmp_path: Path) -> Path:
    return write_counter(tmp_path)


def write_order(root: Path, *changes: tuple[str, str], name: str = "market") -> None:
    text = ORDER
    for old, new in changes:
        assert old in text
        text = text.replace(old, new)
    (root / "content" / "orders" / f"{name}.yaml").write_text(text)


def test_the_school_of_these_tests_has_no_fault(counter: Path) -> None:
    assert proof(counter).faults == ()


def test_a_weekday_is_the_next_one_and_what_is_asked_goes_before_the_file(counter: Path) -> None:
    assert asked(counter).sheet.plan.ready == "09:00, Saturday 28 November 2026"
    assert asked(counter, ready_by="2026-12-05 16:00").sheet.plan.ready == "16:00, Saturday 5 December 2026"


def test_more_cooks_are_never_slower(counter: Path) -> None:
    one, two = (asked(counter, cooks=cooks).sheet.plan for cooks in (1, 2))
    assert "one cook" in one.proof
    assert "2 cooks" in two.proof
    assert two.rows[0].row.start_min == one.rows[0].row.start_min == 0
    assert max(row.row.start_min for row in two.rows) <= max(row.row.start_min for row in one.rows)


def test_an_order_without_an_hour_runs_on_its_own_clock(counter: Path) -> None:
    write_order(counter, ("ready-by: Saturday 09:00\n", ""))
    plan = asked(counter).sheet.plan
    assert (plan.starts, plan.ready, plan.rows[0].start) == ("", "", "0:00")


@pytest.mark.parametrize("name", ["market", "market.yaml", "content/orders/market.yaml"])
def test_an_order_is_found_by_its_name_or_its_path(
    counter: Path, name: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(counter)
    assert asked_order(counter, Path(name), OrderWords(), WEDNESDAY).sheet.title == "Market day"


def test_an_order_file_may_lie_anywhere(counter: Path, tmp_path_factory: pytest.TempPathFactory) -> None:
    file = tmp_path_factory.mktemp("elsewhere") / "a.yaml"
    file.write_text(ORDER)
    assert asked_order(counter, file, OrderWords(), WEDNESDAY).sheet.title == "Market day"


def test_a_file_that_is_not_there_is_refused_with_those_that_are(counter: Path) -> None:
    with pytest.raises(NotAsked) as problem:
        asked_order(counter, Path("fair"), OrderWords(), WEDNESDAY)
    assert problem.value.way_out == "in content/orders there are market.yaml"


@pytest.mark.parametrize("words", [{"ready_by": "soon"}, {"edition": "martian"}])
def test_words_that_say_nothing_are_refused(counter: Path, words: dict[str, str]) -> None:
    with pytest.raises(NotAsked):
        asked(counter, **words)


def test_what_should_have_begun_already_is_refused_with_the_earliest_hour(counter: Path) -> None:
    late = datetime(2026, 11, 28, 8, 30, tzinfo=UTC)
    with pytest.raises(NotAsked) as problem:
        asked_order(counter, Path("market"), OrderWords(), late)
    assert problem.value.way_out == "the earliest is 2026-11-28 11:10"


def test_a_fault_of_the_order_is_told_with_its_line(counter: Path) -> None:
    write_order(counter, ("36 buns", "36 loaves"))
    with pytest.raises(AtFault) as problem:
        asked(counter)
    (fault,) = problem.value.faults
    assert (fault.place.file, fault.place.line, fault.code) == ("content/orders/market.yaml", 4, "batch")
    assert problem.value.texts[fault.place.file][3] == "  iced-buns: 36 loaves"


def test_a_batch_that_no_recipe_gives_is_found_by_proof_and_refused(counter: Path) -> None:
    write_order(counter, ("36 buns", "90000 buns"))
    assert [fault.code for fault in proof(counter).errors] == ["order-cannot-be-made"]
    with pytest.raises(NotAsked):
        asked(counter)


def test_a_fault_of_a_recipe_that_is_not_ordered_does_not_stand_in_the_way(counter: Path) -> None:
    cake = counter / "content" / "recipes" / "almond-cake" / "recipe.yaml"
    cake.write_text(cake.read_text().replace("makes: 1 cake", "makes: plenty"))
    with pytest.raises(AtFault) as problem:
        asked(counter)
    assert {fault.code for fault in problem.value.faults} == {"yield"}
    write_order(counter, ("  almond-cake: 2 cakes\n", ""))
    assert [one.title for one in asked(counter).sheet.products] == ["Iced buns", "Base icing"]


def test_an_order_of_a_recipe_that_cannot_be_read_has_no_fault_of_its_own(counter: Path) -> None:
    cake = counter / "content" / "recipes" / "almond-cake" / "recipe.yaml"
    cake.write_text(cake.read_text().replace("makes: 1 cake", "makes: plenty"))
    assert {fault.place.file for fault in proof(counter).faults} == {
        "content/recipes/almond-cake/recipe.yaml"
    }


def test_a_broken_order_does_not_stand_in_the_way_of_a_sheet(counter: Path) -> None:
    write_order(counter, ("36 buns", "36 loaves"))
    assert asked_sheet(counter, "iced-buns", "", BatchWords()).sheet.head.title == "Iced buns"


def test_costs_are_left_out_where_they_are_not_wanted_or_not_known(counter: Path) -> None:
    assert asked(counter).sheet.cost is not None
    assert asked(counter, with_costs=False).sheet.cost is None
    (counter / "content" / "prices.yaml").unlink()
    assert asked(counter).sheet.cost is None


def test_the_order_is_printed_in_the_schools_theme_and_on_its_paper(counter: Path) -> None:
    assert order_pdf(counter, asked(counter), "").startswith(b"%PDF-1.7")


def test_a_theme_that_cannot_be_used_is_told(counter: Path) -> None:
    found = asked(counter)
    with pytest.raises(NotAsked) as problem:
        order_pdf(counter, replace(found, school=replace(found.school, theme="nowhere")), "a4")
    assert "theme 'nowhere'" in problem.value.sentence


def test_a_theme_of_the_schools_own_that_lays_out_no_order_is_told(counter: Path) -> None:
    theme = counter / "themes" / "oatcloth"
    shutil.copytree(Path(__file__).parents[2] / "themes" / "oatcloth", theme)
    (theme / "templates" / "order.html").unlink()
    with pytest.raises(NotAsked) as problem:
        order_pdf(counter, asked(counter), "a4")
    assert "templates/order.html" in problem.value.sentence
