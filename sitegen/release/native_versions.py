"""Versions of what prints and cuts below the Python packages: another one may give other bytes.

A package of the system brings them, and renews them while WeasyPrint and Pillow stay what they are. Asking
them costs a few milliseconds, a hundredth of what it takes to load WeasyPrint itself.
"""

import ctypes
import platform
import zlib
from collections.abc import Callable, Mapping

_NAMES = {
    "fontconfig": ("libfontconfig.so.1", "libfontconfig.1.dylib"),
    "freetype": ("libfreetype.so.6", "libfreetype.6.dylib"),
    "harfbuzz": ("libharfbuzz.so.0", "libharfbuzz.0.dylib"),
    "pango": ("libpango-1.0.so.0", "libpango-1.0.0.dylib"),
}
"""Library -> its file on Linux and on macOS, by which the system finds it."""
_OF_PILLOW = ("jpg", "littlecms2", "webp", "zlib")
MISSING = "missing"


def native_versions() -> Mapping[str, str]:
    """Library -> version as it tells it, MISSING where it is not there or tells none."""
    from PIL import features

    versions = {name: _asked(name, ask) for name, ask in _QUESTIONS.items()}
    versions |= {f"pillow's {name}": str(features.version(name) or MISSING) for name in _OF_PILLOW}
    turbo = str(features.version("libjpeg_turbo") or MISSING)
    return versions | {"pillow's libjpeg-turbo": turbo, "zlib": zlib.ZLIB_RUNTIME_VERSION, "python": _PYTHON}


_PYTHON = platform.python_version()


def _asked(name: str, ask: Callable[[ctypes.CDLL], str]) -> str:
    for file in _NAMES[name]:
        try:
            return ask(ctypes.CDLL(file))
        except (OSError, AttributeError):
            continue
    return MISSING


def _fontconfig(library: ctypes.CDLL) -> str:
    return str(library.FcGetVersion())


def _freetype(library: ctypes.CDLL) -> str:
    """FreeType tells its version through an instance alone."""
    instance, numbers = ctypes.c_void_p(), [ctypes.c_int() for _ in range(3)]
    if library.FT_Init_FreeType(ctypes.byref(instance)) != 0:
        return MISSING
    library.FT_Library_Version(instance, *map(ctypes.byref, numbers))
    library.FT_Done_FreeType(instance)
    return ".".join(str(number.value) for number in numbers)


def _harfbuzz(library: ctypes.CDLL) -> str:
    library.hb_version_string.restype = ctypes.c_char_p
    told: bytes = library.hb_version_string()
    return told.decode()


def _pango(library: ctypes.CDLL) -> str:
    library.pango_version_string.restype = ctypes.c_char_p
    told: bytes = library.pango_version_string()
    return told.decode()


_QUESTIONS: Mapping[str, Callable[[ctypes.CDLL], str]] = {
    "fontconfig": _fontconfig,
    "freetype": _freetype,
    "harfbuzz": _harfbuzz,
    "pango": _pango,
}
