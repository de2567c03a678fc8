"""No main switch.

What it checks
    Whether the main board can be switched off as a whole.

Why
    In an emergency the network and the generation must be separated from the installation in one place.

How
    No main switch, isolator, breaker, RCBO or fuse-switch-disconnector in the circuit of the main board, and no RCD
    there ahead of its surge protection: one behind it leaves that connected.

Remedy
    A main switch in the circuit of the main board.

Clause
    IEC 60364-5-53 536; IEC 60364-5-55 551.7.6; an RCD by IEC 61008-1, scope, and BS 7671 Table 537.4 (from memory).

Not covered
    A switch that the fire brigade asks for.
"""

from __future__ import annotations

from collections.abc import Iterator
from itertools import dropwhile

from sld.finding import Breach, Severity, rule
from sld.model.kinds.ac import AC_SURGE_PROTECTION, RCD
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
    circuit = own_circuit(system, board.key)[::-1]
    behind_surge_protection = list(dropwhile(lambda device: device.kind is not AC_SURGE_PROTECTION, circuit))
    left_out = [device for device in behind_surge_protection if device.kind is RCD]
    if not any(device.has(SWITCHING) and device not in left_out for device in circuit):
        yield Breach(
            phrase("{board} has no main switch", board=named(board)),
            phrase("add a `main_switch` to the `circuit` of the main board"),
            (*board.at, "circuit"),
            board.key,
        )
