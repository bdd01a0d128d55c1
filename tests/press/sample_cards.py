"""Sheets of several shapes, for the tests of the card."""

from dataclasses import replace
from fractions import Fraction

from sitegen.press.card_photos import boxes_of, cut_for_card
from sitegen.sheet.values import (
    BatchLabel,
    Head,
    Sheet,
    SheetAlternative,
    SheetCaution,
    SheetComponent,
    SheetLine,
    SheetPhoto,
    SheetRevision,
    SheetStep,
    SheetVideo,
    StepUse,
    TutorialLink,
)
from sitegen.sheet.work_values import PlanRow, Times
from tests.press.sample_parts import (
    BRITISH,
    FORMULA,
    HOT_SUGAR,
    LEFTOVERS,
    NUTRITION,
    SIXTEEN,
    SWAPS,
    UNKNOWNS,
    US_CUPS,
    US_NUTRITION,
    drawn_photo,
)

PAGE = "https://tansyrow.example/table/recipes/pear-and-oat-slices.html"

_SAYINGS = (
    "Rub the butter into the flour until no lump is larger than a lentil, then stir in the sugar.",
    "Bring the juice to a bare simmer and let the pears stand in it, **covered**, off the heat.",
    "Bake on the middle shelf and turn the tin once, because most ovens are hotter at the back.",
    "Press two thirds of the crumbs into the lined tin, level them with a spoon and prick all over.",
    "Whisk the eggs and the sugar over barely simmering water without a pause; scrape the sides as you "
    "go, so that nothing has time to set there, and take the bowl off as soon as the whisk leaves a trail "
    "that holds for three seconds. Stand it in cold water and go on until it is lukewarm.",
)


def sample_sheet(steps: int = 12, photos: int = 5, lines: int = 9, cautions: bool = True) -> Sheet:
    """A sheet of two components (one where it has two steps), with a finished photo where it has any."""
    parts = 1 if steps <= 2 else 2
    numbers = list(range(1, steps + 1))
    cut = (len(numbers) + parts - 1) // parts
    groups = [numbers[:cut], numbers[cut:]][:parts]
    titles = ("Oat crumb", "Pear filling")
    components = tuple(
        SheetComponent(
            title=title,
            lines=tuple(_line(number) for number in range(lines)),
            steps=tuple(_step(number, number <= photos) for number in group),
            makes="about 640\u00a0g",
            keeps="3 days",
        )
        for title, group in zip(titles, groups, strict=False)
    )
    return Sheet(
        head=_head(photos > 0),
        components=components,
        tin="a 20\u00a0cm square tin, 5\u00a0cm deep",
        oven="160\u00a0°C fan, 180\u00a0°C, gas 4",
        allergens=("Contains: oats, wheat, milk, eggs, almonds.", "Check the label: candied peel."),
        egg_note="Medium eggs: 51\u00a0g without the shell.",
        measure_note="",
        batch_notes=(),
        plan=tuple(_row(number) for number in numbers),
        cautions=CAUTIONS if cautions else (),
        notes="Ripe pears want half the sugar.\n\n- Freeze the slices flat.\n- Thaw them *uncovered*.",
        keeping=(("Whole", "3 days in a closed tin"), ("Pear filling", "5 days in the fridge, covered")),
        revisions=(
            SheetRevision("2026-07-20", "20 July 2026", "Oats corrected from 150\u00a0g to 100\u00a0g."),
            SheetRevision("2026-05-02", "2 May 2026", "Baking time lengthened."),
        ),
        video=SheetVideo("https://video.example/pear-and-oat-slices"),
        estimates_note="Figures are estimates. Read the labels of what you buy.",
    )


def with_panels(sheet: Sheet) -> Sheet:
    """The sheet with all that may stand beside its list and after its method."""
    return replace(
        sheet,
        swaps=SWAPS,
        nutrition=NUTRITION,
        formulas=(FORMULA,),
        unknowns=UNKNOWNS,
        leftovers=LEFTOVERS,
    )


CUPS = "1¼\u00a0cups plus 2\u00a0tbsp"
FOLDER = "content/recipes/pear-and-oat-slices"
CAUTIONS = (
    HOT_SUGAR,
    SheetCaution(
        "raw-flour", "amber", "Raw flour", "Do not taste the crumb before it is baked.", "common practice"
    ),
)


