"""A caution is told where a recipe calls for it, and nowhere else."""

from fractions import Fraction

import pytest

from sitegen.kitchen.caution_calls import cautions_for, step_cautions, with_passed_on
from sitegen.kitchen.cautions import CautionRow, ComponentFacts, LineFacts, PassesOn, StepFacts, Trigger


def caution(
    key: str, *triggers: Trigger, level: str = "amber", passes_on: PassesOn | None = None
) -> CautionRow:
    return CautionRow(key, level, key, "", "common-practice", triggers, passes_on)


HOT_SUGAR = caution(
    "hot-sugar",
    Trigger(at_least_c=Fraction(105), unless_step_words=("oil",)),
    Trigger(words=("caramelis*", "to amber"), in_oven=False),
    Trigger(roles=frozenset({"hot sugar"}), words=("dip*", "pour*"), same_step=True),
    level="red",
    passes_on=PassesOn("hot sugar", ("cool*",)),
)
RAW_EGG = caution(
    "raw-egg",
    Trigger(roles=frozenset({"egg"}), unless_c=Fraction(71), unless_words=("boil*",), baked=False),
    Trigger(roles=frozenset({"egg"}), at_least_c=Fraction(105), at_lines=True, baked=False),
    level="red",
)
WHOLE_NUTS = caution("nuts", Trigger(roles=frozenset({"nut"}), unless_line_words=("ground",)))
TORCH = caution("torch", Trigger(words=("blowtorch", "torch")))
DUST = caution("dust", Trigger(roles=frozenset({"flour"}), at_least_g=Fraction(3000)))
NUTMEG = caution("nutmeg", Trigger(line_words=("nutmeg",), at_least_portion_g=Fraction(1)))
SPITS = caution(
    "spits",
    Trigger(
        roles=frozenset({"dairy"}), with_roles=frozenset({"hot sugar"}), words=("pour*",), same_step=True
    ),
)
HARD = caution("hard", Trigger(at_least_c=Fraction(146), unless_roles=frozenset({"dairy"})))
CUSTARD = caution("custard", Trigger(roles=frozenset({"egg"}), titled=("cheesecake",), baked=True))
TABLE = (TORCH, WHOLE_NUTS, HOT_SUGAR, RAW_EGG, DUST, NUTMEG, SPITS, HARD, CUSTARD)


def line(text: str, *roles: str, grams: int | None = None, portion: str | None = None) -> LineFacts:
    return LineFacts(
        text,
        frozenset(roles),
        None if grams is None else Fraction(grams),
        None if portion is None else Fraction(portion),
    )


EGGS = line("2 medium eggs", "egg")
CREAM = line("100 g double cream", "dairy")


def takes(title: str) -> LineFacts:
    return LineFacts(f"all of {title}", frozenset(), part=title)


def step(text: str, *celsius: int, uses: tuple[int, ...] = (), oven: bool = False) -> StepFacts:
    return StepFacts(text, tuple(map(Fraction, celsius)), uses, oven)


def facts(
    *steps: StepFacts, lines: tuple[LineFacts, ...] = (), baked: bool = False, title: str = "It"
) -> ComponentFacts:
    return ComponentFacts(title, lines, steps, baked)


def keys(*components: ComponentFacts) -> list[str]:
    return [row.key for row in cautions_for(TABLE, with_passed_on(TABLE, components))]


def keys_at_steps(*components: ComponentFacts) -> list[list[str]]:
    """Of the last of the components."""
    last = with_passed_on(TABLE, components)[-1]
    return [[row.key for row in rows] for rows in step_cautions(TABLE, last)]


@pytest.mark.parametrize(
    ("sentence", "celsius", "called"),
    [
        ("Boil the syrup to", 118, ["hot-sugar"]),
        ("Boil the syrup to", 103, []),  # a brushing syrup is an ordinary hot liquid
        ("Heat the oil to", 140, []),
        ("Swirl until it caramelises.", 20, ["hot-sugar"]),
        ("Fold in the caramel pieces.", 20, []),
        ("Pass a blowtorch over the top.", 20, ["torch"]),
        ("Scorch nothing.", 20, []),  # 'torch' only as a whole word
    ],
)
def test_words_and_temperatures_of_steps(sentence: str, celsius: int, called: list[str]) -> None:
    assert keys(facts(step(sentence, celsius))) == called


def test_what_browns_in_the_oven_is_no_sugar_on_the_hob() -> None:
    assert keys(facts(step("Until the edges caramelise.", oven=True))) == []
    assert keys(facts(step("Until the edges caramelise."))) == ["hot-sugar"]


