"""The Sheet: everything that a reader sees of one recipe, in one edition, at one batch.

Frozen and fully computed. All figures are texts ready for print (Unicode fractions, en dashes,
no-break spaces); beside some of them stands the exact number, for checks and for JSON, never for
the press to calculate with.
"""

from dataclasses import dataclass
from datetime import datetime
from fractions import Fraction


@dataclass(frozen=True)
class SheetPhoto:
    """A picture: its path below the folder that holds `content/`, and its alternative text."""

    file: str
    alt: str


@dataclass(frozen=True)
class EditionLabel:
    """key: for addresses and file names; title: 'US cups'; language: BCP 47 tag, 'en-US'."""

    key: str
    title: str
    language: str


@dataclass(frozen=True)
class BatchLabel:
    """key: for addresses ('24-cupcakes'); title: '24 cupcakes'; is_tested: the batch as written."""

    key: str
    title: str
    is_tested: bool


@dataclass(frozen=True)
class SheetAlternative:
    """What may be taken in place of a line's ingredient. lead: 'or', 'or 5 g'. name: in the edition's words.

    allergens: as of a line; the name is then emphasised.
    """

    lead: str
    name: str
    allergens: tuple[str, ...] = ()


@dataclass(frozen=True)
class SheetLine:
    """One ingredient as printed.

    amount: '1 1/4 cups', '150 g', '' where nothing is measured. beside: a second measure, '150 g'.
    name: in the edition's words. extra: preparation and notes. alternatives: 'or rapeseed oil'.
    others: the alternatives one by one, for print that emphasises allergens.
    allergens: as the law of the edition's region names them; the name is then emphasised.
    exact_g: exact weight of what the recipe means; printed_g: of what is printed; None where unknown.
    small_step: True for salt, leavening, yeast, gelatine (they keep a finer step).
    at_line: line in the recipe file, 0 where it comes from elsewhere.
    """

    amount: str
    name: str
    beside: str = ""
    extra: str = ""
    alternatives: str = ""
    optional: bool = False
    allergens: tuple[str, ...] = ()
    exact_g: Fraction | None = None
    printed_g: Fraction | None = None
    small_step: bool = False
    is_flour: bool = False
    is_part: bool = False
    at_line: int = 0
    others: tuple[SheetAlternative, ...] = ()


@dataclass(frozen=True)
class StepUse:
    """What a step takes: '160 g', 'caster sugar'."""

    amount: str
    name: str


@dataclass(frozen=True)
class TutorialLink:
    slug: str
    title: str


@dataclass(frozen=True)
class SheetStep:
    """One instruction as printed.

    number: counted through the whole sheet, from 1. text: Markdown, all references resolved.
    oven: '150 C fan, 170 C conventional, gas 3' as the edition prints it, '' for none.
    hands_on, wait: '3 min', '22-24 min', '' for none; *_iso: ISO 8601 durations ('PT3M'), '' for none.
    """

    number: int
    text: str
    uses: tuple[StepUse, ...] = ()
    oven: str = ""
    fill: str = ""
    hands_on: str = ""
    wait: str = ""
    until: str = ""
    photo: SheetPhoto | None = None
    tutorial: TutorialLink | None = None
    cautions: tuple[str, ...] = ()


@dataclass(frozen=True)
class SheetComponent:
    """title: 'Bay sponge'. makes: 'about 640 g' or ''. from_base: made by another recipe's method.

    base_slug: that recipe's slug, '' else.
    """

    title: str
    lines: tuple[SheetLine, ...]
    steps: tuple[SheetStep, ...]
    makes: str = ""
    keeps: str = ""
    base_slug: str = ""


@dataclass(frozen=True)
class PlanRow:
    """A step on the clock. start: '0:00', '+1:25'. The *_min are exact.

    heat: where it waits, 'oven', 'fridge', 'freezer', 'hob', or ''. product: on a plan of several recipes,
    the one that the component is part of; '' where it is that recipe itself.
    """

    step: int
    component: str
    summary: str
    start: str
    hands_on: str
    wait: str
    start_min: Fraction
    hands_on_min: Fraction
    wait_min: Fraction
    uses_oven: bool
    heat: str = ""
    product: str = ""


