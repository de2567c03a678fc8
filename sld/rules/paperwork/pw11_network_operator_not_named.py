"""Network operator not named.

What it checks
    Whether the network operator is named.

Why
    The conditions of connection, and so what the drawing has to show, are those of one operator.

How
    A drawing that says what it is handed in for (`document_status`) or that the operator reads.

Remedy
    Give `operator` under `supply`.

Clause
    common practice: operators' forms.

Not covered
    What that operator asks for beyond this drawing.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.system import System
from sld.rules.paperwork.issued import handed_in
from sld.steps.ledger import Ratings
from sld.words import phrase


@rule("PW11", "network operator not named", Severity.ADVICE, "common practice: operators' forms")
def network_operator_not_named(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    if handed_in(system) and not system.supply.operator:
        yield Breach(
            phrase("the drawing is to be handed in, and the network operator is not named"),
            phrase("give `operator` under `supply`"),
            ("supply", "operator"),
        )
