"""The neutral of the supply: its copper equivalent, by which bonding goes where it is earthed at many points (PME)."""

from __future__ import annotations

from sld.model.device import Cable
from sld.model.system import System
from sld.quantity import Rating
from sld.ratings import bonding
from sld.ratings.specified import specified
from sld.ratings.symbol import Symbol
from sld.steps.cable_design import conductor_material
from sld.steps.ledger import Ledger

__all__ = ["supply_cables", "supply_neutral"]


def supply_cables(system: System) -> list[Cable]:
    """Return the cables that the spec holds between the supply and the main board."""
    return [each for each in system.upstream(system.main_board().key) if isinstance(each, Cable)]


def supply_neutral(system: System, ledger: Ledger) -> Rating | None:
    """Return the section of the neutral of the supply as copper: given, else the largest of its cables; None where
    neither is known. [mm²]"""
    stated_mm2 = system.supply.neutral_section_mm2
    if stated_mm2 is not None:
        return specified(Symbol.S_NEUTRAL, stated_mm2, "mm²")
    found = []
    for cable in supply_cables(system):
        section_mm2 = ledger.value(cable.key, Symbol.S_NEUTRAL) or ledger.value(cable.key, Symbol.S)
        if section_mm2 is not None:
            in_all_mm2 = section_mm2 * getattr(cable.given, "parallel", 1)
            found.append(bonding.copper_equivalent(in_all_mm2, conductor_material(cable)))
    return max(found, key=lambda rating: rating.value, default=None)
