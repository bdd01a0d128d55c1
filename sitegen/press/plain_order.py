"""A production day as plain text, for a pipe or a note."""

from collections.abc import Iterable, Iterator

from sitegen.press.plain_plan import plain_plan
from sitegen.press.plain_tables import columns, wrapped
from sitegen.sheet.order_values import OrderCost, OrderProduct, OrderSheet, ShoppingRow, WeighOut

Row = tuple[str, ...]


def plain_order(order: OrderSheet) -> str:
    """The whole of it, from what is made to what it costs; lines of at most 88 characters but in tables."""
    blocks = [
        order.title,
        _block("What we make", (line for one in order.products for line in _product(one))),
        _shopping(order),
        *(_weigh_out(part) for part in order.weigh_outs),
        plain_plan(order.plan).rstrip(),
        _counter(order),
        _block("Take care", (wrapped(f"  {one.title}: {one.text}", "  ") for one in order.cautions)),
        _cost(order.cost) if order.cost else "",
        wrapped(order.estimates_note),
    ]
    return "\n\n".join(block for block in blocks if block).replace("\N{NO-BREAK SPACE}", " ") + "\n"


def shopping_cells(row: ShoppingRow) -> Row:
    """What, how much, in which packs."""
    return row.what, row.amount, row.packs


def shopping_groups(order: OrderSheet) -> Iterator[tuple[str, tuple[ShoppingRow, ...]]]:
    """The rows by section; what may be left out comes last."""
    yield from ((section.title, section.rows) for section in order.shopping)
    if order.optional:
        yield "May be left out", order.optional


def weigh_out_notes(part: WeighOut) -> Iterator[str]:
    """Whom it is divided among, and what is left of it."""
    if part.divided:
        yield f"Of which: {', '.join(f'{amount} for {user}' for amount, user in part.divided)}."
    if part.left:
        yield f"Left over: {part.left}."


def weigh_out_title(part: WeighOut) -> str:
    """'Bay sponge, for Bay cupcakes, makes about 640 g'."""
    facts = (
        part.title,
        f"for {part.product}" if part.product else "",
        f"makes {part.makes}" if part.makes else "",
    )
    return ", ".join(fact for fact in facts if fact)


def weigh_out_rows(part: WeighOut) -> Iterator[Row]:
    """Each line: its name with all that is said of it, and its weight."""
    for line in part.lines:
        beside = f" ({line.beside})" if line.beside else ""
        extra = f", {line.extra}" if line.extra else ""
        others = f" {line.others}" if line.others else ""
        yield f"{line.name}{beside}{others}{extra}", line.amount


def _product(one: OrderProduct) -> Iterator[str]:
    yield wrapped(f"  {one.makes}: {one.title} ({one.how_much})", "    ")
    for fact in (", ".join(text for text in (one.tin, one.loads) if text), one.oven):
        if fact:
            yield wrapped(f"    {fact}", "    ")
    if one.keeps:
        yield wrapped(f"    keeps: {one.keeps}", "    ")


def _shopping(order: OrderSheet) -> str:
    rows: list[Row] = []
    told: list[str] = []
    for title, own in shopping_groups(order):
        rows += [(title,), *(_inner(shopping_cells(row)) for row in own)]
        told += ["", *(row.note for row in own)]
    table = (
        line
        for row, note in zip(columns(rows), told, strict=True)
        for line in (row, *([wrapped(f"      {note}", "      ")] if note else []))
    )
    notes = [f"  To hand, without an amount: {', '.join(order.to_hand)}."] if order.to_hand else []
    notes += [f"  {order.egg_note}"] if order.egg_note else []
    return "\n".join(["Shopping", *table, *(wrapped(note, "  ") for note in notes)])


def _weigh_out(part: WeighOut) -> str:
    notes = (wrapped(f"  {note}", "  ") for note in weigh_out_notes(part))
    return "\n".join([weigh_out_title(part), *columns(list(weigh_out_rows(part))), *notes])


def _counter(order: OrderSheet) -> str:
    counter = order.counter
    rows: list[Row] = [("", *counter.columns), *((row.product, *row.marks) for row in counter.rows)]
    table = columns(rows) if counter.columns else ()
    return "\n".join(["Allergens", *table, *(wrapped(f"  {note}", "  ") for note in counter.notes)])


def _cost(cost: OrderCost) -> str:
    rows: list[Row] = [("", "ingredients", "each")]
    rows += [(row.product, row.ingredients, row.each) for row in cost.rows]
    notes = (f"Not in these sums: {', '.join(cost.missing)}." if cost.missing else "", *cost.notes)
    told = (wrapped(f"  {note}", "  ") for note in notes if note)
    return "\n".join([f"Costs, {cost.currency}", *columns(rows), "", *columns(list(cost.totals)), *told])


def _inner(row: Row) -> Row:
    return (f"  {row[0]}", *row[1:])


def _block(title: str, lines: Iterable[str]) -> str:
    told = list(lines)
    return "\n".join([title, *told]) if told else ""
