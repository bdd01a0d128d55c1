"""A rich sheet and its choices for the tests of pages; and what audiences see of it."""

from collections.abc import Iterator
from dataclasses import fields, is_dataclass
from fractions import Fraction
from pathlib import Path

from sitegen.press.choices import CardFile, Choice, Choices
from sitegen.press.entries import TutorialEntry
from sitegen.press.picture import Picture
from sitegen.press.pictures import cut_picture
from sitegen.press.shared import Translation
from sitegen.sheet.facet_values import Facet, Facets
from sitegen.sheet.values import (
    Head,
    IngredientSide,
    PublicComponent,
    Sheet,
    SheetAlternative,
    SheetCaution,
    SheetChapter,
    SheetComponent,
    SheetLine,
    SheetPhoto,
    SheetRevision,
    SheetStep,
    SheetVideo,
    StepTimer,
    StepUse,
    Teaser,
    TutorialLink,
)
from sitegen.sheet.work_values import PlanRow, Times
from tests.press.sample_parts import (
    BRITISH,
    ESTIMATES,
    FORMULA,
    HOT_SUGAR,
    LEFTOVERS,
    NUTRITION,
    PLAIN_FORMULA,
    SIXTEEN,
    SWAPS,
    UNKNOWNS,
    drawn_photo,
)

