"""What crawlers are asked to leave alone (RFC 9309)."""

from sitegen.press.addresses import SITEMAP
from sitegen.press.imprint import Imprint


def robots(imprint: Imprint) -> bytes:
    """The rules of one tree: everyone's may be read whole, that of the subscribers not at all.

    Crawlers look for it at the root of a host alone.
    """
    if imprint.audience == "public":
        lines = ["User-agent: *", "Allow: /", "", f"Sitemap: {imprint.address}{SITEMAP}"]
    else:
        lines = ["User-agent: *", "Disallow: /"]
    return "".join(f"{line}\n" for line in lines).encode()
