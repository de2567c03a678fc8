"""What an overcurrent device or conductor is rated for under the code: 125 % of what flows for three hours or more."""

from __future__ import annotations

from sld.model.device import Consumer, Device
from sld.model.system import System
from sld.quantity import Rating
from sld.ratings import breaker
from sld.ratings.symbol import Symbol
from sld.steps.currents import charging_limits, takers
from sld.steps.ledger import Ledger
from sld.steps.line_sums import by_line, highest_amperes, together
from sld.words import phrase

__all__ = ["duty"]

_HOURS = phrase("sources, charging and charging points flow for three hours or more")
_OTHERS = phrase("other loads do not, unless they are said to")


def duty(system: System, ledger: Ledger, device: Device) -> Rating | None:
    """Return the least rating of what carries the current of a device, None where no current is known. [A]"""
    design = ledger.get(device.key, Symbol.IB)
    if design is None:
        return None
    known = [unit for unit in takers(system, list(system.downstream(device.key))) if ledger.get(unit.key, Symbol.IB)]
    if all(_is_continuous(unit) for unit in known):
        return breaker.continuous_duty_current(design.value).assuming(*design.assumptions, _HOURS)
    highest = highest_amperes(ledger, known)
    charging_limits(known, highest)
    amperes, _ = together(system, known, highest)
    lasting = {unit.key: amperes[unit.key] if _is_continuous(unit) else 0.0 for unit in known}
    by_all, by_lasting = by_line(system, known, amperes), by_line(system, known, lasting)
    line = max(by_all, key=lambda each: by_all[each] + 0.25 * by_lasting[each])
    exported_a = ledger.value(device.key, Symbol.IEXPORT) or 0.0
    rating = breaker.duty_current(exported_a, by_lasting[line], by_all[line] - by_lasting[line])
    return rating.assuming(*design.assumptions, _HOURS, _OTHERS)


def _is_continuous(unit: Device) -> bool:
    """Return whether a current flows for three hours or more (NEC Article 100; 625.42 for charging points)."""
    if not isinstance(unit, Consumer):
        return True
    given = unit.given
    return given.charging_point if given.continuous is None else given.continuous
