"""AC surge protection missing at the main board.

What it checks
    Whether the main board has surge protection, on a building with a lightning protection system.

Why
    Lightning current that enters the earthing system leaves over the network's conductors, through the main board.

How
    A lightning protection system is given, and no AC surge protective device sits in the main board or in its
    supply.

Remedy
    A device of type 1 or 1+2 in the circuit of the main board.

Clause
    IEC 60364-4-44 443; IEC 60364-5-53:2019 534 (from memory).

Not covered
    Protection built into an inverter, which stands too far from the origin to count here.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.kinds.ac import AC_SURGE_PROTECTION
from sld.model.system import System
from sld.rules.naming import named
from sld.steps.ledger import Ratings
from sld.words import phrase


@rule(
    "SU08", "AC surge protection missing at the main board", Severity.NON_COMPLIANCE, "IEC 60364-4-44; IEC 60364-5-53"
)
def ac_surge_protection_missing(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    if system.earthing.lightning_protection is None:
        return
    board = system.main_board()
    for device in system.apparatus(AC_SURGE_PROTECTION):
        if board.key in (device.enclosure, device.owner):
            return
    yield Breach(
        phrase("{board} has no surge protection, on a building with a lightning protection system", board=named(board)),
        phrase("add a `surge_protection` of type 1+2 to the `circuit` of the main board"),
        (*board.at, "circuit"),
        board.key,
        ((("earthing", "lightning_protection"), phrase("lightning protection system")),),
    )
