"""The publisher's block, as the press prints it on every page and card."""

from dataclasses import dataclass

from sitegen.press.addresses import INDEX


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

    def address_of(self, path: str) -> str:
        """The full address of a page of the tree; that of the front page is the school's own."""
        return self.address + ("" if path == INDEX else path)
