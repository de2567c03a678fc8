"""Protective conductors of AC cables, and larger sections where a chosen one would not let its device disconnect."""

from __future__ import annotations

from collections.abc import Callable

from sld.citation import cited, in_table
from sld.frozen import dataclass, replace
from sld.model.device import Apparatus, Cable
from sld.model.kinds.ac import AC_CABLE
from sld.model.system import System
from sld.quantity import Given, LetterSymbol, Origin, Rating
from sld.ratings import disconnection, fault, protective_conductor
from sld.ratings import thermal as heating
from sld.ratings.passed_over import SHOWN_COUNT, outgrown
from sld.ratings.specified import specified
from sld.ratings.symbol import Symbol
from sld.spec.blocks.circuit import AcCable
from sld.steps.ac_cables import as_laid, governed_by, leakage_section
from sld.steps.cable_conductors import brings_protective, holds_protective, is_combined, keep_cores
from sld.steps.cable_design import conductor_material, k_insulation, next_section
from sld.steps.governing import DISCONNECTION
from sld.steps.largest_protective import least_protective
from sld.steps.ledger import Ledger
from sld.steps.loops import (
    C_MIN,
    cables_of_circuit,
    earth_tripping,
    far_end,
    loop_parts,
    time_allowed,
    tripping,
    upstream_cables,
)
from sld.steps.protection import has_residual_device, overcurrent_devices
from sld.steps.source import Source, source
from sld.steps.unanswered import NO_CORE
from sld.tables.table import NoRow
from sld.words import NOTHING, Phrase, Sayable, phrase

__all__ = ["Demand", "enlarge", "protective_conductors"]


@dataclass(frozen=True, slots=True)
class Demand:
    """What asks for more than the current of a cable does.

    governs: its name beside the chosen section. formula: of the section whose symbol it is called with. limit: the
    rating to keep. origin: where that comes from. text: the assumption to be told.
    """

    governs: Phrase
    formula: Callable[[LetterSymbol], Phrase]
    limit: Rating
    origin: Sayable
    text: Sayable


_LARGEST_CORE_MM2 = 16.0
"""Up to here the protective conductor is as large as the line conductors (IEC 60364-5-54 Table 54.2)."""


def protective_conductors(system: System, ledger: Ledger) -> None:
    """Rate the protective conductor of every AC cable, then enlarge what was chosen for disconnection."""
    for cable, given in system.ac_cables():
        keep_cores(system, ledger, cable, given)
        _protective(system, ledger, cable, given)
    supply = source(system, ledger)
    for device in overcurrent_devices(system):
        if system.earthing_at(device.key).startswith("TN") and not has_residual_device(system, device):
            _let_disconnect(system, ledger, device, supply)


def _protective(system: System, ledger: Ledger, cable: Cable, given: AcCable) -> None:
    section = ledger.get(cable.key, Symbol.S)
    if section is None:
        return
    least = ledger.attempt(
        cable.key,
        Symbol.SPE_MIN,
        lambda: least_protective(system, cable, section.value),
        phrase("no standard section is large enough"),
    )
    leakage = leakage_section(system, cable)
    ledger.add(cable.key, leakage, symbol=Symbol.SPE_LEAK)
    if given.armour_section_mm2 is not None:
        ledger.add(cable.key, _armour(cable, given.armour_section_mm2, section.value))
    elif given.protective_section_mm2 is not None:
        ledger.add(cable.key, specified(Symbol.SPE, given.protective_section_mm2, "mm²"))
    elif not holds_protective(system, cable):
        if brings_protective(system, cable):
            ledger.unanswered(cable.key, Symbol.SPE, NO_CORE)
    elif is_combined(system, cable):
        ledger.add(cable.key, protective_conductor.combined_conductor_minimum(conductor_material(cable)))
        neutral = ledger.get(cable.key, Symbol.S_NEUTRAL) or section
        ledger.add(cable.key, _core(neutral, least, phrase("PEN, a core of the same cable")))
    elif given.protective_is_no_core and least is not None:
        ledger.add(cable.key, replace(governed_by(least, phrase("line conductors")), symbol=Symbol.SPE))
    else:
        ledger.add(cable.key, _chosen(section, least, leakage))


def _armour(cable: Cable, armour_mm2: float, section_mm2: float) -> Rating:
    """Return the protective conductor of the material of the lines that an armour of steel wires stands for. [mm²]"""
    k_lines = heating.k_factor("live_or_core_in_cable", k_insulation(cable), conductor_material(cable), section_mm2)
    k_armour = heating.k_factor("armour_or_sheath", k_insulation(cable), "steel", armour_mm2)
    return protective_conductor.armour_equivalent(armour_mm2, k_lines.value, k_armour.value)


def _core(section: Rating, least: Rating | None, formula: Phrase) -> Rating:
    given = (Given("S", section.value, "mm²"), Given(phrase("governed by"), phrase("line conductors")))
    clause = least.clause if least else cited(in_table("IEC 60364-5-54:2011", "54.2"))
    return Rating(Symbol.SPE, section.value, "mm²", formula, given, clause, origin=Origin.CHOSEN)


