"""The contrast of two colours.

Source: WCAG 2.2, 'contrast ratio' and 'relative luminance'.
"""

import re

CHANNEL = re.compile(r"[\d.]+")


def contrast(one: str, other: str) -> float:
    """From 1 to 21. one, other: opaque, '#2a211d', or as a browser computes it, 'rgb(42, 33, 29)'."""
    darker, lighter = sorted((luminance(one), luminance(other)))
    return (lighter + 0.05) / (darker + 0.05)


def luminance(colour: str) -> float:
    """Relative luminance, from 0 for black to 1 for white."""
    red, green, blue, *opacity = _channels(colour)
    assert opacity in ([], [1.0]), f"{colour} lets something through"
    return 0.2126 * _linear(red) + 0.7152 * _linear(green) + 0.0722 * _linear(blue)


def _channels(colour: str) -> list[float]:
    if colour.startswith("#"):
        return [float(channel) for channel in bytes.fromhex(colour[1:])]
    return [float(channel) for channel in CHANNEL.findall(colour)]


def _linear(channel: float) -> float:
    share = channel / 255
    return share / 12.92 if share <= 0.04045 else float(((share + 0.055) / 1.055) ** 2.4)
