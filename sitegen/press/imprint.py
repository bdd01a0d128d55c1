"""The publisher's block, as the press prints it on every page and card."""

from dataclasses import dataclass


@dataclass(frozen=True)
class Imprint:
    """name, tagline: the school's. address: where this tree is served, ending in '/'.

    language: BCP 47 tag of the site's own pages. about: Markdown. audience: 'public' or 'subscribers'.
    subscribers_address: where a public reader finds the full sheets, '' for none.
    """

    name: str
    tagline: str
    address: str
    language: str
    about: str
    copyright: str
    audience: str
    subscribers_address: str = ""
