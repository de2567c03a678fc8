"""Colours as an SVG writes them, made into `#rrggbb`."""

from __future__ import annotations

import re

from sld.picture.picture import BadPicture

__all__ = ["colour"]

NAMES = {
    "black": "#000000", "silver": "#c0c0c0", "gray": "#808080", "grey": "#808080", "white": "#ffffff",
    "maroon": "#800000", "red": "#ff0000", "purple": "#800080", "fuchsia": "#ff00ff", "green": "#008000",
    "lime": "#00ff00", "olive": "#808000", "yellow": "#ffff00", "navy": "#000080", "blue": "#0000ff",
    "teal": "#008080", "aqua": "#00ffff", "orange": "#ffa500",
}  # fmt: skip
"""The names of CSS 2.1, 4.3.6, with both spellings of grey."""


def colour(text: str, current: str = "#000000") -> str:
    """Return a colour as `#rrggbb`, nothing for `none`. current: what `currentColor` is. Raises BadPicture."""
    word = text.strip().lower()
    if word in ("none", "transparent"):
        return ""
    if word == "currentcolor":
        return colour(current) if current.strip().lower() != "currentcolor" else NAMES["black"]
    if word in NAMES:
        return NAMES[word]
    if re.fullmatch(r"#[0-9a-f]{6}", word):
        return word
    if re.fullmatch(r"#[0-9a-f]{3}", word):
        return "#" + "".join(digit * 2 for digit in word[1:])
    parts = re.fullmatch(r"rgb\(\s*(\d{1,3})\s*[, ]\s*(\d{1,3})\s*[, ]\s*(\d{1,3})\s*\)", word)
    if parts and all(int(part) <= 255 for part in parts.groups()):
        return "#" + "".join(f"{int(part):02x}" for part in parts.groups())
    raise BadPicture(f"the SVG has the colour `{text[:30]}`", "use plain colours such as #1a2b3c, no gradients")
