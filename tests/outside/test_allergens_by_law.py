"""The allergens of the larder against the laws that name them.

EU: Regulation (EU) No 1169/2011, Annex II, as kept in United Kingdom law.
US: Food Allergen Labeling and Consumer Protection Act (FALCPA, 2004), FASTER Act (2021, sesame), and FDA,
Questions and Answers Regarding Food Allergens, Edition 5 (January 2025), Table 1, tree nuts.
AU: Australia New Zealand Food Standards Code, Standard 1.2.3 and Schedule 9 (from memory).
"""

import pytest

from sitegen.kitchen.allergens import AU_ORDER, EU_ORDER, ORDERS, US_ORDER, allergens, regime_of
from sitegen.kitchen.larder import Ingredient
from sitegen.source.tables import read_tables

LARDER = read_tables()[0].larder

# Annex II, points 1 to 14, in their order: the names that stand for each.
ANNEX_II = [
    (1, "cereals containing gluten", ["wheat", "spelt", "khorasan wheat", "rye", "barley", "oats"]),
    (2, "crustaceans", ["crustaceans"]),
    (3, "eggs", ["eggs"]),
    (4, "fish", ["fish"]),
    (5, "peanuts", ["peanuts"]),
    (6, "soybeans", ["soya"]),
    (7, "milk", ["milk"]),
    (
        8,
        "nuts",
        ["almonds", "hazelnuts", "walnuts", "cashews", "pecans", "Brazil nuts", "pistachios", "macadamias"],
    ),
    (9, "celery", ["celery"]),
    (10, "mustard", ["mustard"]),
    (11, "sesame seeds", ["sesame"]),
    (12, "sulphur dioxide and sulphites", ["sulphites"]),
    (13, "lupin", ["lupin"]),
    (14, "molluscs", ["molluscs"]),
]
# FALCPA section 203(c) with the FASTER Act: nine foods.
US_NINE = [
    ("milk", ["milk"]),
    ("egg", ["egg"]),
    ("fish", ["fish"]),
    ("crustacean shellfish", ["shellfish"]),
    (
        "tree nuts",
        [
            "almond",
            "Brazil nut",
            "cashew",
            "hazelnut",
            "macadamia",
            "pecan",
            "pine nut",
            "pistachio",
            "walnut",
        ],
    ),
    ("peanuts", ["peanut"]),
    ("wheat", ["wheat"]),
    ("soybeans", ["soy"]),
    ("sesame", ["sesame"]),
]
# FDA, Edition 5, Table 1: the twelve tree nuts, by the name that a label would use here.
US_TREE_NUTS = [
    ("almond", "almond"),
    ("black walnut", "walnut"),
    ("Brazil nut", "Brazil nut"),
    ("California walnut", "walnut"),
    ("cashew", "cashew"),
    ("filbert or hazelnut", "hazelnut"),
    ("heartnut", "walnut"),
    ("macadamia nut", "macadamia"),
    ("pecan", "pecan"),
    ("pine nut", "pine nut"),
    ("pistachio", "pistachio"),
    ("English or Persian walnut", "walnut"),
]
# Schedule 9, names of the declaration.
SCHEDULE_9 = {
    *("wheat", "barley", "oats", "rye"),
    *("almond", "Brazil nut", "cashew", "hazelnut", "macadamia", "pecan", "pine nut", "pistachio", "walnut"),
    *("crustacean", "egg", "fish", "lupin", "milk", "mollusc", "peanut", "sesame", "soy", "sulphites"),
}


def test_the_eu_order_is_that_of_annex_ii() -> None:
    assert [name for _, _, names in ANNEX_II for name in names] == list(EU_ORDER)
    assert [number for number, _, _ in ANNEX_II] == list(range(1, 15))


def test_the_us_names_are_those_of_the_nine() -> None:
    assert {name for _, names in US_NINE for name in names} == set(US_ORDER)
    assert len(US_NINE) == 9


@pytest.mark.parametrize(("nut", "name"), US_TREE_NUTS)
def test_a_tree_nut_of_the_fda_has_a_name(nut: str, name: str) -> None:
    assert name in US_ORDER, nut


@pytest.mark.parametrize("nut", ["coconut", "chestnut", "hickory nut", "shea nut", "pili nut"])
def test_what_the_fda_took_off_its_table_in_2025_is_no_tree_nut(nut: str) -> None:
    assert nut not in US_ORDER


def test_the_australian_names_are_those_of_schedule_9() -> None:
    assert set(AU_ORDER) == SCHEDULE_9
    assert len(AU_ORDER) == len(SCHEDULE_9)


@pytest.mark.parametrize(
    ("region", "regime"), [("uk", "eu"), ("us", "us"), ("au", "au"), ("an unknown one", "eu")]
)
def test_an_edition_names_by_the_law_of_its_region(region: str, regime: str) -> None:
    assert regime_of(region) == regime


