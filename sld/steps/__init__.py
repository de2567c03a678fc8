"""System -> Ratings: the steps that walk the system once, in a listed order, and call the formulas of `sld.ratings`.

This is the only caller of `sld.ratings`. Where the spec is silent the smallest standard value that fits is chosen, and
the rating says so.
"""

from __future__ import annotations

from collections.abc import Callable

from sld.model.system import System
from sld.steps.ac_cables import ac_cables, voltage_rises
from sld.steps.array_earth import array_earth
from sld.steps.array_fuses import array_fuses
from sld.steps.batteries import batteries
from sld.steps.conduits import conduits
from sld.steps.currents import currents
from sld.steps.data_bus import data_bus
from sld.steps.dc_cables import dc_cables
from sld.steps.dc_devices import dc_devices
from sld.steps.dc_path import dc_path
from sld.steps.earthing import earthing
from sld.steps.economy import economy
from sld.steps.faults import faults
from sld.steps.inputs import inputs
from sld.steps.insulation_test import insulation_test
from sld.steps.island import island_currents
from sld.steps.ledger import Ledger, Ratings
from sld.steps.nec import ac_conductors as nec_ac
from sld.steps.nec import batteries as nec_batteries
from sld.steps.nec import dc_conductors as nec_dc
from sld.steps.nec import faults as nec_faults
from sld.steps.nec import grounding as nec_grounding
from sld.steps.nec import protection as nec_protection
from sld.steps.nec import supply_side as nec_supply
from sld.steps.nec import surge as nec_surge
from sld.steps.nec import voltage_budget as nec_budget
from sld.steps.nec.clauses import restated
from sld.steps.nec.trade_names import in_trade_names
from sld.steps.neutrals import neutrals
from sld.steps.notified import notified
from sld.steps.protection import protection
from sld.steps.protective_conductors import protective_conductors
from sld.steps.selectivity import selectivity
from sld.steps.short_circuits import short_circuits
from sld.steps.string_fuses import string_fuses
from sld.steps.strings import strings
from sld.steps.supply_side import supply_side
from sld.steps.surge import surge
from sld.steps.thermal import thermal
from sld.steps.totals import totals
from sld.steps.voltage_budget import voltage_budget

__all__ = ["NEC_STEPS", "STEPS", "Ratings", "rate"]

Steps = tuple[Callable[[System, Ledger], None], ...]

STEPS: Steps = (
    strings,  # each string: voltages at the temperature extremes, numbers of modules, power
    inputs,  # each inverter input: currents, reverse current
    string_fuses,  # need of string fuses, their window
    array_fuses,  # the same for sub-arrays and arrays
    dc_devices,  # fuses, isolators: demands and choices
    dc_path,  # plug connectors, disconnectors, shutdown devices, insulation monitors: demands
    dc_cables,  # demands, capacity, section, voltage drop
    batteries,  # between batteries and their converters: currents, voltages, cables
    surge,  # surge protection on both sides
    currents,  # design current of every AC device
    island_currents,  # of sources and loads while the network is away
    protection,  # rated currents of breakers, fuses, RCDs, switches
    ac_cables,  # demands, capacity, section
    voltage_budget,  # larger sections for the rise on the whole way
    neutrals,  # those smaller than their lines: what is asked of them, what they carry
    protective_conductors,  # of the AC cables, and larger sections for disconnection
    voltage_rises,  # from the supply point to every inverter
    faults,  # fault levels, loop impedances, disconnection
    thermal,  # what a fault heats: least sections by the adiabatic equation, and larger ones where chosen for less
    economy,  # smaller sections again for the rise, where others grew
    short_circuits,  # peak currents at boards, least currents between live conductors
    selectivity,  # which of two protective devices in series opens
    supply_side,  # busbars, meters
    earthing,  # protective, earthing and bonding conductors
    conduits,  # how far they are filled
    data_bus,  # unit loads, lengths
    totals,  # sums for the whole system
    notified,  # what a network operator is told
    insulation_test,  # test voltages and least values of the strings of every input
    array_earth,  # insulation, leakage and functional earth of the array of every inverter
)

NEC_STEPS: Steps = (
    strings,
    inputs,
    string_fuses,
    dc_devices,
    dc_path,
    nec_batteries.batteries,  # 125 % of the current, what devices at batteries must stand
    nec_surge.surge,
    nec_dc.dc_conductors,
    currents,
    island_currents,
    nec_protection.protection,  # 125 % rules, ratings of 240.6(A)
    nec_ac.ac_conductors,  # Table 310.16, terminals, the device that a conductor allows
    nec_budget.voltage_budget,  # larger sizes for the rise on the whole way
    nec_grounding.equipment_grounding,  # by the device ahead, larger where the conductors grew
    voltage_rises,
    nec_faults.faults,  # available fault current; no disconnection times
    nec_supply.supply_side,  # busbars with sources
    nec_grounding.grounding_conductors,
    conduits,
    data_bus,
    totals,
    notified,
    insulation_test,
)
"""The same steps under the National Electrical Code."""


def rate(system: System) -> Ratings:
    """Return every rating of a system, by the steps of its rule profile; those of equal inverters are made once."""
    ledger = Ledger(system.of_copies())
    walked = system.one_of_each()
    for step in NEC_STEPS if system.follows_nec else STEPS:
        step(walked, ledger)
    return restated(in_trade_names(ledger.closed())) if system.follows_nec else ledger.closed()
