"""The shapes of the files as JSON Schema 2020-12, for editors that complete and check while one writes."""

from typing import Any, Literal

from pydantic import BaseModel
from pydantic.json_schema import GenerateJsonSchema

from sitegen.source.larder_file import LarderFile
from sitegen.source.models import RecipeFile, SiteFile, TutorialFile
from sitegen.source.order_file import OrderFile
from sitegen.source.prices import PricesFile
from sitegen.source.tables import read_tables

Kind = Literal["recipe", "site", "larder", "prices", "order", "tutorial"]

_MODELS: dict[Kind, type[BaseModel]] = {
    "recipe": RecipeFile,
    "site": SiteFile,
    "larder": LarderFile,
    "prices": PricesFile,
    "order": OrderFile,
    "tutorial": TutorialFile,
}
_TITLES: dict[Kind, str] = {
    "recipe": "A recipe (recipe.yaml)",
    "site": "The school (site.yaml)",
    "larder": "Ingredients of the school's own (larder.yaml)",
    "prices": "What the school pays (prices.yaml)",
    "order": "What a kitchen makes for a day (an order file)",
    "tutorial": "The front matter of a technique page",
}


def schema_of(kind: Kind) -> dict[str, object]:
    """The JSON Schema of one kind of file, with titles, descriptions and examples.

    It is wider than the reading of the file: amounts, times and references are text to it, and a text
    may be what an editor takes for a number or a truth value. The kinds of components are offered.
    """
    schema: dict[str, Any] = _MODELS[kind].model_json_schema(by_alias=True)
    if kind == "recipe":
        _offer_kinds(schema)
    return {"$schema": GenerateJsonSchema.schema_dialect, **schema, "title": _TITLES[kind]}


def _offer_kinds(schema: dict[str, Any]) -> None:
    """Lets an editor complete the kinds of `data/balances.yaml`; any text may stand there."""
    kinds = [row.key for row in read_tables()[0].balances.kinds]
    schema["$defs"]["ComponentFile"]["properties"]["kind"]["anyOf"].insert(0, {"enum": kinds})
