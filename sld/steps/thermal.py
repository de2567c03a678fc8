"""What a fault heats: the least section of each AC cable behind its protective device by the adiabatic equation.

A section that was chosen for less is enlarged, and what follows from it is worked out again.
"""

from __future__ import annotations

from sld.citation import citations
from sld.frozen import replace
from sld.model.device import Apparatus, Cable
from sld.model.kinds.ac import AC_CABLE, SERVICE_FUSE
from sld.model.system import System
from sld.quantity import Given, Rating
from sld.ratings import thermal as heating
from sld.ratings.symbol import Symbol
from sld.steps.ac_cables import voltage_rises
from sld.steps.cable_design import conductor_material, k_insulation
from sld.steps.faults import faults
from sld.steps.governing import FAULT
from sld.steps.ledger import Ledger
from sld.steps.let_through import LetThrough, of_breaker, of_fuse
from sld.steps.loops import greatest_earth_fault_ka
from sld.steps.protection import overcurrent_device, protective_family
from sld.steps.protective_conductors import Demand, enlarge
from sld.steps.short_circuits import least_live_current
from sld.steps.source import Source, source
from sld.words import phrase

__all__ = ["certain_mm2", "heated", "laid_down_mm2", "thermal"]

_LAID_DOWN = "S,I²t"
"""The input of a least section that says how much of it rests on what is laid down or stated, not on an assumption."""

_CERTAIN = "S,3"
"""The input of a least section that says which section is too thin for every breaker of class 3."""

_LEAST_K_OF_COPPER = 115.0
"""k of copper with PVC, by which the handbook permits its sections (IEC 60364-4-43 Table 43A)."""

_OF = {Symbol.S_THERMAL: Symbol.S, Symbol.SPE_THERMAL: Symbol.SPE}


def heated(system: System) -> dict[Symbol, Symbol]:
    """Return the conductors that a fault heats: the symbol of the least section -> that of the section.

    In TT an earth fault flows through the earth electrode, which leaves too little to heat a protective conductor.
    """
    return {Symbol.S_THERMAL: Symbol.S} if system.supply.earthing_system == "TT" else _OF


def laid_down_mm2(least: Rating) -> float:
    """Return how much of a least section rests on what is laid down or stated, 0 where all of it is assumed. [mm²]"""
    return _input(least, _LAID_DOWN)


def certain_mm2(least: Rating) -> float:
    """Return below which section a conductor is too thin without doubt, 0 where all of it is assumed. [mm²]"""
    return _input(least, _CERTAIN) or _input(least, _LAID_DOWN)


def _input(least: Rating, name: str) -> float:
    return next((each.number for each in least.given if each.name == name), 0.0)


def thermal(system: System, ledger: Ledger) -> None:
    """Keep the least section by heating of every AC cable whose protective device says how long a fault lasts."""
    supply = source(system, ledger)
    while True:
        for cable, _ in system.ac_cables():
            _least_sections(system, ledger, cable, supply)
        # a larger section lets more current through to what follows: look again until none grows
        grown = [_withstand(system, ledger, cable) for cable in system.of(Cable)]
        if not any(grown):
            return
        voltage_rises(system, ledger)
        faults(system, ledger)


def _withstand(system: System, ledger: Ledger, cable: Cable) -> bool:
    """Enlarge what was chosen of a cable until it withstands what is laid down for the heat of a fault; return whether
    anything grew. What is assumed makes no cable larger: the maker's figure is asked for."""
    given = cable.given_as(AC_CABLE)
    if given is None:
        return False
    specified_mm2 = {Symbol.S: given.section_mm2, Symbol.SPE: given.protective_section_mm2 or given.armour_section_mm2}
    grown = False
    for least_symbol, symbol in heated(system).items():
        least = ledger.get(cable.key, least_symbol)
        if least is None or specified_mm2[symbol] is not None:
            continue
        least = replace(least, value=laid_down_mm2(least))
        demand = Demand(
            FAULT,
            lambda symbol: phrase("smallest standard {symbol} with {symbol} ≥ S,thermal", symbol=symbol),
            least,
            least.clause,
            phrase("some AC cables larger than their current asks for, so that a fault does not overheat them"),
        )
        while (ledger.value(cable.key, symbol) or least.value) < least.value:
            if not enlarge(system, ledger, cable, given, demand):
                break
            grown = True
    return grown


