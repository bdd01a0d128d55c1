"""The project's own tables, and what a school's larder makes of them."""

import re
from fractions import Fraction
from importlib.resources import files

import pytest

from sitegen.faults import Fault, FaultCode, Severity
from sitegen.kitchen.allergens import ORDERS
from sitegen.kitchen.larder import Ingredient, Larder
from sitegen.kitchen.tables import Tables
from sitegen.kitchen.tins import SOLIDS
from sitegen.source import larder_faults, larder_rows
from sitegen.source.reader import parse_document
from sitegen.source.tables import read_tables

DATA = files("sitegen") / "data"
YAML_TABLES = sorted(entry.name for entry in DATA.iterdir() if entry.name.endswith(".yaml"))
OWN = read_tables()[0]


def with_larder(text: str) -> tuple[Tables, tuple[Fault, ...]]:
    document, faults = parse_document(text, "content/larder.yaml")
    assert document is not None
    assert faults == ()
    return read_tables(document)


def row(larder: Larder, name: str) -> Ingredient:
    found = larder.find(name)
    assert found is not None, name
    return found


def marked(text: str, fault: Fault) -> str:
    """The letters of the file that a fault points at."""
    line = text.split("\n")[fault.place.line - 1]
    return line[fault.place.column - 1 : fault.place.column - 1 + fault.place.length]


class TestOwnTables:
    """What must hold of `data/` itself."""

    @pytest.mark.parametrize("name", YAML_TABLES)
    def test_a_table_has_no_fault_that_a_bakers_file_would_get(self, name: str) -> None:
        """No key twice, no tab, no word dropped behind ' #'."""
        document, faults = parse_document((DATA / name).read_text(encoding="utf-8"), name)
        assert document is not None
        assert faults == ()

    def test_what_is_steeped_and_taken_out_is_an_ingredient(self) -> None:
        assert OWN.nutrition.taken_out - {row.key for row in OWN.larder.ingredients} == set()

    def test_no_word_means_two_ingredients(self) -> None:
        owners: dict[str, set[str]] = {}
        for ingredient in OWN.larder.ingredients:
            for name in filter(None, (ingredient.key, ingredient.plural, *ingredient.aliases)):
                owners.setdefault(name.casefold(), set()).add(ingredient.key)
        assert {name: keys for name, keys in owners.items() if len(keys) > 1} == {}

    def test_every_american_name_finds_an_ingredient_that_prints_it(self) -> None:
        """Several British names may share one American; whichever answers must read the same in print."""
        for ingredient in OWN.larder.ingredients:
            name = ingredient.name_in("us")
            assert row(OWN.larder, name).name_in("us") == name

    def test_no_region_repeats_the_british_name(self) -> None:
        repeats = [
            (row.key, region)
            for row in OWN.larder.ingredients
            for region, name in row.names.items()
            if region != "uk" and name == row.key
        ]
        assert repeats == []

    def test_what_is_spooned_or_cupped_has_a_density(self) -> None:
        without = {
            row.key
            for row in OWN.larder.ingredients
            if row.measured_by in ("cup", "stick") and not row.density
        }
        assert without == set()

    def test_what_is_counted_has_a_piece(self) -> None:
        """Hen's eggs have theirs in the table of eggs."""
        without = {
            row.key
            for row in OWN.larder.ingredients
            if row.measured_by == "piece" and row.pieces == () and "egg" not in row.roles
        }
        assert without == set()

    @pytest.mark.parametrize("ingredient", OWN.larder.ingredients, ids=lambda row: row.key)
    def test_an_ingredient_has_a_role_and_allergens_in_both_laws(self, ingredient: Ingredient) -> None:
        """Wheat, milk, eggs, soya, sesame, peanuts and almonds stand in both lists, under their own names."""
        assert ingredient.roles
        for eu, us in (
            ("wheat", "wheat"),
            ("milk", "milk"),
            ("eggs", "egg"),
            ("soya", "soy"),
            ("sesame", "sesame"),
            ("peanuts", "peanut"),
            ("almonds", "almond"),
            ("hazelnuts", "hazelnut"),
            ("walnuts", "walnut"),
            ("pecans", "pecan"),
            ("pistachios", "pistachio"),
            ("cashews", "cashew"),
            ("macadamias", "macadamia"),
            ("Brazil nuts", "Brazil nut"),
        ):
            assert (eu in ingredient.allergens_eu) == (us in ingredient.allergens_us)

    def test_the_two_laws_part_where_they_are_known_to(self) -> None:
        """Annex II of Regulation (EU) No 1169/2011; FDA, Food Allergens Q&A, Edition 5 (2025)."""
        assert row(OWN.larder, "pine nuts").allergens_eu == ()
        assert row(OWN.larder, "pine nuts").allergens_us == ("pine nut",)
        assert row(OWN.larder, "rye flour").allergens_us == ()
        assert row(OWN.larder, "rye flour").allergens_eu == ("rye",)
        assert row(OWN.larder, "desiccated coconut").allergens_us == ()
        assert row(OWN.larder, "chestnuts").allergens_us == ()

    def test_a_density_is_that_of_something_in_a_kitchen(self) -> None:
        lowest, highest = larder_rows.LIGHTEST, larder_rows.HEAVIEST
        odd = [
            (row.key, density.method)
            for row in OWN.larder.ingredients
            for density in row.densities
            if not lowest <= density.grams_per_ml <= highest
        ]
        assert odd == []

    @pytest.mark.parametrize(
        "name", ["corn flour", "biscuit", "jelly", "scone", "pudding", "icing", "cornmeal flour"]
    )
    def test_a_name_that_means_two_things_is_no_spelling(self, name: str) -> None:
        """These differ between British and American kitchens and must not pass unasked."""
        assert OWN.larder.find(name) is None

    def test_an_edition_names_measures_and_regions_that_exist(self) -> None:
        for edition in OWN.editions.values():
            for measure in (edition.teaspoon, edition.tablespoon, edition.cup):
                assert OWN.measures.unit_ml(measure) > 0
            assert edition.egg_region in {egg.region for egg in OWN.eggs.rows}
            assert edition.region == "uk" or edition.region in OWN.spelling

    def test_a_shape_has_a_known_solid_and_words_for_both_regions(self) -> None:
        for shape in OWN.tins.shapes:
            assert shape.solid in SOLIDS or shape.key == "tray"
            assert {"uk", "us"} <= set(shape.names)
            assert shape.depth_cm > 0

    def test_a_tin_known_by_name_has_a_known_shape_and_sides_that_do_not_lean_in(self) -> None:
        for named in OWN.tins.named:
            OWN.tins.shape(named.tin.shape)
            assert named.tin.base_width_cm <= named.tin.width_cm
            assert named.tin.base_length_cm <= named.tin.length_cm

    def test_a_printed_inch_is_within_a_twentieth_of_the_centimetres(self) -> None:
        for size in OWN.tins.nominal:
            assert abs(size.inches * Fraction("2.54") / size.cm - 1) <= Fraction(6, 100)

    def test_a_caution_is_whole_sentences_with_a_known_source(self) -> None:
        for caution in OWN.cautions:
            assert caution.text.endswith(".")
            assert caution.source in OWN.sources

    def test_a_spelling_replaces_nothing_by_a_word_it_would_replace_again(self) -> None:
        """Otherwise a text respelled twice would differ from one respelled once."""
        for words in OWN.spelling.values():
            pattern = re.compile(r"\b(?:" + "|".join(map(re.escape, words)) + r")\b")
            assert {word: other for word, other in words.items() if pattern.search(other)} == {}

    def test_the_longest_phrase_stands_first(self) -> None:
        for words in OWN.spelling.values():
            lengths = [len(word) for word in words]
            assert lengths == sorted(lengths, reverse=True)

    def test_every_unit_word_is_read_as_one_unit(self) -> None:
        for unit, words in OWN.measures.names.items():
            assert {OWN.measures.unit_named(word) for word in words} == {unit}

    @pytest.mark.parametrize("regime", ["eu", "us"])
    def test_an_allergen_is_in_the_laws_own_words(self, regime: str) -> None:
        used = {
            name
            for row in OWN.larder.ingredients
            for name in (row.allergens_eu if regime == "eu" else row.allergens_us)
        }
        assert used <= set(ORDERS["eu" if regime == "eu" else "us"])


