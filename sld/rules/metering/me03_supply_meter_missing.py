"""No meter at the supply.

What it checks
    Whether the drawing shows an energy meter at the supply point.

Why
    Network operators want to see it on the diagram; import and export are billed with it.

How
    No meter with purpose: supply.

Remedy
    The meter in the circuit of the main board.

Clause
    Terms of the network operator; common practice, no source.

Not covered
    Meters on the operator's side that are not part of the diagram.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.kinds.ac import METER
from sld.model.system import System
from sld.rules.naming import named
from sld.steps.ledger import Ratings
from sld.words import phrase


@rule("ME03", "no meter at the supply", Severity.ADVICE, "terms of the network operator")
def supply_meter_missing(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    if not any(meter.purpose == "supply" for _, meter in system.given_as(METER)):
        board = system.main_board()
        yield Breach(
            phrase("{board} has no energy meter at the supply", board=named(board)),
            phrase("add a `meter` with `purpose: supply` to the `circuit` of the main board"),
            (*board.at, "circuit"),
            board.key,
        )