def _least_sections(system: System, ledger: Ledger, cable: Cable, supply: Source) -> None:
    section, device = ledger.get(cable.key, Symbol.S), overcurrent_device(system, cable.key)
    if section is None or device is None:
        return
    k = heating.k_factor("live_or_core_in_cable", k_insulation(cable), conductor_material(cable), section.value)
    ledger.add(cable.key, heating.withstand_energy(section.value, k.value))
    for least_symbol in heated(system):
        of_earth_fault = least_symbol is Symbol.SPE_THERMAL
        let_through = _let_through(system, ledger, cable, device, supply, of_earth_fault)
        if let_through is not None:
            ledger.add(cable.key, replace(_least(let_through, k), symbol=least_symbol))


def _least(let_through: LetThrough, k: Rating) -> Rating:
    """Return the least section for an energy, with the section that what is laid down asks for among its inputs."""
    energy, laid_down = let_through.energy, let_through.laid_down
    least = _by(energy, let_through, k)
    given = [*energy.given, *(each for each in least.given if each not in energy.given)]
    if laid_down is not None:
        by_it = _by(laid_down, let_through, k)
        given.append(Given(_LAID_DOWN, by_it.value, "mm²", phrase("by the energy laid down or stated")))
    if let_through.certain is not None:
        certain = _by(let_through.certain, let_through, k)
        given.append(Given(_CERTAIN, certain.value, "mm²", phrase("by class 3 up to 4.5 kA")))
    row = least.table_row or k.table_row
    rating = replace(least, given=tuple(given), clause=citations(least.clause, energy.clause), table_row=row)
    return rating.assuming(*let_through.assumed)


def _by(energy: Rating, let_through: LetThrough, k: Rating) -> Rating:
    """Return the least section for an energy, or the smaller one that a handbook permits of copper."""
    by_energy, permitted = heating.section_for_energy(energy.value, k.value), let_through.permitted
    if permitted is not None and permitted.value < by_energy.value and k.value >= _LEAST_K_OF_COPPER:
        return permitted
    return by_energy


def _let_through(
    system: System, ledger: Ledger, cable: Cable, device: Apparatus, supply: Source, of_earth_fault: bool
) -> LetThrough | None:
    """Return what reaches a cable of a short circuit, or of an earth fault, None where that is not known."""
    if protective_family(device) != "gG":
        start_ka = _start_ka(system, ledger, cable, supply, of_earth_fault)
        return None if start_ka is None else of_breaker(system, ledger, device, start_ka)
    rated = ledger.get(device.key, Symbol.IN)
    if rated is None or device.kind is SERVICE_FUSE:
        return None
    earth, live = ledger.get(device.key, Symbol.IK1_MIN), least_live_current(system, ledger, device, supply)
    by_earth = earth if system.earthing_at(device.key) != "TT" else None
    known = [each.value for each in (by_earth, None if of_earth_fault else live) if each is not None]
    return of_fuse(rated.value, min(known), system.profile == "BS 7671") if known else None


def _start_ka(system: System, ledger: Ledger, cable: Cable, supply: Source, of_earth_fault: bool) -> float | None:
    """Return the greatest current at the start of a cable, None where it is not known. [kA]

    That of an earth fault by the loop that the spec states; without one it is taken to be as large as any other.
    """
    before = next((each for each in system.upstream(cable.key) if not isinstance(each, Cable)), None)
    greatest_ka = ledger.value(before.key, Symbol.IK_MAX) if before is not None else None
    if before is None or greatest_ka is None or not of_earth_fault:
        return greatest_ka
    return min(greatest_ka, greatest_earth_fault_ka(system, ledger, before.key, supply) or greatest_ka)
