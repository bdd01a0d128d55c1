"""A recipe as values -> the text of its recipe.yaml. What is written is read again as the same recipe."""

from collections.abc import Iterable, Iterator
from datetime import date
from fractions import Fraction
from pathlib import PurePosixPath

from sitegen.kitchen.amounts import single
from sitegen.kitchen.filmed import SaidOtherwise, moment_text
from sitegen.kitchen.keeping import NOT_THERE
from sitegen.kitchen.measures import Measures
from sitegen.kitchen.method import OvenSetting, Photo, Prose, Step, Words
from sitegen.kitchen.recipe import (
    BaseUse,
    BatchAsk,
    BatchKind,
    Component,
    DoughAim,
    Makes,
    PublicShows,
    Recipe,
    Release,
    Video,
)
from sitegen.notes.block_yaml import Entry, Keys, Node, listed, yaml_text
from sitegen.notes.figures import (
    degrees_text,
    keeping_text,
    minutes_text,
    number_text,
    span_text,
    weight_text,
)
from sitegen.notes.larder_text import larder_row
from sitegen.source.phrases import TIMES

ABSOLUTE = {"C": (Fraction(1), Fraction(0)), "F": (Fraction(9, 5), Fraction(32))}
DIFFERENCE = {"C": (Fraction(1), Fraction(0)), "F": (Fraction(9, 5), Fraction(0))}
"""Letter -> what leads from degrees C to it: of a temperature, and of a difference."""

Pairs = Iterator[tuple[str, Node]]


def recipe_text(recipe: Recipe, measures: Measures) -> str:
    """The whole file. Raises NoFigure for a number that no file can hold."""
    return yaml_text(_keys(_recipe(recipe, measures)))


def _keys(pairs: Iterable[tuple[str, Node]]) -> Keys:
    """Those keys that have something behind them."""
    return Keys(tuple(Entry(key, value) for key, value in pairs if _is_said(value)))


def _is_said(value: Node) -> bool:
    return bool(value if isinstance(value, str) else value.entries)


def _recipe(recipe: Recipe, measures: Measures) -> Pairs:
    yield "title", recipe.title
    yield "summary", recipe.summary
    yield "makes", makes_text(recipe.makes, measures)
    yield "serves", span_text(recipe.serves) if recipe.serves else ""
    yield "tin", recipe.tin.name if recipe.tin else ""
    yield "tags", listed(*recipe.tags)
    yield "photo", _photo(recipe.photo)
    yield "release", _release(recipe.release)
    yield "video", _video(recipe.video)
    yield "batches", listed(*(_batch(one, recipe.makes, measures) for one in recipe.batches))
    yield "swaps", listed(*(swap.ingredient for swap in recipe.swaps))
    yield "base-recipes", _keys((use.title, _base_use(use)) for use in recipe.base_uses)
    rows = ((row.key, _keys(larder_row(row, measures))) for row in recipe.declared)
    yield "larder", Keys(tuple(Entry(name, keys) for name, keys in rows))
    yield "components", _keys((part.title, _keys(_component(part))) for part in recipe.components)
    yield "notes", f"{recipe.notes}\n" if "\n" in recipe.notes else recipe.notes
    yield "revisions", listed(*(_revision(one.date, one.note, one.notify) for one in recipe.revisions))
    yield "said-otherwise", listed(*(_said_otherwise(one) for one in recipe.said_otherwise))
    yield "settled", _keys((one.code, one.reason) for one in recipe.settled)


def makes_text(makes: Makes, measures: Measures) -> str:
    """'12 cupcakes', '12 rolls of 85 g dough', '900 g'. Raises NoFigure."""
    if not makes.noun:
        return weight_text(makes.count, measures)
    each = f"{weight_text(makes.piece.grams, measures)} {makes.weighed}" if makes.piece else ""
    of = f" of {each.strip()}" if each else ""
    return f"{number_text(makes.count)} {makes.noun}{of}"


def _photo(photo: Photo | None) -> Keys:
    """Pictures lie beside the recipe file: the name alone is written."""
    if photo is None:
        return Keys(())
    return _keys((("file", PurePosixPath(photo.file).name), ("alt", photo.alt)))


def _release(release: Release) -> Keys:
    shows = release.public_shows
    return _keys(
        (
            ("subscribers", _day(release.subscribers)),
            ("public", _day(release.public)),
            ("public-shows", "" if shows is PublicShows.TEASER else shows.value),
        )
    )


def _day(day: date | None) -> str:
    return day.isoformat() if day else ""


