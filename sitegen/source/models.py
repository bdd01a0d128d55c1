"""The shapes of the files that a baker writes: which keys, which are needed, how long a text may be.

The same models make the JSON Schemas that editors complete from (`schemas.py`). Amounts, times and
references stay text here; `lines.py`, `phrases.py`, `vessels.py` and `prose.py` read them.
"""

from typing import Annotated, Literal

from pydantic import Field, StringConstraints

from sitegen import limits
from sitegen.source.base_uses import BaseUseFile
from sitegen.source.component_words import DoughFile
from sitegen.source.file_texts import (
    Address,
    Day,
    Essay,
    FileModel,
    FileName,
    Passage,
    Sentence,
    Short,
    Slug,
    YesNo,
)
from sitegen.source.keepings import KeepsFile
from sitegen.source.larder_file import LarderRowFile


class PhotoFile(FileModel):
    """A picture, and the same in words for who cannot see it."""

    file: FileName = Field(description="File name, beside this file.", examples=["finished.jpg"])
    alt: Sentence = Field(
        description="What the picture shows, for readers who cannot see it.",
        examples=["A loose yellow batter under a whisk"],
    )


class ReleaseFile(FileModel):
    """The days on which the recipe appears, in the school's time zone."""

    subscribers: Day | None = Field(None, description="First day for subscribers.", examples=["2026-07-03"])
    public: Day | None = Field(
        None, description="First day for everyone. Without it: never.", examples=["2026-07-10"]
    )
    public_shows: Literal["teaser", "ingredients", "everything"] = Field(
        "teaser", description="How much everyone sees from the public day on."
    )


class VideoFile(FileModel):
    """The film of the recipe."""

    address: Address = Field(description="Where the film is shown.", examples=["https://video.example/bay"])
    published: Day | None = Field(
        None, description="The day it came out; search engines list no film without.", examples=["2026-07-11"]
    )
    captions: FileName | None = Field(
        None, description="Captions (WebVTT or SRT), beside this file.", examples=["captions.vtt"]
    )
    chapters: list[Short] = Field(
        default=[],
        description="Where its chapters begin, each with its title; the first at 0:00.",
        examples=[["0:00 What we make", "1:25 The sponge", "6:40 To finish"]],
    )


class RevisionFile(FileModel):
    """A dated change that readers of an earlier card must hear of."""

    date: Day = Field(description="The day of the change.", examples=["2026-07-20"])
    note: Sentence = Field(
        description="What changed, from what to what.", examples=["Oil corrected from 150 g to 100 g."]
    )
    notify: YesNo = Field(False, description="Whether subscribers get a notice.")


class SaidOtherwiseFile(FileModel):
    """What the film says otherwise, and is meant so."""

    at: Short | None = Field(None, description="When it is said.", examples=["2:31"])
    about: Short = Field(
        description="What the finding is about, as it is told.", examples=["caster sugar", "oven"]
    )
    because: Sentence = Field(description="Why it stands.", examples=["We filmed with golden sugar."])


class StepFile(FileModel):
    """One instruction."""

    text: Passage = Field(
        description="What to do. Ingredients in braces: {caster sugar}, {half of caster sugar}.",
        examples=["Whisk {eggs} and {caster sugar} until pale."],
    )
    hands_on: Short | None = Field(None, description="Time at work.", examples=["3 min"])
    wait: Short | None = Field(
        None, description="Time that passes without work.", examples=["22-24 min", "8-12 h"]
    )
    oven: Short | None = Field(
        None, description="The oven's setting and kind.", examples=["150 C fan", "350 F", "gas 4"]
    )
    fill: Short | None = Field(None, description="How full the tin is.", examples=["2/3"])
    until: Sentence | None = Field(
        None, description="How one sees that it is done.", examples=["the tops spring back when pressed"]
    )
    photo: PhotoFile | None = Field(None, description="A picture of this step.")
    after: list[Short] | None = Field(
        None,
        max_length=limits.COMPONENTS,
        description="Components that must be ready before this step.",
        examples=[["Bay sponge"]],
    )
    within: Short | None = Field(
        None, description="The time within which the next step must begin.", examples=["10 min"]
    )
    holds: Short | None = Field(
        None, description="How long what it made may wait, and how.", examples=["2 days chilled"]
    )
    tools: list[Short] = Field(
        default=[],
        max_length=limits.ENTRIES,
        description="What its hands-on time keeps busy.",
        examples=[["mixer"]],
    )
    waits_in: Short | None = Field(
        None, description="What it fills while it waits, beside the oven.", examples=["proofing box"]
    )
    heat: Literal["hob", "fridge", "freezer"] | None = Field(
        None, description="Where it is worked (hob) or waits (fridge, freezer)."
    )
    grows: YesNo = Field(False, description="Whether its hands-on time grows with the batch, as piping does.")
    tutorial: Slug | None = Field(
        None, description="A technique page: its file name without '.md'.", examples=["lining-a-tin"]
    )


