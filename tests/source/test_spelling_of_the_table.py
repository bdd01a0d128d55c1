"""British prose in American words, by the table of spelling."""

import pytest

from sitegen.sheet.setting import Setting
from sitegen.source.tables import read_tables

TABLES = read_tables()[0]
BRITISH, AMERICAN = TABLES.editions["british-metric"], TABLES.editions["us-cups"]
AUSTRALIAN = TABLES.editions["australian"]


@pytest.mark.parametrize(
    ("british", "american"),
    [
        ("Line the tin with baking parchment.", "Line the pan with parchment paper."),
        ("Grease a loaf tin.", "Grease a loaf pan."),
        ("Tins of different depth", "Pans of different depth"),
        ("Keep in an airtight tin.", "Keep in an airtight container."),
        ("Have cold water beside the hob.", "Have cold water beside the stovetop."),
        ("Cover with cling film.", "Cover with plastic wrap."),
        ("until the colour of honey, not grey", "until the color of honey, not gray"),
        ("Caramelise the sugar.", "Caramelize the sugar."),
        ("Leave to prove until doubled.", "Leave to proof until doubled."),
        ("Knock back the dough.", "Punch down the dough."),
        ("Sift the icing sugar and cornflour.", "Sift the powdered sugar and cornstarch."),
        ("Whip the double cream.", "Whip the heavy cream."),
        ("a pinch of bicarbonate of soda", "a pinch of baking soda"),
        ("Toast the flaked almonds.", "Toast the sliced almonds."),
        ("with a sugar thermometer", "with a candy thermometer"),
        ("Set twelve paper cases in the tin.", "Set twelve paper liners in the pan."),
        ("Fill the piping bag with a plain nozzle.", "Fill the pastry bag with a plain tip."),
        ("Roll out the shortcrust pastry.", "Roll out the pie dough."),
        ("Smooth it with a palette knife.", "Smooth it with an offset spatula."),
        ("Use a hand blender.", "Use an immersion blender."),
        ("Line the trays.", "Line the baking sheets."),
        ("Set a paper case in each hole of the tin.", "Set a paper liner in each cup of the pan."),
        ("Fill it with baking beans.", "Fill it with pie weights."),
        ("Lift out the beans and bake again.", "Lift out the pie weights and bake again."),
    ],
)
def test_a_sentence_reads_as_in_an_american_kitchen(british: str, american: str) -> None:
    assert Setting(TABLES, BRITISH, AMERICAN).respelled(british) == american


@pytest.mark.parametrize(
    "text",
    ["Set the custard in a tinted glass.", "Improve the shine.", "Greyhound", "Colander", "a tiny spoon"],
)
def test_a_part_of_a_word_stays(text: str) -> None:
    assert Setting(TABLES, BRITISH, AMERICAN).respelled(text) == text


def test_british_prose_stays_in_the_british_edition() -> None:
    text = "Line the tin with baking parchment."
    assert Setting(TABLES, BRITISH, BRITISH).respelled(text) == text


@pytest.mark.parametrize(
    ("british", "australian"),
    [
        ("Line the tin with baking parchment.", "Line the pan with baking paper."),
        ("Press it into the tart tin.", "Press it into the flan pan."),
        ("Stir in a tin of condensed milk.", "Stir in a can of condensed milk."),
        ("Lift out the beans and bake again.", "Lift out the weights and bake again."),
        ("Set it on a baking tray.", "Set it on an oven tray."),
        ("Cover with cling film.", "Cover with plastic wrap."),
        ("Set it over the hob.", "Set it over the stovetop."),
        ("until the colour of caster sugar", "until the colour of caster sugar"),
        ("Fold in the ground almonds.", "Fold in the almond meal."),
        ("Whip the whipping cream.", "Whip the thickened cream."),
        ("halved and stoned", "halved and pitted"),
        ("Split the vanilla pod.", "Split the vanilla bean."),
    ],
)
def test_a_sentence_reads_as_in_an_australian_kitchen(british: str, australian: str) -> None:
    assert Setting(TABLES, BRITISH, AUSTRALIAN).respelled(british) == australian