class TestOwnLarder:
    """What `content/larder.yaml` may change."""

    def test_a_new_ingredient_is_found_by_all_its_names(self) -> None:
        tables, faults = with_larder(
            "rowan jelly:\n"
            "  us: mountain ash jelly\n"
            "  also: [rowanberry jelly]\n"
            "  density:\n"
            "    - {method: spooned, weight: 20 g, fills: 1 metric_tablespoon, source: own-scales}\n"
            "  allergens: {eu: [sulphites], us: []}\n"
            "  roles: [sugar, fruit]\n"
            "  measured-by: spoon\n"
            "  label-advice: yes\n"
        )
        assert faults == ()
        found = row(tables.larder, "Rowanberry jelly")
        assert found.key == "rowan jelly"
        assert found.name_in("us") == "mountain ash jelly"
        assert found.density is not None
        assert found.density.grams_per_ml == Fraction(4, 3)
        assert found.allergens_eu == ("sulphites",)
        assert found.roles == {"sugar", "fruit"}
        assert (found.measured_by, found.label_advice) == ("spoon", True)

    def test_a_row_extends_a_known_ingredient_by_what_it_states(self) -> None:
        tables, faults = with_larder("ground almonds:\n  also: [marchpane flour]\n  measured-by: weight\n")
        assert faults == ()
        own, changed = row(OWN.larder, "ground almonds"), row(tables.larder, "marchpane flour")
        assert changed.key == own.key
        assert changed.measured_by == "weight"
        assert changed.densities == own.densities
        assert changed.allergens_eu == own.allergens_eu
        assert changed.name_in("us") == "almond flour"
        assert set(own.aliases) < set(changed.aliases)

    def test_a_density_of_the_schools_own_takes_the_place_of_the_tables(self) -> None:
        text = (
            "plain flour:\n  density:\n"
            "    - {method: spooned, weight: 118 g, fills: 1 us_cup, source: own-scales}\n"
        )
        tables, faults = with_larder(text)
        assert faults == ()
        (density,) = row(tables.larder, "plain flour").densities
        assert (density.grams, density.source) == (118, "own-scales")

    def test_one_law_may_be_stated_alone_for_a_known_ingredient(self) -> None:
        tables, faults = with_larder("porridge oats:\n  allergens: {eu: []}\n")
        assert faults == ()
        assert row(tables.larder, "porridge oats").allergens_eu == ()

    def test_all_other_tables_stay_as_they_are(self) -> None:
        tables, _ = with_larder("ground almonds:\n  measured-by: weight\n")
        assert tables.eggs is OWN.eggs
        assert len(tables.larder.ingredients) == len(OWN.larder.ingredients)

    def test_an_empty_larder_changes_nothing(self) -> None:
        tables, faults = with_larder("# nothing yet\n")
        assert faults == ()
        assert tables.larder == OWN.larder

    def test_a_row_at_fault_changes_nothing_and_hides_no_other(self) -> None:
        tables, faults = with_larder(
            "honey:\n  roles: [suger]\nground almonds:\n  measured-by: weight\nlemon:\n  pulp: yes\n"
        )
        assert [fault.code for fault in faults] == ["unknown-role", "unknown-key"]
        assert row(tables.larder, "honey") == row(OWN.larder, "honey")
        assert row(tables.larder, "ground almonds").measured_by == "weight"

    def test_advice_keeps_the_row(self) -> None:
        tables, faults = with_larder(
            "honey:\n  density:\n    - {method: liquid, weight: 3 kg, fills: 1 us_cup, source: own-scales}\n"
        )
        assert [fault.severity for fault in faults] == [Severity.ADVICE]
        assert row(tables.larder, "honey").densities[0].grams == 3000

    @pytest.mark.parametrize(
        ("text", "code", "mark"),
        [
            ("butter:\n  measured-by: cup\n", "name-taken", "butter"),
            ("rowan jelly:\n  roles: [sugar]\n", "allergens-unsaid", "rowan jelly"),
            ("rowan jelly:\n  allergens: {eu: []}\n", "allergens-unsaid", "rowan jelly"),
            ("honey:\n  also: [golden syrup]\n", "name-taken", "golden syrup"),
            ("honey:\n  allergens: {eu: [gluten]}\n", "unknown-allergen", "gluten"),
            ("honey:\n  roles: [sugar, sirup]\n", "unknown-role", "sirup"),
            ("honey:\n  weight: 20 g\n", "unknown-key", "weight"),
            ("honey:\n  measured-by: jug\n", "unknown-word", "jug"),
            ("honey:\n  label-advice: perhaps\n", "not-yes-or-no", "perhaps"),
            ("honey:\n  pieces:\n    - {weight: 0 g, source: packet}\n", "bad-weight", "0 g"),
            ("honey:\n  pieces:\n    - {weight: 20, source: packet}\n", "bad-weight", "20"),
            ("honey:\n  pieces:\n    - {weight: 20 ml, source: packet}\n", "bad-weight", "20 ml"),
            ("honey:\n  pieces:\n    - {weight: 20 g, source: a friend}\n", "unknown-source", "a friend"),
            ("honey:\n  pieces:\n    - weight: 20 g\n", "missing-key", "weight: 20 g"),
            (
                "honey:\n  density:\n    - {method: poured, weight: 20 g, fills: 15 ml, source: packet}\n",
                "unknown-word",
                "poured",
            ),
            (
                "honey:\n  density:\n    - {method: liquid, weight: 20 g, fills: 1 tbsp, source: packet}\n",
                "bad-measure",
                "1 tbsp",
            ),
            (
                "honey:\n  density:\n    - {method: liquid, weight: 20 g, fills: 0 ml, source: packet}\n",
                "bad-measure",
                "0 ml",
            ),
            ("honey: runny\n", "wrong-kind", "honey"),
            ("- honey\n", "wrong-kind", "- honey"),
        ],
    )
    def test_a_slip_is_told_at_its_place(self, text: str, code: str, mark: str) -> None:
        tables, faults = with_larder(text)
        assert [(fault.code, marked(text, fault)) for fault in faults] == [(code, mark)]
        assert tables.larder == OWN.larder

    def test_a_near_word_is_offered(self) -> None:
        _, (fault,) = with_larder("honey:\n  roles: [suger]\n")
        assert fault.way_out == "did you mean 'sugar'?"

    def test_a_missing_source_is_told(self) -> None:
        text = "honey:\n  density:\n    - {method: liquid, weight: 20 g, fills: 15 ml}\n"
        _, (fault,) = with_larder(text)
        assert (fault.code, fault.place.line) == ("missing-key", 3)
        assert "'source'" in fault.sentence

    @pytest.mark.parametrize("code", larder_faults.CODES, ids=lambda code: code.code)
    def test_the_example_of_a_code_gives_it_and_its_cure_does_not(self, code: FaultCode) -> None:
        assert {fault.code for fault in with_larder(code.bad)[1]} == {code.code}
        assert with_larder(code.good)[1] == ()