FOODS = [
    # What the laws themselves say of an ingredient.
    ("plain flour", ["wheat"], ["wheat"], ["wheat"], "Annex II 1; FALCPA; Schedule 9"),
    ("strong white flour", ["wheat"], ["wheat"], ["wheat"], "Annex II 1; FALCPA; Schedule 9"),
    ("self-raising flour", ["wheat"], ["wheat"], ["wheat"], "Annex II 1; FALCPA; Schedule 9"),
    ("wholemeal flour", ["wheat"], ["wheat"], ["wheat"], "Annex II 1; FALCPA; Schedule 9"),
    ("semolina", ["wheat"], ["wheat"], ["wheat"], "durum is a wheat: Annex II 1; FALCPA"),
    (
        "spelt flour",
        ["wheat"],
        ["wheat"],
        ["wheat"],
        "'wheat (such as spelt and khorasan wheat)', Annex II 1",
    ),
    ("vital wheat gluten", ["wheat"], ["wheat"], ["wheat"], "Annex II 1; FALCPA"),
    ("rye flour", ["rye"], [], ["rye"], "Annex II 1; the US names wheat only"),
    ("barley flour", ["barley"], [], ["barley"], "Annex II 1; the US names wheat only"),
    ("malted barley flour", ["barley"], [], ["barley"], "Annex II 1"),
    ("malt extract", ["barley"], [], ["barley"], "Annex II 1: malt extract is not among the exempt syrups"),
    ("porridge oats", ["oats"], [], ["oats"], "Annex II 1"),
    ("oat flour", ["oats"], [], ["oats"], "Annex II 1"),
    ("oat drink", ["oats"], [], ["oats"], "Annex II 1"),
    ("buckwheat flour", [], [], [], "no cereal of Annex II"),
    ("chickpea flour", [], [], [], "no legume of Annex II"),
    ("rice flour", [], [], [], "no cereal of Annex II"),
    ("cornflour", [], [], [], "no cereal of Annex II"),
    ("glucose syrup", [], [], [], "wheat and barley glucose syrups are exempt, Annex II 1(a) and (c)"),
    ("unsalted butter", ["milk"], ["milk"], ["milk"], "Annex II 7"),
    ("clarified butter", ["milk"], ["milk"], ["milk"], "no exemption for milk fat in Annex II 7"),
    ("goat's milk", ["milk"], ["milk"], ["milk"], "FDA, Edition 5: milk of other animals too"),
    ("buttermilk", ["milk"], ["milk"], ["milk"], "Annex II 7"),
    ("mascarpone", ["milk"], ["milk"], ["milk"], "Annex II 7"),
    ("condensed milk", ["milk"], ["milk"], ["milk"], "Annex II 7"),
    ("egg", ["eggs"], ["egg"], ["egg"], "Annex II 3"),
    ("dried egg white", ["eggs"], ["egg"], ["egg"], "Annex II 3, 'and products thereof'"),
    ("soya flour", ["soya"], ["soy"], ["soy"], "Annex II 6"),
    ("soya drink", ["soya"], ["soy"], ["soy"], "Annex II 6"),
    ("peanuts", ["peanuts"], ["peanut"], ["peanut"], "Annex II 5"),
    ("smooth peanut butter", ["peanuts"], ["peanut"], ["peanut"], "Annex II 5"),
    ("groundnut oil", ["peanuts"], ["peanut"], ["peanut"], "no exemption for its oil in Annex II 5"),
    ("ground almonds", ["almonds"], ["almond"], ["almond"], "Annex II 8"),
    ("almond drink", ["almonds"], ["almond"], ["almond"], "Annex II 8"),
    ("hazelnuts", ["hazelnuts"], ["hazelnut"], ["hazelnut"], "Annex II 8"),
    ("walnuts", ["walnuts"], ["walnut"], ["walnut"], "Annex II 8"),
    ("walnut oil", ["walnuts"], ["walnut"], ["walnut"], "Annex II 8, 'and products thereof'"),
    ("pecans", ["pecans"], ["pecan"], ["pecan"], "Annex II 8"),
    ("pistachios", ["pistachios"], ["pistachio"], ["pistachio"], "Annex II 8"),
    ("cashews", ["cashews"], ["cashew"], ["cashew"], "Annex II 8"),
    ("macadamias", ["macadamias"], ["macadamia"], ["macadamia"], "Annex II 8"),
    ("Brazil nuts", ["Brazil nuts"], ["Brazil nut"], ["Brazil nut"], "Annex II 8"),
    ("pine nuts", [], ["pine nut"], ["pine nut"], "not in Annex II 8; FDA, Edition 5; Schedule 9"),
    ("chestnuts", [], [], [], "not in Annex II 8; taken off by the FDA in 2025"),
    ("desiccated coconut", [], [], [], "not in Annex II 8; taken off by the FDA in 2025"),
    ("coconut milk", [], [], [], "not in Annex II 8; taken off by the FDA in 2025"),
    ("sesame seeds", ["sesame"], ["sesame"], ["sesame"], "Annex II 11; FASTER Act"),
    ("tahini", ["sesame"], ["sesame"], ["sesame"], "Annex II 11; FASTER Act"),
    ("sesame oil", ["sesame"], ["sesame"], ["sesame"], "Annex II 11, 'and products thereof'"),
    ("poppy seeds", [], [], [], "in none of the lists"),
    ("whisky", [], [], [], "cereals for distillates are exempt, Annex II 1(d)"),
    ("gin", [], [], [], "cereals for distillates are exempt, Annex II 1(d)"),
    ("leaf gelatine", [], [], [], "of pork or beef; fish gelatine would be named fish"),
    ("honey", [], [], [], "in none of the lists"),
    # What the trade puts in.
    ("dried apricots", ["sulphites"], [], ["sulphites"], "common practice: sulphured to keep their colour"),
    ("dried apples", ["sulphites"], [], ["sulphites"], "common practice"),
    ("glacé cherries", ["sulphites"], [], ["sulphites"], "common practice"),
    ("mixed peel", ["sulphites"], [], ["sulphites"], "common practice"),
    ("white wine", ["sulphites"], [], ["sulphites"], "common practice: over 10 mg a litre"),
    ("cider", ["sulphites"], [], ["sulphites"], "common practice"),
    ("white wine vinegar", ["sulphites"], [], ["sulphites"], "common practice"),
    ("beer", ["barley"], [], ["barley"], "common practice: brewed of barley malt"),
    ("marzipan", ["almonds"], ["almond"], ["almond"], "common practice"),
    ("sponge fingers", ["wheat", "eggs"], ["wheat", "egg"], ["wheat", "egg"], "common practice"),
    ("milk chocolate", ["milk"], ["milk"], ["milk"], "common practice"),
    ("white chocolate", ["milk"], ["milk"], ["milk"], "common practice"),
    ("suet", ["wheat"], ["wheat"], ["wheat"], "common practice: rolled in wheat flour"),
    ("lemon curd", ["eggs", "milk"], ["egg", "milk"], ["egg", "milk"], "common practice"),
    ("miso", ["soya"], ["soy"], ["soy"], "common practice"),
    ("cream liqueur", ["milk"], ["milk"], ["milk"], "common practice"),
]


