"""The shapes of the files as JSON Schema 2020-12, for editors that complete and check while one writes."""

from typing import Literal

from pydantic import BaseModel
from pydantic.json_schema import GenerateJsonSchema

from sitegen.source.larder_file import LarderFile
from sitegen.source.models import RecipeFile, SiteFile, TutorialFile

Kind = Literal["recipe", "site", "larder", "tutorial"]

_MODELS: dict[Kind, type[BaseModel]] = {
    "recipe": RecipeFile,
    "site": SiteFile,
    "larder": LarderFile,
    "tutorial": TutorialFile,
}
_TITLES: dict[Kind, str] = {
    "recipe": "A recipe (recipe.yaml)",
    "site": "The school (site.yaml)",
    "larder": "Ingredients of the school's own (larder.yaml)",
    "tutorial": "The front matter of a technique page",
}


def schema_of(kind: Kind) -> dict[str, object]:
    """The JSON Schema of one kind of file, with titles, descriptions and examples.

    It is wider than the reading of the file: amounts, times and references are text to it, and a text
    may be what an editor takes for a number or a truth value.
    """
    schema: dict[str, object] = _MODELS[kind].model_json_schema(by_alias=True)
    return {"$schema": GenerateJsonSchema.schema_dialect, **schema, "title": _TITLES[kind]}
