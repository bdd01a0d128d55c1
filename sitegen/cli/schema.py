"""`sitegen schema KIND`."""

import json
from typing import get_args

import click

from sitegen.source.schemas import Kind, schema_of


@click.command()
@click.argument("kind", type=click.Choice(get_args(Kind)))
def schema(kind: Kind) -> None:
    """Print the JSON Schema of a KIND of file, for an editor that completes and checks while you write.

    \b
    Example:
      sitegen schema recipe > recipe.schema.json
    """
    click.echo(json.dumps(schema_of(kind), ensure_ascii=False, indent=2))