@pytest.mark.parametrize(("food", "eu", "us", "au", "source"), FOODS, ids=[row[0] for row in FOODS])
def test_what_an_ingredient_contains(
    food: str, eu: list[str], us: list[str], au: list[str], source: str
) -> None:
    row = ingredient(food)
    named = [set(names) for names in (row.allergens_eu, row.allergens_us, row.allergens_au)]
    assert named == [set(eu), set(us), set(au)], source


@pytest.mark.parametrize(
    "food",
    [
        # Common practice: what the maker decides, so that the packet must be read.
        "dark chocolate",
        "milk chocolate",
        "block margarine",
        "vegetable oil",
        "marzipan",
        "mincemeat",
        "hundreds and thousands",
        "ready-to-roll icing",
        "food colouring",
        "sultanas",
        "mixed dried fruit",
        "oat flour",
        "oat bran",
        "custard powder",
        "digestive biscuits",
        "puff pastry",
        "filo pastry",
        "mixed spice",
        "baking powder",
        "desiccated coconut",
        "almond extract",
        "beer",
    ],
)
def test_the_packet_decides(food: str) -> None:
    assert ingredient(food).label_advice


def test_every_name_in_the_larder_is_the_laws_own() -> None:
    wrong = [
        (row.key, name)
        for row in LARDER.ingredients
        for regime, names in (
            ("eu", row.allergens_eu),
            ("us", row.allergens_us),
            ("au", row.allergens_au),
            ("eu", row.packet_may_hold),
        )
        for name in names
        if name not in ORDERS[regime]  # type: ignore[index]
    ]
    assert wrong == []


def test_nobody_has_milk_egg_wheat_or_sesame_in_one_country_only() -> None:
    """The lists part at rye, barley, oats, pine nuts, celery, mustard, sulphites, lupin and molluscs only."""
    shared = {"milk": "milk", "egg": "eggs", "sesame": "sesame", "peanut": "peanuts", "soy": "soya"}
    parted = [
        row.key
        for row in LARDER.ingredients
        for us, eu in shared.items()
        if (us in row.allergens_us) != (eu in row.allergens_eu)
        or (us in row.allergens_us) != (us in row.allergens_au)
    ]
    assert parted == []


def test_gluten_cereals_come_first_in_australia_and_nuts_by_name() -> None:
    basket = [ingredient(food) for food in ("egg", "pine nuts", "rye flour", "plain flour", "dried apricots")]
    assert allergens(basket, "au") == ("wheat", "rye", "pine nut", "egg", "sulphites")


def ingredient(name: str) -> Ingredient:
    row = LARDER.find(name)
    assert row is not None, name
    return row