@pytest.mark.parametrize(
    ("component", "called"),
    [
        (facts(step("Whisk {eggs} and sugar."), lines=(EGGS,)), True),
        (facts(step("Whisk, then bake."), lines=(EGGS,), baked=True), False),
        (facts(step("Whisk.", uses=(0,)), step("Bake.", oven=True), lines=(EGGS,)), False),
        (facts(step("Bake.", oven=True), step("Whisk a glaze.", uses=(0,)), lines=(EGGS,)), True),
        (facts(step("Whisk over steam to", 71), lines=(EGGS,)), False),
        (facts(step("Whisk over steam to", 65), lines=(EGGS,)), True),
        (facts(step("Whisk."), step("Let it boil for a minute."), lines=(EGGS,)), False),
        (facts(step("Boil the cream."), step("Pour it on {eggs}.", uses=(0,)), lines=(EGGS,)), True),
        (facts(step("Whisk {eggs}; pour on syrup at", 118, uses=(0,)), lines=(EGGS,)), True),
        (facts(step("Beat the butter.")), False),
    ],
)
def test_raw_egg_is_said_only_where_it_stays_raw(component: ComponentFacts, called: bool) -> None:
    assert ("raw-egg" in keys(component)) is called


def test_ground_nuts_choke_nobody() -> None:
    ground, whole = line("100 g ground almonds", "nut"), line("50 g whole almonds", "nut")
    assert keys(facts(lines=(ground,))) == []
    assert keys(facts(lines=(ground, whole))) == ["nuts"]


@pytest.mark.parametrize(("grams", "called"), [(2999, []), (3000, ["dust"]), (None, [])])
def test_dust_counts_by_the_weight_of_the_batch(grams: int | None, called: list[str]) -> None:
    assert keys(facts(lines=(line("flour", "flour", grams=grams),))) == called


@pytest.mark.parametrize(("portion", "called"), [("0.9", []), ("1", ["nutmeg"]), (None, [])])
def test_strong_spice_counts_by_the_portion(portion: str | None, called: list[str]) -> None:
    assert keys(facts(lines=(line("1 tsp ground nutmeg", portion=portion),))) == called


def test_a_title_may_call_for_a_caution() -> None:
    baked = facts(step("Bake.", oven=True), lines=(EGGS,), title="Baked cheesecake")
    assert keys(baked) == ["custard"]
    assert keys(facts(step("Bake.", oven=True), lines=(EGGS,), title="Sponge")) == []


def test_cream_keeps_caramel_soft() -> None:
    assert keys(facts(step("Boil to", 150))) == ["hot-sugar", "hard"]
    assert keys(facts(step("Boil to", 150), lines=(CREAM,))) == ["hot-sugar"]


CARAMEL = facts(step("Boil to", 170), title="Caramel")
COOLED = facts(step("Boil to", 170), step("Leave to cool."), title="Caramel")


@pytest.mark.parametrize(
    ("caramel", "text", "marked"),
    [
        (CARAMEL, "Dip each bun.", True),
        (CARAMEL, "Set beside the buns.", False),
        (COOLED, "Dip each bun.", False),
    ],
)
def test_hot_sugar_goes_with_the_part_until_it_has_cooled(
    caramel: ComponentFacts, text: str, marked: bool
) -> None:
    buns = facts(step("Wait."), step(text, uses=(0,)), lines=(takes("Caramel"),), title="Buns")
    assert keys_at_steps(caramel, buns) == [[], ["hot-sugar"] if marked else []]


def test_hot_sugar_goes_through_one_part_into_the_next() -> None:
    glaze = facts(step("Pour it into a jug.", uses=(0,)), lines=(takes("Caramel"),), title="Glaze")
    cake = facts(step("Pour over the cake.", uses=(0,)), lines=(takes("Glaze"),), title="Cake")
    assert keys_at_steps(CARAMEL, glaze, cake) == [["hot-sugar"]]


def test_only_the_step_that_takes_the_part_is_marked() -> None:
    buns = facts(step("Pour the milk."), lines=(takes("Caramel"),), title="Buns")
    assert keys_at_steps(CARAMEL, buns) == [[]]


def test_cream_that_meets_a_hot_part_spits() -> None:
    sauce = facts(
        step("Pour {cream} into {Caramel}.", uses=(0, 1)), lines=(CREAM, takes("Caramel")), title="Sauce"
    )
    apart = facts(
        step("Pour {Caramel} out.", uses=(1,)),
        step("Pour {cream} over.", uses=(0,)),
        lines=(CREAM, takes("Caramel")),
        title="Sauce",
    )
    assert "spits" in keys(CARAMEL, sauce)
    assert "spits" not in keys(CARAMEL, apart)


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
    component = facts(step("Whisk them.", uses=(0,)), step("Chill.", uses=()), lines=(EGGS,))
    assert keys_at_steps(component) == [["raw-egg"], []]


def test_a_caution_told_at_its_line_stands_there_and_not_at_the_heat() -> None:
    component = facts(step("Boil to", 118), step("Pour it on {eggs}; boil", uses=(0,)), lines=(EGGS,))
    assert keys_at_steps(component) == [["hot-sugar"], ["raw-egg"]]


def test_no_step_warns_of_what_the_component_makes_safe() -> None:
    component = facts(step("Whisk them.", uses=(0,)), step("Bring to the boil."), lines=(EGGS,))
    assert keys_at_steps(component) == [[], []]
