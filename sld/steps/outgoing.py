"""The devices ahead of what leaves a board: what they let flow together."""

from __future__ import annotations

from sld.model.device import Apparatus, Busbar
from sld.model.kinds.role import SURGE_PROTECTION
from sld.model.system import System
from sld.ratings.symbol import Symbol
from sld.steps.ledger import Ledger
from sld.words import Phrase, phrase

__all__ = ["outgoing_a"]


def outgoing_a(system: System, ledger: Ledger, board: Busbar) -> list[float] | Phrase:
    """Return the rated currents of the first devices of all circuits that leave a board. [A]

    Where one of them is not known, the reason instead.
    """
    ratings_a = []
    for key in system.children.get(board.key, ()):
        here = system.devices[key]
        way = (here, *system.downstream(key))
        device = next((each for each in way if isinstance(each, Apparatus) and each.family and not each.dc), None)
        rated_a = ledger.value(device.key, Symbol.IN) if device else None
        if rated_a is None:
            if here.has(SURGE_PROTECTION):
                continue
            return phrase("the circuit of {here} has no overcurrent device with a known rating", here=here.designation)
        ratings_a.append(rated_a)
    return ratings_a
