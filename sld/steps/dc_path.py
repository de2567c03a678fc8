"""Plug connectors, disconnectors, shutdown and insulation monitoring devices: what they must stand or be set to."""

from __future__ import annotations

from sld.model.device import Apparatus
from sld.model.kinds.dc import BRANCH_CONNECTOR, INSULATION_MONITOR
from sld.model.kinds.role import AS_STATED, CARRYING, RatedCurrent
from sld.model.system import System
from sld.quantity import Rating
from sld.ratings import dc_path as demand
from sld.ratings import insulation
from sld.ratings.specified import specified
from sld.ratings.symbol import Symbol
from sld.spec.blocks.dc_path import InsulationMonitor
from sld.steps.dc_devices import protects_string, terminal_of
from sld.steps.inputs import groups_behind, joined_groups, largest_isc_a, strings_count, strings_through
from sld.steps.ledger import Ledger
from sld.steps.optimisers import rules_of

__all__ = ["dc_path"]


def dc_path(system: System, ledger: Ledger) -> None:
    """Rate every device of these kinds. Nothing is chosen where the spec is silent: makers' values have no series."""
    for device, given in system.given_as(AS_STATED):
        uoc_max = ledger[terminal_of(system, device.key).key, Symbol.UOC_MAX]
        ledger.add(device.key, demand.voltage_min(uoc_max))
        ledger.specified(device.key, Symbol.UN, given.rated_voltage_v)
        if (monitor := device.given_as(INSULATION_MONITOR)) is not None:
            _monitor(device, monitor, ledger, uoc_max)
        if (carrying := device.given_as(CARRYING)) is not None:
            _current(system, device, carrying, ledger)


def _current(system: System, device: Apparatus, given: RatedCurrent, ledger: Ledger) -> None:
    groups = groups_behind(system, device.key)
    rules = rules_of(system, groups)
    count, isc_a = strings_through(device, groups), largest_isc_a(ledger, groups)
    least = demand.current_min(count, isc_a, rules)
    if device.has(BRANCH_CONNECTOR):
        others_count = strings_count(joined_groups(system, terminal_of(system, device.key))) - count
        least = demand.branch_current_min(count, others_count, isc_a, rules, _fuse_ahead_a(system, ledger, device))
    ledger.add(device.key, least)
    ledger.specified(device.key, Symbol.IN, given.rated_current_a)


def _fuse_ahead_a(system: System, ledger: Ledger, device: Apparatus) -> float | None:
    """Return the rated current of what protects the strings behind a device from the others, or None. [A]"""
    for ahead in system.upstream(device.key):
        if isinstance(ahead, Apparatus) and protects_string(system, ahead):
            return ledger.value(ahead.key, Symbol.IN)
    return None


def _monitor(device: Apparatus, given: InsulationMonitor, ledger: Ledger, uoc_max: Rating) -> None:
    ledger.add(device.key, insulation.resistance_min_inverter(uoc_max))
    if given.alarm_resistance_ohm is not None:
        ledger.add(device.key, specified(Symbol.RALARM, given.alarm_resistance_ohm / 1000, "kΩ"))
