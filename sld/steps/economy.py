"""Smaller sections again where others grew for disconnection or heat: what they leave of the rise is given back."""

from __future__ import annotations

from sld.model.system import System
from sld.quantity import Rating
from sld.ratings.symbol import Symbol
from sld.steps.ac_cables import rise_limit_percent, voltage_rises
from sld.steps.faults import faults
from sld.steps.governing import DISCONNECTION, FAULT
from sld.steps.ledger import Ledger
from sld.steps.protective_conductors import protective_conductors
from sld.steps.thermal import thermal
from sld.steps.voltage_budget import voltage_budget

__all__ = ["economy"]

_OTHER_DEMANDS = (DISCONNECTION, FAULT)


def economy(system: System, ledger: Ledger) -> None:
    """Choose the sections for the rise again, none below what disconnection or heat asked for, until nothing grows."""
    floors: dict[str, Rating] = {}
    while rise_limit_percent(system) is not None:
        grown = {
            cable.key: section
            for cable, _ in system.ac_cables()
            if (section := ledger.get(cable.key, Symbol.S)) is not None and _governed_otherwise(section)
        }
        if all(key in floors and floors[key].value >= section.value for key, section in grown.items()):
            return
        floors |= grown
        voltage_budget(system, ledger, floors)
        protective_conductors(system, ledger)
        voltage_rises(system, ledger)
        faults(system, ledger)
        thermal(system, ledger)


def _governed_otherwise(section: Rating) -> bool:
    return any(given.name == "governed by" and given.value in _OTHER_DEMANDS for given in section.given)
