"""The Sheet: everything that a reader sees of one recipe, in one edition, at one batch.

Frozen and fully computed. All figures are texts ready for print (Unicode fractions, en dashes,
no-break spaces); beside some of them stands the exact number, for checks and for JSON, never for
the press to calculate with.
"""

from dataclasses import dataclass
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
class SheetLine:
    """One ingredient as printed.

    amount: '1 1/4 cups', '150 g', '' where nothing is measured. beside: a second measure, '150 g'.
    name: in the edition's words. extra: preparation and notes. alternatives: 'or rapeseed oil'.
    allergens: EU/UK names for an edition outside the US, US names inside it; the name is then emphasised.
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
    """A step on the clock. start: '0:00', '+1:25'. what: 'Bay sponge: step 3'. The *_min are exact."""

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

    per_portion, per_100g: '12 g', '<0.5 g'. daily: '15 %' of the daily value (US), '' elsewhere.
    """

    name: str
    per_portion: str
    per_100g: str
    daily: str = ""
    is_inner: bool = False


@dataclass(frozen=True)
class Nutrition:
    """An estimate, rounded as the region's rules say.

    style: 'eu' or 'us'. portion: '1 cupcake, about 78 g'. notes: that it is an estimate, what was counted,
    which ingredients (under 5 % of the weight) are missing, which table the figures come from.
    """

    style: str
    portion: str
    rows: tuple[NutrientRow, ...]
    notes: tuple[str, ...]


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


View = Sheet | IngredientSide | Teaser
"""What one audience sees of one recipe: a template is given one of these and no more."""