@dataclass(frozen=True)
class TimelineBar:
    """A step on the timeline. All positions are shares of its width, from 0 to 1.

    start to free: hands are at work; free to end: it waits. heat: 'oven', 'fridge', 'freezer', 'hob' or ''.
    """

    step: int
    start: Fraction
    free: Fraction
    end: Fraction
    heat: str = ""


@dataclass(frozen=True)
class TimelineLane:
    """One component. title: as on the sheet. bars: by start."""

    title: str
    bars: tuple[TimelineBar, ...]


@dataclass(frozen=True)
class Timeline:
    """The plan as a picture. ticks: (position, '+1:25'). cuts: (position, '9 h') where a long wait is cut.

    spoken: the same in a sentence, for readers who cannot see it.
    """

    lanes: tuple[TimelineLane, ...]
    ticks: tuple[tuple[Fraction, str], ...]
    cuts: tuple[tuple[Fraction, str], ...]
    spoken: str


@dataclass(frozen=True)
class ClockRow:
    """A step at its hours. day: 'Saturday 5 December 2026', '' without an hour; start: '14:05' or '+1:25'.

    must_start: why it must not be missed ('out of the oven'), '' where it may slip.
    begins, free, ends: with their time zone; None on a plan without an hour.
    """

    row: PlanRow
    day: str
    start: str
    free: str
    end: str
    must_start: str = ""
    begins: datetime | None = None
    free_at: datetime | None = None
    ends: datetime | None = None


@dataclass(frozen=True)
class DayPlan:
    """The work of one or more recipes at hours of a day.

    total, hands_on, waiting: '4 h 25 min'. starts, ready: '10:40, Saturday 5 December 2026', or ''.
    proof: what is known of its length, a sentence. written_order: how long the steps take one after another.
    """

    title: str
    rows: tuple[ClockRow, ...]
    total: str
    hands_on: str
    waiting: str
    written_order: str
    starts: str
    ready: str
    proof: str
    notes: tuple[str, ...]
    timeline: Timeline | None


@dataclass(frozen=True)
class Times:
    """hands_on: '1 h 10 min'; start_to_finish: '4 h 25 min'; the *_iso are ISO 8601 durations."""

    hands_on: str
    waiting: str
    start_to_finish: str
    hands_on_iso: str
    cook_iso: str
    total_iso: str


@dataclass(frozen=True)
class SheetCaution:
    """level: 'red' or 'amber'. text: ready for print. source: who says so."""

    key: str
    level: str
    title: str
    text: str
    source: str


@dataclass(frozen=True)
class SheetRevision:
    """day: '20 July 2026'; iso: '2026-07-20'."""

    iso: str
    day: str
    note: str


@dataclass(frozen=True)
class SheetVideo:
    address: str


@dataclass(frozen=True)
class SheetSwap:
    """What may stand in for an ingredient.

    instead_of: 'self-raising flour'. use: '150 g plain flour + 1 1/2 tsp baking powder', for the amount on
    this sheet. changes: what it does to the bake, a sentence, '' for nothing. reason: why it is shown ('not
    sold in the United States'), '' for none. source: who says so.
    """

    instead_of: str
    use: str
    changes: str
    reason: str
    source: str


@dataclass(frozen=True)
class NutrientRow:
    """One line of the table. name: 'Fat', 'of which saturates'; is_inner: set in under the line above.

    per_portion, per_100g: '12 g', '<0.5 g', '' where the table has no such column. daily: '15 %' of the daily
    value (US), '' elsewhere. key: the same in every edition ('fat', 'salt').
    """

    name: str
    per_portion: str
    per_100g: str
    daily: str = ""
    is_inner: bool = False
    key: str = ""


