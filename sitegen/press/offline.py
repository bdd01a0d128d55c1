"""The worker that keeps opened pages on a reader's device (https://www.w3.org/TR/service-workers/)."""

import json
from collections.abc import Iterable
from importlib.resources import files

from sitegen.press.addresses import NOT_KEPT
from sitegen.press.imprint import Imprint

_CODE = ("browser", "offline.js")
_FRONT = ""


def worker(imprint: Imprint, version: str, theme_files: Iterable[str]) -> bytes:
    """The script, at the root of its tree, since it may answer only for what lies below it.

    version: of all pages of the tree; another one has every kept page fetched anew. theme_files: paths of
    what every page is shown with, which every device keeps beside the front page.
    """
    published = {
        "version": version,
        "address": imprint.address,
        "everywhere": [NOT_KEPT, *theme_files, _FRONT],
    }
    code = files("sitegen.press").joinpath(*_CODE).read_text(encoding="utf-8")
    return f"const PUBLISHED = {json.dumps(published)};\n{code}".encode()
