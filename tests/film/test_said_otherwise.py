"""What a film says otherwise, one slip at a time, and what is none."""

import pytest

from tests.film.talk import LINES, SAMPLE, SLUG, cupcakes, film, film_of, told


def test_a_film_that_says_what_is_written_tells_nothing() -> None:
    reading = film()
    assert told(reading) == []
    assert len(reading.moments) == reading.steps


# fmt: off
SLIPS = [
    ("sift", "a hundred and fifty grams of plain", "two hundred grams of plain",
     ("amount", "plain flour", "200 g", "150 g")),
    ("sift", "a hundred and sixty of caster sugar", "castor sugar a hundred and eighty grams of it",
     ("amount", "caster sugar", "180 g", "160 g")),
    ("soda", "half a teaspoon", "one and a half teaspoons",
     ("amount", "bicarbonate of soda", "1 1/2 tsp", "1/2 tsp")),
    ("whisk", "two eggs", "three eggs", ("count", "eggs", "3", "2")),
    ("fill", "two thirds", "three quarters", ("share", "Bay sponge", "3/4", "2/3")),
    ("bake", "a hundred and fifty fan", "one seventy fan",
     ("temperature", "oven", "170 C fan", "150 C fan")),
    ("bake", "a hundred and fifty fan", "gas mark six", ("temperature", "oven", "gas 6", "150 C fan")),
    ("bake", "twenty two to twenty four minutes", "half an hour",
     ("time", "Bay sponge", "30 min", "22-24 min")),
    ("chill", "two hours", "an hour and a half", ("time", "Bay custard", "1 h 30 min", "2 h")),
    ("yolks", "half the caster sugar", "a third of the caster sugar",
     ("share", "caster sugar", "1/3", "1/2")),
    ("yolks", "and thirteen grams of cornflour", "and half of the cornflour thirteen grams in all",
     ("share", "cornflour", "1/2", "all")),
    ("yolks", "and boil", "and boil and add a teaspoon of cinnamon",
     ("added", "ground cinnamon", "1 tsp ground cinnamon", "")),
    ("yolks", "and thirteen grams of cornflour ", "", ("unsaid", "cornflour", "", "13 g cornflour")),
    ("end", "that is that", "you will get eighteen cupcakes from that",
     ("count", "cupcakes", "18 cupcakes", "12 cupcakes")),
]
# fmt: on


@pytest.mark.parametrize(("line", "right", "wrong", "finding"), SLIPS)
def test_a_slip_is_found_with_both_figures(
    line: str, right: str, wrong: str, finding: tuple[str, str, str, str]
) -> None:
    assert right in LINES[line]
    reading = film(**{line: LINES[line].replace(right, wrong)})
    assert told(reading) == [finding]
    assert reading.findings[0].certain
    at_s = reading.findings[0].moment_s
    assert at_s is None or 0 <= at_s - list(LINES).index(line) * 9 <= 8


@pytest.mark.parametrize(
    ("line", "right", "wrong"),
    [
        ("sift", "a hundred and fifty grams of plain", "a cup and a fifth of plain"),
        ("sift", "a hundred and fifty grams of plain", "five and a quarter ounces of plain"),
        (
            "sift",
            "a hundred and fifty grams of plain",
            "two hundred no sorry a hundred and fifty grams of plain",
        ),
        (
            "sift",
            "a hundred and fifty grams of plain",
            "two hundred grams i mean a hundred and fifty of plain",
        ),
        (
            "sift",
            "a hundred and fifty grams of plain",
            "not two hundred but a hundred and fifty grams of plain",
        ),
        ("sift", "plain flour", "plain flower"),
        ("sift", "plain flour", "flour"),
        ("bake", "a hundred and fifty fan", "a hundred and seventy conventional"),
        ("bake", "a hundred and fifty fan", "a hundred and fifty fan so one seventy otherwise"),
        ("bake", "a hundred and fifty fan", "three twenty five fahrenheit"),
        ("bake", "a hundred and fifty fan", "gas mark three"),
        ("bake", "a hundred and fifty fan", "a hundred and seventy without a fan"),
        ("bake", "until it springs", "and do not look at it before the quarter hour"),
        ("bake", "for twenty two to twenty four minutes", "for twenty three minutes"),
        ("chill", "two hours", "a couple of hours"),
        ("chill", "two hours", "two hours three if it is a warm day"),
        ("yolks", "half the caster sugar", "half the caster sugar half of the cornflour then the other half"),
        (
            "sift",
            "a hundred and fifty grams of plain",
            "two hundred what am i on about a hundred and fifty grams of plain",
        ),
        (
            "soda",
            "and stop",
            "a tablespoon of milk that is all it takes if it is stiff and stop",
        ),
        ("fill", "full", "full my neighbour fills hers three quarters full"),
        ("whisk", "until smooth", "until smooth if it looks too thick add a tablespoon of milk"),
        ("sift", "now sift in", "last year i used four hundred grams of rye flour and now sift in"),
        ("soda", "and stop", "there is no baking powder in this and stop"),
        ("chill", "that for two hours", "that it will be fine with a spoon of milk for two hours"),
        ("end", "that is that", "i made two hundred of these for a wedding with twenty kilos of flour"),
        ("end", "that is that", "for double you use three hundred grams of flour"),
        ("end", "that is that", "in the plum cake we had three hundred grams of caster sugar"),
        ("end", "that is that", "they keep three days and next week you need a kilo of rhubarb"),
    ],
)
def test_what_is_no_slip_is_let_pass(line: str, right: str, wrong: str) -> None:
    assert right in LINES[line]
    assert told(film(**{line: LINES[line].replace(right, wrong)})) == []