class ComponentFile(FileModel):
    """A part made on its own: sponge, filling, buttercream."""

    ingredients: list[Sentence] = Field(
        default=[],
        max_length=limits.LINES,
        description="One line each, amount first.",
        examples=[["150 g plain flour, sifted", "2 medium eggs", "500 g of Base buttercream"]],
    )
    method: list[StepFile] = Field(min_length=1, max_length=limits.LINES, description="The steps, in order.")
    kind: Short | None = Field(
        None, description="What it is by trade: its balance is held against it.", examples=["creamed cake"]
    )
    bake_loss: Short | None = Field(
        None,
        description="How much of its weight goes off in the oven or the pan. Without it: usual for its kind.",
        examples=["10 %"],
    )
    dough: DoughFile | None = Field(None, description="The temperature that is wanted of a dough.")
    keeps: KeepsFile | None = Field(
        None,
        description="How long it keeps, in a sentence or by place.",
        examples=["2 days, covered, at room temperature", {"room": "2 days", "freezer": "2 months"}],
    )


class RecipeFile(FileModel):
    """A recipe: what it makes, its components with their ingredients and steps."""

    title: Short = Field(description="As readers see it.", examples=["Blackcurrant and bay cupcakes"])
    summary: Sentence = Field(description="One or two sentences that everyone may read.")
    makes: Short = Field(
        description="The yield.", examples=["12 cupcakes", "1 loaf", "12 rolls of 85 g dough", "900 g"]
    )
    serves: Short | None = Field(
        None, description="Portions. Without it a piece is a portion.", examples=["12", "8-10"]
    )
    tin: Short | None = Field(
        None,
        description="The vessel, by shape and inside measure.",
        examples=["muffin 12", "two 20 cm round", "900 g loaf"],
    )
    tags: list[Short] = Field(
        default=[], max_length=limits.ENTRIES, description="Words to find it by.", examples=[["cupcakes"]]
    )
    photo: PhotoFile | None = Field(None, description="The finished bake.")
    release: ReleaseFile | None = Field(None, description="Release days. Without them it stays a draft.")
    video: VideoFile | None = Field(None, description="The film.")
    batches: list[Short] | None = Field(
        None,
        max_length=limits.BATCHES,
        description="Batches that the page offers beside the tested one. Without the key: half and double.",
        examples=[["24 cupcakes"], ["23 cm round"], ["half", "times 3/2"], ["24 rolls of 60 g"]],
    )
    base_recipes: dict[Short, BaseUseFile] = Field(
        default={},
        max_length=limits.ENTRIES,
        description="How base recipes are made for this one.",
        examples=[{"Base buttercream": {"made": "once", "spare": "5 %"}}],
    )
    components: dict[Short, ComponentFile] = Field(
        min_length=1, max_length=limits.COMPONENTS, description="Title -> component, in order."
    )
    notes: Essay | None = Field(None, description="Markdown, printed after the steps.")
    swaps: list[Short] = Field(
        default=[],
        max_length=limits.ENTRIES,
        description="Ingredients for which every sheet offers a substitute.",
        examples=[["buttermilk"]],
    )
    larder: dict[Short, LarderRowFile] = Field(
        default={},
        max_length=limits.ENTRIES,
        description="Ingredients that the larder lacks, each with just what is known of it.",
    )
    revisions: list[RevisionFile] = Field(
        default=[], max_length=limits.ENTRIES, description="Changes after release, oldest first."
    )
    settled: dict[Short, Sentence] = Field(
        default={},
        max_length=limits.ENTRIES,
        description="Advice that does not hold for this recipe: its code -> why.",
        examples=[{"balance-unusual": "The crumb is meant to be dense."}],
    )
    said_otherwise: list[SaidOtherwiseFile] = Field(
        default=[],
        max_length=limits.ENTRIES,
        description="What the film says otherwise, and may stand.",
    )


class TutorialFile(FileModel):
    """The front matter of a technique page."""

    title: Short = Field(description="As readers see it.", examples=["Lining a tin"])
    summary: Sentence = Field(description="One or two sentences.")
    photo: PhotoFile | None = Field(None, description="The picture at the top.")


class SiteFile(FileModel):
    """Who publishes, in which editions, on which paper."""

    name: Short = Field(description="The school.", examples=["Tansy Row"])
    tagline: Sentence = Field(description="A line under the name.")
    address: Address = Field(
        description="Where the public site lives.", examples=["https://tansyrow.example/"]
    )
    subscribers_address: Address = Field(
        description="Where the subscribers' site lives.", examples=["https://tansyrow.example/table/"]
    )
    language: Annotated[str, StringConstraints(pattern=r"^[a-z]{2,3}(-[A-Za-z0-9]{2,8})*$")] = Field(
        description="BCP 47 tag.", examples=["en-GB"]
    )
    written_in: Slug = Field(
        description="The edition whose spoons, cups and eggs the recipe files are written in.",
        examples=["british-metric"],
    )
    egg_size: Short = Field(description="What '2 eggs' means.", examples=["medium", "large"])
    editions: list[Slug] = Field(
        min_length=1, description="The first is the site's own.", examples=[["british-metric", "us-cups"]]
    )
    papers: list[Literal["a4", "letter", "a5", "half-letter"]] = Field(
        min_length=1,
        description="Recipe cards: a4, letter. Kitchen cards: a5, half-letter. The usual one first.",
        examples=[["a4", "letter", "a5"]],
    )
    theme: Slug = Field("oatcloth", description="A folder under 'themes/'.", examples=["oatcloth"])
    time_zone: Short = Field(description="IANA name, for release days.", examples=["Europe/London"])
    about: Essay | None = Field(None, description="Markdown, for the school's own page.")
    copyright: Sentence | None = Field(None, description="Printed at the foot of pages and cards.")
