"""What the form of a what-if page was asked, as it stood in the address."""

from collections.abc import Mapping
from dataclasses import dataclass, fields
from urllib.parse import urlencode

_MOST_LETTERS = 120
"""Of one field; no tin and no ingredient takes more."""


@dataclass(frozen=True)
class WhatIfWords:
    """Each field in a baker's words; '' for what is left open.

    batch: '24', '24 buns', '900 g', 'times 3/2', 'double'. in_hand: '200 g'; of: the ingredient that there is
    so much of. edition: a key. ready_by: '2026-12-05T16:00' or '2026-12-05 16:00', on the school's own wall.
    """

    batch: str = ""
    tin: str = ""
    in_hand: str = ""
    of: str = ""
    edition: str = ""
    cooks: str = ""
    oven_tins: str = ""
    ready_by: str = ""

    @property
    def query(self) -> str:
        """The same as an address has them, without what is left open."""
        return urlencode(list(self.given().items()))

    def given(self) -> Mapping[str, str]:
        """Field, as the form names it -> words, without what is left open."""
        named = {name_of(each.name): getattr(self, each.name) for each in fields(self)}
        return {name: words for name, words in named.items() if words}


def name_of(field: str) -> str:
    """A field as the form and the address name it: 'ready_by' -> 'ready-by'."""
    return field.replace("_", "-")


def words_of(query: Mapping[str, str]) -> WhatIfWords:
    """What an address asks; fields that it does not have are left open, others are passed over."""
    return WhatIfWords(
        **{
            each.name: query.get(name_of(each.name), "").strip()[:_MOST_LETTERS]
            for each in fields(WhatIfWords)
        }
    )