TALK = [
    "this jumper cost me forty pounds and it is covered in flour",
    "my oven is thirty years old",
    "that is about the size of a two pound coin",
    "there are nine hundred of you watching now",
    "step three is where everybody goes wrong",
    "you can keep these for two days in a tin",
    "it is twenty eight degrees outside today",
    "a kilo of flour costs one pound twenty now",
    "one of my students used four eggs",
    "some people like to add a teaspoon of cinnamon",
    "you could add fifty grams of raisins if you like",
    "you do not want to go over two hundred degrees or they will burn",
    "if your oven runs hot take it down to a hundred and forty",
    "i am not going to use three hundred grams of flour today",
    "in my first job we cracked six hundred eggs a morning",
    "we have got about ten minutes to wash up",
    "the timer says eighteen minutes left",
    "check it after eighteen minutes",
    "turn the tin round after ten minutes",
    "whisk it for thirty seconds or so",
    "half of you will be doing this by hand",
    "you want a twelve hole tin",
    "i weigh my eggs they are fifty grams each",
    "let us say you are making twenty four then it is four eggs",
    "grandma made hers with lard two hundred grams of it",
    "the old card said a hundred and seventy grams of flour and that was wrong",
    "so that is one two three four five six cases filled",
    "some people put a teaspoon of nutmeg in and i do not",
    "a pound of flour was two shillings when my mother was a girl",
    "we got through twelve kilos of flour last week",
    "leave it in the tin and it will be fine for two days",
    "do not be tempted to go to two hundred degrees it will burn",
    "put a tea towel over the bowl",
    "this bowl holds about four litres",
    "flour is two bags for three pounds now",
    "somebody asks whether you can use four eggs",
]


@pytest.mark.parametrize("line", ["soda", "bake", "yolks"])
def test_what_is_said_beside_is_let_pass_wherever_it_is_said(line: str) -> None:
    told_of = {talk: told(film(**{line: f"{LINES[line]} {talk}"})) for talk in TALK}
    assert {talk: findings for talk, findings in told_of.items() if findings} == {}


@pytest.mark.parametrize(
    ("line", "said", "about", "figure"),
    [
        (
            "sift",
            "now sift in your flour one eighty grams and a hundred and sixty of sugar",
            "plain flour",
            "180 g",
        ),
        ("sift", "now sift in 180g plain flour and 160g caster sugar", "plain flour", "180 g"),
        ("sift", "now sift in two cups of flour and a hundred and sixty of sugar", "plain flour", "2 cup"),
        (
            "sift",
            "now sift in a hundred and fifty of flour and two hundred of sugar",
            "caster sugar",
            "200 g",
        ),
        ("sift", "now sift in 150 make that 200 grams of flour and 160 of sugar", "plain flour", "200 g"),
        (
            "soda",
            "and a whole teaspoon of bicarb and stop when no streaks remain",
            "bicarbonate of soda",
            "1 tsp",
        ),
        ("whisk", "whisk the eggs four of them with 120 of buttermilk and 100 of oil", "eggs", "4"),
        ("whisk", "whisk two eggs with 150 grams of butter milk and 100 of oil", "buttermilk", "150 g"),
        (
            "whisk",
            "whisk two eggs with 120 of buttermilk and 150 of sun flower oil",
            "sunflower oil",
            "150 g",
        ),
        ("sift", "now sift in half a kilo of flour and 160 grams of sugar", "plain flour", "500 g"),
        ("fill", "then fill each case three quarters of the way up", "Bay sponge", "3/4"),
        (
            "bake",
            "in they go one eighty conventional for twenty two to twenty four minutes",
            "oven",
            "180 C conventional",
        ),
        (
            "bake",
            "in they go at three fifty fahrenheit for twenty two to twenty four minutes",
            "oven",
            "350 F",
        ),
        (
            "bake",
            "in at a hundred and fifty fan and after thirty five minutes they are done",
            "Bay sponge",
            "35 min",
        ),
        (
            "bake",
            "in they go at a hundred and fifty fan and that is going to be thirty five minutes",
            "Bay sponge",
            "35 min",
        ),
        ("bake", "they bake at a hundred and fifty fan for about thirty minutes", "Bay sponge", "30 min"),
        (
            "sift",
            "now sift in your flour the best you can get out of the packet two hundred grams of it",
            "plain flour",
            "200 g",
        ),
        ("chill", "and into the fridge overnight eight hours at least", "Bay custard", "8 h"),
        ("milk", "now the custard bring two hundred mils of whole milk to a simmer", "whole milk", "200 ml"),
        (
            "beat",
            "next beat 80 grams of blackcurrant puree into 500 of base buttercream",
            "Base buttercream",
            "500 g",
        ),
        ("end", "this will give you two dozen cupcakes", "cupcakes", "24 cupcakes"),
    ],
)
def test_a_slip_is_found_however_it_is_said(line: str, said: str, about: str, figure: str) -> None:
    (finding,) = film(**{line: said}).findings
    assert (finding.about, finding.said, finding.certain) == (about, figure, True)


