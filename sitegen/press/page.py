"""What every page shares: its links, its security policy, its head and its frame."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass

from markupsafe import Markup, escape

from sitegen.press.addresses import INDEX, link
from sitegen.press.imprint import Imprint
from sitegen.press.picture import Picture
from sitegen.press.theme import Theme

CONTENT_POLICY = Markup(
    "default-src 'none'; img-src 'self'; style-src 'self'; script-src 'self'; font-src 'self'; "
    "base-uri 'none'; form-action 'none'"
)


@dataclass(frozen=True)
class Page:
    """What the frame of a page prints.

    here: its path in the tree. title: of the page, without the school's name; '' for the front page.
    description: plain text. data: JSON-LD for search engines, '' for none. picture_address: absolute, for
    a link that is shared, '' for none. language: BCP 47 tag of the text. is_absolute: True where a host
    serves the page at any depth, so that links need the full address. is_listed: False to keep it out of
    search engines.
    """

    here: str
    title: str
    description: str
    language: str
    data: str = ""
    picture_address: str = ""
    canonical: str = ""
    is_absolute: bool = False
    is_listed: bool = True


def page_bytes(
    theme: Theme, imprint: Imprint, template: str, page: Page, content: Mapping[str, object]
) -> bytes:
    """The page set by a template of the theme, UTF-8."""
    to = _linker(imprint, page)
    text = theme.environment.get_template(template).render(
        page=page,
        imprint=imprint,
        policy=CONTENT_POLICY,
        to=to,
        canonical=_canonical(imprint, page),
        **content,
    )
    return text.encode()


def shared_picture(imprint: Imprint, picture: Picture | None) -> str:
    """The full address of the largest JPEG cut, '' where there is none."""
    return imprint.address + picture.jpeg[-1].path if picture else ""


def _linker(imprint: Imprint, page: Page) -> Callable[[str], Markup]:
    """Addresses as this page writes them, ready for an attribute."""
    if page.is_absolute:
        return lambda target: Markup(escape(imprint.address + target))
    return lambda target: Markup(escape(link(page.here, target)))


def _canonical(imprint: Imprint, page: Page) -> Markup:
    path = page.canonical or page.here
    return Markup(escape(imprint.address + ("" if path == INDEX else path)))
