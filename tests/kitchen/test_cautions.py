"""A caution is printed where a recipe calls for it, and nowhere else."""

from fractions import Fraction

import pytest

from sitegen.kitchen.cautions import (
    CautionRow,
    ComponentFacts,
    LineFacts,
    StepFacts,
    Trigger,
    cautions_for,
    step_cautions,
)


def caution(key: str, *triggers: Trigger, level: str = "amber") -> CautionRow:
    return CautionRow(key, level, key, "", "common-practice", triggers)


HOT_SUGAR = caution(
    "hot-sugar", Trigger(at_least_c=Fraction(105)), Trigger(words=("caramelis*", "to amber")), level="red"
)
RAW_EGG = caution(
    "raw-egg",
    Trigger(roles=frozenset({"egg"}), unless_c=Fraction(71), unless_words=("boil*",), baked=False),
    level="red",
)
WHOLE_NUTS = caution("nuts", Trigger(roles=frozenset({"nut"}), unless_line_words=("ground",)))
TORCH = caution("torch", Trigger(words=("blowtorch", "torch")))
TABLE = (TORCH, WHOLE_NUTS, HOT_SUGAR, RAW_EGG)


def egg_line() -> LineFacts:
    return LineFacts("2 medium eggs", frozenset({"egg"}))


def step(text: str, *celsius: int, uses: tuple[int, ...] = ()) -> StepFacts:
    return StepFacts(text, tuple(map(Fraction, celsius)), uses)


def facts(*steps: StepFacts, lines: tuple[LineFacts, ...] = (), baked: bool = False) -> ComponentFacts:
    return ComponentFacts("It", lines, steps, baked)


def keys(component: ComponentFacts) -> list[str]:
    return [row.key for row in cautions_for(TABLE, [component])]


def keys_at_steps(component: ComponentFacts) -> list[list[str]]:
    return [[row.key for row in rows] for rows in step_cautions(TABLE, component)]


@pytest.mark.parametrize(
    ("sentence", "celsius", "called"),
    [
        ("Boil the syrup to", 118, ["hot-sugar"]),
        ("Boil the syrup to", 103, []),  # a brushing syrup is an ordinary hot liquid
        ("Swirl until it caramelises.", 20, ["hot-sugar"]),
        ("Fold in the caramel pieces.", 20, []),
        ("Pass a blowtorch over the top.", 20, ["torch"]),
        ("Scorch nothing.", 20, []),  # 'torch' only as a whole word
    ],
)
def test_words_and_temperatures_of_steps(sentence: str, celsius: int, called: list[str]) -> None:
    assert keys(facts(step(sentence, celsius))) == called


@pytest.mark.parametrize(
    ("component", "called"),
    [
        (facts(step("Whisk {eggs} and sugar."), lines=(egg_line(),)), True),
        (facts(step("Whisk, then bake."), lines=(egg_line(),), baked=True), False),
        (facts(step("Whisk over steam to", 71), lines=(egg_line(),)), False),
        (facts(step("Whisk over steam to", 65), lines=(egg_line(),)), True),
        (facts(step("Whisk."), step("Let it boil for a minute."), lines=(egg_line(),)), False),
        (facts(step("Beat the butter.")), False),
    ],
)
def test_raw_egg_is_said_only_where_it_stays_raw(component: ComponentFacts, called: bool) -> None:
    assert ("raw-egg" in keys(component)) is called


def test_ground_nuts_choke_nobody() -> None:
    ground = LineFacts("100 g ground almonds", frozenset({"nut"}))
    whole = LineFacts("50 g whole almonds", frozenset({"nut"}))
    assert keys(facts(lines=(ground,))) == []
    assert keys(facts(lines=(ground, whole))) == ["nuts"]


def test_red_comes_before_amber() -> None:
    component = facts(step("Caramelise with a torch."))
    assert keys(component) == ["hot-sugar", "torch"]


def test_each_caution_is_said_once_for_all_components() -> None:
    one = facts(step("Use the torch."))
    assert cautions_for(TABLE, [one, one]) == (TORCH,)


def test_a_caution_stands_at_the_step_that_calls_for_it() -> None:
    component = facts(step("Boil to", 118), step("Cool it."), step("Use the torch."))
    assert keys_at_steps(component) == [["hot-sugar"], [], ["torch"]]


def test_a_caution_for_an_ingredient_stands_where_it_is_used() -> None:
    component = facts(step("Whisk them.", uses=(0,)), step("Chill.", uses=()), lines=(egg_line(),))
    assert keys_at_steps(component) == [["raw-egg"], []]


def test_no_step_warns_of_what_the_component_makes_safe() -> None:
    component = facts(step("Whisk them.", uses=(0,)), step("Bring to the boil."), lines=(egg_line(),))
    assert keys_at_steps(component) == [[], []]
