"""Parts that several symbols share: contacts, signs of current kind, arrow heads, the earth sign. Lengths in modules.

Written from the meaning of the IEC 60617 signs (from memory), not traced.
"""

from __future__ import annotations

from math import hypot

from sld.symbols.element import INK, Graphic
from sld.symbols.stroke import Point

__all__ = ["ac_sign", "along_blade", "arrow_head", "bar", "contact_circle", "cross", "dc_sign", "earth_sign",
           "make_contact", "protective_earth_sign", "semicircle"]  # fmt: skip

BLADE_MIDDLE = (2.0, -0.5)
_UNIT = hypot(2.0, 1.0)
_ALONG = (2.0 / _UNIT, 1.0 / _UNIT)
_ACROSS = (-1.0 / _UNIT, 2.0 / _UNIT)


def make_contact(g: Graphic, lead_m: float = 1.0, gap_m: float = 0.0, end_m: float = 4.0) -> None:
    """Draw an open make contact on the axis: fixed contact at x = 1, blade hinged at x = 3 and hanging open.

    lead_m: where the left lead ends; gap_m: length left out of the middle of the blade for a block drawn there;
    end_m: end of the right lead. The blade hangs below the axis, so that it closes upwards.
    """
    g.add_line((0.0, 0.0), (lead_m, 0.0))
    if gap_m:
        g.add_line((end_m, 0.0), (3.0, 0.0), along_blade(gap_m / 2, 0.0))
        g.add_line(along_blade(-gap_m / 2, 0.0), (1.0, -1.0))
    else:
        g.add_line((end_m, 0.0), (3.0, 0.0), (1.0, -1.0))


def along_blade(along_m: float, across_m: float) -> Point:
    """Return the point `along_m` from the middle of the blade towards its hinge and `across_m` to the upper side."""
    return (
        BLADE_MIDDLE[0] + along_m * _ALONG[0] + across_m * _ACROSS[0],
        BLADE_MIDDLE[1] + along_m * _ALONG[1] + across_m * _ACROSS[1],
    )


def bar(g: Graphic, x_m: float) -> None:
    """Draw the disconnector function: a bar across the axis."""
    g.add_line((x_m, -0.4), (x_m, 0.4))


def contact_circle(g: Graphic) -> None:
    """Draw the load-switching function: a circle at the fixed contact."""
    g.add_circle(1.0, 0.0, 0.25)


def cross(g: Graphic) -> None:
    """Draw the circuit-breaker function: a cross at the fixed contact."""
    g.add_line((0.65, -0.35), (1.35, 0.35))
    g.add_line((0.65, 0.35), (1.35, -0.35))


def semicircle(g: Graphic) -> None:
    """Draw the contactor function: a half circle at the fixed contact, open towards the blade."""
    g.add_arc(1.0, 0.0, 0.35, 0.35, 90.0, 270.0)


def arrow_head(g: Graphic, tip: Point, towards: Point, length_m: float = 0.45) -> None:
    """Draw a filled arrow head at `tip`, pointing the way of the vector `towards`."""
    size = hypot(*towards)
    dx, dy = towards[0] / size, towards[1] / size
    base = (tip[0] - length_m * dx, tip[1] - length_m * dy)
    half = length_m * 0.33
    g.add_polygon(tip, (base[0] - half * dy, base[1] + half * dx), (base[0] + half * dy, base[1] - half * dx), fill=INK)


def dc_sign(g: Graphic, left_m: float, y_m: float, length_m: float = 1.2) -> None:
    """Draw the sign of direct current: a line, and below it a dashed line of the same length; y is between the two."""
    gap = 0.35 * length_m / 1.2
    g.add_line((left_m, y_m + gap / 2), (left_m + length_m, y_m + gap / 2))
    for start in (0.0, 0.375, 0.75):
        x = left_m + start * length_m
        g.add_line((x, y_m - gap / 2), (x + 0.25 * length_m, y_m - gap / 2))


def ac_sign(g: Graphic, left_m: float, y_m: float, length_m: float = 1.2) -> None:
    """Draw the sign of alternating current: one period of a sine, each half a cubic within 1 % of it."""
    half, height = length_m / 2, 0.25 * length_m / 1.2 * 4 / 3
    for x, lift in ((left_m, height), (left_m + half, -height)):
        reach = 0.40 * half
        g.add_curve([(x, y_m), (x + reach, y_m + lift), (x + half - reach, y_m + lift), (x + half, y_m)])


def earth_sign(g: Graphic, x_m: float, y_m: float, bar_m: float = 1.0, step_m: float = 0.4) -> None:
    """Draw the three bars of an earth connection: the first at y, `bar_m` to each side, the next shorter below."""
    for number, share in enumerate((1.0, 0.65, 0.3)):
        y = y_m - number * step_m
        g.add_line((x_m - share * bar_m, y), (x_m + share * bar_m, y))


def protective_earth_sign(g: Graphic, x_m: float, y_m: float, scale: float = 1.0) -> None:
    """Draw a protective earth connection hanging from (x, y): a lead, the earth bars, and a circle around them."""
    g.add_line((x_m, y_m), (x_m, y_m - 1.5 * scale))
    earth_sign(g, x_m, y_m - 1.5 * scale, 0.75 * scale, 0.35 * scale)
    g.add_circle(x_m, y_m - 1.8 * scale, 1.3 * scale)
