"""Spans of plans against OR-Tools CP-SAT, a general-purpose constraint solver from the registry."""

from random import Random

import pytest
from ortools.sat.python import cp_model

from sitegen.timing.problem import Demand, Gap, Problem, Resource, backwards
from sitegen.timing.search import OutOfTries
from sitegen.timing.shortest import shortest

RESOURCES = (Resource("hands"), Resource("oven"), Resource("mixer"))


def random_work(seed: int) -> Problem:
    """5 to 25 steps in two or more components, with least and greatest gaps; one cook, oven and mixer."""
    dice = Random(seed)
    count = dice.randint(5, 25)
    hands = [dice.choice([0, 2, 3, 5, 5, 8, 10, 15, 20]) for _ in range(count)]
    waits = [dice.choice([0, 0, 0, 10, 20, 25, 45, 60, 120]) for _ in range(count)]
    lengths = tuple(hand + wait for hand, wait in zip(hands, waits, strict=True))
    demands, gaps, last = [], [], {}
    for step in range(count):
        component = dice.randrange(max(2, count // 4))
        if component in last:
            before = last[component]
            gaps.append(Gap(before, step, lengths[before]))
            if dice.random() < 0.25:
                gaps.append(Gap(step, before, -lengths[before] - dice.choice([0, 5, 10, 20, 60])))
        if step > 2 and dice.random() < 0.15:
            before = dice.randrange(step)
            gaps.append(Gap(before, step, lengths[before]))
        last[component] = step
        demands.append(Demand(step, 0, 0, hands[step]))
        if dice.random() < 0.3:
            demands.append(Demand(step, 1, hands[step], waits[step], state=dice.choice(["160", "180"])))
        if dice.random() < 0.2:
            demands.append(Demand(step, 2, 0, hands[step]))
    return Problem(lengths, RESOURCES, tuple(demands), tuple(gaps))


def span_by_cp_sat(problem: Problem) -> int | None:
    """The least span, proved; None where no plan exists."""
    model = cp_model.CpModel()
    horizon = sum(problem.lengths) + sum(abs(gap.lag) for gap in problem.gaps)
    starts = [model.new_int_var(0, horizon, f"start {step}") for step in range(len(problem.lengths))]
    span = model.new_int_var(0, horizon, "span")
    for start, length in zip(starts, problem.lengths, strict=True):
        model.add(span >= start + length)
    for gap in problem.gaps:
        model.add(starts[gap.then] >= starts[gap.first] + gap.lag)
    for place in range(len(problem.resources)):
        model.add_no_overlap(
            model.new_fixed_size_interval_var(starts[one.task] + one.offset, one.length, "busy")
            for one in problem.demands
            if one.resource == place and one.length
        )
    model.minimize(span)
    solver = cp_model.CpSolver()
    solver.parameters.num_workers = 1
    status = solver.solve(model)
    assert status in (cp_model.OPTIMAL, cp_model.INFEASIBLE)
    return int(solver.objective_value) if status == cp_model.OPTIMAL else None


@pytest.mark.parametrize("seed", range(200))
def test_the_span_is_the_least_there_is(seed: int) -> None:
    problem = random_work(seed)
    horizon = sum(problem.lengths) + sum(abs(gap.lag) for gap in problem.gaps)
    least = span_by_cp_sat(problem)
    found = shortest(problem, horizon)
    if least is None:
        assert found is None
    else:
        assert found is not None
        assert found.span == found.bound == least


@pytest.mark.parametrize("seed", range(0, 200, 5))
def test_seen_from_its_end_the_work_takes_as_long(seed: int) -> None:
    problem = random_work(seed)
    horizon = sum(problem.lengths) + sum(abs(gap.lag) for gap in problem.gaps)
    found, turned = shortest(problem, horizon), shortest(backwards(problem), horizon)
    assert (found and found.span) == (turned and turned.span)


def test_some_of_this_work_cannot_be_planned_and_most_can() -> None:
    impossible = [seed for seed in range(200) if span_by_cp_sat(random_work(seed)) is None]
    assert 0 < len(impossible) < 40


@pytest.mark.parametrize("seed", range(1000, 1004))
def test_work_too_large_for_a_proof_states_a_bound_that_holds(seed: int) -> None:
    parts = [random_work(seed * 10 + part) for part in range(4)]
    problem = joined(parts)
    horizon = sum(problem.lengths) + sum(abs(gap.lag) for gap in problem.gaps)
    try:
        found = shortest(problem, horizon)
    except OutOfTries:
        pytest.fail("no plan at all was found")
    least = span_by_cp_sat(problem)
    if least is None:
        assert found is None
    else:
        assert found is not None
        assert found.bound <= least <= found.span


def test_work_whose_first_plan_is_hard_to_find_is_planned() -> None:
    """Found by trying many: a search that only looks ahead gives these up."""
    for seed in (2008, 2034):
        problem = joined([random_work(seed * 10 + part) for part in range(4)])
        found = shortest(problem, sum(problem.lengths) + sum(abs(gap.lag) for gap in problem.gaps))
        assert found is not None
        assert found.bound <= found.span


def joined(parts: list[Problem]) -> Problem:
    """Several pieces of work for the same hands, oven and mixer."""
    lengths: list[int] = []
    demands: list[Demand] = []
    gaps: list[Gap] = []
    for part in parts:
        first = len(lengths)
        lengths += part.lengths
        demands += [
            Demand(one.task + first, one.resource, one.offset, one.length, one.amount, one.state)
            for one in part.demands
        ]
        gaps += [Gap(gap.first + first, gap.then + first, gap.lag) for gap in part.gaps]
    return Problem(tuple(lengths), RESOURCES, tuple(demands), tuple(gaps))
