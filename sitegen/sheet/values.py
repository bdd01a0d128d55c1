"""The Sheet: everything that a reader sees of one recipe, in one edition, at one batch.

Frozen and fully computed. All figures are texts ready for print (Unicode fractions, en dashes,
no-break spaces); beside some of them stands the exact number, for checks and for JSON, never for
the press to calculate with.
"""

from dataclasses import dataclass
from fractions import Fraction

from sitegen.sheet.facet_values import Facets
from sitegen.sheet.panel_values import Formula, Nutrition, SheetSwap
from sitegen.sheet.work_values import PlanRow, Timeline, Times


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
    """key: for addresses ('24-cupcakes'); title: '24 cupcakes'; is_tested: the batch as written.

    tin: 'two 18 cm round cake tins' where it is told by its tin, and of the tested batch; '' where a count
    or a share tells it.
    """

    key: str
    title: str
    is_tested: bool
    tin: str = ""


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
    name: in the edition's words. extra: preparation and notes. others: what may be taken instead.
    allergens: as the law of the edition's region names them; the name is then emphasised.
    exact_g: exact weight of what the recipe means; printed_g: of what is printed; None where unknown.
    small_step: True for salt, leavening, yeast, gelatine (they keep a finer step).
    at_line: line in the recipe file, 0 where it comes from elsewhere.
    """

    amount: str
    name: str
    beside: str = ""
    extra: str = ""
    others: tuple[SheetAlternative, ...] = ()
    optional: bool = False
    allergens: tuple[str, ...] = ()
    exact_g: Fraction | None = None
    printed_g: Fraction | None = None
    small_step: bool = False
    is_flour: bool = False
    is_part: bool = False
    at_line: int = 0

    @property
    def alternatives(self) -> str:
        """What may be taken instead, as plain text: 'or rapeseed oil'."""
        return ", ".join(f"{other.lead} {other.name}" for other in self.others)


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
class StepTimer:
    """A timer for a step's own wait.

    wait: '22–24 min', as printed. rings_s: whole seconds after its start, ascending: at the lower figure to
    look, and at the upper one.
    """

    wait: str
    rings_s: tuple[int, ...]


@dataclass(frozen=True)
class SheetMoment:
    """Where a step begins on film. moment: '2:05', as players show it; begins_s: the same in whole seconds.

    address: of the film from there on, '' where its address takes no moment.
    """

    moment: str
    begins_s: int
    address: str = ""


@dataclass(frozen=True)
class SheetStep:
    """One instruction as printed.

    number: counted through the whole sheet, from 1. text: Markdown, all references resolved.
    oven: '150 C fan, 170 C conventional, gas 3' as the edition prints it, '' for none.
    hands_on, wait: '3 min', '22-24 min', '' for none.
    then: how long what it made may wait: 'Go on within 10 min.', 'May wait 4 h, chilled.', '' for no bound.
    timer: None where nothing waits, or for longer than anybody sits by.
    on_film: where it begins on film; None where that is not known.
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
    then: str = ""
    timer: StepTimer | None = None
    on_film: SheetMoment | None = None


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
class RevisedLine:
    """A line of which a revision speaks, as one edition prints it now. steps: that take of it, by number."""

    edition: str
    component: str
    line: SheetLine
    steps: tuple[int, ...] = ()


@dataclass(frozen=True)
class SheetChapter:
    """moment: '1:25', as players show it; begins_s: the same in whole seconds from the film's start.

    address: of the film from there on, '' where its address takes no moment.
    """

    moment: str
    title: str
    begins_s: int
    address: str = ""


@dataclass(frozen=True)
class SheetVideo:
    """published: ISO date, '' unknown."""

    address: str
    published: str = ""
    chapters: tuple[SheetChapter, ...] = ()


@dataclass(frozen=True)
class Head:
    """What any audience may know of a recipe: enough for a teaser and a list.

    published: ISO date for the audience's first release, '' unknown; modified: of the latest revision.
    facets: by what it is found.
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
    facets: Facets = Facets()


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
