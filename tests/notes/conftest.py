"""What notes are read against in tests: the project's own tables, as a British school has them."""

import pytest

from sitegen.notes.values import Desk
from tests.notes.drafts import DESK


@pytest.fixture(scope="session")
def desk() -> Desk:
    return DESK
