"""Neutral conductors that are smaller than their lines: least section, capacity, and the largest current in them."""

from __future__ import annotations

from sld.citation import cited
from sld.frozen import replace
from sld.model.conductors import lines_count, phases
from sld.model.device import BatteryUnit, Cable, Consumer, InverterUnit
from sld.model.system import System
from sld.quantity import Given, Rating
from sld.ratings import ac_cable, neutral
from sld.ratings.specified import specified
from sld.ratings.symbol import Symbol
from sld.spec.blocks.cable import AcCable
from sld.steps.cable_conditions import correction_factors
from sld.steps.cable_design import conductor_material, design, with_nearest
from sld.steps.currents import takers
from sld.steps.ledger import Ledger
from sld.steps.line_sums import by_line, highest_amperes
from sld.words import phrase

__all__ = ["neutrals"]


def neutrals(system: System, ledger: Ledger) -> None:
    """Rate the neutral of every AC cable that the spec gives one for."""
    for cable, given in system.ac_cables():
        section = ledger.get(cable.key, Symbol.S)
        if given.neutral_section_mm2 is None or section is None:
            continue
        ledger.add(cable.key, specified(Symbol.S_NEUTRAL, given.neutral_section_mm2, "mm²"))
        least = neutral.smallest_neutral(section.value, lines_count(system, cable.owner), conductor_material(cable))
        ledger.add(cable.key, least)
        _capacity(system, ledger, cable, given, given.neutral_section_mm2)
        ledger.add(cable.key, _largest_current(system, ledger, cable))


def _capacity(system: System, ledger: Ledger, cable: Cable, given: AcCable, section_mm2: float) -> None:
    factors, _ = correction_factors(system, ledger, cable, given)
    if factors is None:
        return
    plan = design(system, cable, given, factors)

    def capacity() -> Rating:
        tabulated = ac_cable.tabulated_capacity(
            plan.material, plan.insulation, plan.loaded_conductors_count, plan.method, section_mm2
        )
        return replace(ac_cable.corrected_capacity(tabulated, factors, given.parallel), symbol=Symbol.IZ_NEUTRAL)

    silent = with_nearest(phrase("no capacity is tabulated for the neutral"), section_mm2)
    ledger.attempt(cable.key, Symbol.IZ_NEUTRAL, capacity, silent)


def _largest_current(system: System, ledger: Ledger, cable: Cable) -> Rating | None:
    """Return what the neutral carries while the single-phase units of one line run and the others are off, else None.

    Source: phasor sum of currents 120° apart, of which one is left.
    """
    behind = [device for device in system.downstream(cable.key) if not device.dc]
    sources = [device for device in behind if isinstance(device, InverterUnit | BatteryUnit)]
    found: list[Rating] = []
    for units in (sources, takers(system, behind)):
        single = [
            unit
            for unit in units
            if isinstance(unit, InverterUnit | BatteryUnit | Consumer)
            and phases(system, unit.key) == 1
            and lines_count(system, unit.key) == 1
        ]
        lines = by_line(system, single, highest_amperes(ledger, single))
        given = tuple(Given(f"I({line})", ampere, "A") for line, ampere in lines.items())
        clause = cited(phrase("phasor sum of currents 120° apart, unity power factor"))
        value = max(lines.values())
        found.append(Rating(Symbol.I_NEUTRAL_MAX, value, "A", phrase("most loaded line alone"), given, clause))
    largest = max(found, key=lambda rating: rating.value)
    return largest if largest.value else None
