"""The colours of conductors by their role, for a sheet that asks for them.

The set is our own. All four are dark enough to be read on white, in colour or printed grey (WCAG 2.1, success criteria
1.4.3 and 1.4.11), and none tells more than the width and pattern of the line do (1.4.1). Earth is green as its
conductors are green and yellow in IEC 60445; the other hues were chosen to lie apart.
"""

from __future__ import annotations

from collections.abc import Mapping

from sld.symbols.stroke import Circle, Polyline, Stroke

__all__ = ["BLACK", "SCHEMES", "fractions", "ink"]

BLACK = "#000"

SCHEMES: Mapping[str, Mapping[str, str]] = {
    "restrained": {"dc": "#a33c00", "ac": "#0b3d91", "earth": "#0f6b2f", "data": "#7b1fa2"},
}
"""Colour by scheme and role; a scheme that is not listed, and a role that has none, is black."""


def ink(stroke: Stroke, scheme: str) -> str:
    """Return the colour of a stroke as `#rrggbb`, or BLACK."""
    role = stroke.role if isinstance(stroke, Polyline | Circle) else ""
    return SCHEMES.get(scheme, {}).get(role, BLACK)


def fractions(colour: str) -> tuple[float, float, float]:
    """Return red, green and blue of `#rgb` or `#rrggbb`, each from 0 to 1."""
    digits = colour.removeprefix("#")
    if len(digits) == 3:
        digits = "".join(digit * 2 for digit in digits)
    red, green, blue = (int(digits[n : n + 2], 16) / 255 for n in (0, 2, 4))
    return red, green, blue
