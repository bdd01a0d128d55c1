"""An ingredient that a recipe declares itself -> the keys of its row under `larder`."""

from collections.abc import Iterator

from sitegen.kitchen.allergens import ORDERS, australian
from sitegen.kitchen.larder import Composition, Density, Ingredient, Piece
from sitegen.kitchen.measures import Measures
from sitegen.notes.block_yaml import Entry, Items, Keys, Node, listed
from sitegen.notes.figures import number_text, weight_text

_NOBODY = frozenset(ORDERS)
_COMPOSITION = ("fat", "saturates", "carbohydrate", "sugars", "fibre", "protein", "salt", "alcohol", "water")


def larder_row(row: Ingredient, measures: Measures) -> Iterator[tuple[str, Node]]:
    """Key -> value of what is known of it; keys with nothing behind them among them. Raises NoFigure."""
    yield "us", row.names.get("us", "")
    yield "au", row.names.get("au", "")
    yield "plural", row.plural
    yield "plurals", _keys({region: word for region, word in row.plurals.items() if word})
    yield "also", listed(*row.aliases)
    yield "density", listed(*(_density(one, measures) for one in row.densities))
    yield "pieces", listed(*(_piece(one, measures) for one in row.pieces))
    yield "allergens", _allergens(row)
    yield "roles", listed(*sorted(row.roles))
    yield "measured-by", "" if row.measured_by == "cup" else row.measured_by
    yield "label-advice", "yes" if row.label_advice else ""
    yield "packet-may-hold", listed(*row.packet_may_hold)
    yield "composition", _composition(row.composition) if row.composition else ""


def _keys(values: dict[str, str]) -> Keys:
    return Keys(tuple(Entry(key, value) for key, value in values.items() if value))


def _density(one: Density, measures: Measures) -> Keys:
    return _keys(
        {
            "method": one.method,
            "weight": weight_text(one.grams, measures),
            "fills": f"{number_text(one.millilitres)} ml",
            "source": one.source,
        }
    )


def _piece(one: Piece, measures: Measures) -> Keys:
    weight = weight_text(one.grams, measures)
    return _keys({"weight": weight, "size": one.size, "part": one.part, "source": one.source})


def _allergens(row: Ingredient) -> Node:
    """Each law that was spoken of, an empty list where it names nothing; '' where none was."""
    if row.allergens_unsaid == _NOBODY:
        return ""
    said: dict[str, Items] = {
        law: listed(*words)
        for law, words in (("eu", row.allergens_eu), ("us", row.allergens_us))
        if law not in row.allergens_unsaid
    }
    if "au" not in row.allergens_unsaid and row.allergens_au != australian(
        row.allergens_eu, row.allergens_us
    ):
        said["au"] = listed(*row.allergens_au)
    return Keys(tuple(Entry(law, words) for law, words in said.items()))


def _composition(composition: Composition) -> Keys:
    figures = {name: getattr(composition, name) for name in _COMPOSITION}
    zero_unsaid = {"fibre", "alcohol"}
    texts = {
        name: number_text(value)
        for name, value in figures.items()
        if value is not None and not (name in zero_unsaid and value == 0)
    }
    return _keys({**texts, "source": composition.source})
