"""What notes are read against in tests: the project's own tables, as a British school has them."""

import pytest

from sitegen.notes.values import Lore
from tests.notes.drafts import LORE


@pytest.fixture(scope="session")
def lore() -> Lore:
    return LORE
