"""What the sheets of pages and those of cards have in common: the school, photos, and rich panels."""

from dataclasses import replace
from io import BytesIO
from typing import Any

from PIL import Image, ImageDraw

from sitegen.press.imprint import Imprint
from sitegen.sheet.panel_values import Formula, FormulaRow, NutrientRow, Nutrition, SheetSwap
from sitegen.sheet.values import BatchLabel, EditionLabel, SheetCaution

IMPRINT = Imprint(
    name="Tansy Row",
    tagline="Baking taught one careful step at a time",
    address="https://tansyrow.example/",
    language="en-GB",
    about="A small baking school with *one* long table.",
    copyright="Tansy Row, 2026. Print what you like for your own kitchen.",
    audience="public",
    subscribers_address="https://tansyrow.example/table/",
)
TABLE_IMPRINT = replace(
    IMPRINT, audience="subscribers", address="https://tansyrow.example/table/", subscribers_address=""
)
BRITISH = EditionLabel("british-metric", "British metric", "en-GB")
US_CUPS = EditionLabel("us-cups", "US cups", "en-US")
SIXTEEN = BatchLabel("16-slices", "16 slices", is_tested=True)
ESTIMATES = (
    "Times and weights are estimates from one kitchen. Check labels, follow your local food-safety rules, "
    "and ask a qualified person where health depends on it."
)
HOT_SUGAR = SheetCaution(
    "hot-sugar",
    "red",
    "Hot sugar burns",
    "Caramel clings where it lands. Long sleeves, a deep pan, cold water within reach, no children near.",
    "common practice",
)
SWAPS = (
    SheetSwap(
        instead_of="self-raising flour",
        use="150\u00a0g plain flour + 1½\u00a0tsp baking powder",
        changes="The crumb is a little more open.",
        reason="not sold in the United States",
        source="common practice",
    ),
    SheetSwap("golden syrup", "60\u00a0g clear honey", "", "", "from memory"),
)
NUTRITION = Nutrition(
    style="eu",
    portion="1 slice, about 62\u00a0g",
    rows=(
        NutrientRow("Energy", "1046\u00a0kJ / 250\u00a0kcal", "1687\u00a0kJ / 403\u00a0kcal"),
        NutrientRow("Fat", "12\u00a0g", "19\u00a0g"),
        NutrientRow("of which saturates", "5.1\u00a0g", "8.2\u00a0g", is_inner=True),
        NutrientRow("Carbohydrate", "31\u00a0g", "50\u00a0g"),
        NutrientRow("of which sugars", "20\u00a0g", "32\u00a0g", is_inner=True),
        NutrientRow("Fibre", "1.9\u00a0g", "3.1\u00a0g"),
        NutrientRow("Protein", "3.4\u00a0g", "5.5\u00a0g"),
        NutrientRow("Salt", "0.13\u00a0g", "0.21\u00a0g"),
    ),
    notes=(
        "An estimate, reckoned from the ingredients and not measured.",
        "Left out, as nothing is known of it: rose syrup (2\u00a0% of the weight).",
    ),
)
US_NUTRITION = Nutrition(
    style="us",
    portion="1 slice, about 62\u00a0g",
    rows=(
        NutrientRow("Calories", "250", "400"),
        NutrientRow("Total fat", "12\u00a0g", "19\u00a0g", "15\u00a0%"),
        NutrientRow("Saturated fat", "5\u00a0g", "8\u00a0g", "25\u00a0%", is_inner=True),
        NutrientRow("Sodium", "50\u00a0mg", "85\u00a0mg", "2\u00a0%"),
        NutrientRow("Total carbohydrate", "33\u00a0g", "53\u00a0g", "12\u00a0%"),
        NutrientRow("Dietary fiber", "2\u00a0g", "3\u00a0g", "7\u00a0%", is_inner=True),
        NutrientRow("Total sugars", "20\u00a0g", "32\u00a0g", is_inner=True),
        NutrientRow("Protein", "3\u00a0g", "6\u00a0g"),
    ),
    notes=NUTRITION.notes,
)
FORMULA = Formula(
    title="Honey dough",
    rows=(
        FormulaRow("strong white flour", "100\u00a0g", "20\u00a0%", "Poolish"),
        FormulaRow("water", "100\u00a0g", "20\u00a0%", "Poolish"),
        FormulaRow("instant yeast", "0.2\u00a0g", "0.04\u00a0%", "Poolish"),
        FormulaRow("strong white flour", "325\u00a0g", "65\u00a0%"),
        FormulaRow("wholemeal flour", "75\u00a0g", "15\u00a0%"),
        FormulaRow("water", "225\u00a0g", "45\u00a0%"),
        FormulaRow("fine salt", "10\u00a0g", "2\u00a0%"),
    ),
    totals=(
        ("total flour", "500\u00a0g"),
        ("hydration", "65\u00a0%"),
        ("flour that is pre-fermented", "20\u00a0%"),
        ("piece", "420\u00a0g dough, about 370\u00a0g baked"),
    ),
    notes=("For a dough of 25\u00a0°C in a room of 21\u00a0°C, use water of 29\u00a0°C.",),
)
PLAIN_FORMULA = Formula(
    "Hazelnut crumb",
    (FormulaRow("plain flour", "180\u00a0g", "100\u00a0%"), FormulaRow("butter", "130\u00a0g", "72\u00a0%")),
    (("total flour", "180\u00a0g"),),
    (),
)
UNKNOWNS = ("Nothing is known of rose syrup: its allergens are not in the list, so read its label.",)
LEFTOVERS = ("40\u00a0g of Base buttercream",)


def drawn_photo(width: int = 2000, height: int = 1500, colour: str = "#c9a45c", **save: Any) -> bytes:
    """A JPEG to stand for a photo: rings on a coloured field, with a darker corner at the top left."""
    image = Image.new("RGB", (width, height), colour)
    draw = ImageDraw.Draw(image)
    for ring in range(6):
        across, down = width * (2 + ring) // 20, height * (2 + ring) // 20
        draw.ellipse((across, down, width - across, height - down), (190 - 12 * ring, 160, 80 + 8 * ring))
    draw.rectangle((0, 0, width // 4, height // 4), fill="#6e2a4d")
    out = BytesIO()
    image.save(out, "JPEG", quality=90, **save)
    return out.getvalue()
