"""Checks of meaning: a small school is written, read, and told what is wrong with it."""

from pathlib import Path
from textwrap import dedent

import pytest

from sitegen.faults import Fault, Severity
from sitegen.source.library import read_content

SITE = """
name: Tansy Row
tagline: Baking taught one careful step at a time
address: https://tansyrow.example/
subscribers-address: https://tansyrow.example/table/
language: en-GB
written-in: british-metric
egg-size: medium
editions: [british-metric]
papers: [a4]
time-zone: Europe/London
"""


def write_recipe(root: Path, title: str, components: str, makes: str = "12 buns") -> None:
    folder = root / "content" / "recipes" / title.lower().replace(" ", "-")
    folder.mkdir(parents=True)
    head = f"title: {title}\nsummary: A bun.\nmakes: {makes}\ncomponents:\n"
    (folder / "recipe.yaml").write_text(head + dedent(components).replace("\n", "\n  "), encoding="utf-8")
    (root / "content" / "site.yaml").write_text(SITE, encoding="utf-8")


def told(root: Path) -> list[tuple[str, str]]:
    """The code and the line of the file of each fault."""
    content = read_content(root)
    return [
        (fault.code, content.texts[fault.place.file][fault.place.line - 1].strip())
        for fault in content.faults
    ]


def only_fault(root: Path) -> Fault:
    (fault,) = read_content(root).faults
    return fault


BUNS = """
  Dough:
    ingredients:
      - 300 g strong white flour
      - 180 g water
    method:
      - text: Knead {strong white flour} with {water}.
        hands-on: 10 min
"""


def test_a_plain_recipe_has_no_fault(tmp_path: Path) -> None:
    write_recipe(tmp_path, "Buns", BUNS)
    assert told(tmp_path) == []


def test_an_ingredient_that_no_step_takes_is_marked_at_its_line(tmp_path: Path) -> None:
    write_recipe(tmp_path, "Buns", BUNS.replace("{water}", "water"))
    assert told(tmp_path) == [("unused-ingredient", "- 180 g water")]
    assert only_fault(tmp_path).way_out == "name it in the method: {water}"


@pytest.mark.parametrize(
    ("words", "code"),
    [
        ("{2/3 of water}, then {2/3 of water}", "shares-over-one"),
        ("{100 g of water}, then {100 g of water}", "shares-over-one"),
        ("{0.2 kg of water}", "shares-over-one"),
        ("{half of water}, {half of water}, then {the rest of water}", "shares-over-one"),
        ("{half of water}", "shares-left-over"),
        ("{90 g of water}", "shares-left-over"),
    ],
)
def test_steps_take_all_of_a_line_and_no_more(words: str, code: str, tmp_path: Path) -> None:
    write_recipe(tmp_path, "Buns", BUNS.replace("{water}", words))
    assert told(tmp_path) == [(code, "- 180 g water")]


@pytest.mark.parametrize(
    "words",
    [
        "{half of water}, then {the rest of water}",
        "{1/3 of water}, then {2/3 of water}",
        "{60 g of water}, then {the rest of water}",
        "{water}, then {water} again",
    ],
)
def test_shares_that_add_up_are_no_fault(words: str, tmp_path: Path) -> None:
    write_recipe(tmp_path, "Buns", BUNS.replace("{water}", words))
    assert told(tmp_path) == []


def divided(first: str, second: str) -> str:
    """Dough that two components take of."""
    return (
        BUNS
        + f"""
  Plain buns:
    ingredients:
      - {first}
    method:
      - text: Shape {{Dough}}.
        hands-on: 5 min
  Seeded buns:
    ingredients:
      - {second}
    method:
      - text: Shape {{Dough}}.
        hands-on: 5 min
        after: [Plain buns]
"""
    )