THEME_FOLDER = Path(__file__).parents[2] / "themes" / "oatcloth"
_FOLDER = "content/recipes/quince-and-hazelnut-slices"
_CRUMB = (
    SheetLine("180 g", "plain flour", allergens=("wheat",), is_flour=True),
    SheetLine("90 g", "hazelnuts", extra="toasted and ground", allergens=("hazelnuts",)),
    SheetLine("110 g", "light brown sugar"),
    SheetLine("¼ tsp", "fine salt", small_step=True),
    SheetLine("130 g", "unsalted butter", extra="cold, cubed", allergens=("milk",)),
    SheetLine("", "butter and flour", extra="for the tin"),
)
_TOPPING = (
    SheetLine("150 g", "caster sugar"),
    SheetLine("45 g", "water"),
    SheetLine("2", "medium eggs and 15 g of a beaten one", allergens=("eggs",)),
    SheetLine(
        "400 g", "quinces", others=(SheetAlternative("or", "firm pears"),), extra="peeled, cored and sliced"
    ),
    SheetLine("1½ tbsp", "brandy", optional=True),
    SheetLine("640 g", "Hazelnut crumb", is_part=True),
)
_STEPS = (
    SheetStep(
        number=1,
        text="Butter and flour the tin. Rub the butter into the flour, hazelnuts, sugar and salt with *cold* "
        "fingers; keep back a third of it.",
        uses=(
            StepUse("180 g", "plain flour"),
            StepUse("90 g", "hazelnuts"),
            StepUse("110 g", "light brown sugar"),
            StepUse("¼ tsp", "fine salt"),
            StepUse("130 g", "unsalted butter"),
        ),
        hands_on="8 min",
        until="no lump is larger than a lentil",
        photo=SheetPhoto(f"{_FOLDER}/crumb.jpg", "Coarse brown crumbs in a wide bowl"),
    ),
    SheetStep(
        number=2,
        text="Press the rest into the tin and bake.",
        oven="160\u00a0°C fan (180\u00a0°C\u00a0conventional, 350\u00a0°F, gas\u00a04)",
        hands_on="5 min",
        wait="18–20 min",
        timer=StepTimer("18–20 min", (1080, 1200)),
        until="the edges are the colour of a hazelnut skin",
    ),
    SheetStep(
        number=3,
        text="Melt the sugar in the water without stirring, then boil to 165 °C.",
        uses=(StepUse("150 g", "caster sugar"), StepUse("45 g", "water")),
        hands_on="9 min",
        until="it is the amber of clear honey",
        photo=SheetPhoto(f"{_FOLDER}/caramel.jpg", "Amber caramel in a pale pan"),
        tutorial=TutorialLink("cooking-sugar-safely", "Cooking sugar safely"),
        cautions=("hot-sugar",),
    ),
    SheetStep(
        number=4,
        text="Lay the quinces in the caramel, spread them over the base, scatter the rest and bake.",
        uses=(StepUse("400 g", "quinces"), StepUse("a third of the", "Hazelnut crumb")),
        oven="160\u00a0°C fan (180\u00a0°C\u00a0conventional, 350\u00a0°F, gas\u00a04)",
        fill="two-thirds full",
        hands_on="7 min",
        wait="35 min",
        until="the fruit gives to the point of a knife",
    ),
)
_PLAN = (
    PlanRow(1, "Hazelnut crumb", "Rub in the butter", "0:00", "8 min", "", *map(Fraction, (0, 8, 0)), False),
    PlanRow(
        2, "Hazelnut crumb", "Press and bake", "0:08", "5 min", "20 min", *map(Fraction, (8, 5, 20)), True
    ),
    PlanRow(3, "Quince caramel", "Boil the caramel", "0:13", "9 min", "", *map(Fraction, (13, 9, 0)), False),
    PlanRow(
        4, "Quince caramel", "Fill and bake", "0:33", "7 min", "35 min", *map(Fraction, (33, 7, 35)), True
    ),
)
_CAUTIONS = (
    HOT_SUGAR,
    SheetCaution(
        "alcohol",
        "amber",
        "Made with alcohol",
        "Not all of it leaves in the oven. Leave the brandy out for anyone who avoids it.",
        "common practice",
    ),
)
CHAPTERS = (
    SheetChapter("0:00", "What we make", 0, "https://video.example/quince#t=0"),
    SheetChapter("1:25", "The crumb", 85, "https://video.example/quince#t=85"),
    SheetChapter("1:02:30", "To finish", 3750, "https://video.example/quince#t=3750"),
)
FACETS = Facets(
    (
        Facet(1, "time", "afternoon", "in an afternoon"),
        Facet(4, "work", "half-hour", "up to half an hour of work"),
        Facet(8, "tin", "box", "square or rectangular tin"),
        Facet(19, "without", "peanut", "peanut"),
    ),
    labels_of="brandy",
)
HEAD = Head(
    slug="quince-and-hazelnut-slices",
    title="Quince and hazelnut slices",
    summary="A short crumb, quinces in their own caramel, and the rest of the crumb on top.",
    makes="16 slices",
    tags=("tray bakes", "autumn fruit"),
    photo=SheetPhoto(f"{_FOLDER}/finished.jpg", "Sixteen slices on a striped cloth"),
    published="2026-10-09",
    modified="2026-10-20",
    times=Times("29 min", "45 min", "1 h 15 min", "PT29M", "PT46M", "PT1H15M"),
    edition=BRITISH,
    batch=SIXTEEN,
    facets=FACETS,
)
SHEET = Sheet(
    head=HEAD,
    components=(
        SheetComponent("Hazelnut crumb", _CRUMB, _STEPS[:2], makes="about 510 g", keeps="3 days"),
        SheetComponent("Quince caramel", _TOPPING, _STEPS[2:], base_slug="base-caramel"),
    ),
    tin="a 20 cm square tin, 5 cm deep",
    oven="160\u00a0°C fan (180\u00a0°C\u00a0conventional, 350\u00a0°F, gas\u00a04)",
    allergens=("Contains: wheat, hazelnuts, milk, eggs.", "Check the label of every packet."),
    egg_note="A medium egg weighs 51 g without its shell.",
    measure_note="Cups are filled with a spoon and levelled.",
    batch_notes=("A deeper layer wants a longer time in the oven.",),
    plan=_PLAN,
    cautions=_CAUTIONS,
    notes="Ripe pears want *half* the sugar.\n\n- Freeze the slices flat.\n- Thaw them uncovered.",
    keeping=(("The slices", "4 days in a tin"), ("Hazelnut crumb", "3 days in the fridge")),
    revisions=(SheetRevision("2026-10-20", "20 October 2026", "Sugar corrected from 250 g to 150 g."),),
    video=SheetVideo("https://video.example/quince", "2026-10-10", CHAPTERS),
    estimates_note=ESTIMATES,
    swaps=SWAPS,
    nutrition=NUTRITION,
    formulas=(FORMULA, PLAIN_FORMULA),
    unknowns=UNKNOWNS,
    leftovers=LEFTOVERS,
)
INGREDIENT_SIDE = IngredientSide(
    head=HEAD,
    components=tuple(PublicComponent(part.title, part.lines) for part in SHEET.components),
    tin=SHEET.tin,
    oven=SHEET.oven,
    allergens=SHEET.allergens,
    egg_note=SHEET.egg_note,
    measure_note=SHEET.measure_note,
    batch_notes=SHEET.batch_notes,
    estimates_note=SHEET.estimates_note,
    swaps=SHEET.swaps,
    unknowns=SHEET.unknowns,
)
TEASER = Teaser(HEAD, SHEET.allergens, SHEET.estimates_note)
HERE = "recipes/quince-and-hazelnut-slices.html"

