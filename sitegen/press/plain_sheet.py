"""A sheet as plain text, for a terminal or a note."""

from collections.abc import Iterator

from sitegen.press.plain_tables import formula_text, nutrition_text, wrapped
from sitegen.press.prose import to_plain
from sitegen.sheet.panel_values import SheetSwap
from sitegen.sheet.values import Sheet, SheetComponent, SheetLine, SheetStep
from sitegen.sheet.work_values import PlanRow


def plain_sheet(sheet: Sheet) -> str:
    """The whole sheet, from its head to its corrections; lines of at most 88 characters."""
    blocks = [
        _head(sheet),
        _block("If you cannot get it", (_swap(swap) for swap in sheet.swaps)),
        *(_component(part) for part in sheet.components),
        _block("Work plan", iter([*(_plan_row(row) for row in sheet.plan), *sheet.plan_notes])),
        _block("Take care", (f"{caution.title}: {caution.text}" for caution in sheet.cautions)),
        *(formula_text(formula) for formula in sheet.formulas),
        _block("Keeping", _keeping(sheet)),
        _block("Notes", _notes(sheet)),
        nutrition_text(sheet.nutrition) if sheet.nutrition else "",
        _block("Corrections", (f"{revision.day}: {revision.note}" for revision in sheet.revisions)),
    ]
    return "\n\n".join(block for block in blocks if block).replace("\N{NO-BREAK SPACE}", " ") + "\n"


def line_name(line: SheetLine) -> str:
    """An ingredient without its amount: 'sunflower oil or rapeseed oil, for the tin (optional)'."""
    alternatives = f" {line.alternatives}" if line.alternatives else ""
    extra = f", {line.extra}" if line.extra else ""
    return f"{line.name}{alternatives}{extra}{' (optional)' if line.optional else ''}"


def line_amount(line: SheetLine) -> str:
    """Its amount: '1 cup (125 g)'."""
    return f"{line.amount} ({line.beside})" if line.beside else line.amount


def _head(sheet: Sheet) -> str:
    head = sheet.head
    facts = [
        ("Makes", head.makes),
        ("Tin", sheet.tin),
        ("Oven", sheet.oven),
        ("Hands-on", head.times.hands_on),
        ("Start to finish", head.times.start_to_finish),
    ]
    lines = [f"{head.title} ({head.edition.title}, {head.batch.title})", wrapped(head.summary), ""]
    lines += [wrapped(f"{name}: {fact}", "  ") for name, fact in facts if fact]
    unknowns = (f"Not worked out: {sentence}" for sentence in sheet.unknowns)
    notes = (
        sheet.egg_note,
        sheet.measure_note,
        *sheet.batch_notes,
        *sheet.allergens,
        *unknowns,
        sheet.estimates_note,
    )
    return "\n".join([*lines, *(wrapped(note) for note in notes if note)])


def _swap(swap: SheetSwap) -> str:
    reason = f" ({swap.reason})" if swap.reason else ""
    changes = f". {swap.changes}" if swap.changes else ""
    return f"{swap.instead_of}{reason}: {swap.use}{changes}"


def _component(part: SheetComponent) -> str:
    title = f"{part.title}, {part.makes}" if part.makes else part.title
    widest = max((len(line_amount(line)) for line in part.lines), default=0)
    lines = [f"  {line_amount(line):>{widest}}  {line_name(line)}" for line in part.lines]
    return "\n".join([title, *lines, *(_step(step) for step in part.steps)])


def _step(step: SheetStep) -> str:
    facts = [
        step.oven,
        step.fill,
        f"{step.hands_on} hands-on" if step.hands_on else "",
        f"{step.wait} wait" if step.wait else "",
        f"until {step.until}" if step.until else "",
        step.then.rstrip("."),
    ]
    told = "; ".join(fact for fact in facts if fact)
    text = to_plain(step.text)
    return wrapped(f"{step.number}. {text}" + (f" [{told}]" if told else ""), "   ")


def _plan_row(row: PlanRow) -> str:
    return f"{row.start:>6}  step {row.step}, {row.component}: {row.summary}"


def _keeping(sheet: Sheet) -> Iterator[str]:
    yield from (f"{what}: {how_long}" for what, how_long in sheet.keeping)
    yield from (f"Left over: {rest}" for rest in sheet.leftovers)


def _notes(sheet: Sheet) -> Iterator[str]:
    if sheet.notes:
        yield to_plain(sheet.notes)


def _block(title: str, lines: Iterator[str]) -> str:
    told = [wrapped(line, "  ") for line in lines]
    return "\n".join([title, *told]) if told else ""