def in_cups(sheet: Sheet) -> Sheet:
    """The sheet in cups, each with its weight beside it, at a batch that was worked out."""
    return replace(
        sheet,
        head=replace(
            sheet.head,
            edition=US_CUPS,
            batch=BatchLabel("32-slices", "32 slices", is_tested=False),
        ),
        components=tuple(
            replace(
                part,
                lines=tuple(replace(line, amount=CUPS, beside="150\u00a0g") for line in part.lines),
            )
            for part in sheet.components
        ),
        measure_note="Cups are spooned and levelled; a cup of flour weighs 125\u00a0g.",
        nutrition=sheet.nutrition and US_NUTRITION,
        batch_notes=("Worked out from the tested batch. Times are those of the test.",),
    )


def card_photos(sheet: Sheet) -> dict[str, bytes]:
    """Every photo of the sheet, painted and cut."""
    return {file: cut_for_card(painted(file), box) for file, box in boxes_of(sheet).items()}


def painted(name: str, width: int = 1600, height: int = 1200) -> bytes:
    """A photo in the colours of a bake, another one for each name."""
    return drawn_photo(width, height, f"#e8{214 - sum(name.encode()) % 90:02x}aa")


def _head(with_photo: bool) -> Head:
    return Head(
        slug="pear-and-oat-slices",
        title="Pear and oat slices with brown butter",
        summary="A short oat crumb, soft pears in their own juice and a lid that cracks when you cut it.",
        makes="16 slices",
        tags=("tray bakes", "pears"),
        photo=SheetPhoto(f"{FOLDER}/finished.jpg", "Sixteen square slices on a rack") if with_photo else None,
        published="2026-05-01",
        modified="2026-07-20",
        times=Times("1\u00a0h 10\u00a0min", "2\u00a0h", "3\u00a0h 10\u00a0min", "PT1H10M", "PT2H", "PT3H10M"),
        edition=BRITISH,
        batch=SIXTEEN,
    )


def _line(number: int) -> SheetLine:
    rows = (
        SheetLine("150\u00a0g", "plain flour", allergens=("wheat",), extra="sifted"),
        SheetLine("160\u00a0g", "caster sugar"),
        SheetLine("¾\u00a0tsp", "bicarbonate of soda", beside="4\u00a0g"),
        SheetLine("2", "medium eggs", allergens=("eggs",), extra="at room temperature"),
        SheetLine("100\u00a0g", "sunflower oil", others=(SheetAlternative("or", "rapeseed oil"),)),
        SheetLine("", "flour", extra="for dusting", allergens=("wheat",)),
        SheetLine("40\u00a0g", "flaked almonds", allergens=("almonds",), optional=True),
        SheetLine("1½", "lemons", extra="zest only, the fruit kept for another day and another bake"),
        SheetLine("500\u00a0g", "Base buttercream", is_part=True, allergens=("milk",)),
    )
    return rows[number % len(rows)]


def _step(number: int, with_photo: bool) -> SheetStep:
    text = _SAYINGS[number % len(_SAYINGS)]
    bakes = number % 4 == 2
    return SheetStep(
        number=number,
        text=text,
        uses=()
        if bakes
        else (StepUse("160\u00a0g", "caster sugar"), StepUse("2", "medium eggs"), StepUse("", "flour")),
        oven="160\u00a0°C fan, 180\u00a0°C, gas 4" if bakes else "",
        fill="two-thirds full" if number % 7 == 3 else "",
        hands_on="" if bakes else "4\u00a0min",
        wait="22–24\u00a0min" if bakes or number % 5 == 0 else "",
        until="the tops spring back when pressed" if bakes else "",
        photo=SheetPhoto(f"{FOLDER}/step-{number % 7}.jpg", f"A bowl at step {number}")
        if with_photo
        else None,
        tutorial=TutorialLink("lining-tins", "Lining tins") if number % 6 == 4 else None,
        cautions=("hot-sugar",) if number % 9 == 5 else (),
    )


def _row(number: int) -> PlanRow:
    return PlanRow(
        step=number,
        component="Oat crumb",
        summary="Rub the butter into the flour",
        start=f"0:{number:02}",
        hands_on="4\u00a0min",
        wait="22–24\u00a0min" if number % 4 == 2 else "",
        start_min=Fraction(number),
        hands_on_min=Fraction(4),
        wait_min=Fraction(24 if number % 4 == 2 else 0),
        uses_oven=number % 4 == 2,
    )