def _video(video: Video | None) -> Keys:
    if video is None:
        return Keys(())
    chapters = (f"{moment_text(one.seconds)} {one.title}" for one in video.chapters)
    return _keys(
        (
            ("address", video.address),
            ("published", _day(video.published)),
            ("captions", PurePosixPath(video.captions).name),
            ("chapters", listed(*chapters)),
        )
    )


def _said_otherwise(one: SaidOtherwise) -> Keys:
    at = "" if one.moment_s is None else moment_text(one.moment_s)
    return _keys((("at", at), ("about", one.about), ("because", one.reason)))


def _batch(ask: BatchAsk, makes: Makes, measures: Measures) -> str:
    match ask.kind:
        case BatchKind.TIN:
            return ask.tin.name if ask.tin else ""
        case BatchKind.USING:
            return f"using {ask.using.text}" if ask.using else ""
        case BatchKind.TIMES:
            words = {factor: word for word, factor in reversed(TIMES.items())}
            times = ask.times or Fraction(1)
            return words.get(times) or f"times {number_text(times)}"
        case BatchKind.MAKES:
            count = ask.makes or Fraction(1)
            each = f" of {weight_text(ask.each.grams, measures)} {ask.each.weighed}" if ask.each else ""
            if not makes.noun:
                return weight_text(count, measures)
            return f"{number_text(count)} {makes.noun}{each}".strip()


def _base_use(use: BaseUse) -> Keys:
    spare = f"{number_text(use.spare * 100)} %" if use.spare else ""
    return _keys((("made", "once" if use.made_once else "for each"), ("spare", spare)))


def _revision(day: date, note: str, notify: bool) -> Keys:
    return _keys((("date", _day(day)), ("note", note), ("notify", "yes" if notify else "no")))


def _component(part: Component) -> Pairs:
    yield "kind", part.kind
    yield "bake-loss", "" if part.bake_loss is None else f"{number_text(part.bake_loss * 100)} %"
    yield "dough", _dough(part.dough)
    yield "ingredients", listed(*(line.text for line in part.lines))
    yield "method", listed(*(_keys(_step(step)) for step in part.steps))
    yield "keeps", _keeps(part)


def _dough(aim: DoughAim | None) -> Keys:
    if aim is None:
        return Keys(())
    degrees = {
        "temperature": aim.temperature,
        "room": aim.room,
        "flour": aim.flour,
        "preferment": aim.preferment,
    }
    pairs = [
        (key, degrees_text(value, ABSOLUTE) if value is not None else "") for key, value in degrees.items()
    ]
    friction = degrees_text(aim.friction, DIFFERENCE) if aim.friction is not None else ""
    return _keys((*pairs, ("friction", friction)))


def _keeps(part: Component) -> Node:
    if not part.keeping:
        return part.keeps
    places = [
        (one.place, "no" if one.hours == NOT_THERE else keeping_text(one.hours)) for one in part.keeping
    ]
    return _keys((*places, ("note", part.keeps)))


def _step(step: Step) -> Pairs:
    yield "text", prose_text(step.prose)
    yield "hands-on", minutes_text(step.hands_on_min) if step.hands_on_min else ""
    yield "oven", oven_text(step.oven) if step.oven else ""
    yield "wait", minutes_text(step.wait_min) if step.wait_min else ""
    yield "until", step.until
    yield "heat", step.heat
    yield "tools", listed(*step.tools)
    yield "waits-in", step.waits_in
    yield "fill", number_text(step.fill) if step.fill is not None else ""
    yield "grows", "yes" if step.grows else ""
    yield "within", _minutes(step.within_min)
    yield "holds", f"{_minutes(step.holds_min)} {step.holds_how}".strip() if step.holds_min else ""
    yield "after", listed(*step.after)
    yield "photo", _photo(step.photo)
    yield "tutorial", step.tutorial


def _minutes(minutes: Fraction | None) -> str:
    return "" if minutes is None else minutes_text(single(minutes))


def prose_text(prose: Prose) -> str:
    """The words of a step, its references in braces."""
    return "".join(part.text if isinstance(part, Words) else f"{{{part.text}}}" for part in prose)


def oven_text(oven: OvenSetting) -> str:
    """'150 C fan', '170 C conventional', '350 F', 'gas 4'."""
    if oven.scale == "gas":
        return f"gas {oven.degrees}"
    degrees = number_text(oven.degrees)
    kind = " fan" if oven.fan else " conventional" if oven.scale == "celsius" else ""
    return f"{degrees} {'C' if oven.scale == 'celsius' else 'F'}{kind}"
