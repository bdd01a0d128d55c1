"""Work plans that are asked for."""

from datetime import UTC, datetime
from pathlib import Path

import pytest

from sitegen.release.asking import AtFault, BatchWords, NotAsked, asked_sheet
from sitegen.release.plan_print import plan_pdf
from sitegen.release.plans import AskedPlan, PlanWords, asked_plan
from sitegen.release.proof import proof
from tests.release.counter_school import WEDNESDAY, write_counter


@pytest.fixture
def counter(tmp_path: Path) -> Path:
    return write_counter(tmp_path)


def asked(
    root: Path, *names: str, batch: BatchWords | None = None, now: datetime = WEDNESDAY, **words: object
) -> AskedPlan:
    wished = PlanWords(**words)  # type: ignore[arg-type]
    return asked_plan(root, names, "", batch or BatchWords(), wished, now)


def refused(root: Path, *names: str, batch: BatchWords | None = None, **words: object) -> tuple[str, str]:
    with pytest.raises(NotAsked) as problem:
        asked(root, *names, batch=batch, **words)
    return problem.value.sentence, problem.value.way_out


def test_a_recipe_runs_on_its_own_clock_where_no_hour_is_given(counter: Path) -> None:
    made = asked(counter, "iced-buns")
    assert (made.plan.title, made.plan.starts, made.host) == ("Iced buns", "", "tansyrow.example")
    assert made.plan.rows[0].start == "0:00"


def test_it_is_ready_by_an_hour_of_the_schools_wall(counter: Path) -> None:
    assert asked(counter, "iced-buns", ready_by="Saturday 16:00").plan.ready == (
        "16:00, Saturday 28 November 2026"
    )


def test_it_begins_at_an_hour(counter: Path) -> None:
    assert asked(counter, "iced-buns", start="2026-12-05 09:00").plan.starts == (
        "09:00, Saturday 5 December 2026"
    )


def test_two_recipes_share_one_cook(counter: Path) -> None:
    alone = [asked(counter, name).plan for name in ("iced-buns", "almond-cake")]
    together = asked(counter, "iced-buns", "almond-cake").plan
    assert together.title == "Iced buns + Almond cake"
    assert len(together.rows) >= max(len(plan.rows) for plan in alone)


def test_a_recipe_named_twice_is_made_once(counter: Path) -> None:
    assert asked(counter, "iced-buns", "iced-buns").plan == asked(counter, "iced-buns").plan


def test_a_batch_multiplies_what_grows_and_fills_the_oven_again(counter: Path) -> None:
    """36 buns in a tin of 12: three bakes of 20 min, and 36 min of icing for 12."""
    plan = asked(counter, "iced-buns", batch=BatchWords(makes="36")).plan
    told = {row.row.step: row.row.wait.replace("\N{NO-BREAK SPACE}", " ") for row in plan.rows}
    assert told[2] == "3 loads of 20 min"
    at_once = asked(counter, "iced-buns", batch=BatchWords(makes="36"), oven_tins=3).plan
    assert {row.row.step: row.row.wait_min for row in at_once.rows}[2] == 20


def test_a_batch_is_asked_for_with_one_recipe(counter: Path) -> None:
    assert refused(counter, "iced-buns", "almond-cake", batch=BatchWords(makes="36")) == (
        "a batch is asked for with one recipe",
        "write an order file for several",
    )


def test_a_plan_has_one_fast_end(counter: Path) -> None:
    assert refused(counter, "iced-buns", ready_by="Saturday 16:00", start="Saturday 09:00") == (
        "a plan has one fast end",
        "give --ready-by or --start",
    )


def test_nights_off_need_a_day(counter: Path) -> None:
    assert refused(counter, "iced-buns", rest="22:00-07:00")[0] == "nights off need a day"


def test_what_should_have_begun_already_comes_with_the_earliest_hour(counter: Path) -> None:
    sentence, way_out = refused(counter, "iced-buns", ready_by="2026-11-25 12:30")
    assert sentence == "it cannot be ready by then: the work would have had to begin already"
    assert way_out == "the earliest is 2026-11-25 13:12"


def test_the_earliest_hour_can_be_kept(counter: Path) -> None:
    assert asked(counter, "iced-buns", ready_by="2026-11-25 13:12").plan.starts.startswith("12:00")