@dataclass(frozen=True)
class Nutrition:
    """An estimate, rounded as the region's rules say.

    style: 'eu', 'us' or 'au'. portion: '1 cupcake, about 78 g', '' where only 100 g are given. notes: that it is
    an estimate, what was counted, which ingredients (under 5 % of the weight) are missing, which table the
    figures come from. energy: of a portion, else of 100 g, in one unit: '250 kcal'.
    """

    style: str
    portion: str
    rows: tuple[NutrientRow, ...]
    notes: tuple[str, ...]
    energy: str = ""


@dataclass(frozen=True)
class FormulaRow:
    """name: 'strong white flour'. weight: '325 g'. percent: '65 %' of all flour. part: 'Poolish' or ''."""

    name: str
    weight: str
    percent: str
    part: str = ""


@dataclass(frozen=True)
class Formula:
    """A dough in baker's percentages.

    title: of the dough. rows: every ingredient of the whole dough, preferment included. totals: (what,
    figure): ('total flour', '500 g'), ('hydration', '65 %'), ('piece', '85 g dough, about 74 g
    baked'). notes: dough temperature, what was counted.
    """

    title: str
    rows: tuple[FormulaRow, ...]
    totals: tuple[tuple[str, str], ...]
    notes: tuple[str, ...]


@dataclass(frozen=True)
class Head:
    """What any audience may know of a recipe: enough for a teaser and a list.

    published: ISO date for the audience's first release, '' unknown; modified: of the latest revision.
    """

    slug: str
    title: str
    summary: str
    makes: str
    tags: tuple[str, ...]
    photo: SheetPhoto | None
    published: str
    modified: str
    times: Times
    edition: EditionLabel
    batch: BatchLabel


@dataclass(frozen=True)
class PublicComponent:
    """A component without its method: title and ingredient lines only."""

    title: str
    lines: tuple[SheetLine, ...]


@dataclass(frozen=True)
class Teaser:
    """What everyone may see of a recipe that shows a teaser: no amounts, no method."""

    head: Head
    allergens: tuple[str, ...]
    estimates_note: str
    video: SheetVideo | None = None


@dataclass(frozen=True)
class IngredientSide:
    """What everyone may see of a recipe that shows its ingredients: no step, no plan, no step photo."""

    head: Head
    components: tuple[PublicComponent, ...]
    tin: str
    oven: str
    allergens: tuple[str, ...]
    egg_note: str
    measure_note: str
    batch_notes: tuple[str, ...]
    estimates_note: str
    video: SheetVideo | None = None
    swaps: tuple[SheetSwap, ...] = ()
    unknowns: tuple[str, ...] = ()


@dataclass(frozen=True)
class Sheet:
    """The whole, for subscribers (or for everyone where the recipe says so).

    tin: 'a 12-hole muffin tin'. oven: all settings used, '150 C fan, 170 C, gas 3'.
    allergens: lines in the edition's form, 'Contains: wheat, milk, eggs.'. egg_note: what an egg weighs.
    measure_note: how cups were filled, '' by weight. batch_notes: what does not scale, for this batch.
    keeping: (component or whole, how long). notes: Markdown. unknowns: sentences on what could not be
    computed, as nothing is known of an ingredient. leftovers: of a base recipe, '40 g of Base buttercream'.
    """

    head: Head
    components: tuple[SheetComponent, ...]
    tin: str
    oven: str
    allergens: tuple[str, ...]
    egg_note: str
    measure_note: str
    batch_notes: tuple[str, ...]
    plan: tuple[PlanRow, ...]
    cautions: tuple[SheetCaution, ...]
    notes: str
    keeping: tuple[tuple[str, str], ...]
    revisions: tuple[SheetRevision, ...]
    video: SheetVideo | None
    estimates_note: str
    swaps: tuple[SheetSwap, ...] = ()
    nutrition: Nutrition | None = None
    formulas: tuple[Formula, ...] = ()
    unknowns: tuple[str, ...] = ()
    leftovers: tuple[str, ...] = ()
    timeline: Timeline | None = None
    plan_notes: tuple[str, ...] = ()


View = Sheet | IngredientSide | Teaser
"""What one audience sees of one recipe: a template is given one of these and no more."""
