"""A sheet as plain text, for a terminal or a note."""

from collections.abc import Iterator
from textwrap import fill

from sitegen.press.prose import to_plain
from sitegen.sheet.values import PlanRow, Sheet, SheetComponent, SheetLine, SheetStep

_WIDTH = 88


def plain_sheet(sheet: Sheet) -> str:
    """The whole sheet: head, ingredients, method, plan, cautions, keeping; lines of at most 88 characters."""
    blocks = [
        _head(sheet),
        *(_component(part) for part in sheet.components),
        _block("Work plan", (_plan_row(row) for row in sheet.plan)),
        _block("Take care", (f"{caution.title}: {caution.text}" for caution in sheet.cautions)),
        _block("Keeping", (f"{what}: {how_long}" for what, how_long in sheet.keeping)),
        _block("Notes", _notes(sheet)),
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
    lines = [f"{head.title} ({head.edition.title}, {head.batch.title})", _wrapped(head.summary), ""]
    lines += [_wrapped(f"{name}: {fact}", "  ") for name, fact in facts if fact]
    notes = (sheet.egg_note, sheet.measure_note, *sheet.batch_notes, *sheet.allergens, sheet.estimates_note)
    return "\n".join([*lines, *(_wrapped(note) for note in notes if note)])


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
    ]
    told = "; ".join(fact for fact in facts if fact)
    text = to_plain(step.text)
    return _wrapped(f"{step.number}. {text}" + (f" [{told}]" if told else ""), "   ")


def _plan_row(row: PlanRow) -> str:
    return f"{row.start:>6}  step {row.step}, {row.component}: {row.summary}"


def _notes(sheet: Sheet) -> Iterator[str]:
    if sheet.notes:
        yield to_plain(sheet.notes)


def _block(title: str, lines: Iterator[str]) -> str:
    told = [_wrapped(line, "  ") for line in lines]
    return "\n".join([title, *told]) if told else ""


def _wrapped(text: str, indent: str = "") -> str:
    """No-break spaces hold an amount together: `fill` breaks at ordinary spaces only."""
    return fill(text, _WIDTH, subsequent_indent=indent, break_long_words=False, break_on_hyphens=False)