def test_a_start_that_is_past_is_refused(counter: Path) -> None:
    sentence, way_out = refused(counter, "iced-buns", start="2026-11-25 09:00")
    assert (sentence, way_out) == ("that start is past", "begun now it is ready at 2026-11-25 13:12")


def test_a_day_that_is_too_short_for_a_step_names_it(counter: Path) -> None:
    sentence, _ = refused(counter, "iced-buns", ready_by="Saturday 16:00", rest="16:05-16:00")
    assert sentence.startswith("no day between two nights off is long enough for step 1 of 'Batter'")


def test_of_an_hour_that_comes_twice_the_plan_says_which_is_meant(counter: Path) -> None:
    notes = asked(counter, "iced-buns", ready_by="2027-10-31 01:30").plan.notes
    assert notes[0] == "Clocks go back that night: 01:30 comes twice, and the first is meant."


def test_a_recipe_at_fault_is_told_by_its_faults(counter: Path) -> None:
    file = counter / "content" / "recipes" / "iced-buns" / "recipe.yaml"
    file.write_text(file.read_text().replace("wait: 20 min", "wait: 22-"))
    with pytest.raises(AtFault) as problem:
        asked(counter, "iced-buns")
    (fault,) = problem.value.faults
    assert (fault.code, fault.sentence) == ("duration", "'22-' cannot be put on a clock")


def beaten(counter: Path, *keys: str) -> None:
    """Give the beating of the batter these keys more."""
    file = counter / "content" / "recipes" / "iced-buns" / "recipe.yaml"
    time = "        hands-on: 10 min\n"
    file.write_text(file.read_text().replace(time, time + "".join(f"        {key}\n" for key in keys), 1))


def test_steps_that_wait_in_a_circle_are_a_fault(counter: Path) -> None:
    beaten(counter, "after: [Finish]")
    with pytest.raises(AtFault) as problem:
        asked(counter, "iced-buns")
    assert [fault.code for fault in problem.value.faults] == ["steps-in-a-circle"]


def test_a_plan_that_cannot_be_kept_is_a_fault_that_names_its_steps(counter: Path) -> None:
    """The cake must be iced within the minute of being taken out, and cools for half an hour."""
    file = counter / "content" / "recipes" / "iced-buns" / "recipe.yaml"
    late = "      - text: Spread {Base icing} on {Batter}.\n        after: [Batter]\n"
    text = file.read_text().replace("      - text: Spread {Base icing} on {Batter}.\n", late)
    extra = "  Glaze:\n    method:\n      - {text: Boil., hands-on: 5 min, within: 1 min}\n"
    slow = "  Set:\n    method:\n      - {text: Set., wait: 1 h, after: [Glaze]}\n"
    text = text.replace("after: [Batter]", "after: [Glaze, Set]").replace(
        "  Finish:\n", extra + slow + "  Finish:\n"
    )
    file.write_text(text)
    (fault,) = proof(counter).errors
    assert (fault.code, fault.place.file) == ("plan-cannot-be-kept", "content/recipes/iced-buns/recipe.yaml")
    assert fault.sentence == (
        "no order of work keeps every `within` and `holds`: step 1 of 'Glaze' and step 1 of 'Finish'; "
        "what stands between them takes longer"
    )
    with pytest.raises(AtFault):
        asked_sheet(counter, "iced-buns", "", BatchWords())
    assert refused(counter, "iced-buns")[0] == fault.sentence


def test_an_unknown_recipe_is_asked_after(counter: Path) -> None:
    assert refused(counter, "iced-bun") == ("there is no recipe 'iced-bun'", "did you mean 'iced-buns'?")


@pytest.mark.parametrize("paper", ["", "letter"])
def test_a_plan_is_printed(counter: Path, paper: str) -> None:
    made = asked(counter, "iced-buns", ready_by="Saturday 16:00")
    assert plan_pdf(counter, made, paper).startswith(b"%PDF-")


def test_the_clock_of_the_machine_is_told_and_not_asked(counter: Path) -> None:
    later = datetime(2026, 12, 1, 12, tzinfo=UTC)
    assert asked(counter, "iced-buns", ready_by="Saturday 16:00", now=later).plan.ready.endswith(
        "5 December 2026"
    )
