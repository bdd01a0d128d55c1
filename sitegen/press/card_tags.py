"""The finisher: what the printing engine leaves undone in the tags of a PDF (ISO 14289-1, PDF/UA-1).

It works on the PDF in memory, after layout and before writing, so that it costs no second pass.
"""

from collections.abc import Iterator, Mapping
from typing import TypeAlias

import pydyf  # type: ignore[import-untyped]

Reference: TypeAlias = bytes
Objects: TypeAlias = Mapping[Reference, pydyf.Object]

_PRINT = 4
"""The annotation flag 'Print' (ISO 32000-1, table 165)."""


def mend_tags(_document: object, pdf: pydyf.PDF) -> None:
    """Marks running feet as artifacts, links as printed, and table heads as heads of columns or rows.

    Called by WeasyPrint as `finisher`. ISO 14289-1: 7.1 (artifacts), 7.5 (tables), 7.18 (annotations).
    """
    objects: Objects = {thing.reference: thing for thing in pdf.objects}
    root = objects[pdf.catalog["StructTreeRoot"]]
    reachable = dict(_walk(root, objects))
    for page, places in _parents_by_page(root, objects):
        _free_unreachable(objects[page["Contents"]], places, reachable)
    _print_links(objects)
    _scope_heads(reachable, objects)


def _walk(element: pydyf.Dictionary, objects: Objects) -> Iterator[tuple[Reference, pydyf.Dictionary]]:
    """All structure elements below one, from the root down."""
    for kid in element["K"]:
        if isinstance(kid, bytes) and "S" in objects[kid]:
            yield kid, objects[kid]
            yield from _walk(objects[kid], objects)


def _parents_by_page(
    root: pydyf.Dictionary, objects: Objects
) -> Iterator[tuple[pydyf.Dictionary, list[Reference | None]]]:
    """Each page with its row of the parent tree: the element that each piece of marked content belongs to."""
    numbers = objects[root["ParentTree"]]["Nums"]
    rows = dict(zip(numbers[::2], numbers[1::2], strict=True))
    for thing in objects.values():
        if isinstance(thing, pydyf.Dictionary) and "StructParents" in thing:
            yield thing, rows[thing["StructParents"]]


def _free_unreachable(
    stream: pydyf.Stream, places: list[Reference | None], reachable: Mapping[Reference, object]
) -> None:
    """Turn marked content that no reader is led to (margin boxes) into pagination artifacts."""
    operators = stream.stream
    for at, operator in enumerate(operators):
        if operator != b"BDC" or "MCID" not in operators[at - 1]:
            continue
        number = operators[at - 1]["MCID"]
        if places[number] not in reachable:
            operators[at - 2] = b"/Artifact"
            operators[at - 1] = pydyf.Dictionary({"Type": "/Pagination"})
            places[number] = b"null"


def _print_links(objects: Objects) -> None:
    for thing in objects.values():
        if isinstance(thing, pydyf.Dictionary) and thing.get("Subtype") == "/Link":
            thing["F"] = _PRINT


def _scope_heads(elements: Mapping[Reference, pydyf.Dictionary], objects: Objects) -> None:
    """A head scopes its row where the row has data cells as well, else its column."""
    for element in elements.values():
        if element["S"] != "/TR":
            continue
        cells = [objects[kid] for kid in element["K"]]
        scope = "/Row" if any(cell["S"] == "/TD" for cell in cells) else "/Column"
        for cell in cells:
            if cell["S"] == "/TH":
                cell["A"]["Scope"] = scope
