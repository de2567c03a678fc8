"""What a fault heats: the least section of each AC cable behind its protective device by the adiabatic equation.

A section that was chosen for less is enlarged, and what follows from it is worked out again.
"""

from __future__ import annotations

from dataclasses import replace

from sld.citation import citations
from sld.model.device import Apparatus, Cable
from sld.model.kinds.ac import AC_CABLE
from sld.model.system import System
from sld.quantity import Given, Rating
from sld.ratings import breaker, fuse
from sld.ratings import thermal as heating
from sld.ratings.symbol import Symbol
from sld.steps.ac_cables import voltage_rises
from sld.steps.cable_design import conductor_material, insulation
from sld.steps.faults import faults
from sld.steps.ledger import Ledger
from sld.steps.protection import overcurrent_device, protective_family, tripping_curve
from sld.steps.protective_conductors import Demand, enlarge
from sld.tables.table import NoRow
from sld.words import phrase

__all__ = ["thermal"]

_AT_ONCE_S = 0.1
"""A breaker that trips instantaneously does so in less than this (IEC 60898-1:2015 Table 7)."""

_INSULATION = {"PVC": "PVC70", "XLPE": "XLPE_EPR90"}


def thermal(system: System, ledger: Ledger) -> None:
    """Keep the least section by heating of every AC cable whose protective device says how long a fault lasts."""
    while True:
        _least_sections(system, ledger)
        # a larger section lets more current through to what follows: look again until none grows
        grown = [_withstand(system, ledger, cable) for cable in system.of(Cable)]
        if not any(grown):
            return
        voltage_rises(system, ledger)
        faults(system, ledger)


def _least_sections(system: System, ledger: Ledger) -> None:
    for cable, _ in system.ac_cables():
        section, device = ledger.get(cable.key, Symbol.S), overcurrent_device(system, cable.key)
        if section is None or device is None:
            continue
        _cable(system, ledger, cable, device, section)


def _withstand(system: System, ledger: Ledger, cable: Cable) -> bool:
    """Enlarge what was chosen of a cable until it withstands the heat of a fault; return whether anything grew."""
    least, given = ledger.get(cable.key, Symbol.S_THERMAL), cable.given_as(AC_CABLE)
    if least is None or given is None:
        return False
    demand = Demand(
        phrase("fault"),
        lambda symbol: phrase("smallest standard {symbol} with {symbol} ≥ S,thermal", symbol=symbol),
        least,
        least.clause,
        phrase("some AC cables larger than their current asks for, so that a fault does not overheat them"),
    )
    open_symbols = [
        symbol
        for symbol, specified_mm2 in ((Symbol.S, given.section_mm2), (Symbol.SPE, given.protective_section_mm2))
        if specified_mm2 is None
    ]
    grown = False
    while any((ledger.value(cable.key, symbol) or least.value) < least.value for symbol in open_symbols):
        if not enlarge(system, ledger, cable, given, demand):
            break
        grown = True
    return grown


def _cable(system: System, ledger: Ledger, cable: Cable, device: Apparatus, section: Rating) -> None:
    use, kind = "live_or_core_in_cable", _INSULATION[insulation(cable)]
    k = heating.k_factor(use, kind, conductor_material(cable), section.value)
    ledger.add(cable.key, heating.withstand_energy(section.value, k.value))
    if protective_family(device) == "gG":
        least = _by_fuse(ledger, device, k.value, system.profile == "BS 7671")
    else:
        least = _by_energy(system, ledger, cable, device, k.value) or _by_time(ledger, device, k.value)
    if least is not None:
        ledger.add(cable.key, replace(least, symbol=Symbol.S_THERMAL, table_row=k.table_row), symbol=Symbol.S_THERMAL)


def _start_ka(system: System, ledger: Ledger, cable: Cable) -> float | None:
    """Return the greatest fault current at the start of a cable, None where it is not known. [kA]"""
    for device in system.upstream(cable.key):
        if not isinstance(device, Cable):
            return ledger.value(device.key, Symbol.IK_MAX)
    return None


def _by_energy(system: System, ledger: Ledger, cable: Cable, device: Apparatus, k: float) -> Rating | None:
    """Return the least section for what a miniature circuit-breaker of class 3 lets through, None beyond its table."""
    rated, start_ka = ledger.get(device.key, Symbol.IN), _start_ka(system, ledger, cable)
    curve = tripping_curve(ledger, device)
    if protective_family(device) != "MCB" or not curve or rated is None:
        return None
    if start_ka is None or start_ka > breaker.CLASS_3_UP_TO_KA:
        return None
    try:
        energy = breaker.let_through_energy(curve, rated.value)
    except NoRow:
        return None
    least = heating.section_for_energy(energy.value, k)
    given = (Given("Ik", start_ka, "kA", phrase("start of the cable, at most 6 kA")), *energy.given, *least.given)
    text = phrase("miniature circuit-breakers of energy limiting class 3")
    return replace(least, given=given, clause=citations(least.clause, energy.clause)).assuming(text)


def _by_fuse(ledger: Ledger, device: Apparatus, k: float, bs_88: bool) -> Rating | None:
    """Return the least section for what a gG fuse lets through at the least fault current, None beyond its table."""
    rated, least_a = ledger.get(device.key, Symbol.IN), ledger.value(device.key, Symbol.IK1_MIN)
    if rated is None or least_a is None:
        return None
    try:
        energy = fuse.energy_until_open(rated.value, least_a, bs_88)
    except NoRow:
        return None
    least = heating.section_for_energy(energy.value, k)
    return replace(least, given=(*energy.given, *least.given), clause=energy.clause)


def _by_time(ledger: Ledger, device: Apparatus, k: float) -> Rating | None:
    """Return the section that the least fault current asks for within 0.1 s, None where it does not trip at once."""
    least_a, trips_a = ledger.value(device.key, Symbol.IK1_MIN), ledger.value(device.key, Symbol.IA)
    if least_a is None or trips_a is None or least_a < trips_a:
        return None
    least = heating.adiabatic_section(least_a, _AT_ONCE_S, k)
    return least.assuming(
        phrase(
            "fault at the far end, switched off within 0.1 s; nearer the breaker its maker's let-through energy decides"
        )
    )
