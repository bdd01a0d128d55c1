"""Steps as printed: prose with its references resolved, and what each step takes."""

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction

from sitegen.kitchen.amounts import single
from sitegen.kitchen.method import Reference, RefKind, Step, Words
from sitegen.kitchen.recipe import Component, IngredientLine, Line, PartLine
from sitegen.kitchen.rounding import rounded_cm, rounded_inches
from sitegen.kitchen.weighing import is_hens_egg
from sitegen.sheet.amounts import duration_text, fraction_text, share_text, span_text, with_unit
from sitegen.sheet.asks import Ask
from sitegen.sheet.heat_words import exact_temperature_text, oven_text
from sitegen.sheet.lines import measured_line, with_share
from sitegen.sheet.measured import measured
from sitegen.sheet.setting import Setting
from sitegen.sheet.sugar_words import sugar_stage_text
from sitegen.sheet.timers import step_timer
from sitegen.sheet.values import SheetLine, SheetPhoto, SheetStep, StepUse, TutorialLink
from sitegen.sheet.weights import weight_texts


@dataclass(frozen=True)
class StepScene:
    """What a step is printed with.

    lines: its component's lines as printed; tolerances: how tight the cups of each are;
    part_grams: the weight of each part line; factor: how much of the component is made.
    """

    component: Component
    lines: tuple[SheetLine, ...]
    tolerances: tuple[Fraction, ...]
    part_grams: tuple[Fraction | None, ...]
    factor: Fraction
    setting: Setting
    tutorials: Mapping[str, str]


def printed_step(
    step: Step, number: int, scene: StepScene, cautions: tuple[str, ...], taken: frozenset[int]
) -> SheetStep:
    """One step in the edition's words.

    number: counted through the whole sheet. cautions: keys of those that this step calls for.
    taken: lines that an earlier step of the component has named: naming one again takes nothing new.
    """
    setting = scene.setting
    text = "".join(_part_text(part, scene) for part in step.prose)
    title = scene.tutorials.get(step.tutorial, "")
    return SheetStep(
        number=number,
        text=text.strip(),
        uses=_uses(step, scene, taken),
        oven=oven_text(step.oven, setting.edition, setting.tables.ovens) if step.oven else "",
        fill=f"{share_text(step.fill)} full" if step.fill else "",
        hands_on=duration_text(step.hands_on_min) if step.hands_on_min else "",
        wait=_wait_text(step),
        until=setting.respelled(step.until),
        photo=SheetPhoto(step.photo.file, setting.respelled(step.photo.alt)) if step.photo else None,
        tutorial=TutorialLink(step.tutorial, title) if title else None,
        cautions=cautions,
        then=setting.respelled(_then_text(step)),
        timer=step_timer(step),
    )


def _uses(step: Step, scene: StepScene, taken: frozenset[int]) -> tuple[StepUse, ...]:
    """What the step takes: each line once, unless it takes several shares of it."""
    named = set(taken)
    uses = []
    for reference in step.references:
        is_whole = reference.share == 1 and reference.amount is None
        if reference.line is None or (is_whole and reference.line in named):
            continue
        named.add(reference.line)
        uses.append(_use(reference, scene))
    return tuple(uses)


def _part_text(part: Words | Reference, scene: StepScene) -> str:
    if isinstance(part, Words):
        return scene.setting.respelled(part.text)
    return _REFERENCE_TEXTS[part.kind](part, scene)


def _oven_reference(reference: Reference, scene: StepScene) -> str:
    if reference.oven is None:
        return reference.text
    return oven_text(reference.oven, scene.setting.edition, scene.setting.tables.ovens)


def _temperature(reference: Reference, scene: StepScene) -> str:
    if reference.amount is None:
        return reference.text
    component = scene.component
    step = next(step for step in component.steps if any(part is reference for part in step.prose))
    stage = sugar_stage_text(reference.amount, step, component, scene.setting)
    return exact_temperature_text(reference.amount, scene.setting.edition, stage)


def _length(reference: Reference, scene: StepScene) -> str:
    """A length to half a centimetre, or to a fraction of an inch."""
    if reference.amount is None:
        return reference.text
    cm = scene.setting.tables.measures.centimetres(reference.amount)
    if scene.setting.edition.lengths == "in":
        return _span_with(rounded_inches(cm.low / CM_IN_INCH), rounded_inches(cm.high / CM_IN_INCH), "in")
    if cm.high < 1:
        return _span_with(cm.low * 10, cm.high * 10, "mm")
    return _span_with(rounded_cm(cm.low), rounded_cm(cm.high), "cm")