@pytest.mark.parametrize(
    ("first", "second"),
    [
        ("half of Dough", "half of Dough"),
        ("1/3 of Dough", "the rest of Dough"),
        ("100 g of Dough", "380 g of Dough"),
    ],
)
def test_a_component_may_be_divided(first: str, second: str, tmp_path: Path) -> None:
    write_recipe(tmp_path, "Buns", divided(first, second))
    assert told(tmp_path) == []


@pytest.mark.parametrize(
    ("first", "second", "code"),
    [
        ("half of Dough", "1/3 of Dough", "shares-do-not-add-up"),
        ("half of Dough", "2/3 of Dough", "shares-do-not-add-up"),
        ("the rest of Dough", "100 g of Dough", "shares-do-not-add-up"),
        ("100 g of Dough", "400 g of Dough", "more-than-is-made"),
        ("half of Dough", "241 g of Dough", "more-than-is-made"),
    ],
)
def test_no_more_is_taken_of_a_component_than_is_made(
    first: str, second: str, code: str, tmp_path: Path
) -> None:
    write_recipe(tmp_path, "Buns", divided(first, second))
    assert told(tmp_path) == [(code, f"- {second}")]


def test_a_component_that_nobody_takes_is_advice(tmp_path: Path) -> None:
    write_recipe(tmp_path, "Buns", BUNS + "  Syrup:\n    method:\n      - text: Boil.\n        wait: 1 min\n")
    fault = only_fault(tmp_path)
    assert (fault.code, fault.severity) == ("unused-component", Severity.ADVICE)


def test_components_made_of_each_other_are_told_once(tmp_path: Path) -> None:
    write_recipe(
        tmp_path,
        "Buns",
        """
          First:
            ingredients: [all of Second]
            method: [{text: "Fold in {Second}.", hands-on: 1 min}]
          Second:
            ingredients: [all of First]
            method: [{text: "Fold in {First}.", hands-on: 1 min}]
        """,
    )
    assert [code for code, _ in told(tmp_path)] == ["component-circle"]


def test_base_recipes_that_need_each_other_are_told_once(tmp_path: Path) -> None:
    for own, other in (("Cream", "Custard"), ("Custard", "Cream")):
        write_recipe(
            tmp_path,
            own,
            f"""
              Whole:
                ingredients: [100 g of {other}]
                method: [{{text: "Whisk {{{other}}}.", hands-on: 1 min}}]
            """,
            makes="500 g",
        )
    assert [code for code, _ in told(tmp_path)] == ["base-circle"]


@pytest.mark.parametrize(
    ("step", "codes"),
    [
        ("text: Rest.", ["no-time"]),
        ("text: Bake.\n        oven: 180 C fan\n        wait: 20 min", ["no-cue"]),
        (
            "text: Bake.\n        oven: 180 C fan\n        hands-on: 1 min\n        until: gold",
            ["no-baking-time"],
        ),
        ("text: Bake.\n        oven: 350 C fan\n        wait: 20 min\n        until: gold", ["unusual-oven"]),
        ("text: Bake.\n        oven: 118 F\n        wait: 20 min\n        until: gold", ["unusual-oven"]),
        ("text: Bake.\n        oven: gas 10\n        wait: 20 min\n        until: gold", []),
    ],
)
def test_times_cues_and_ovens_are_advice(step: str, codes: list[str], tmp_path: Path) -> None:
    write_recipe(tmp_path, "Buns", f"{BUNS}      - {step}\n")
    faults = read_content(tmp_path).faults
    assert [fault.code for fault in faults] == codes
    assert {fault.severity for fault in faults} <= {Severity.ADVICE}


def test_a_slip_of_the_scale_is_asked_after(tmp_path: Path) -> None:
    step = "text: Bake.\n        oven: 350 C fan\n        wait: 20 min\n        until: gold"
    write_recipe(tmp_path, "Buns", f"{BUNS}      - {step}\n")
    assert only_fault(tmp_path).way_out == "did you mean '350 F fan'?"
