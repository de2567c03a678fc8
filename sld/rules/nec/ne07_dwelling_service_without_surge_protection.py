"""Service of a dwelling without surge protection.

What it checks
    Whether the main board of a dwelling, or a device ahead of it, has surge protection.

Why
    Surges of the network reach everything in the house, the inverter with its electronics first.

How
    The building is a dwelling, and no surge protective device stands in the circuit of the main board. Advice where
    the board is existing.

Remedy
    A surge protective device of type 1 or 2 in or beside the service equipment.

Clause
    NEC 2023 230.67 (from memory): new and replaced services.

Not covered
    Existing services whose board is new: accept the finding.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.kinds.role import SURGE_PROTECTION
from sld.model.system import System
from sld.rules.naming import named
from sld.rules.ways import own_circuit
from sld.steps.ledger import Ratings
from sld.words import phrase


@rule("NE07", "service of a dwelling without surge protection", Severity.NON_COMPLIANCE, "NEC 2023 230.67")
def dwelling_service_without_surge_protection(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    board = system.main_board()
    protected = any(each.has(SURGE_PROTECTION) for each in own_circuit(system, board.key))
    if system.site.building != "dwelling" or protected:
        return
    yield Breach(
        phrase("{board} of a dwelling has no surge protection at the service", board=named(board)),
        phrase("add a `surge_protection` of type 1 or 2 to the `circuit` of the main board"),
        (*board.at, "circuit"),
        board.key,
        severity=Severity.ADVICE if board.status == "existing" else None,
    )
