"""How far conduits are filled: the same ratings at each cable in one."""

from __future__ import annotations

from sld.model.device import Cable
from sld.model.kinds.ac import AC_CABLE
from sld.model.system import System
from sld.ratings import conduit
from sld.steps.ledger import Ledger

__all__ = ["conduits"]


def conduits(system: System, ledger: Ledger) -> None:
    """Rate every conduit of which the inside diameter and that of all its cables are known."""
    for name, given in system.site.conduits.items():
        cables = [cable for cable in system.every(Cable) if cable.given.conduit == name]
        drawn = [(_count(cable), cable.given.outside_diameter_mm) for cable in cables]
        known = [(count, diameter_mm) for count, diameter_mm in drawn if diameter_mm is not None]
        if given.inside_diameter_mm is None or not known or len(known) < len(drawn):
            continue
        filled = conduit.fill(known, given.inside_diameter_mm)
        most = conduit.largest_fill(sum(count for count, _ in known), system.follows_nec)
        for cable in cables:
            ledger.add(cable.key, filled, most)


def _count(cable: Cable) -> int:
    """Return how many cables or single conductors of one diameter are drawn in."""
    ac_given = cable.given_as(AC_CABLE)
    parallel = ac_given.parallel if ac_given is not None else 1
    return (cable.given.single_conductors or (2 if cable.dc else 1)) * cable.count * parallel