_VARIANTS = "recipes/quince-and-hazelnut-slices"
CHOICES = Choices(
    batches=(
        Choice("16 slices", HERE, is_here=True, is_tested=True),
        Choice("32 slices", f"{_VARIANTS}/british-metric-32-slices.html", is_here=False),
    ),
    tins=(
        Choice("a 20 cm square tin", HERE, is_here=True, is_tested=True),
        Choice("a 23 cm square tin", f"{_VARIANTS}/british-metric-23cm-square.html", is_here=False),
    ),
    editions=(
        Choice("British metric", HERE, is_here=True, is_tested=True),
        Choice("US cups", f"{_VARIANTS}/us-cups-16-slices.html", is_here=False, is_tested=True),
        Choice("Australian", f"{_VARIANTS}/australian-16-slices.html", is_here=False, is_tested=True),
    ),
    chosen="16 slices, British metric",
    tested=HERE,
    translations=(
        Translation("en-GB", HERE),
        Translation("en-US", f"{_VARIANTS}/us-cups-16-slices.html"),
        Translation("en-AU", f"{_VARIANTS}/australian-16-slices.html"),
    ),
    cards=(
        CardFile("A4", "cards/quince-and-hazelnut-slices-british-metric-a4.pdf"),
        CardFile("US letter", "cards/quince-and-hazelnut-slices-british-metric-letter.pdf"),
    ),
)
TUTORIAL = TutorialEntry(
    slug="cooking-sugar-safely",
    title="Cooking sugar safely",
    summary="How to boil a syrup without burning yourself.",
    markdown="## Before you light the hob\n\nLong sleeves.\n\n![Four drops of sugar](colours.jpg)\n\n"
    "| what | heat |\n| --- | --- |\n| amber | 168 °C |\n",
    source="content/tutorials/cooking-sugar-safely.md",
    photo=SheetPhoto("content/tutorials/sugar.jpg", "A deep pan"),
)


def sample_pictures() -> tuple[dict[str, Picture], list[tuple[str, bytes]]]:
    """All pictures that the sample shows, cut, and their files."""
    pictures: dict[str, Picture] = {}
    files: list[tuple[str, bytes]] = []
    for number, photo in enumerate(
        (*_photos(SHEET), *_photos(TUTORIAL), SheetPhoto("content/tutorials/colours.jpg", ""))
    ):
        source = drawn_photo(1000, 750, colour=f"#c9a4{60 + number:02d}")
        pictures[photo.file], cut = cut_picture(source, photo.file)
        files += cut
    return pictures, files


def _photos(value: object) -> Iterator[SheetPhoto]:
    if isinstance(value, SheetPhoto):
        yield value
    elif isinstance(value, tuple):
        for item in value:
            yield from _photos(item)
    elif is_dataclass(value):
        for one in fields(value):
            yield from _photos(getattr(value, one.name))
