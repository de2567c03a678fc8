"""Converters: a box with a diagonal, the kind of current of each side in its corner. Lengths in modules.

The diagonal runs from the lower left to the upper right corner, the feeding side above it, the supplied side below it.
"""

from __future__ import annotations

from math import hypot
from typing import Any

from sld.frozen import dataclass
from sld.symbols.element import Graphic
from sld.symbols.parts import ac_sign, arrow_head, dc_sign
from sld.symbols.registry import BUILT_UP, graphic
from sld.symbols.sources import battery_box
from sld.symbols.spans import STRIP_REACH_M, STRIP_WIDTH_M, feeds_of
from sld.words import phrase

__all__ = ["BatteryConverter", "Inverter", "ModuleConverter", "ReversibleConverter"]

_BODY_LEFT_M = 1.0
_HALF_HEIGHT_M = 2.0
_NECK_HALF_M = 0.25


@dataclass(frozen=True, slots=True)
class _Body:
    """The box of a converter, by its sides (M)."""

    left_m: float
    bottom_m: float
    right_m: float
    top_m: float


def _diagonals(g: Graphic, body: _Body, isolated: bool) -> None:
    """Draw the diagonal; two of them 0.3 M apart where the sides are galvanically separated."""
    width, height = body.right_m - body.left_m, body.top_m - body.bottom_m
    if not isolated:
        g.add_line((body.left_m, body.bottom_m), (body.right_m, body.top_m))
        return
    shift_x = 0.15 * hypot(width, height) / height  # 0.15 M across the diagonal, measured along the upper edge
    shift_y = shift_x * height / width
    g.add_line((body.left_m, body.bottom_m + shift_y), (body.right_m - shift_x, body.top_m))
    g.add_line((body.left_m + shift_x, body.bottom_m), (body.right_m, body.top_m - shift_y))


def _converter(
    g: Graphic, body: _Body, *, phases: int, isolated: bool = False, reversible: bool = False, sign_m: float = 1.2
) -> None:
    """Draw box, diagonal and signs. phases: of the supplied side, 0 for direct current. sign_m: length of the signs."""
    g.add_rectangle(body.left_m, body.bottom_m, body.right_m, body.top_m)
    _diagonals(g, body, isolated)
    inset = 0.3 * sign_m
    dc_sign(g, body.left_m + inset, body.top_m - 0.46 * sign_m, sign_m)
    left, y = body.right_m - inset - sign_m, body.bottom_m + max(0.62 * sign_m, 0.74)
    if phases == 0:
        dc_sign(g, left, body.bottom_m + 0.46 * sign_m, sign_m)
    else:
        ac_sign(g, left, y, sign_m)
    if phases == 3:
        g.add_text("3", left - 0.46, y)
    if reversible:
        _reversing_arrow(g, body)


def _reversing_arrow(g: Graphic, body: _Body) -> None:
    """Draw an arrow with two heads, 1.5 M long, beside the diagonal and parallel to it."""
    width, height = body.right_m - body.left_m, body.top_m - body.bottom_m
    dx, dy = width / hypot(width, height), height / hypot(width, height)
    x = body.left_m + 0.56 * width + 0.45 * dy
    y = body.bottom_m + 0.56 * height - 0.45 * dx
    g.add_line((x - 0.5 * dx, y - 0.5 * dy), (x + 0.5 * dx, y + 0.5 * dy))
    arrow_head(g, (x - 0.75 * dx, y - 0.75 * dy), (-dx, -dy))
    arrow_head(g, (x + 0.75 * dx, y + 0.75 * dy), (dx, dy))


def _feeds(g: Graphic, feeds_m: tuple[float, ...] | None) -> None:
    """Draw and name the feeding terminals, upper first; `feeds_m` are heights above the axis.

    Several are on a terminal strip that a neck joins to the body: they are not connected to each other.
    """
    feeds = feeds_of(feeds_m)
    for name, y in feeds.items():
        g.add_pin(name, 0.0, y)
    if list(feeds.values()) == [0.0]:
        g.add_line((0.0, 0.0), (_BODY_LEFT_M, 0.0))
        return
    low, high = min(0.0, *feeds.values()) - STRIP_REACH_M, max(0.0, *feeds.values()) + STRIP_REACH_M
    g.add_rectangle(0.0, low, STRIP_WIDTH_M, high)
    g.strip_count = 1
    for y in (-_NECK_HALF_M, _NECK_HALF_M):
        g.add_line((STRIP_WIDTH_M, y), (_BODY_LEFT_M, y))


@graphic(
    "inverter_1ph",
    phrase("Inverter, single-phase"),
    "IEC 60617 S00896 (old 06-14-05), from memory",
    stretches=True,
    ansi=BUILT_UP,
    phases=1,
    isolated=False,
)
@graphic(
    "inverter_3ph",
    phrase("Inverter, three-phase"),
    "IEC 60617 S00896 (old 06-14-05), from memory",
    stretches=True,
    ansi=BUILT_UP,
    phases=3,
    isolated=False,
)
@graphic("inverter_1ph_isolated", phrase("Inverter, single-phase, galvanically separated"),
         "IEC 60617 S00896 (old 06-14-05) and 02-17-06, from memory",
         ansi=BUILT_UP, stretches=True, phases=1, isolated=True)  # fmt: skip
