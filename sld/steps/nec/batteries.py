"""The circuit between a battery and its converter under the code: 125 % of its current, what devices must stand."""

from __future__ import annotations

from functools import partial

from sld.citation import from_memory
from sld.frozen import replace
from sld.model.device import Apparatus, Cable
from sld.model.kinds.battery import BATTERY_CABLE
from sld.model.kinds.role import AT_BATTERY, OVERCURRENT_PROTECTION
from sld.model.system import System
from sld.quantity import Rating
from sld.ratings import battery as demand
from sld.ratings import breaker
from sld.ratings.nec.conductor_size import Demand, smallest_size
from sld.ratings.symbol import Symbol
from sld.steps.batteries import Store, design_current, overcurrent_protection, rate_device, stores, way_from
from sld.steps.ledger import Ledger
from sld.steps.nec.runs import NO_FACTOR, at_battery, keep_ampacity
from sld.words import phrase

__all__ = ["batteries"]

_CIRCUIT = from_memory("NEC 2023 706.30, 706.31")
"""Conductors and overcurrent devices of energy storage for 125 % of the greatest current, as
https://sparkshift.app/code/nec-706 tells of it."""


def batteries(system: System, ledger: Ledger) -> None:
    """Rate each battery, then what lies between it and its converter."""
    for store in stores(system):
        design = design_current(system, store)
        ledger.add(store.key, design)
        ledger.specified(store.key, Symbol.IK_DC, store.given.short_circuit_current_ka)
        duty = replace(breaker.continuous_duty_current(design.value), clause=_CIRCUIT) if design is not None else None
        for device in way_from(system, store):
            if isinstance(device, Apparatus) and device.has(AT_BATTERY):
                protects = device.has(OVERCURRENT_PROTECTION)
                rate_device(ledger, device, store, None if protects or design is None else demand.current_min(design))
                ledger.add(device.key, duty if protects else None)
        _cables(system, ledger, store, design, duty)


def _cables(system: System, ledger: Ledger, store: Store, design: Rating | None, duty: Rating | None) -> None:
    """Rate the cables of a battery, the smallest size that fits where the spec leaves it out."""
    protection = overcurrent_protection(system, store)
    device_a = store.given.protection_rated_current_a
    if device_a is None and protection is not None:
        device_a = ledger.value(protection.key, Symbol.IN)
    for cable in way_from(system, store):
        if not isinstance(cable, Cable) or (laid := cable.given_as(BATTERY_CABLE)) is None:
            continue
        ledger.specified(cable.key, Symbol.S, laid.section_mm2)
        if design is None or duty is None:
            continue
        run, said = at_battery(cable, laid, duty.value)
        asked = Demand(duty.value, design.value, device_a)
        ledger.add(cable.key, duty)
        if run is None:
            ledger.unanswered(cable.key, Symbol.IZ, NO_FACTOR)
            continue
        if laid.section_mm2 is None:
            why = phrase("no standard section carries the current as laid")
            ledger.attempt(cable.key, Symbol.S, partial(smallest_size, run, asked), why)
        keep_ampacity(ledger, cable, run, said, asked)
