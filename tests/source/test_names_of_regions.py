"""What three kitchens call the same thing, and how print counts it. Source: cookery books of each region."""

from fractions import Fraction

import pytest

from sitegen.kitchen.larder import Ingredient
from sitegen.source.tables import read_tables

LARDER = read_tables()[0].larder


def row(name: str) -> Ingredient:
    found = LARDER.find(name)
    assert found is not None
    return found


@pytest.mark.parametrize(
    ("uk", "us", "au"),
    [
        ("plain flour", "all-purpose flour", "plain flour"),
        ("strong white flour", "bread flour", "bread flour"),
        ("self-raising flour", "self-rising flour", "self-raising flour"),
        ("wholemeal flour", "whole wheat flour", "wholemeal flour"),
        ("cornflour", "cornstarch", "maize cornflour"),
        ("fine polenta", "cornmeal", "polenta"),
        ("vital wheat gluten", "vital wheat gluten", "gluten flour"),
        ("chickpea flour", "chickpea flour", "besan flour"),
        ("caster sugar", "superfine sugar", "caster sugar"),
        ("granulated sugar", "granulated sugar", "white sugar"),
        ("icing sugar", "powdered sugar", "pure icing sugar"),
        ("soft light brown sugar", "light brown sugar", "brown sugar"),
        ("demerara sugar", "turbinado sugar", "raw sugar"),
        ("golden syrup", "golden syrup", "golden syrup"),
        ("black treacle", "molasses", "treacle"),
        ("glucose syrup", "light corn syrup", "liquid glucose"),
        ("bicarbonate of soda", "baking soda", "bicarb soda"),
        ("leaf gelatine", "sheet gelatin", "gelatine leaves"),
        ("powdered gelatine", "powdered gelatin", "gelatine powder"),
        ("white vegetable fat", "vegetable shortening", "vegetable shortening"),
        ("rapeseed oil", "canola oil", "canola oil"),
        ("groundnut oil", "peanut oil", "peanut oil"),
        ("whole milk", "whole milk", "full cream milk"),
        ("skimmed milk", "nonfat milk", "skim milk"),
        ("single cream", "light cream", "pouring cream"),
        ("whipping cream", "heavy cream", "thickened cream"),
        ("double cream", "heavy cream", "double cream"),
        ("soured cream", "sour cream", "sour cream"),
        ("natural yoghurt", "plain yogurt", "natural yoghurt"),
        ("ground almonds", "almond flour", "almond meal"),
        ("ground hazelnuts", "hazelnut flour", "hazelnut meal"),
        ("flaked almonds", "sliced almonds", "flaked almonds"),
        ("desiccated coconut", "unsweetened shredded coconut", "desiccated coconut"),
        ("sultanas", "golden raisins", "sultanas"),
        ("dark chocolate chips", "semisweet chocolate chips", "dark choc chips"),
        ("alkalised cocoa powder", "Dutch-process cocoa powder", "Dutch-processed cocoa powder"),
        ("digestive biscuits", "graham crackers", "plain sweet biscuits"),
        ("sponge fingers", "ladyfingers", "savoiardi biscuits"),
        ("porridge oats", "quick oats", "rolled oats"),
        ("passion fruit", "passion fruit", "passionfruit"),
        ("courgette", "zucchini", "zucchini"),
        ("beetroot", "beet", "beetroot"),
        ("mixed spice", "pumpkin pie spice", "mixed spice"),
        ("vanilla pod", "vanilla bean", "vanilla bean"),
        ("lemon curd", "lemon curd", "lemon butter"),
        ("mincemeat", "fruit mincemeat", "fruit mince"),
        ("spirit vinegar", "white vinegar", "white vinegar"),
        ("orange flower water", "orange blossom water", "orange blossom water"),
        ("hundreds and thousands", "sprinkles", "hundreds and thousands"),
        ("ready-to-roll icing", "rolled fondant", "ready-to-roll fondant"),
    ],
)
def test_three_kitchens_name_it(uk: str, us: str, au: str) -> None:
    found = row(uk)
    assert (found.key, found.name_in("us"), found.name_in("au")) == (uk, us, au)


@pytest.mark.parametrize(
    ("name", "count", "region", "printed"),
    [
        ("vanilla pod", "2", "uk", "vanilla pods"),
        ("vanilla bean", "2", "us", "vanilla beans"),
        ("vanilla bean", "1", "au", "vanilla bean"),
        ("beet", "3", "us", "beets"),
        ("zucchini", "2", "us", "zucchini"),
        ("whole clove", "4", "us", "whole cloves"),
        ("tart baking apple", "3/2", "us", "tart baking apples"),
        ("lemons", "1", "us", "lemon"),
        ("sheet gelatin", "3", "us", "sheet gelatin"),
    ],
)
def test_a_counted_thing_is_named_as_its_number_wants_it(
    name: str, count: str, region: str, printed: str
) -> None:
    assert row(name).counted(name, Fraction(count), region) == printed


@pytest.mark.parametrize("ingredient", LARDER.ingredients, ids=lambda each: each.key)
def test_every_name_of_an_ingredient_is_read_back(ingredient: Ingredient) -> None:
    """By itself, or by an ingredient that comes first and prints the same name in that region."""
    for region, name in ingredient.names.items():
        found = row(name)
        assert found is ingredient or name in (found.key, found.name_in(region), *found.aliases)


@pytest.mark.parametrize(
    ("name", "size", "part"),
    [
        ("lemon", "", "juice"),
        ("lemon", "", "zest"),
        ("lime", "", "juice"),
        ("lime", "", "zest"),
        ("orange", "", "juice"),
        ("orange", "", "zest"),
        ("banana", "", ""),
        ("banana", "large", ""),
        ("leaf gelatine", "gold", ""),
        ("leaf gelatine", "platinum", ""),
        ("powdered gelatine", "packet", ""),
        ("instant yeast", "packet", ""),
        ("vanilla pod", "", ""),
        ("filo pastry", "leaf", ""),
        ("digestive biscuits", "", ""),
        ("cinnamon stick", "", ""),
        ("bay leaf", "", ""),
        ("apple", "medium", ""),
    ],
)
def test_one_of_what_bakers_count_has_a_weight(name: str, size: str, part: str) -> None:
    piece = row(name).piece(size, part)
    assert piece is not None
    assert piece.grams > 0


@pytest.mark.parametrize(
    ("name", "methods"),
    [
        ("plain flour", ("spooned", "scooped", "sifted")),
        ("strong white flour", ("spooned", "scooped", "sifted")),
        ("self-raising flour", ("spooned", "scooped", "sifted")),
        ("cake flour", ("spooned", "scooped", "sifted")),
        ("wholemeal flour", ("spooned", "scooped")),
        ("cocoa powder", ("spooned", "scooped", "sifted")),
        ("alkalised cocoa powder", ("spooned", "scooped", "sifted")),
        ("icing sugar", ("spooned", "sifted")),
        ("soft light brown sugar", ("packed", "spooned")),
        ("raisins", ("spooned", "packed")),
    ],
)
def test_what_packs_has_a_weight_for_each_way_to_fill_a_cup(name: str, methods: tuple[str, ...]) -> None:
    assert tuple(density.method for density in row(name).densities) == methods


@pytest.mark.parametrize("name", ["plain flour", "self-raising flour", "cake flour", "cocoa powder"])
def test_sifted_is_lightest_and_scooped_heaviest(name: str) -> None:
    weight = {density.method: density.grams_per_ml for density in row(name).densities}
    assert weight["sifted"] < weight["spooned"] < weight["scooped"]
