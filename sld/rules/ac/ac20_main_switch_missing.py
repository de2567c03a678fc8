"""No main switch.

What it checks
    Whether the main board can be switched off as a whole.

Why
    In an emergency the network and the generation must be separated from the installation in one place.

How
    No main switch, isolator, breaker, RCBO or fuse-switch-disconnector in the circuit of the main board.

Remedy
    A main switch in the circuit of the main board.

Clause
    IEC 60364-5-53 536; IEC 60364-5-55 551.7.6 (from memory).

Not covered
    A switch that the fire brigade asks for.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.kinds.role import SWITCHING
from sld.model.system import System
from sld.rules.naming import named
from sld.rules.ways import own_circuit
from sld.steps.ledger import Ratings
from sld.words import phrase


@rule("AC20", "no main switch", Severity.NON_COMPLIANCE, "IEC 60364-5-55 551.7.6; IEC 60364-5-53")
def main_switch_missing(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    board = system.main_board()
    if not any(device.has(SWITCHING) for device in own_circuit(system, board.key)):
        yield Breach(
            phrase("{board} has no main switch", board=named(board)),
            phrase("add a `main_switch` to the `circuit` of the main board"),
            (*board.at, "circuit"),
            board.key,
        )