@graphic("inverter_3ph_isolated", phrase("Inverter, three-phase, galvanically separated"),
         "IEC 60617 S00896 (old 06-14-05) and 02-17-06, from memory",
         ansi=BUILT_UP, stretches=True, phases=3, isolated=True)  # fmt: skip
class Inverter(Graphic):
    """Direct current in, alternating current out; its terminal strip spans the rows of its inputs."""

    def __init__(
        self, *, phases: int, isolated: bool, feeds_m: tuple[float, ...] | None = None, **placement: Any
    ) -> None:
        super().__init__(**placement)
        _feeds(self, feeds_m)
        _converter(self, _Body(_BODY_LEFT_M, -_HALF_HEIGHT_M, 5.0, _HALF_HEIGHT_M), phases=phases, isolated=isolated)
        self.add_line((5.0, 0.0), (6.0, 0.0))
        _converter_pins(self, _BODY_LEFT_M, 6.0)


def _converter_pins(g: Graphic, left_m: float, length_m: float) -> None:
    """Name supply, and on the lower edge earth (2 M from the left) and the data terminals beside it."""
    g.add_pin("supply", length_m)
    g.add_pin("earth", left_m + 2.0, -_HALF_HEIGHT_M)
    g.add_pin("data", left_m + 3.0, -_HALF_HEIGHT_M)
    g.add_pin("data2", left_m + 1.0, -_HALF_HEIGHT_M)


@graphic("reversible_converter_1ph", phrase("Converter of a battery, single-phase"),
         "IEC 60617 S00897 (old 06-14-06), from memory", ansi=BUILT_UP, stretches=True, phases=1)  # fmt: skip
@graphic("reversible_converter_3ph", phrase("Converter of a battery, three-phase"),
         "IEC 60617 S00897 (old 06-14-06), from memory", ansi=BUILT_UP, stretches=True, phases=3)  # fmt: skip
@graphic("charge_converter", phrase("Charge converter, direct current to direct current"),
         "IEC 60617 S00892 (old 06-14-02), from memory, with an arrow for both directions", ansi=BUILT_UP,
         stretches=True, phases=0)  # fmt: skip
class ReversibleConverter(Graphic):
    """Direct current on the side of the battery, either direction; direct or alternating current on the other."""

    def __init__(self, *, phases: int, feeds_m: tuple[float, ...] | None = None, **placement: Any) -> None:
        super().__init__(**placement)
        _feeds(self, feeds_m)
        _converter(self, _Body(_BODY_LEFT_M, -_HALF_HEIGHT_M, 5.0, _HALF_HEIGHT_M), phases=phases, reversible=True)
        self.add_line((5.0, 0.0), (6.0, 0.0))
        _converter_pins(self, _BODY_LEFT_M, 6.0)


@graphic("battery_converter", phrase("Battery with its converter, coupled on the AC side"),
         "IEC 60617 S00898 and S00897 (old 06-15-01, 06-14-06), from memory", ansi=BUILT_UP)  # fmt: skip
class BatteryConverter(Graphic):
    """A battery and the rectifier-inverter that charges and discharges it."""

    def __init__(self, **placement: Any) -> None:
        super().__init__(**placement)
        battery_box(self)
        self.add_line((3.0, 0.0), (4.0, 0.0))
        _converter(self, _Body(4.0, -2.0, 8.0, 2.0), phases=1, reversible=True)
        self.add_line((8.0, 0.0), (9.0, 0.0))
        self.add_pin("feed", 0.0)
        _converter_pins(self, 4.0, 9.0)


@graphic("microinverter", phrase("Micro-inverter"), "IEC 60617 S00896 (old 06-14-05), from memory", ansi=BUILT_UP,
         stretches=True, phases=1)  # fmt: skip
@graphic("microinverter_3ph", phrase("Micro-inverter, three-phase"), "IEC 60617 S00896 (old 06-14-05), from memory",
         ansi=BUILT_UP, stretches=True, phases=3)  # fmt: skip
@graphic("optimiser", phrase("Power optimiser"), "IEC 60617 S00892 (old 06-14-02), from memory", ansi=BUILT_UP,
         stretches=True, phases=0)  # fmt: skip
class ModuleConverter(Graphic):
    """A converter for one or a few modules, narrower than an inverter for strings."""

    def __init__(self, *, phases: int, feeds_m: tuple[float, ...] | None = None, **placement: Any) -> None:
        super().__init__(**placement)
        _feeds(self, feeds_m)
        _converter(self, _Body(_BODY_LEFT_M, -_HALF_HEIGHT_M, 4.0, _HALF_HEIGHT_M), phases=phases, sign_m=0.9)
        self.add_line((4.0, 0.0), (5.0, 0.0))
        _converter_pins(self, _BODY_LEFT_M, 5.0)
