"""What is never said, and what is added that no line has."""

from collections.abc import Iterator, Sequence

from sitegen.faults import Place
from sitegen.film.amount_claims import fits
from sitegen.film.amount_distance import name_of
from sitegen.film.attribution import Attributed
from sitegen.film.figures import amount_text
from sitegen.film.marks import NOT_THIS_BAKE, About
from sitegen.film.names import LineKey, Mention
from sitegen.film.scene import Scene
from sitegen.film.spoken_amounts import Said
from sitegen.film.values import Finding, FindingKind
from sitegen.kitchen.amounts import Amount
from sitegen.kitchen.recipe import IngredientLine

NO_WORDS = frozenset(
    {"no", "not", "without", "never", "neither", "nor", "isn't", "instead", "than", "like", "of"}
)
FAR_NO = 3
FAR_WARNING = 9
"""Words between 'do not add' and what is not added."""
FAR_ADDING = 6
"""Words between 'put in' and what is put in."""


def unsaid_findings(scene: Scene, said_amounts: Sequence[Attributed]) -> Iterator[Finding]:
    """Ingredients of which no word is said. What is only for the tin, or optional, is doubtful.

    In an aside, one is said where its amount is the written one.
    """
    said: set[str] = set()
    heard: set[LineKey] = set()
    amounts = {one.mention.begin: one for one in said_amounts if one.mention is not None and one.sure}
    for mention in scene.mentions:
        about, one = scene.about_since(mention.begin), amounts.get(mention.begin)
        if not about & (NOT_THIS_BAKE & ~About.ADVICE):
            heard |= _heard(scene, mention, one)
        elif one is not None and not one.amount.is_part:
            heard |= {line for line in mention.name.lines if fits(scene, one, line)}
    for number, component in enumerate(scene.recipe.components):
        for index, line in enumerate(component.lines):
            name = name_of(line)
            if not isinstance(line, IngredientLine) or (number, index) in heard or name in said:
                continue
            said.add(name)
            yield Finding(
                kind=FindingKind.UNSAID,
                about=name,
                moment_s=None,
                said="",
                written=line.text,
                certain=line.amount is not None and not line.optional,
                at=line.at,
            )


def _heard(scene: Scene, mention: Mention, one: Attributed | None) -> frozenset[LineKey]:
    """The lines that are named: of a name that several share, those that its amount can be of."""
    name = mention.name
    if name.doubtful and one is None and not _is_added(scene, mention):
        return frozenset()
    shared = name.lines - name.full
    if len(shared) < 2:
        return name.lines
    if scene.known.warnings.any_in(scene.words, mention.begin - FAR_WARNING, mention.begin):
        return name.full
    if one is None or one.amount.is_part or one.amount.what is not Said.MEASURE:
        return name.lines
    fitting = frozenset(key for key in name.lines if fits(scene, one, key))
    return fitting | name.full if fitting else name.lines


def added_findings(scene: Scene, said: Sequence[Attributed]) -> Iterator[Finding]:
    """What goes in on film and stands in no line: said with an amount, or behind an adding word."""
    amounts = {
        one.mention.begin: one
        for one in reversed(said)
        if one.mention is not None and one.amount.what in (Said.MEASURE, Said.BARE)
    }
    found: set[str] = set()
    for mention in scene.mentions:
        row = mention.name.row
        if not row or row in found or scene.about(mention.begin) & (NOT_THIS_BAKE | About.BACK):
            continue
        if _is_negated(scene, mention) or _is_implement(scene, mention):
            continue
        one = amounts.get(mention.begin)
        has_amount = one is not None and one.sure
        has_article = scene.words[mention.begin - 1] in ("a", "an", "some") if mention.begin else False
        is_added = _is_added(scene, mention)
        is_vague = scene.norms[mention.begin] in scene.known.seldom_meant and mention.end - mention.begin == 1
        if not (has_amount or is_added) or (is_vague and not (is_added and (has_amount or has_article))):
            continue
        found.add(row)
        told = _told(one) if one is not None and has_amount else "1" if has_article else ""
        yield Finding(
            kind=FindingKind.ADDED,
            about=row,
            moment_s=scene.second(mention.begin),
            said=f"{told} {row}".strip(),
            written="",
            certain=((has_amount or has_article) and is_added) or (has_amount and not is_vague),
            at=_component_at(scene, mention.begin),
        )


def _is_negated(scene: Scene, mention: Mention) -> bool:
    before = scene.words[max(0, mention.begin - FAR_NO) : mention.begin]
    return bool((NO_WORDS - {"of"}).intersection(before))


def _is_implement(scene: Scene, mention: Mention) -> bool:
    """'a tea towel'."""
    return any(norm in scene.known.implements for norm in scene.norms[mention.end : mention.end + 1])


def _is_added(scene: Scene, mention: Mention) -> bool:
    begin = max(scene.sentence_at(mention.begin).begin, mention.begin - FAR_ADDING)
    before = scene.known.adding.any_in(scene.norms, begin, mention.begin)
    behind = scene.words[mention.end : mention.end + 2]
    return before or "in" in behind


def _told(one: Attributed) -> str:
    return " + ".join(amount_text(Amount(part.span, part.unit)) for part in one.parts)


def _component_at(scene: Scene, word: int) -> Place:
    step = scene.step_at(word)
    return scene.recipe.components[step.component].at if step else scene.recipe.at
