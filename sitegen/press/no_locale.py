"""Printing that does not ask which language the machine speaks."""

import locale
import os
from contextlib import suppress


def forget_locale() -> None:
    """Have Pango and Fontconfig take no language from the machine; to be called before either is loaded.

    Where a text names none, as in a drawing or a margin, Pango takes that of the process and shapes by it:
    in a Turkish locale an 'i' may be another glyph. Fontconfig orders the fonts by which it fills gaps.
    Python's own texts stay in UTF-8. A system that has no such locale keeps its own.
    """
    with suppress(locale.Error):
        locale.setlocale(locale.LC_CTYPE, "C.UTF-8")
    os.environ["FC_LANG"] = "en"
