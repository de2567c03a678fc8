"""Parts that several symbols of the ANSI family share. Lengths in modules.

Written from the meaning of the IEEE 315 signs (from memory), not traced. A blade hangs open above the axis; where the
IEC sign marks the fixed contact, this family has another way of breaking: an arc for a breaker, two bars for a
contact, a bare blade for a switch.
"""

from __future__ import annotations

from math import cos, radians, sin

from sld.symbols.element import Graphic
from sld.symbols.parts import arrow_head, earth_sign
from sld.symbols.stroke import Dash, Point

__all__ = ["adjusted", "blade", "breaker_arc", "chevron", "contact_bars", "ground", "link_to", "scallops", "wave"]

BLADE_DEG = 27.0


def blade(g: Graphic, hinge_m: float = 3.0, length_m: float = 2.0, end_m: float = 4.0) -> Point:
    """Draw a switch on the axis, open: leads, and a blade hinged at its right contact. Return the tip of the blade."""
    tip = (hinge_m - length_m * cos(radians(BLADE_DEG)), length_m * sin(radians(BLADE_DEG)))
    g.add_line((0.0, 0.0), (hinge_m - length_m, 0.0))
    g.add_line((end_m, 0.0), (hinge_m, 0.0), tip)
    return tip


def breaker_arc(g: Graphic, end_m: float = 4.0) -> Point:
    """Draw a circuit breaker on the axis: an arc that bridges a gap, clear of its ends. Return the top of the arc."""
    g.add_line((0.0, 0.0), (1.0, 0.0))
    g.add_arc(2.0, 0.15, 1.0, 0.7, 0.0, 180.0)
    g.add_line((3.0, 0.0), (end_m, 0.0))
    return (2.0, 0.85)


def contact_bars(g: Graphic) -> None:
    """Draw an open contact on the axis: two bars across a gap."""
    g.add_line((0.0, 0.0), (1.6, 0.0))
    g.add_line((2.4, 0.0), (4.0, 0.0))
    for x in (1.6, 2.4):
        g.add_line((x, -0.8), (x, 0.8))


def adjusted(g: Graphic, start: Point, tip: Point) -> None:
    """Draw the oblique arrow of adjustability (IEEE 315 item 1.1) from `start` to `tip`."""
    dx, dy = tip[0] - start[0], tip[1] - start[1]
    g.add_line(start, (tip[0] - 0.1 * dx, tip[1] - 0.1 * dy))
    arrow_head(g, tip, (dx, dy))


def wave(g: Graphic, left_m: float, right_m: float, height_m: float) -> None:
    """Draw one period of a wave on the axis, the sign of a fuse, up first."""
    half = (right_m - left_m) / 2
    for x, lift in ((left_m, height_m * 4 / 3), (left_m + half, -height_m * 4 / 3)):
        g.add_curve([(x, 0.0), (x + 0.4 * half, lift), (x + 0.6 * half, lift), (x + half, 0.0)])


def scallops(g: Graphic, x_m: float, faces: float, count: int, radius_m: float, y_m: float = 0.0) -> None:
    """Draw a winding: half circles one above the other, bulging to the right (faces 1) or to the left (-1).

    Its middle is at (x, y); with an even count that is where two of them meet.
    """
    for number in range(count):
        y = y_m + radius_m * (count - 1 - 2 * number)
        start = -90.0 if faces > 0 else 90.0
        g.add_arc(x_m, y, radius_m, radius_m, start, start + 180.0)


def chevron(g: Graphic, tip_m: float) -> None:
    """Draw one half of a plug connection on the axis, pointing to the right."""
    g.add_line((tip_m - 0.45, 0.45), (tip_m, 0.0), (tip_m - 0.45, -0.45))


def ground(g: Graphic, x_m: float, y_m: float, lead_m: float, scale: float = 1.0) -> None:
    """Draw a ground connection hanging from (x, y): a lead and the three bars of IEEE 315 item 3.9.1."""
    g.add_line((x_m, y_m), (x_m, y_m - lead_m))
    earth_sign(g, x_m, y_m - lead_m, scale, 0.4 * scale)


def link_to(g: Graphic, sensor_x_m: float, sensor_top_m: float, joins: Point, level_m: float) -> None:
    """Draw the dashed mechanical link from the top of a sensor up, across and down to what it trips."""
    g.add_line((sensor_x_m, sensor_top_m), (sensor_x_m, level_m), (joins[0], level_m), joins, dash=Dash.DASHED)
