"""Residual current devices of AC circuits: the type that the converters behind them need, the residual current."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import takewhile

from sld.citation import cited, from_memory
from sld.frozen import dataclass
from sld.model.device import Apparatus, BatteryUnit, Consumer, Device, InverterUnit
from sld.model.kinds.role import RESIDUAL_PROTECTION, ResidualProtection
from sld.model.system import System
from sld.ratings import rcd
from sld.ratings.symbol import Symbol, Word
from sld.steps.ledger import Ledger
from sld.words import phrase

__all__ = ["DirectCurrent", "additional_protection", "direct_currents", "residual"]

_CHARGING = from_memory("IEC 60364-7-722:2018 722.531.3")


@dataclass(frozen=True, slots=True)
class DirectCurrent:
    """What one converter may let flow into the earth as smooth direct current.

    separated: at least simple separation between DC and AC. declared_ma: what its maker declares, None where he is
    silent.
    """

    unit: Device
    separated: bool
    declared_ma: float | None


def direct_currents(system: System, key: str) -> Iterator[DirectCurrent]:
    """Yield the inverters, converters of batteries and charging points behind a device, each with what is declared."""
    for unit in system.downstream(key):
        if isinstance(unit, InverterUnit):
            yield DirectCurrent(unit, unit.type.galvanic_separation, unit.type.dc_residual_current_ma)
        elif isinstance(unit, BatteryUnit) and not unit.dc:
            yield DirectCurrent(unit, unit.given.galvanic_separation, unit.given.dc_residual_current_ma)
        elif isinstance(unit, Consumer) and unit.given.charging_point:
            yield DirectCurrent(unit, False, unit.given.dc_residual_current_ma)


def residual(system: System, ledger: Ledger, device: Apparatus, given: ResidualProtection) -> None:
    """Keep the type that what is behind an RCD needs, and its rated residual current."""
    _keep_type(system, ledger, device)
    served = system.devices.get(device.owner)
    touched = isinstance(served, Consumer) and (served.given.charging_point or additional_protection(system, served))
    leakage_ma = sum(unit.type.leakage_current_ma or 0.0 for unit in system.inverters_behind(device.key))
    electrode = system.electrode_at(device.key)
    in_loop = electrode is not None and system.earthing_at(device.key) == "TT"
    resistance_ohm = (electrode.resistance_ohm or None) if electrode and in_loop else None
    ledger.choose(
        device.key,
        Symbol.IDN,
        given.residual_current_ma,
        lambda: rcd.chosen_residual_current(leakage_ma, resistance_ohm, touched),
        phrase("no standard residual current fits between leakage and earth resistance"),
    )
    if leakage_ma:
        ledger.add(device.key, rcd.least_residual_current(leakage_ma), symbol=Symbol.IDN_LEAST)


def additional_protection(system: System, load: Consumer) -> bool:
    """Return whether a load is to have additional protection by an RCD of 30 mA, as far as what its circuit supplies
    decides: socket-outlets, in dwellings luminaires too.

    Source: IEC 60364-4-41:2005+A1:2017 411.3.3, 411.3.4 (from memory); BS 7671:2018 411.3.3, 411.3.4 as
    https://www.wiring-regulations.co.uk/protection-against-electric-shock-chapter-41/ tells them.
    """
    supplies = load.given.supplies
    return supplies == "socket_outlets" or (supplies == "luminaires" and system.site.building == "dwelling")


def _detects(system: System, device: Apparatus, each: DirectCurrent) -> bool:
    """Return whether a charging point that says nothing relies on an RCD for its protection, none being its own."""
    between = takewhile(lambda other: other.key != device.key, system.upstream(each.unit.key))
    own = any(other.has(RESIDUAL_PROTECTION) for other in between)
    return isinstance(each.unit, Consumer) and each.declared_ma is None and not own


def _keep_type(system: System, ledger: Ledger, device: Apparatus) -> None:
    """Keep the least type: B where a maker is silent and nothing separates, else by the sum of what is declared.

    The direct currents of several converters behind one RCD add in it, whatever each of them may let through alone.
    """
    found = list(direct_currents(system, device.key))
    converters = [each for each in found if not isinstance(each.unit, Consumer)]
    if not found:
        return
    if not converters and all(each.declared_ma is None for each in found):
        if any(each.unit.key == device.owner for each in found):
            reason = phrase("charging point, no detection of 6 mA DC stated ({clause})", clause=_CHARGING)
            ledger.word(device.key, Word.RCD_TYPE, "B", reason)
        return
    needs = [rcd.residual_current_type(each.separated, each.declared_ma) for each in converters]
    # a charging point that says nothing must detect 6 mA itself behind an RCD of type A, and is asked for that alone
    shares = [each.declared_ma for each in found if each.declared_ma is not None]
    shares += [rcd.CHARGING_POINT_MA for each in found if _detects(system, device, each)]
    if len(shares) > 1:
        ledger.add(device.key, rcd.direct_residual_current(shares))
    if shares:
        needs.append(rcd.residual_current_type(False, sum(shares)))
    worst = max(needs, key=lambda need: "AFB".index(need.letter))
    ledger.word(device.key, Word.RCD_TYPE, worst.letter, cited(worst.reason, remark=worst.clause))
