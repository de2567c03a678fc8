"""The lines that say how the releases of a circuit-breaker are set."""

from __future__ import annotations

from sld.layout.diagram.line import Line, Role, kilo, line
from sld.spec.blocks.circuit import Breaker
from sld.words import NOTHING, Sayable, amount, sequence, unbroken

__all__ = ["settings"]


def settings(given: Breaker) -> list[Line | None]:
    """Return the settings of the releases: `Ir 200 A`, `Isd 1.2 kA 0.1 s`."""
    rows = (
        ("Ir", given.overload_setting_a, None),
        ("Isd", given.short_time_setting_a, given.short_time_delay_s),
        ("Ii", given.instantaneous_setting_a, None),
        ("Ig", given.earth_fault_setting_a, given.earth_fault_delay_s),
    )
    return [line(Role.SETTING, _setting(*row)) for row in rows]


def _setting(name: str, setting_a: float | None, delay_s: float | None) -> Sayable:
    if setting_a is None:
        return NOTHING
    set_to = unbroken(name, kilo(setting_a, "A"))
    return set_to if delay_s is None else sequence([set_to, amount(delay_s, "s")], " ")
