"""What a film says otherwise than its recipe: each open finding as advice, none of which stops a publish."""

from collections.abc import Iterator

from sitegen.faults import Fault, FaultCode, Severity
from sitegen.film.words import tokens
from sitegen.kitchen.filmed import Finding, FindingKind, SaidOtherwise, moment_text
from sitegen.kitchen.recipe import Recipe
from sitegen.kitchen.tables import Tables

LEAST_WORDS = 60
"""A film of fewer shows and does not tell."""
SURELY = 0.5
NEAR_S = 10
"""Seconds between the moment of a finding and the one that settles it."""

SAYS_OTHERWISE = FaultCode(
    "film-says-otherwise",
    Severity.ADVICE,
    "The film says a figure that the recipe does not have, so that one of the two misleads.",
    "Correct the recipe, say it below the film, or settle it under `said-otherwise`.",
    file="",
)
LEAVES_OUT = FaultCode(
    "film-leaves-out",
    Severity.ADVICE,
    "An ingredient of the recipe is never named on film: viewers who bake along forget it.",
    "Name it below the film, or settle it under `said-otherwise`.",
    file="",
)
ADDS = FaultCode(
    "film-adds",
    Severity.ADVICE,
    "Something goes in on film that no line of the recipe has.",
    "Write the line, as optional if it is, or settle it under `said-otherwise`.",
    file="",
)
APART = FaultCode(
    "film-apart",
    Severity.ADVICE,
    "The film does not talk through the recipe: fewer than half of its steps can be told from the captions.",
    "Are these the captions of this film, in English? Write `chapters` where it shows more than it says.",
    file="",
)
SETTLES_NOTHING = FaultCode(
    "said-otherwise-idle",
    Severity.ADVICE,
    "An entry under `said-otherwise` settles nothing that the film says; it would hide the next slip.",
    "Take the entry out, or write `about` and `at` as the finding is told.",
    file="",
)

CODES = (SAYS_OTHERWISE, LEAVES_OUT, ADDS, APART, SETTLES_NOTHING)

_CODE_OF = {FindingKind.UNSAID: LEAVES_OUT, FindingKind.ADDED: ADDS}


def film_agrees(recipe: Recipe, _tables: Tables) -> Iterator[Fault]:
    """The findings of a recipe's film that are not settled, and entries that settle nothing."""
    video = recipe.video
    if video is None or not video.captions:
        yield from map(_idle, recipe.said_otherwise)
        return
    if video.film.words < LEAST_WORDS:
        return
    if not video.film.follows_recipe:
        surely = sum(moment.sure >= SURELY for moment in video.film.moments)
        sentence = f"{surely} of {video.film.steps} steps can surely be told from the captions"
        yield APART.fault(video.captions_at, sentence)
        return
    for finding in open_findings(recipe):
        yield _CODE_OF.get(finding.kind, SAYS_OTHERWISE).fault(finding.at, finding_text(finding))
    for entry in recipe.said_otherwise:
        if not any(settles(entry, finding) for finding in video.film.findings):
            yield _idle(entry)


def open_findings(recipe: Recipe) -> tuple[Finding, ...]:
    """What the recipe's film says otherwise and no entry settles, the certain first."""
    if recipe.video is None:
        return ()
    return tuple(
        finding
        for finding in recipe.video.film.findings
        if not any(settles(entry, finding) for entry in recipe.said_otherwise)
    )


def settles(entry: SaidOtherwise, finding: Finding) -> bool:
    """Whether an entry is of a finding: its words are the finding's, its moment is near or left out."""
    words = set(tokens(f"{finding.about} {finding.said} {finding.written} {finding.kind}"))
    if not words.issuperset(tokens(entry.about)):
        return False
    if entry.moment_s is None:
        return True
    return finding.moment_s is not None and abs(finding.moment_s - entry.moment_s) <= NEAR_S


def finding_text(finding: Finding) -> str:
    """A finding as a sentence: 'at 2:31 the film says 180 g of caster sugar, and here it is 170 g'."""
    if finding.kind is FindingKind.UNSAID:
        return f"the film {'never' if finding.certain else 'perhaps never'} names {finding.about}"
    moment = f"at {moment_text(finding.moment_s or 0)} "
    says = "says" if finding.certain else "may say"
    if finding.kind is FindingKind.ADDED:
        verb = "adds" if finding.certain else "may add"
        return f"{moment}the film {verb} {finding.said}, which stands in no line"
    return f"{moment}the film {says} {finding.said} ({finding.about}), and here it is {finding.written}"


def _idle(entry: SaidOtherwise) -> Fault:
    sentence = f"nothing that the film says of '{entry.about}' is settled here"
    return SETTLES_NOTHING.fault(entry.at, sentence)


CHECKS = (film_agrees,)
