"""Supply point number not given.

What it checks
    Whether the number of the supply point is given.

Why
    The operator finds the connection by it. Forms mark it as a field that may not be empty; an empty one makes the
    request incomplete.

How
    A drawing that says what it is handed in for (`document_status`) or that the operator reads.

Remedy
    Give `supply_point` under `supply`, as on the bill.

Clause
    common practice: operators' forms.

Not covered
    The form of the number in each country.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Finding, Severity, rule
from sld.model.system import System
from sld.rules.paperwork.issued import handed_in
from sld.steps.ledger import Ratings


@rule("PW02", "supply point number not given", Severity.ADVICE, "common practice: operators' forms")
def supply_point_number_not_given(system: System, ratings: Ratings) -> Iterator[Finding]:
    """Yield a finding for each case; see the text at the head of this file."""
    if handed_in(system) and not system.supply.supply_point:
        yield Finding(
            "PW02",
            Severity.ADVICE,
            "the drawing is to be handed in, and the number of the supply point is not given",
            "give `supply_point` under `supply`, as on the bill",
            ("supply", "supply_point"),
        )