def _chosen(section: Rating, least: Rating | None, leakage: Rating | None) -> Rating | None:
    """Return the protective conductor that meets the demand of the line conductors and that of the leakage."""
    if section.value <= _LARGEST_CORE_MM2 and (least is None or section.value >= least.value):
        chosen = _core(section, least, phrase("as the line conductors, a core of the same cable"))
    elif least is not None:
        chosen = replace(governed_by(least, phrase("line conductors")), symbol=Symbol.SPE, origin=Origin.CHOSEN)
    else:
        return None
    if leakage is None or leakage.value <= chosen.value:
        return chosen
    given = (*chosen.given[:-1], Given(phrase("governed by"), phrase("leakage")), *leakage.given)
    formula = phrase("{formula}; larger than a core of the cable", formula=leakage.formula)
    text = phrase("protective conductor for the leakage laid beside the cable")
    return Rating(
        Symbol.SPE, leakage.value, "mm²", formula, given, leakage.clause, NOTHING, (text,), origin=Origin.CHOSEN
    )


def _let_disconnect(system: System, ledger: Ledger, device: Apparatus, supply: Source) -> None:
    """Enlarge the chosen conductors of a circuit until its device trips in time, those of the feeders ahead too where
    they are needed; leave all as they are where no standard section does it."""
    rated = ledger.get(device.key, Symbol.IN)
    if rated is None:
        return
    own = cables_of_circuit(system, device)
    for cables in (own, upstream_cables(system, far_end(system, device.key))):
        before = {cable.key: [ledger.get(cable.key, symbol) for symbol in (Symbol.S, Symbol.SPE)] for cable in cables}
        if _enlarged(system, ledger, device, supply, rated, cables):
            return
        for cable in cables:
            _restore(system, ledger, cable, before[cable.key])


def _enlarged(
    system: System, ledger: Ledger, device: Apparatus, supply: Source, rated: Rating, cables: list[Cable]
) -> bool:
    """Enlarge cables, the one that most of the loop is in first, until a device trips in time; False if none does it.

    cables: those that may grow, from the far end to the network.
    """
    try:
        allowed = time_allowed(system, device, rated)
    except NoRow:
        allowed = None
    while True:
        parts = loop_parts(system, ledger, device, supply)
        if isinstance(parts, Cable):
            return True
        loop_ohm = fault.loop_impedance(parts).value
        _, current = tripping(system, device, rated, loop_ohm, allowed)
        by_earth = earth_tripping(device, allowed)
        current = min((each for each in (current, by_earth) if each), key=lambda each: each.value, default=None)
        if current is None:
            return True
        most = disconnection.largest_loop_impedance(system.voltage_to_earth_v, current.value, C_MIN)
        if loop_ohm <= most.value:
            return True
        # parts: the source, then the cables from the far end to the network
        shares = sorted(zip(cables, parts[1:], strict=False), key=lambda share: -share[1].magnitude_ohm)
        demand = _disconnection(most)
        if not any(
            (given := cable.given_as(AC_CABLE)) is not None and enlarge(system, ledger, cable, given, demand)
            for cable, _ in shares
        ):
            return False


def enlarge(system: System, ledger: Ledger, cable: Cable, given: AcCable, demand: Demand) -> bool:
    """Take the next larger section for what the spec leaves open of a cable; False where nothing is open."""
    section, protective = ledger.get(cable.key, Symbol.S), ledger.get(cable.key, Symbol.SPE)
    if section is None or protective is None:
        return False
    stated = given.protective_section_mm2 or given.armour_section_mm2
    if stated is None and protective.value < section.value:
        larger = next_section(system, cable, given, protective.value)
        if larger is not None and larger <= section.value:
            ledger.add(cable.key, _larger(Symbol.SPE, larger, protective, demand))
            return True
    larger = next_section(system, cable, given, section.value) if given.section_mm2 is None else None
    if larger is None:
        return False
    ledger.add(cable.key, _larger(Symbol.S, larger, section, demand))
    as_laid(system, ledger, cable, given)
    _protective(system, ledger, cable, given)
    by_table = ledger.get(cable.key, Symbol.SPE)
    if by_table is not None and by_table.value < protective.value:
        # above 16 mm² the table asks for less than another demand may have taken already
        ledger.add(cable.key, protective)
    return True


def _larger(symbol: Symbol, value: float, smaller: Rating, demand: Demand) -> Rating:
    limit = demand.limit
    others = tuple(each for each in smaller.given if each.name not in ("governed by", str(limit.symbol)))
    given = (*others, Given(phrase("governed by"), demand.governs), limit.as_input(demand.origin))
    said = tuple(each for each in smaller.assumptions if each != demand.text)
    formula = demand.formula(symbol)
    told = (*said, demand.text)
    passed_over = (outgrown(smaller.value, demand.governs), *smaller.passed_over)[:SHOWN_COUNT]
    return Rating(
        symbol,
        value,
        "mm²",
        formula,
        given,
        limit.clause,
        smaller.table_row,
        told,
        origin=Origin.CHOSEN,
        passed_over=passed_over,
    )


def _disconnection(most: Rating) -> Demand:
    return Demand(
        DISCONNECTION,
        lambda symbol: phrase("smallest standard {symbol} with Zs ≤ Zs,max", symbol=symbol),
        most,
        phrase("of its device"),
        phrase(
            "some AC cables larger than their current asks for, so that their protective devices disconnect in time"
        ),
    )


def _restore(system: System, ledger: Ledger, cable: Cable, before: list[Rating | None]) -> None:
    section, protective = before
    given = cable.given_as(AC_CABLE)
    if section is None or given is None:
        return
    ledger.add(cable.key, section)
    as_laid(system, ledger, cable, given)
    _protective(system, ledger, cable, given)
    ledger.add(cable.key, protective)
