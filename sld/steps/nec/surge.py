"""Surge protective devices: what they state, and the voltage that each must stand."""

from __future__ import annotations

from sld.citation import from_memory
from sld.model.device import Apparatus
from sld.model.kinds.dc import DC_SURGE_PROTECTION
from sld.model.kinds.role import SURGE_PROTECTION
from sld.model.system import System
from sld.quantity import Given, Rating
from sld.ratings.specified import specified
from sld.ratings.symbol import Symbol
from sld.spec.blocks.circuit import DcSurgeProtection
from sld.steps.dc_devices import terminal_of
from sld.steps.ledger import Ledger
from sld.wire_size import area_mm2
from sld.words import phrase

__all__ = ["surge"]

_LEAST = Rating(
    Symbol.SPE,
    area_mm2("14"),
    "mm²",
    "14 AWG",
    (),
    from_memory(phrase("{standard} Article 242, conductors", standard="NEC 2023")),
)


def surge(system: System, ledger: Ledger) -> None:
    """Rate every surge protective device."""
    for device, given in system.given_as(SURGE_PROTECTION):
        ledger.add(device.key, _LEAST)
        voltage = Symbol.UCPV if device.dc else Symbol.UC
        if given.continuous_voltage_v is not None:
            ledger.add(device.key, specified(voltage, given.continuous_voltage_v, "V"))
        ledger.specified(device.key, Symbol.UP_RATING, given.protection_level_v)
        if (dc_given := device.given_as(DC_SURGE_PROTECTION)) is not None:
            _dc(system, ledger, device, dc_given)
        else:
            ledger.add(device.key, _least_ac(system.voltage_to_earth_v))


def _least_ac(u0_v: float) -> Rating:
    """Return the least continuous operating voltage of a device on the AC side: that from line to ground. [V]"""
    clause = from_memory(phrase("{standard} Article 242", standard="NEC 2023"))
    return Rating(Symbol.UC_MIN, u0_v, "V", "U0", (Given("U0", u0_v, "V"),), clause)


def _dc(system: System, ledger: Ledger, device: Apparatus, given: DcSurgeProtection) -> None:
    highest = ledger.get(terminal_of(system, device.key).key, Symbol.UOC_MAX)
    ledger.specified(device.key, Symbol.IN_SURGE, given.discharge_current_ka)
    if highest is not None:
        clause = from_memory(phrase("{standard} 690.7, Article 242", standard="NEC 2023"))
        least = Rating(Symbol.UCPV_MIN, highest.value, "V", "Uoc,max", (Given("Uoc,max", highest.value, "V"),), clause)
        ledger.add(device.key, least)
