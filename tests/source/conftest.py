"""The project's own tables, and a recipe's titles, for the readers of lines and sentences."""

import pytest

from sitegen.source.context import Context
from sitegen.source.tables import read_tables


@pytest.fixture(scope="session")
def context() -> Context:
    tables, faults = read_tables(None)
    assert faults == ()
    return Context(tables, components=("Vanilla batter", "Bay sponge"), recipes=("Base buttercream",))
