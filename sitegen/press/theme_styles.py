"""What a theme's style sheet may load: files of the theme that lie beside it, and nothing from anywhere else.

A page's security policy would stop it too, and a card's fetcher; here it is told before anything is printed.
"""

import re
from collections.abc import Iterator, Mapping

_ESCAPE = re.compile(r"\\(?:([0-9a-fA-F]{1,6})\s?|(.))", re.DOTALL)
"""https://www.w3.org/TR/css-syntax-3/#escaping: 'u\\72l(' is read as 'url('."""
_LOADS = re.compile(
    r"@import|@namespace|(?:url|src|image|image-set|element)\(\s*[\"']?([^\"')]*)", re.IGNORECASE
)
_BESIDE = re.compile(r"#[\w-]*|(?:[\w-]+/)*[\w-]+\.(?:woff2|svg)")


def loads_from_elsewhere(styles: Mapping[str, str]) -> Iterator[str]:
    """A sentence for each address that leads out of the theme. styles: file name -> text without comments."""
    for name, text in sorted(styles.items()):
        for found in _LOADS.finditer(_ESCAPE.sub(_letter, text)):
            address = found[1]
            if address is None or not _BESIDE.fullmatch(address):
                yield f"styles/{name}: '{found[0][:60]}' would load what is no file of the theme"


def _letter(found: re.Match[str]) -> str:
    if found[1] is None:
        return found[2]
    number = int(found[1], 16)
    return chr(number) if number < 0x110000 else "?"