CM_IN_INCH = Fraction(254, 100)


def _span_with(low: Fraction, high: Fraction, unit: str) -> str:
    return with_unit(span_text(fraction_text(low), fraction_text(high)), unit)


def _ingredient(reference: Reference, scene: StepScene) -> str:
    name = _printed_name(reference, scene)
    if reference.amount is not None:
        return f"{_taken(reference, scene).removesuffix(' of')} of the {name}"
    if reference.share == 1:
        return name
    if reference.text.casefold().startswith("the rest"):
        return f"the rest of the {name}"
    return f"{share_text(reference.share)} of the {name}"


def _component(reference: Reference, scene: StepScene) -> str:
    if reference.line is not None:
        return _ingredient(reference, scene)
    return scene.setting.respelled(reference.target)


_REFERENCE_TEXTS = {
    RefKind.INGREDIENT: _ingredient,
    RefKind.COMPONENT: _component,
    RefKind.TEMPERATURE: _temperature,
    RefKind.OVEN: _oven_reference,
    RefKind.LENGTH: _length,
}


def _printed_name(reference: Reference, scene: StepScene) -> str:
    """The line's own name where the edition changes it or the baker wrote it in full; her short word else."""
    if reference.line is None:
        return reference.target
    line = scene.component.lines[reference.line]
    if isinstance(line, PartLine):
        return scene.setting.respelled(line.source)
    regional = scene.setting.name(line.chosen)
    short = reference.short or line.chosen.name
    return short if regional == line.chosen.name else regional


def _use(reference: Reference, scene: StepScene) -> StepUse:
    """What the step takes of a line: its printed amount, or that of the share it names."""
    printed = scene.lines[reference.line or 0]
    is_all = reference.amount is None and reference.share == 1
    if is_all and not _is_egg(scene.component.lines[reference.line or 0], scene.setting):
        return StepUse(printed.amount, printed.name)
    return StepUse(_taken(reference, scene), printed.name)


def _is_egg(line: Line, setting: Setting) -> bool:
    """Whether a weighed part of another egg may come on top of the amount that its line prints first."""
    row = setting.row(line.chosen) if isinstance(line, IngredientLine) else None
    return row is not None and is_hens_egg(row)


def _taken(reference: Reference, scene: StepScene) -> str:
    """The amount of a line that a reference takes, printed as the line itself is."""
    index = reference.line or 0
    line = scene.component.lines[index]
    if isinstance(line, PartLine):
        return _taken_of_part(reference, scene.part_grams[index], scene)
    if reference.amount is not None:
        ask = Ask(
            reference.amount,
            line.chosen,
            scene.setting.row(line.chosen),
            scene.factor,
            scene.tolerances[index],
        )
        return measured(ask, scene.setting).all_of_it
    shared = with_share(line, reference.share)
    return measured_line(shared, scene.factor, scene.tolerances[index], scene.setting).all_of_it


def _taken_of_part(reference: Reference, grams: Fraction | None, scene: StepScene) -> str:
    """What is taken of a part line: the weight that the step names, else a share of the line's own."""
    if reference.amount is not None:
        taken = scene.setting.tables.measures.grams(reference.amount).middle * scene.factor
    elif grams is not None:
        taken = grams * reference.share
    else:
        return ""
    return weight_texts(taken, scene.setting.edition).amount


def _then_text(step: Step) -> str:
    """How long what it made may wait, as the baker bounds it."""
    within = f"Go on within {duration_text(single(step.within_min))}." if step.within_min else ""
    how = f", {step.holds_how}" if step.holds_how else ""
    holds = f"May wait {duration_text(single(step.holds_min))}{how}." if step.holds_min else ""
    return " ".join(text for text in (within, holds) if text)


def _wait_text(step: Step) -> str:
    """How long it waits; in several loads, how often: '2 loads of 22–24 min'."""
    if not step.wait_min:
        return ""
    wait = duration_text(step.wait_min)
    return wait if step.loads == 1 else f"{step.loads} loads of {wait}"