def test_a_finding_stands_where_its_figure_is_written() -> None:
    slips = {"bake": LINES["bake"].replace("a hundred and fifty", "one seventy").replace("twenty two to", "")}
    lines = (SAMPLE / "content" / "recipes" / SLUG / "recipe.yaml").read_text(encoding="utf-8").split("\n")
    shown = {finding.kind: lines[finding.at.line - 1].strip() for finding in film(**slips).findings}
    assert shown == {"temperature": "oven: 150 C fan"}


def test_the_certain_stand_before_what_is_perhaps_so() -> None:
    reading = film(
        sift=LINES["sift"].replace("a hundred and fifty grams", "about a hundred and eighty grams"),
        soda=LINES["soda"].replace("half a teaspoon", "two teaspoons"),
        yolks=LINES["yolks"].replace("half the caster sugar", "half the caster sugar some sugar seventy"),
    )
    certain = [finding.certain for finding in reading.findings]
    assert certain == sorted(certain, reverse=True)


def test_how_long_it_keeps_is_held_against_the_place_that_is_named() -> None:
    (finding,) = film(end="and the custard is fine in the fridge for two weeks").findings
    assert (finding.kind, finding.said, finding.written, finding.certain) == (
        "time",
        "2 weeks",
        "2 days",
        False,
    )
    assert told(film(end="and the custard is fine in the fridge for two days")) == []
    assert told(film(end="we were away for three weeks and the fridge was empty")) == []


def test_advice_right_behind_a_slip_leaves_it_in_doubt() -> None:
    (finding,) = film(chill="and into the fridge for six hours you can leave it if you like").findings
    assert (finding.about, finding.said, finding.certain) == ("Bay custard", "6 h", False)


def test_components_may_be_shown_in_another_order() -> None:
    sponge = ["whisk", "sift", "soda", "fill", "bake", "cool"]
    custard = ["milk", "yolks", "chill"]
    shown = [LINES[line] for line in ["start", *custard, *sponge, "beat", "core", "end"]]
    reading = film_of(shown)
    assert told(reading) == []
    assert [(each.component, each.step) for each in reading.moments][:4] == [
        ("Bay custard", 1),
        ("Bay custard", 2),
        ("Bay custard", 3),
        ("Bay sponge", 1),
    ]


def test_steps_begin_with_their_lines() -> None:
    lines = ["whisk", "sift", "fill", "bake", "cool", "milk", "yolks", "chill", "beat", "core"]
    begins = [list(LINES).index(line) * 9 for line in lines]
    assert [each.begins_s for each in film().moments] == begins


def test_a_list_that_is_read_out_is_no_work() -> None:
    listed = (
        "two eggs a hundred and twenty grams of buttermilk a hundred and fifty grams of plain flour a "
        "hundred and sixty of caster sugar half a teaspoon of bicarbonate of soda a hundred and sixty grams "
        "of whole milk thirteen grams of cornflour and eighty grams of blackcurrant puree"
    )
    reading = film(start=listed)
    assert told(reading) == []
    assert [each.begins_s for each in reading.moments] == [each.begins_s for each in film().moments]


def test_work_that_is_forbidden_begins_no_step() -> None:
    reading = film(soda=f"{LINES['soda']} do not fill the cases yet")
    assert [each.begins_s for each in reading.moments] == [each.begins_s for each in film().moments]


def test_a_film_of_something_else_tells_nothing_certain() -> None:
    talk = [f"on walk number {number} we saw a heron by the river" for number in range(40)]
    reading = film_of(talk)
    assert not reading.follows_recipe
    assert [finding for finding in reading.findings if finding.certain] == []


def test_another_language_tells_nothing() -> None:
    reading = film_of(["jetzt kommt das mehl dazu und dann ab in den ofen", "bei hundertfünfzig grad"] * 20)
    assert (reading.moments, reading.findings) == ((), ())


def test_a_silent_film_tells_nothing() -> None:
    reading = film_of(["[music]"])
    assert (reading.moments, reading.findings, reading.words) == ((), (), 0)
    assert reading.steps == sum(len(component.steps) for component in cupcakes().components)
