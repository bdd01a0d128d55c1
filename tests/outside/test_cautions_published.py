"""The figures in cautions against those who publish them."""

from fractions import Fraction

import pytest

from sitegen.kitchen.caution_calls import cautions_for
from sitegen.kitchen.cautions import CautionRow, ComponentFacts, LineFacts, StepFacts
from sitegen.kitchen.temperatures import to_celsius
from sitegen.source.tables import read_tables

TABLES = read_tables()[0]
ROWS = {row.key: row for row in TABLES.cautions}


@pytest.mark.parametrize(
    ("key", "figure", "publisher"),
    [
        ("hot-sugar", "20 minutes", "NHS, burns and scalds: cool or lukewarm running water for 20 minutes"),
        ("raw-egg", "71 °C (160 °F)", "FDA, USDA: cook egg mixtures to 160 F"),
        ("egg-custard", "71 °C (160 °F)", "FDA, USDA: cook egg mixtures to 160 F"),
        ("egg-custard", "70 to 77 °C", "common practice: custard sets in this span"),
        ("choking", "under five", "NHS, weaning: no whole nuts under 5 years"),
        ("hard-caramel", "under five", "NHS, weaning: no hard sweets for young children"),
        ("honey", "12 months", "NHS, weaning: no honey until over 1 year (infant botulism)"),
        ("keep-cold", "5 °C", "FSA: keep a fridge at 5 C or below"),
        ("keep-cold", "four hours", "FSA, Temperature Control (2016): one spell of up to 4 hours on display"),
        ("keep-cold", "two by that of the United States", "USDA FSIS, two-hour rule"),
        ("alcohol", "all of it", "USDA Retention Factors, Release 6: no heat, 100 % (of 5 to 100)"),
        ("alcohol", "85 %", "USDA Retention Factors, Release 6: added to boiling liquid, off the heat"),
        ("alcohol", "75 %", "USDA Retention Factors, Release 6: flamed"),
        (
            "alcohol",
            "45 % after 25 minutes",
            "USDA Retention Factors, Release 6: baked 25 min, not stirred in",
        ),
        ("flour-dust", "10 mg in a cubic metre over 8 hours", "HSE, EH40: flour dust, long-term limit"),
        ("flour-dust", "30 mg over 15 minutes", "HSE, EH40: flour dust, short-term limit"),
        ("caffeine", "200 mg a day", "EFSA (2015): pregnancy, from all sources"),
    ],
)
def test_a_caution_prints_the_published_figure(key: str, figure: str, publisher: str) -> None:
    assert figure in " ".join(ROWS[key].text.split()), publisher


def test_71_c_is_160_f() -> None:
    """FDA's 160 F is 71.1 C: the round figure that both countries print."""
    assert abs(to_celsius(Fraction(160), "fahrenheit") - 71) < Fraction(15, 100)


@pytest.mark.parametrize(("celsius", "called"), [("70.9", True), ("71", False), ("82", False)])
def test_egg_is_raw_below_160_f(celsius: str, called: bool) -> None:
    """FDA, USDA: egg mixtures to 160 F."""
    assert calls("raw-egg", line("2 eggs", "egg"), step("Stir over steam.", celsius)) is called


@pytest.mark.parametrize(
    ("celsius", "what", "called"),
    [
        ("100", "water boils", False),
        ("102.5", "a syrup of equal parts boils at 102 to 103 C (GNU units, sugar_conc_bpt)", False),
        ("105", "jam sets at 8 to 9 F over the boiling point of water (US extension advice)", True),
        ("110", "thread, the lowest of the published candy stages (230 F)", True),
        ("118", "firm ball (244 to 248 F)", True),
        ("149", "hard crack begins (300 F)", True),
    ],
)
def test_where_sugar_counts_as_hot(celsius: str, what: str, called: bool) -> None:
    """Books draw the line at 105 C or 110 C; the lower one is the safer, and is ours."""
    assert calls("hot-sugar", line("sugar", "sugar"), step("Cook.", celsius)) is called, what


@pytest.mark.parametrize(
    ("celsius", "what", "called"),
    [
        ("143", "soft crack, which still bends (270 to 290 F)", False),
        ("149", "hard crack (300 to 310 F)", True),
        ("168", "caramel (320 to 350 F)", True),
    ],
)
def test_where_sugar_sets_hard(celsius: str, what: str, called: bool) -> None:
    """Published candy stages: hard crack from 146 to 150 C, by the book."""
    assert calls("hard-caramel", line("sugar", "sugar"), step("Cook.", celsius)) is called, what


@pytest.mark.parametrize(("grams", "called"), [("0.9", False), ("1", True)])
def test_much_cinnamon_is_a_childs_day_of_coumarin(grams: str, called: bool) -> None:
    """EFSA (2008): 0.1 mg daily a kg of body weight, 3 mg for a child of 30 kg; BfR: 3 mg in a gram."""
    tolerable_mg, cassia_mg_per_g = Fraction(1, 10) * 30, Fraction(3)
    assert (Fraction(grams) * cassia_mg_per_g >= tolerable_mg) is called
    assert calls("cassia", portion("ground cinnamon", grams)) is called


@pytest.mark.parametrize(
    ("food", "mg_per_100g", "grams"),
    [
        # USDA SR28, caffeine: NDB 14214 instant coffee powder, 14210 espresso, 14209 brewed coffee.
        ("instant coffee", 3142, "1"),
        ("espresso", 212, "15"),
        ("brewed coffee", 40, "75"),
    ],
)
def test_caffeine_is_told_from_about_half_a_cup(food: str, mg_per_100g: int, grams: str) -> None:
    """A cup of coffee has 60 mg (instant) to 95 mg (brewed); half of one is 30 to 50 mg."""
    assert 30 <= Fraction(grams) * mg_per_100g / 100 <= 50
    assert calls("caffeine", portion(food, grams))
    assert not calls("caffeine", portion(food, str(Fraction(grams) * Fraction(9, 10))))


def test_tonka_is_barred_from_american_food() -> None:
    """21 CFR 189.130, coumarin, tonka beans among its sources."""
    assert "may not be sold in food in the United States" in " ".join(ROWS["tonka"].text.split())
    assert "189.130" in ROWS["tonka"].source


def test_every_red_caution_but_what_the_trade_knows_has_a_publisher() -> None:
    red = {row.key for row in TABLES.cautions if row.level == "red"}
    of_the_trade = {key for key in red if ROWS[key].source in ("common-practice", "from-memory")}
    assert of_the_trade == {"spitting-caramel", "open-flame", "hot-oil"}


def step(text: str, celsius: str) -> StepFacts:
    return StepFacts(text, (Fraction(celsius),))


def line(text: str, role: str) -> LineFacts:
    return LineFacts(text, frozenset({role}))


def portion(text: str, grams: str) -> LineFacts:
    return LineFacts(text, frozenset(), portion_grams=Fraction(grams))


def calls(key: str, ingredient: LineFacts, *steps: StepFacts) -> bool:
    rows: list[CautionRow] = [ROWS[key]]
    return bool(cautions_for(rows, [ComponentFacts("Part", (ingredient,), steps, baked=False)]))
